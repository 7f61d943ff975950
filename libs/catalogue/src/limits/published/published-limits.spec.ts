import type {
  ApplicabilityRule,
  ContextValue,
  Limit,
  LimitContext,
  Quantity,
  UnitCode,
  Verdict,
} from '@endfloat/metrology';
import {
  classifyReading,
  judgeNumber,
  judgeRatio,
  selectApplicableLimits,
  validateLimit,
} from '@endfloat/metrology';
import fc from 'fast-check';
import { conflictSizes, publishedValues, unconfirmedRules } from '../../fixtures/published-values.js';
import { shippedComponentTypes } from '../../component-types/shipped-component-types.js';
import { limitsOfRules, publishedLimitsFor } from './find-published-limit.js';
import { jurisdictions } from './published-limit.js';
import { publishedLimits } from './published-limits.js';

const units: Readonly<Record<string, UnitCode>> = {
  in: '[in_i]',
  'mm (in)': 'mm',
  '% vol': '%',
  ppm: '[ppm]',
  degC: 'Cel',
  mm: 'mm',
  '%': '%',
};
const unknown = { kind: 'unknown', missing: ['instrument'] } as const;

/** A value that meets a rule. */
function meets(rule: ApplicabilityRule): ContextValue {
  switch (rule.kind) {
    case 'oneOf':
      return rule.values[0]!;
    case 'noneOf':
      return 'none-of-those';
    case 'dates':
      return rule.from ?? '1950-06-01';
    case 'range': {
      const edge = (rule.from ?? rule.upTo ?? rule.over ?? rule.under)!;
      const shift =
        rule.from === undefined && rule.upTo === undefined ? (rule.over === undefined ? -1 : 1) : 0;
      return rule.over !== undefined && rule.upTo !== undefined
        ? rule.upTo
        : { value: String(Number(edge.value) + shift), unit: edge.unit };
    }
  }
}

const contextFor = (limit: Limit, extra: LimitContext = {}): LimitContext => ({
  ...Object.fromEntries(
    Object.entries({ ...limit.applicability, ...limit.conditions }).map(([key, rule]) => [key, meets(rule)]),
  ),
  ...extra,
});

/** As a shop has it once it has confirmed the limit. */
const confirmed = (limit: Limit): Limit => ({ ...limit, judging: 'allowed' });

function atFaceValue(limit: Limit, reading: Quantity, extra: LimitContext = {}): string {
  const verdict = judgeNumber({
    limit: confirmed(limit),
    quantityKind: limit.quantityKind!,
    readings: [reading],
    uncertainty: unknown,
    context: contextFor(limit, extra),
  });
  return said(verdict);
}

const said = (verdict: Verdict): string => (verdict.kind === 'notJudged' ? verdict.reason : verdict.outcome);

const rule = (id: string): Limit => limitsOfRules(id)[0]!;

/** Exact decimal text a little off a printed value. */
const moved = (value: string, step: number): string => (Number(value) + step).toFixed(6);

/** At the value, just below and just above it, for each comparator. */
const expected: Readonly<Record<string, readonly [string, string, string]>> = {
  '<=': ['inside', 'inside', 'outside'],
  '<': ['outside', 'inside', 'outside'],
  '>=': ['inside', 'outside', 'inside'],
  '>': ['outside', 'outside', 'inside'],
  unclear: ['sourceUnclear', 'outside', 'inside'],
};

