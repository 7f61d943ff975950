import fc from 'fast-check';
import type { Limit } from '../limits/limit.js';
import { defaultThresholds } from '../limits/limit.js';
import type { Quantity } from '../quantities/quantity.js';
import type { KnownUncertainty, UncertaintyBudget } from '../uncertainty/uncertainty-budget.js';
import { uncertaintyOfMean } from '../uncertainty/uncertainty-of-mean.js';
import { classifyReading } from './classify-reading.js';
import type { ConformanceInput } from './conformance-probability.js';
import { conformanceProbability } from './conformance-probability.js';
import { globalRisk, upperAcceptanceLimit } from './global-risk.js';
import { guardBandZone } from './guard-band.js';
import type { JudgeNumberInput } from './judge-number.js';
import { judgeNumber } from './judge-number.js';
import type { JudgedVerdict, Verdict } from './verdict.js';

const seed = { seed: 20260504, numRuns: 200 };
const mm = (value: string): Quantity => ({ value, unit: 'mm' });

/** Radial play of a shaft: wear limit 0.20 mm, advisory above 0.10 mm. */
const wearLimit: Limit = {
  id: 'shaft-radial-play-wear',
  characteristic: 'shaft-radial-play',
  quantityKind: 'length',
  criterion: { kind: 'maximum', bound: { comparator: 'atMost', value: mm('0.20') } },
  advisory: { kind: 'maximum', bound: { comparator: 'atMost', value: mm('0.10') } },
  severity: 'major',
  jurisdiction: null,
  applicability: {},
  conditions: {},
  exclusions: [],
  correction: null,
  edition: { validFrom: null, validTo: null, source: 'judgement', citation: 'no source' },
  origin: 'judgement',
  judging: 'allowed',
  thresholds: defaultThresholds,
  asWritten: 're-bush or replace above 0.20 mm',
  note: null,
};

const shaftBudget = (readings: readonly Quantity[]): UncertaintyBudget =>
  uncertaintyOfMean({
    readings,
    quantityKind: 'length',
    instrument: {
      errorModel: { kind: 'maximumPermissibleError', limit: { value: '15', unit: 'um' } },
      resolution: mm('0.01'),
    },
    setUp: { standardUncertainty: mm('0.015'), degreesOfFreedom: 'infinite' },
    priorRepeatability: { standardUncertainty: mm('0.020'), degreesOfFreedom: 'infinite' },
  });

const input = (values: readonly string[], changes: Partial<JudgeNumberInput> = {}): JudgeNumberInput => {
  const readings = values.map(mm);
  return {
    limit: wearLimit,
    quantityKind: 'length',
    readings,
    uncertainty: shaftBudget(readings),
    context: {},
    possible: { lower: mm('0') },
    ...changes,
  };
};

const judged = (verdict: Verdict): JudgedVerdict => {
  if (verdict.kind !== 'judged') throw new Error(JSON.stringify(verdict));
  return verdict;
};

const plain = (changes: Partial<ConformanceInput>): ConformanceInput => ({
  value: 0,
  standardUncertainty: 1,
  degreesOfFreedom: 'infinite',
  permitted: { lower: null, upper: 1 },
  possible: { lower: null, upper: null },
  prior: null,
  ...changes,
});

const inside = (changes: Partial<ConformanceInput>): number => {
  const result = conformanceProbability(plain(changes));
  if (result.kind !== 'probability') throw new Error(result.kind);
  return result.inside;
};