describe('the published limits', () => {
  it('are 109 rules with unique ids, and unique ids of limits', () => {
    expect(publishedLimits).toHaveLength(109);
    expect(new Set(publishedLimits.map((entry) => entry.id)).size).toBe(109);
    const limitIds = publishedLimits.flatMap((entry) => entry.limits.map((limit) => limit.id));
    expect(new Set(limitIds).size).toBe(limitIds.length);
  });

  it('pass the check for limits, each with a source', () => {
    for (const entry of publishedLimits) {
      for (const limit of entry.limits) expect([limit.id, validateLimit(limit)]).toEqual([limit.id, []]);
      expect(entry.limits.every((limit) => limit.edition.citation.length > 5)).toBe(true);
    }
  });

  it('ship not for judging where they come from memory or are to be verified', () => {
    const waiting = publishedLimits.filter((entry) =>
      entry.limits.every((limit) => limit.judging === 'notUntilConfirmed'),
    );
    expect(waiting.map((entry) => entry.id).sort()).toEqual([...unconfirmedRules].sort());
    const limit = rule('tread-eu');
    const verdict = judgeNumber({
      limit,
      quantityKind: 'length',
      readings: [{ value: '9', unit: 'mm' }],
      uncertainty: unknown,
      context: contextFor(limit),
    });
    expect(said(verdict)).toBe('limitNotConfirmed');
  });

  it('keep every conflict between sources', () => {
    for (const [group, size] of Object.entries(conflictSizes)) {
      expect([group, publishedLimits.filter((entry) => entry.conflictGroup === group).length]).toEqual([
        group,
        size,
      ]);
    }
  });

  it('name known places, kinds of part and characteristics only', () => {
    for (const entry of publishedLimits) {
      const type = shippedComponentTypes.find((candidate) => candidate.id === entry.componentTypeId);
      for (const limit of entry.limits) {
        const characteristic = type?.characteristics.find(
          (candidate) => candidate.id === limit.characteristic,
        );
        expect([limit.id, characteristic?.quantityKind]).toEqual([limit.id, limit.quantityKind]);
        if (limit.jurisdiction !== null) expect(Object.keys(jurisdictions)).toContain(limit.jurisdiction);
      }
    }
  });

  it('refuse an id that is no rule', () => {
    expect(() => limitsOfRules('tread-moon')).toThrow(RangeError);
    expect(publishedLimitsFor('no-such-characteristic')).toEqual([]);
  });
});

describe('single-value rules judged at, just below and just above the printed value', () => {
  const singles = publishedValues.filter(
    ([id]) =>
      rule(id).criterion.kind === 'minimum' ||
      rule(id).criterion.kind === 'maximum' ||
      rule(id).criterion.kind === 'tabulated',
  );
  it.each(singles)('%s: good is %s %s %s', (id, accept, value, unit) => {
    const limit = rule(id);
    const wheel = /(\d+)in/.exec(id)?.[1];
    const extra: LimitContext =
      wheel === undefined ? {} : { wheelDiameter: { value: wheel, unit: '[in_i]' } };
    const code = units[unit]!;
    const results = [value, moved(value, -1e-4), moved(value, 1e-4)].map((text) =>
      atFaceValue(limit, { value: text, unit: code }, extra),
    );
    expect(results).toEqual(expected[accept]);
  });

  it('are 81 rules', () => {
    expect(singles).toHaveLength(81);
  });
});

describe('ratios of readings judged at, just below and just above the printed share', () => {
  const ratios = publishedValues.filter(([id]) => rule(id).criterion.kind.startsWith('ratio'));
  it.each(ratios)('%s: good is %s %s %s', (id, accept, value) => {
    const limit = confirmed(rule(id));
    const { criterion } = limit;
    if (
      criterion.kind !== 'ratioOfTwo' &&
      criterion.kind !== 'ratioToBest' &&
      criterion.kind !== 'ratioToMean'
    )
      throw new Error('no ratio');
    const unit: UnitCode = limit.quantityKind === 'force' ? 'N' : 'kPa';
    const isDifference =
      criterion.form === 'differenceOverGreater' || criterion.form === 'differenceOverReference';
    const judge = (share: number): string => {
      const lower = isDifference ? 1000 - 10 * share : 10 * share;
      const higher = criterion.kind === 'ratioToMean' ? 2000 - lower : 1000;
      const places = [higher, lower].map((newtons) => ({
        value: { value: String(newtons), unit },
        uncertainty: unknown,
      }));
      return said(
        judgeRatio({ limit, quantityKind: limit.quantityKind!, places, context: contextFor(limit) }),
      );
    };
    const at = Number(value);
    expect([at, at - 0.1, at + 0.1].map(judge)).toEqual(expected[accept]);
  });

  it('are eight', () => {
    expect(ratios).toHaveLength(8);
  });

  it('part exactly at 30 %: the place that counts the weaker wheel accepts, the one that counts the difference rejects', () => {
    const places = ['700', '1000'].map((value) => ({
      value: { value, unit: 'N' as const },
      uncertainty: unknown,
    }));
    const judge = (id: string): string =>
      said(judgeRatio({ limit: rule(id), quantityKind: 'force', places, context: contextFor(rule(id)) }));
    expect([judge('imbalance-uk-major'), judge('imbalance-fr-excessive')]).toEqual(['inside', 'outside']);
  });

  it('judge no imbalance where the higher effort is 40 kg or less, or the lower wheel locked', () => {
    const limit = rule('imbalance-uk-major');
    const judge = (values: readonly string[], extra: LimitContext = {}): string =>
      said(
        judgeRatio({
          limit,
          quantityKind: 'force',
          places: values.map((value) => ({ value: { value, unit: 'kgf' as const }, uncertainty: unknown })),
          context: contextFor(limit, extra),
        }),
      );
    expect(judge(['40', '10'])).toBe('excluded');
    expect(judge(['40.1', '10'])).toBe('outside');
    expect(judge(['100', '10'], { lowerWheelLocked: 'yes' })).toBe('excluded');
  });

  it('ask for a floor too where the rule has one: 70 % of the best and at least 690 kPa', () => {
    const limit = confirmed(rule('compression-workshop-70'));
    const judge = (...values: readonly string[]): string =>
      said(
        judgeRatio({
          limit,
          quantityKind: 'gaugePressure',
          places: values.map((value) => ({ value: { value, unit: 'kPa' as const }, uncertainty: unknown })),
          context: contextFor(limit),
        }),
      );
    expect(judge('1000', '700')).toBe('inside');
    expect(judge('1000', '699')).toBe('outside');
    expect(judge('900', '690')).toBe('inside');
    expect(judge('900', '689')).toBe('outside');
  });
});

describe('bands judged at and just beyond their edges', () => {
  it.each([
    ['lambda-raised-idle', '0.97', '1.03', '1'],
    ['headlamp-uk-low-old', '0.5', '2.0', '%'],
    ['headlamp-uk-low-new', '0.5', '2.75', '%'],
    ['headlamp-uk-high', '1.25', '2.75', '%'],
    ['manifold-vacuum', '17', '21', "[in_i'Hg]"],
  ] as const)('%s: %s to %s %s, edges included', (id, lower, upper, unit) => {
    for (const limit of limitsOfRules(id)) {
      const at = (value: string): string =>
        atFaceValue(limit, { value, unit }, { altitude: { value: '0', unit: 'm' } });
      expect(
        [moved(lower, -1e-4), lower, moved(lower, 1e-4), moved(upper, -1e-4), upper, moved(upper, 1e-4)].map(
          at,
        ),
      ).toEqual(['outside', 'inside', 'inside', 'inside', 'inside', 'outside']);
    }
  });

  it('lower the vacuum by 1 inHg per 1000 ft', () => {
    const at = (value: string, feet: string): string =>
      atFaceValue(
        rule('manifold-vacuum'),
        { value, unit: "[in_i'Hg]" },
        { altitude: { value: feet, unit: '[ft_i]' } },
      );
    expect(at('14', '3000')).toBe('inside');
    expect(at('13.9999', '3000')).toBe('outside');
    expect(at('18.0001', '3000')).toBe('outside');
    expect(atFaceValue(rule('manifold-vacuum'), { value: '18', unit: "[in_i'Hg]" })).toBe('contextMissing');
  });

  it('change with the edition: 2.5 % of dip was outside until 23 March 2016 and is inside from the 24th', () => {
    const ids = (day: string): readonly string[] =>
      selectApplicableLimits(
        publishedLimitsFor('headlamp-dip'),
        { jurisdiction: 'uk', centreHeight: { value: '700', unit: 'mm' } },
        day,
      ).applicable.map((limit) => limit.id);
    expect(ids('2016-03-23')).toEqual(['headlamp-uk-low-old']);
    expect(ids('2016-03-24')).toEqual(['headlamp-uk-low-new']);
    expect(atFaceValue(rule('headlamp-uk-low-old'), { value: '2.5', unit: '%' })).toBe('outside');
    expect(atFaceValue(rule('headlamp-uk-low-new'), { value: '2.5', unit: '%' })).toBe('inside');
  });
});