describe('conformance probability', () => {
  it('by Student\u2019s t has heavier tails: by hand, with 1 degree of freedom P(T <= 1) is 0.75, normal 0.8413', () => {
    expect(inside({ degreesOfFreedom: 1 })).toBeCloseTo(0.75, 12);
    expect(inside({})).toBeCloseTo(0.841344746, 9);
  });

  it('cut off at zero: by hand, a clearance read as 0 with u = 1 lies below 1 with 0.3413 / 0.5', () => {
    expect(inside({ possible: { lower: 0, upper: null } })).toBeCloseTo(0.341344746 / 0.5, 8);
  });

  it('with a normal prior: by hand, N(0, 1) and a reading of 2 with u = 1 give N(1, 1/2), so half lies below 1', () => {
    const prior = { mean: 0, standardDeviation: 1 };
    expect(inside({ value: 2, prior })).toBeCloseTo(0.5, 12);
  });

  it('with a normal prior and Student\u2019s t agrees with the closed form as the degrees of freedom grow', () => {
    const prior = { mean: 0.4, standardDeviation: 0.5 };
    const exact = inside({ value: 1.2, prior });
    expect(inside({ value: 1.2, prior, degreesOfFreedom: 1e7 })).toBeCloseTo(exact, 6);
    expect(Math.abs(inside({ value: 1.2, prior, degreesOfFreedom: 3 }) - exact)).toBeGreaterThan(1e-3);
  });

  it('with a prior that says nothing is the one without', () => {
    const prior = { mean: 0, standardDeviation: 1e4 };
    expect(inside({ prior, degreesOfFreedom: 4 })).toBeCloseTo(inside({ degreesOfFreedom: 4 }), 6);
    expect(inside({ prior })).toBeCloseTo(inside({}), 6);
  });

  it('keeps the digits of a small probability in the far tail', () => {
    // Q(8) = 6.22096057427178e-16
    expect(inside({ value: 9, permitted: { lower: null, upper: 1 } }) / 6.22096057427178e-16).toBeCloseTo(
      1,
      9,
    );
    expect(inside({ value: -9, permitted: { lower: -1, upper: null } }) / 6.22096057427178e-16).toBeCloseTo(
      1,
      9,
    );
  });

  it('calls a reading far beyond a physical bound contradictory instead of rescaling next to nothing', () => {
    expect(conformanceProbability(plain({ value: -4, possible: { lower: 0, upper: null } })).kind).toBe(
      'contradictsPhysicalBound',
    );
    expect(conformanceProbability(plain({ value: -2, possible: { lower: 0, upper: null } })).kind).toBe(
      'probability',
    );
  });

  it('falls as the reading moves away from the limit, and is never outside 0 to 1', () => {
    const finite = fc.double({ min: -3, max: 6, noNaN: true });
    const degrees = fc.oneof(fc.constant('infinite' as const), fc.integer({ min: 1, max: 60 }));
    fc.assert(
      fc.property(finite, finite, degrees, fc.boolean(), (a, b, degreesOfFreedom, isBounded) => {
        const possible = { lower: isBounded ? -3 : null, upper: null };
        const [near, far] = [Math.min(a, b), Math.max(a, b)].map((value) =>
          inside({ value, degreesOfFreedom, possible }),
        );
        expect(near).toBeGreaterThanOrEqual(far! - 1e-12);
        expect(far).toBeGreaterThanOrEqual(0);
        expect(near).toBeLessThanOrEqual(1);
      }),
      seed,
    );
  });

  it('of what is permitted and of what is not sum to one, also when cut off', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 4, noNaN: true }),
        fc.integer({ min: 1, max: 30 }),
        (value, degreesOfFreedom) => {
          const possible = { lower: 0, upper: 5 };
          const below = inside({ value, degreesOfFreedom, possible, permitted: { lower: null, upper: 1 } });
          const above = inside({ value, degreesOfFreedom, possible, permitted: { lower: 1, upper: null } });
          expect(below + above).toBeCloseTo(1, 9);
        },
      ),
      seed,
    );
  });

  it('refuses an uncertainty of zero, exchanged ends and what is not finite', () => {
    for (const changes of [
      { standardUncertainty: 0 },
      { standardUncertainty: Number.NaN },
      { value: Infinity },
      { degreesOfFreedom: 0 },
      { permitted: { lower: 2, upper: 1 } },
    ]) {
      expect(() => conformanceProbability(plain(changes))).toThrow(RangeError);
    }
  });
});

describe('verdict of a shaft-play reading against the wear limit of 0.20 mm', () => {
  it('is inside for 0.12 mm: by hand z = 0.08 / 0.0266 = 3.0, probability 0.9987', () => {
    const verdict = judged(judgeNumber(input(['0.12'])));
    expect(verdict.outcome).toBe('inside');
    expect(verdict.probabilityInside).toBeCloseTo(0.9987, 4);
    expect(verdict.furtherReadings).toEqual({ kind: 'none' });
    expect(verdict.value).toEqual(mm('0.12'));
    expect(verdict.bounds).toEqual({ lower: null, upper: { value: '0.2', unit: 'mm', isInclusive: true } });
  });

  it('is outside for 0.25 mm and undecided for 0.18 and 0.22 mm', () => {
    expect(['0.25', '0.18', '0.22'].map((value) => judged(judgeNumber(input([value]))).outcome)).toEqual([
      'outside',
      'undecided',
      'undecided',
    ]);
  });

  it('carries the advisory outcome beside its own: 0.15 mm is inside the wear limit and past the advisory one', () => {
    const verdict = judged(judgeNumber(input(['0.15'])));
    expect([verdict.outcome, verdict.advisory]).toEqual(['inside', 'outside']);
  });

  it('says how many further readings would settle it: by hand for 0.165 mm, u must fall to 0.035 / 1.645 = 0.02128', () => {
    // fixed^2 = 8.66^2 + 2.887^2 + 15^2 = 308.33 um^2; 400 / n <= 452.7 - 308.33 = 144.4, so n = 3: two more
    const verdict = judged(judgeNumber(input(['0.165'])));
    expect(verdict.outcome).toBe('undecided');
    expect(verdict.furtherReadings).toEqual({ kind: 'needed', count: 2 });
    expect(judged(judgeNumber(input(['0.165', '0.165', '0.165']))).outcome).toBe('inside');
    expect(judged(judgeNumber(input(['0.165', '0.165']))).outcome).toBe('undecided');
  });

  it('says that no number would where the doubt that does not average is too large by itself', () => {
    // without repeatability u = 17.56 um: within 1.645 x 17.56 = 28.9 um of the limit nothing helps
    expect(judged(judgeNumber(input(['0.175']))).furtherReadings).toEqual({
      kind: 'noNumberSettles',
      why: 'doubtThatDoesNotAverage',
    });
    // at 30 um from the limit u must fall to 18.24 um: 400 / n <= 332.65 - 308.33, so n = 17: 16 more
    expect(judged(judgeNumber(input(['0.170']))).furtherReadings).toEqual({ kind: 'needed', count: 16 });
  });

  it('says so where nothing averages and where the count would be absurd', () => {
    const budget = shaftBudget([mm('0.19')]) as KnownUncertainty;
    const rigid: UncertaintyBudget = { ...budget, repeatability: null };
    expect(judged(judgeNumber(input(['0.19'], { uncertainty: rigid }))).furtherReadings).toMatchObject({
      why: 'nothingAverages',
    });
    // at 29 um from the limit 400 / n <= 310.85 - 308.33, so n = 159
    const edge = judged(judgeNumber(input(['0.171'])));
    expect(edge.furtherReadings).toEqual({ kind: 'noNumberSettles', why: 'moreThanPractical' });
  });

  it('does not depend on the order of the readings', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 6 }), (microns) => {
        const values = microns.map((value) => (value / 1000).toFixed(3));
        expect(judgeNumber(input([...values].reverse()))).toEqual(judgeNumber(input(values)));
      }),
      seed,
    );
  });

  it('does not change with the unit the readings and the limit are written in', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 16_000 }),
        fc.constantFrom('0.2', '0.1'),
        (tenThousandths, edge) => {
          const inch: Quantity = { value: (tenThousandths / 1e6).toFixed(6), unit: '[in_i]' };
          const metric: Quantity = { value: ((tenThousandths * 254) / 1e7).toFixed(7), unit: 'mm' };
          const limit = (value: Quantity): Limit => ({
            ...wearLimit,
            advisory: null,
            criterion: { kind: 'maximum', bound: { comparator: 'atMost', value } },
          });
          const micron: Quantity = { value: String(Number(edge) * 1000), unit: 'um' };
          const verdicts = [inch, metric].flatMap((reading) =>
            [mm(edge), micron].map((value) => {
              const given = input(['0'], {
                limit: limit(value),
                readings: [reading],
                uncertainty: shaftBudget([reading]),
              });
              return judgeNumber(given);
            }),
          );
          for (const verdict of verdicts) expect(verdict).toEqual(verdicts[0]);
        },
      ),
      seed,
    );
  });

  it('gets no better as the play grows', () => {
    const rank = { inside: 0, undecided: 1, outside: 2 };
    const outcomes = Array.from(
      { length: 40 },
      (_, index) => judged(judgeNumber(input([(index / 100).toFixed(2)]))).outcome,
    );
    for (let index = 1; index < outcomes.length; index++) {
      expect(rank[outcomes[index]!]).toBeGreaterThanOrEqual(rank[outcomes[index - 1]!]);
    }
    expect(new Set(outcomes)).toEqual(new Set(['inside', 'undecided', 'outside']));
  });
});