describe('steering wheel lash of the federal rule', () => {
  const largest = (id: string, diameter: Quantity, value: string, unit: UnitCode = 'mm'): string =>
    atFaceValue(rule(id), { value, unit }, { wheelDiameter: diameter });
  const mm = (value: string): Quantity => ({ value, unit: 'mm' });

  // Computed test points: pi/180 x 14 or 30 degrees x diameter / 2, to 0.1 mm.
  it.each([
    ['manual', '470', '57.4', '57.5'],
    ['power', '470', '123.0', '123.1'],
    ['manual', '600', '73.3', '73.4'],
    ['power', '600', '157.0', '157.2'],
  ] as const)(
    'with %s steering and an unlisted wheel of %s mm: %s mm inside, %s mm outside',
    (steering, diameter, inside, outside) => {
      expect(largest(`lash-us-cmv-angle-${steering}`, mm(diameter), inside)).toBe('inside');
      expect(largest(`lash-us-cmv-angle-${steering}`, mm(diameter), outside)).toBe('outside');
    },
  );

  it('uses the first row for every smaller wheel, not the angle: 380 mm manual permits 51 mm, not 46.4', () => {
    expect(largest('lash-us-cmv-angle-manual', mm('380'), '51')).toBe('inside');
    expect(largest('lash-us-cmv-angle-manual', mm('380'), '51.0001')).toBe('outside');
  });

  it('compares in the unit of the reading: 57.1 mm is outside 57 mm, 2.25 in is inside 2 1/4 in', () => {
    expect(largest('lash-us-cmv-angle-manual', mm('457'), '57.1')).toBe('outside');
    expect(largest('lash-us-cmv-angle-manual', mm('457'), '2.25', '[in_i]')).toBe('inside');
  });

  it('says nothing about a wheel that a light-vehicle table does not list', () => {
    expect(largest('lash-us-light-18in', { value: '19', unit: '[in_i]' }, '10')).toBe('notInTable');
  });

  it('permits more for power than for manual steering, where two states permit less', () => {
    expect(largest('lash-us-cmv-angle-power', mm('406'), '4.25', '[in_i]')).toBe('inside');
    expect(largest('lash-us-cmv-angle-manual', mm('406'), '4.25', '[in_i]')).toBe('outside');
    for (const id of ['lash-us-states-power-lower', 'lash-us-state-utah']) {
      const [power, manual] = limitsOfRules(id);
      expect(atFaceValue(power!, { value: '2.5', unit: '[in_i]' })).toBe('outside');
      expect(atFaceValue(manual!, { value: '2.5', unit: '[in_i]' })).toBe('inside');
    }
  });
});

describe('rules that are split by case', () => {
  it.each([
    ['lash-us-states-power-lower', ['2', '3']],
    ['lash-us-state-utah', ['2', '3']],
    ['lash-us-state-maryland', ['3', '3.5']],
    ['lash-us-state-north-carolina', ['3', '4']],
  ] as const)('%s permits %j inches', (id, values) => {
    limitsOfRules(id).forEach((limit, i) => {
      const value = values[i]!;
      expect(
        [value, moved(value, -1e-4), moved(value, 1e-4)].map((text) =>
          atFaceValue(limit, { value: text, unit: '[in_i]' }),
        ),
      ).toEqual(expected['<=']);
    });
  });

  it('leave the wheel at the split itself open, as the source does', () => {
    const { applicable } = selectApplicableLimits(
      limitsOfRules('lash-us-state-maryland'),
      { jurisdiction: 'us-maryland', wheelDiameter: { value: '21', unit: '[in_i]' } },
      '2026-01-01',
    );
    expect(applicable).toEqual([]);
  });

  it('hold the six figures of the EU exhaust rule', () => {
    const limits = limitsOfRules('co-eu');
    const values = ['4.5', '3.5', '0.5', '0.3', '0.3', '0.2'];
    expect(limits).toHaveLength(6);
    limits.forEach((limit, i) => {
      const value = values[i]!;
      expect(
        [value, moved(value, -1e-4), moved(value, 1e-4)].map((text) =>
          atFaceValue(limit, { value: text, unit: '%' }),
        ),
      ).toEqual(expected['<=']);
    });
  });

  it('are dangerous below half the required efficiency: 29 % of 58 %', () => {
    const [required, half] = limitsOfRules('service-brake-uk-m1-new');
    expect(half!.severity).toBe('dangerous');
    expect(atFaceValue(required!, { value: '29', unit: '%' })).toBe('outside');
    expect(atFaceValue(half!, { value: '29', unit: '%' })).toBe('inside');
    expect(atFaceValue(half!, { value: '28.9999', unit: '%' })).toBe('outside');
  });

  it('choose by the date of first use: 3.5 % from 1 August 1986 in one place, from 1 October in others', () => {
    const ids = (jurisdiction: string, firstUsedOn: string): readonly string[] =>
      selectApplicableLimits(
        publishedLimitsFor('exhaust-co-idle'),
        { jurisdiction, firstUsedOn, catalyst: 'none', fuel: 'petrol' },
        '2026-01-01',
      ).applicable.map((limit) => limit.id);
    expect(ids('uk', '1986-07-31')).toEqual(['co-uk-nocat-old']);
    expect(ids('uk', '1986-08-01')).toEqual(['co-uk-nocat-new']);
    expect(ids('france', '1986-09-30')).toEqual(['co-france-nocat-old']);
    expect(ids('luxembourg', '1986-10-01')).toEqual(['co-luxembourg-nocat-new']);
  });
});