describe('a reading without known uncertainty', () => {
  const unknown: UncertaintyBudget = { kind: 'unknown', missing: ['instrument'] };
  const at = (value: string, changes: Partial<Limit> = {}): Verdict =>
    judgeNumber(input([value], { uncertainty: unknown, limit: { ...wearLimit, ...changes } }));

  it('gets a face-value verdict marked so, compared exactly, with the edge as the comparator says', () => {
    expect(at('0.20')).toMatchObject({
      kind: 'faceValue',
      outcome: 'inside',
      missing: ['instrument'],
      advisory: 'outside',
    });
    expect(at('0.2000001')).toMatchObject({ kind: 'faceValue', outcome: 'outside' });
    const strict = {
      criterion: { kind: 'maximum', bound: { comparator: 'lessThan', value: mm('0.20') } },
    } as const;
    expect(at('0.20', strict)).toMatchObject({ outcome: 'outside' });
  });

  it('is not judged exactly on an edge whose source can be read both ways', () => {
    const unclear = {
      criterion: { kind: 'maximum', bound: { comparator: 'unclear', value: mm('0.20') } },
    } as const;
    expect(at('0.20', unclear)).toMatchObject({ kind: 'notJudged', reason: 'sourceUnclear' });
    expect(at('0.19', unclear)).toMatchObject({ kind: 'faceValue', outcome: 'inside' });
  });

  it('keeps 2/32 in apart from 1.6 mm: it meets the one limit and not the other', () => {
    const tread = (value: Quantity): Limit => ({
      ...wearLimit,
      advisory: null,
      criterion: { kind: 'minimum', bound: { comparator: 'atLeast', value } },
    });
    const of = (limit: Limit): Verdict =>
      judgeNumber(
        input(['0'], { readings: [{ value: '0.0625', unit: '[in_i]' }], uncertainty: unknown, limit }),
      );
    expect(of(tread({ value: '0.0625', unit: '[in_i]' }))).toMatchObject({ outcome: 'inside' });
    expect(of(tread(mm('1.6')))).toMatchObject({ outcome: 'outside' });
  });
});

describe('what is not judged', () => {
  const reason = (changes: Partial<JudgeNumberInput>, limit: Partial<Limit> = {}): unknown => {
    const verdict = judgeNumber(input(['0.12'], { ...changes, limit: { ...wearLimit, ...limit } }));
    return verdict.kind === 'notJudged' ? [verdict.reason, ...verdict.details] : verdict.kind;
  };

  it('names the first thing in the way', () => {
    expect(reason({ standing: { isValueToConfirm: true, openPrerequisites: ['linkage'] } })).toEqual([
      'valueToConfirm',
    ]);
    expect(reason({ standing: { openPrerequisites: ['linkage'] } })).toEqual([
      'prerequisitesOpen',
      'linkage',
    ]);
    expect(reason({}, { judging: 'notUntilConfirmed' })).toEqual(['limitNotConfirmed']);
    const edition = { ...wearLimit.edition, validTo: '2016-03-24' };
    expect(reason({ standing: { asOf: '2020-01-01' } }, { edition })).toEqual([
      'limitNotInForce',
      '2020-01-01',
    ]);
    expect(reason({}, { quantityKind: 'gaugePressure' })).toEqual(['wrongKindOfQuantity', 'length']);
    const rule = { kind: 'oneOf', values: ['rear'] } as const;
    expect(reason({ context: { axle: 'front' } }, { applicability: { axle: rule } })).toEqual([
      'limitNotApplicable',
      'axle',
    ]);
    const exclusions = [
      { id: 'lower-wheel-locked', key: 'lowerWheel', rule: { kind: 'oneOf', values: ['locked'] } },
    ] as const;
    expect(reason({ context: { lowerWheel: 'locked' } }, { exclusions })).toEqual([
      'excluded',
      'lower-wheel-locked',
    ]);
    expect(
      reason({ context: { engine: 'cold' } }, { conditions: { engine: { kind: 'oneOf', values: ['hot'] } } }),
    ).toEqual(['wrongConditions', 'engine']);
    expect(reason({ readings: [mm('-0.2')] })).toEqual(['contradictsPhysicalBound']);
  });

  it('judges on when a condition was not stated, and says so', () => {
    const limit: Limit = { ...wearLimit, conditions: { engine: { kind: 'oneOf', values: ['hot'] } } };
    expect(judgeNumber(input(['0.12'], { limit }))).toMatchObject({
      kind: 'judged',
      unstatedConditions: ['engine'],
    });
  });

  it('keeps gauge and absolute pressure apart even though the units agree', () => {
    const limit: Limit = {
      ...wearLimit,
      quantityKind: 'absolutePressure',
      criterion: { kind: 'maximum', bound: { comparator: 'atMost', value: { value: '1', unit: 'bar' } } },
    };
    const readings: readonly Quantity[] = [{ value: '0.9', unit: 'bar' }];
    const verdict = judgeNumber(input(['0'], { limit, readings, quantityKind: 'gaugePressure' }));
    expect(verdict).toMatchObject({ kind: 'notJudged', reason: 'wrongKindOfQuantity' });
  });
});

describe('guard bands', () => {
  it('mirror for a lower limit, and a band of zero is simple acceptance', () => {
    expect([1.1, 1.05, 0.95, 0.9].map((value) => guardBandZone(value, 1, 0.1, 'lower'))).toEqual([
      'pass',
      'conditionalPass',
      'conditionalFail',
      'fail',
    ]);
    expect([0.99, 1, 1.01].map((value) => guardBandZone(value, 1, 0, 'upper'))).toEqual([
      'pass',
      'pass',
      'fail',
    ]);
    expect(() => guardBandZone(1, 1, -0.1, 'upper')).toThrow(RangeError);
  });
});

describe('global risk', () => {
  it('splits the population: bad accepted and good rejected are what a better gauge makes small', () => {
    const prior = { kind: 'normal', mean: 0, standardDeviation: 1 } as const;
    const limits = { lower: -1, upper: 1 };
    const coarse = globalRisk(prior, 0.5, limits, limits);
    const fine = globalRisk(prior, 0.01, limits, limits);
    expect(coarse.nonconforming).toBeCloseTo(0.317310508, 8);
    expect(fine.consumerRisk).toBeLessThan(coarse.consumerRisk / 10);
    expect(fine.producerRisk).toBeLessThan(coarse.producerRisk / 10);
  });

  it('of a symmetric population at its middle: by hand, P(bad and accepted) = atan(u / s) / (2 pi)', () => {
    // X ~ N(0, 1) true, Y = X + N(0, u): P(X > 0, Y < 0) = angle between the two half planes / 2 pi = atan(u) / (2 pi)
    const half = { lower: null, upper: 0 };
    const risk = globalRisk({ kind: 'normal', mean: 0, standardDeviation: 1 }, 0.5, half, half);
    expect(risk.consumerRisk).toBeCloseTo(Math.atan(0.5) / (2 * Math.PI), 9);
    expect(risk.producerRisk).toBeCloseTo(Math.atan(0.5) / (2 * Math.PI), 9);
  });

  it('cannot exceed the share of bad items, and says so', () => {
    const prior = { kind: 'gamma', shape: 4, rate: 4 } as const;
    expect(upperAcceptanceLimit(prior, 0.25, 2, 0.2)).toMatchObject({ kind: 'notReachable' });
    expect(() => upperAcceptanceLimit(prior, 0.25, 2, 0)).toThrow(RangeError);
  });
});

describe('classes', () => {
  const steps = [
    { name: 'full', from: '12.65' },
    { name: 'three-quarters', from: '12.45' },
    { name: 'half', from: '12.24' },
    { name: 'quarter', from: '12.06' },
    { name: 'flat', from: null },
  ];

  it('of a battery at 12.60 V leave two open, because a voltmeter is 0.093 V wide there', () => {
    const criterion = { kind: 'classes', unit: 'V', steps } as const;
    expect(classifyReading(criterion, { value: '12.60', unit: 'V' }, 0.093, 'voltage')).toEqual({
      kind: 'class',
      name: 'three-quarters',
      possible: ['full', 'three-quarters'],
    });
    expect(classifyReading(criterion, { value: '12450', unit: 'mV' }, 0, 'voltage')).toMatchObject({
      name: 'three-quarters',
    });
    expect(classifyReading(criterion, { value: '0', unit: 'V' }, 0, 'voltage')).toMatchObject({
      name: 'flat',
    });
    expect(() => classifyReading(criterion, { value: '12', unit: 'V' }, -1, 'voltage')).toThrow(RangeError);
  });
});