describe('formulas, grades and classes', () => {
  it('permit 1.5 times the maker’s toe, in or out, and nothing where the maker’s value is zero', () => {
    const toe = (value: string, maker: string): string =>
      atFaceValue(rule('toe-us-light'), { value, unit: 'mm' }, { makerToe: { value: maker, unit: 'mm' } });
    expect([toe('3', '2'), toe('-3', '2'), toe('3.0001', '2'), toe('-3.0001', '2')]).toEqual([
      'inside',
      'inside',
      'outside',
      'outside',
    ]);
    expect(toe('0', '0')).toBe('makerValueZero');
  });

  it('permit 80 % of the rated stroke for an actuator that no table lists', () => {
    const stroke = (value: string): string =>
      atFaceValue(
        rule('stroke-us-unlisted'),
        { value, unit: '[in_i]' },
        { ratedStroke: { value: '2.5', unit: '[in_i]' } },
      );
    expect([stroke('2'), stroke('1.9999'), stroke('2.0001')]).toEqual(expected['<=']);
  });

  it('grade bearing and kingpin without a number, dangerous beyond major', () => {
    for (const id of ['wheel-bearing-eu', 'kingpin-eu']) {
      const { criterion } = rule(id);
      if (criterion.kind !== 'grade') throw new Error('expected grades');
      expect(criterion.rejected.map((entry) => entry.severity)).toEqual(['major', 'dangerous']);
    }
  });

  it.each([
    ['battery-ocv-set-a', ['12.65', '12.45', '12.24', '12.06', '11.89']],
    ['battery-ocv-set-b', ['12.6', '12.4', '12.2', '12.0', '11.6']],
    ['battery-ocv-set-c', ['12.66', '12.45', '12.30', '12.15']],
  ] as const)('%s gives a class at each threshold and the next one just below', (id, thresholds) => {
    const { criterion } = rule(id);
    if (criterion.kind !== 'classes') throw new Error('expected classes');
    const classAt = (value: string): string =>
      classifyReading(criterion, { value, unit: 'V' }, 0, 'voltage').name;
    thresholds.forEach((threshold, i) => {
      expect(classAt(threshold)).toBe(`charge${100 - 25 * i}`);
      expect(classAt(moved(threshold, -1e-4))).toBe(criterion.steps[i + 1]!.name);
    });
  });
});

describe('a published minimum or maximum, for any reading', () => {
  it('never turns from outside to inside as the reading moves to the bad side', () => {
    const numbers = publishedLimits
      .flatMap((entry) => entry.limits)
      .filter(
        (limit) => ['minimum', 'maximum'].includes(limit.criterion.kind) && limit.quantityKind === 'length',
      );
    fc.assert(
      fc.property(
        fc.constantFrom(...numbers),
        fc.integer({ min: 0, max: 20000 }),
        fc.integer({ min: 0, max: 20000 }),
        (limit, a, b) => {
          const [low, high] = [Math.min(a, b), Math.max(a, b)].map((n) =>
            atFaceValue(limit, { value: (n / 1000).toFixed(3), unit: 'mm' }),
          );
          const worse = limit.criterion.kind === 'minimum' ? [high, low] : [low, high];
          return !(worse[0] === 'outside' && worse[1] === 'inside');
        },
      ),
      { seed: 30, numRuns: 200 },
    );
  });
});
