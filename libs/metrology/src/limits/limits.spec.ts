import type { ApplicabilityRule, LimitContext } from './applicability.js';
import type { Limit } from './limit.js';
import { defaultThresholds } from './limit.js';
import type { LimitCriterion } from './limit-criterion.js';
import { matchesRule } from './matches-rule.js';
import { resolveBounds } from './resolve-bounds.js';
import { selectApplicableLimits } from './select-applicable-limits.js';
import { parseLimit, validateLimit } from './validate-limit.js';

const tread: Limit = {
  id: 'tread-example',
  characteristic: 'tread-depth',
  quantityKind: 'length',
  criterion: { kind: 'minimum', bound: { comparator: 'atLeast', value: { value: '1.6', unit: 'mm' } } },
  advisory: null,
  severity: 'major',
  jurisdiction: 'northland',
  applicability: {},
  conditions: {},
  exclusions: [],
  correction: null,
  edition: { validFrom: '2001-01-01', validTo: null, source: 'invented order', citation: 'section 1' },
  origin: 'published',
  judging: 'allowed',
  thresholds: defaultThresholds,
  asWritten: '1.6 mm',
  note: null,
};

const ids = (limits: readonly Limit[]): readonly string[] => limits.map(({ id }) => id);

describe('rules of applicability', () => {
  const heavy: ApplicabilityRule = {
    kind: 'range',
    quantityKind: 'mass',
    over: { value: '10000', unit: '[lb_av]' },
  };

  it('compare quantities exactly across units: 10,000 lb is 4535.9237 kg and not over itself', () => {
    expect(matchesRule(heavy, { value: '4535.9237', unit: 'kg' })).toBe('notMet');
    expect(matchesRule(heavy, { value: '4535.9238', unit: 'kg' })).toBe('met');
    expect(matchesRule({ ...heavy, upTo: { value: '5', unit: 't' } }, { value: '5.1', unit: 't' })).toBe(
      'notMet',
    );
  });

  it('take a date from its first day to the day before the last', () => {
    const rule: ApplicabilityRule = { kind: 'dates', from: '1986-08-01', before: '2002-07-01' };
    expect(
      ['1986-07-31', '1986-08-01', '2002-06-30', '2002-07-01'].map((day) => matchesRule(rule, day)),
    ).toEqual(['notMet', 'met', 'met', 'notMet']);
  });

  it('need one text of several for oneOf and none for noneOf, and cannot tell from a value of another sort', () => {
    const front: ApplicabilityRule = { kind: 'oneOf', values: ['front'] };
    expect(matchesRule(front, ['front', 'steered'])).toBe('met');
    expect(matchesRule({ kind: 'noneOf', values: ['trailer'] }, 'van')).toBe('met');
    expect(matchesRule({ kind: 'noneOf', values: ['trailer'] }, ['van', 'trailer'])).toBe('notMet');
    expect(matchesRule(front, { value: '1', unit: 'kg' })).toBe('cannotTell');
    expect(matchesRule(heavy, 'heavy')).toBe('cannotTell');
    expect(matchesRule(heavy, { value: '5', unit: 'mm' })).toBe('cannotTell');
    expect(matchesRule({ kind: 'dates', from: '1986-08-01' }, 'long ago')).toBe('cannotTell');
  });
});

describe('selecting limits', () => {
  const select = (
    limits: readonly Limit[],
    context: LimitContext = { jurisdiction: 'northland' },
    asOf = '2026-05-04',
  ) => selectApplicableLimits(limits, context, asOf);
  const shop: Limit = { ...tread, id: 'tread-shop', origin: 'shop', jurisdiction: null };
  const maker: Limit = { ...tread, id: 'tread-maker', origin: 'maker', jurisdiction: null };

  it('takes maker before shop before published, and keeps what was passed over', () => {
    const all = select([tread, shop, maker]);
    expect(ids(all.applicable)).toEqual(['tread-maker']);
    expect(all.superseded.map(({ limit, by }) => [limit.id, by])).toEqual([
      ['tread-example', 'tread-maker'],
      ['tread-shop', 'tread-maker'],
    ]);
    expect(ids(select([tread, shop]).applicable)).toEqual(['tread-shop']);
  });

  it('does not let a limit that may not judge yet stand before one that may', () => {
    const unread: Limit = { ...maker, judging: 'notUntilConfirmed' };
    expect(ids(select([tread, unread]).applicable)).toEqual(['tread-example', 'tread-maker']);
  });

  it('never merges jurisdictions: two places side by side, a foreign one left out', () => {
    const southland: Limit = { ...tread, id: 'tread-south', jurisdiction: 'southland' };
    expect(ids(select([tread, southland]).applicable)).toEqual(['tread-example']);
    expect(select([tread, southland]).notApplicable).toMatchObject([{ reason: 'otherJurisdiction' }]);
    expect(ids(select([tread, southland], { jurisdiction: ['northland', 'southland'] }).applicable)).toEqual([
      'tread-example',
      'tread-south',
    ]);
    const southernShop: Limit = { ...southland, id: 'shop-south', origin: 'shop' };
    expect(
      ids(select([tread, southernShop], { jurisdiction: ['northland', 'southland'] }).applicable),
    ).toEqual(['tread-example', 'shop-south']);
  });

  it('keeps an advisory and a wear limit of one characteristic apart', () => {
    const advisory: Limit = { ...shop, id: 'tread-advisory', severity: 'advisory' };
    expect(ids(select([tread, advisory]).applicable)).toEqual(['tread-example', 'tread-advisory']);
  });

  it('takes the edition of the day: from its first day, not on its last', () => {
    const old: Limit = {
      ...tread,
      id: 'old',
      edition: { ...tread.edition, validFrom: null, validTo: '2016-03-24' },
    };
    const next: Limit = { ...tread, id: 'next', edition: { ...tread.edition, validFrom: '2016-03-24' } };
    const on = (day: string): readonly string[] =>
      ids(select([old, next], { jurisdiction: 'northland' }, day).applicable);
    expect([on('2016-03-23'), on('2016-03-24')]).toEqual([['old'], ['next']]);
    expect(select([next], { jurisdiction: 'northland' }, '2016-03-23').notApplicable).toMatchObject([
      { reason: 'notYetInForce' },
    ]);
  });

  it('leaves a limit undetermined where the context is silent, and never applies it', () => {
    const front: Limit = { ...tread, applicability: { axle: { kind: 'oneOf', values: ['front'] } } };
    expect(select([front]).undetermined).toMatchObject([{ missing: ['axle'] }]);
    expect(select([front], {}).undetermined).toMatchObject([{ missing: ['jurisdiction', 'axle'] }]);
    expect(select([front], { jurisdiction: 'northland', axle: 'rear' }).notApplicable).toMatchObject([
      { reason: 'ruleNotMet', keys: ['axle'] },
    ]);
  });

  it('refuses a day that is none', () => {
    expect(() => select([], {}, '4 May 2026')).toThrow(RangeError);
  });
});

describe('what a limit permits', () => {
  const lash = (angle: string, rows: readonly [string, string, string, string][]): LimitCriterion => ({
    kind: 'tabulated',
    by: 'wheelDiameter',
    byKind: 'length',
    side: 'maximum',
    comparator: 'atMost',
    rows: rows.map(([millimetres, inches, permitted, permittedInches], index) => ({
      match: index === 0 ? 'upTo' : 'equals',
      key: { value: millimetres, unit: 'mm', alsoPrinted: [{ value: inches, unit: '[in_i]' }] },
      value: { value: permitted, unit: 'mm', alsoPrinted: [{ value: permittedInches, unit: '[in_i]' }] },
    })),
    outside: { kind: 'angleAtRim', angle: { value: angle, unit: 'deg' } },
  });
  // 49 CFR 393.209(b)(1), first, second and last row.
  const manual = lash('14', [
    ['406', '16', '51', '2'],
    ['457', '18', '57', '2.25'],
    ['559', '22', '70', '2.75'],
  ]);
  const power = lash('30', [
    ['406', '16', '108', '4.25'],
    ['457', '18', '121', '4.75'],
    ['559', '22', '146', '5.75'],
  ]);
  const upper = (criterion: LimitCriterion, diameter: string, unit: 'mm' | '[in_i]' = 'mm'): number => {
    const bounds = resolveBounds(
      criterion,
      'length',
      unit,
      { wheelDiameter: { value: diameter, unit } },
      null,
    );
    if (bounds.kind !== 'bounds' || bounds.upper === null) throw new Error(bounds.kind);
    return Number(bounds.upper.value);
  };

  it('by table and angle rule: 470 mm gives 57.4 and 123.0 mm, 600 mm gives 73.3 and 157.1 mm (pi/180 x angle x diameter/2)', () => {
    expect([upper(manual, '470'), upper(power, '470')].map((value) => value.toFixed(1))).toEqual([
      '57.4',
      '123.0',
    ]);
    expect([upper(manual, '600'), upper(power, '600')].map((value) => value.toFixed(1))).toEqual([
      '73.3',
      '157.1',
    ]);
  });

  it('takes the first row for every smaller wheel: 380 mm has 51 mm, not 14 degrees (46.4 mm)', () => {
    expect(upper(manual, '380')).toBe(51);
  });

  it('compares in the unit of the reading: an 18 in wheel has 57 mm or 2 1/4 in (57.15 mm)', () => {
    expect(upper(manual, '457')).toBe(57);
    expect(upper(manual, '457.2')).toBe(57);
    expect(upper(manual, '18', '[in_i]')).toBe(57.15);
  });

  it('has nothing for an unlisted input where the source has no rule, and the nearest row where it clamps', () => {
    const tabulated = manual as Extract<LimitCriterion, { kind: 'tabulated' }>;
    const context: LimitContext = { wheelDiameter: { value: '500', unit: 'mm' } };
    const bounds = (kind: 'none' | 'clamp'): unknown =>
      resolveBounds({ ...tabulated, outside: { kind } }, 'length', 'mm', context, null);
    expect(bounds('none')).toMatchObject({ kind: 'notResolved', reason: 'notInTable' });
    // 500 is 43 from 457 and 59 from 559.
    expect(bounds('clamp')).toMatchObject({ upper: { value: '57' } });
    expect(resolveBounds(manual, 'length', 'mm', {}, null)).toMatchObject({
      reason: 'contextMissing',
      details: ['wheelDiameter'],
    });
  });

  it('by the maker\u2019s value: toe of at most 1.5 times either way, and nothing for a maker\u2019s value of zero', () => {
    const toe: LimitCriterion = {
      kind: 'formula',
      form: 'factorTimesMakerValue',
      factor: '1.5',
      makerValueKey: 'makerToe',
      isAbsolute: true,
      side: 'maximum',
      comparator: 'atMost',
    };
    const at = (value: string): unknown =>
      resolveBounds(toe, 'length', 'mm', { makerToe: { value, unit: 'mm' } }, null);
    expect(at('-2')).toMatchObject({ lower: { value: '-3' }, upper: { value: '3' } });
    expect(at('0')).toMatchObject({ reason: 'makerValueZero' });
    const pressure: LimitCriterion = { ...toe, isAbsolute: false, makerValueKey: 'makerPressure' };
    const inPsi = resolveBounds(
      pressure,
      'gaugePressure',
      null,
      { makerPressure: { value: '30', unit: '[psi]' } },
      null,
    );
    // 45 psi, a value with more digits than may be entered
    expect(inPsi.kind === 'bounds' && Number(inPsi.upper?.value)).toBeCloseTo(45 * 6.894757293168361, 9);
    expect(resolveBounds(toe, 'length', 'mm', {}, null)).toMatchObject({
      reason: 'contextMissing',
      details: ['makerToe'],
    });
  });

  it('with altitude: 17 inHg less 1 inHg per 1000 ft is 12 inHg at 5000 ft', () => {
    const criterion: LimitCriterion = {
      kind: 'minimum',
      bound: { comparator: 'atLeast', value: { value: '17', unit: "[in_i'Hg]" } },
    };
    const correction = {
      by: 'altitude',
      byKind: 'length',
      per: { value: '1000', unit: '[ft_i]' },
      change: { value: '-1', unit: "[in_i'Hg]" },
    } as const;
    const bounds = resolveBounds(
      criterion,
      'vacuum',
      null,
      { altitude: { value: '1524', unit: 'm' } },
      correction,
    );
    // 12 x 3.386388640341
    expect(bounds).toMatchObject({ lower: { value: '40.636663684092' }, upper: null });
    expect(resolveBounds(criterion, 'vacuum', null, {}, correction)).toMatchObject({
      reason: 'contextMissing',
    });
  });

  it('turns "at least 20 miles per gallon" into an upper limit of consumption', () => {
    const criterion: LimitCriterion = {
      kind: 'minimum',
      bound: { comparator: 'atLeast', value: { value: '20', unit: 'km/L' } },
    };
    expect(resolveBounds(criterion, 'fuelConsumption', null, {}, null)).toMatchObject({
      lower: null,
      upper: { value: '5' },
    });
  });
});

describe('checking a limit from outside', () => {
  const codes = (changes: object): readonly string[] =>
    validateLimit({ ...tread, ...changes }).map(({ pointer, code }) => `${pointer} ${code}`);

  it('finds nothing in a good one', () => {
    expect(validateLimit(tread)).toEqual([]);
    expect(validateLimit(JSON.parse(JSON.stringify(tread)))).toEqual([]);
    expect(parseLimit(tread)).toEqual({ kind: 'limit', limit: tread });
  });

  it('finds what is missing, unknown or no object at all', () => {
    const { asWritten, ...rest } = tread;
    expect(asWritten).toBe('1.6 mm');
    expect(validateLimit(rest)).toMatchObject([{ pointer: '/asWritten', code: 'missing' }]);
    expect(codes({ 'a/b': 1 })).toEqual(['/a~1b unknownMember']);
    for (const data of [null, undefined, 'limit', 7, []])
      expect(validateLimit(data)).toMatchObject([{ code: 'wrongType' }]);
  });

  it('finds figures in units of another kind, and comparators against the side they limit', () => {
    expect(
      codes({
        criterion: { kind: 'minimum', bound: { comparator: 'atMost', value: { value: '1.6', unit: 'kPa' } } },
      }),
    ).toEqual([
      '/criterion/bound/comparator comparatorAgainstSide',
      '/criterion/bound/value wrongKindOfUnit',
    ]);
    expect(
      codes({
        criterion: { kind: 'minimum', bound: { comparator: 'unclear', value: { value: '1,6', unit: 'mm' } } },
      }),
    ).toEqual(['/criterion/bound/value notAQuantity']);
  });

  it('finds edges that are exchanged, in bands, pairs, ranges, dates and editions', () => {
    const edge = (comparator: string, value: string): object => ({
      comparator,
      value: { value, unit: 'mm' },
    });
    expect(
      codes({ criterion: { kind: 'band', lower: edge('atLeast', '2'), upper: edge('atMost', '1') } }),
    ).toEqual(['/criterion edgesExchanged']);
    const gap = (value: string): object => ({ value, unit: 'mm' });
    expect(codes({ criterion: { kind: 'pair', lower: gap('0.10'), upper: gap('0.05') } })).toEqual([
      '/criterion edgesExchanged',
    ]);
    expect(
      codes({
        applicability: {
          grossMass: {
            kind: 'range',
            quantityKind: 'mass',
            over: { value: '5', unit: 't' },
            upTo: { value: '3500', unit: 'kg' },
          },
          firstUsedOn: { kind: 'dates', from: '2002-07-01', before: '1986-08-01' },
        },
      }),
    ).toEqual(['/applicability/grossMass edgesExchanged', '/applicability/firstUsedOn edgesExchanged']);
    expect(codes({ edition: { ...tread.edition, validTo: '2000-12-31' } })).toEqual([
      '/edition editionEndsBeforeStart',
    ]);
  });

  it('finds rules that restrict nothing, dates that do not exist and values not on a list', () => {
    expect(
      codes({
        conditions: { reservoir: { kind: 'range', quantityKind: 'gaugePressure' }, day: { kind: 'dates' } },
      }),
    ).toEqual(['/conditions/reservoir noRestriction', '/conditions/day noRestriction']);
    expect(codes({ edition: { ...tread.edition, validFrom: '2001-02-30' } })).toEqual([
      '/edition/validFrom notADate',
    ]);
    expect(codes({ origin: 'hearsay', severity: 'bad', judging: 'maybe' })).toHaveLength(3);
    expect(codes({ applicability: { axle: { kind: 'some' } } })).toEqual([
      '/applicability/axle/kind notOneOf',
    ]);
  });

  it('wants a kind for numbers and none for grades and yes/no', () => {
    expect(codes({ quantityKind: null })).toContain('/quantityKind kindNeeded');
    expect(codes({ criterion: { kind: 'yesNo', accepted: 'no' } })).toEqual(['/quantityKind kindNotWanted']);
    expect(codes({ quantityKind: null, criterion: { kind: 'yesNo', accepted: 'no' } })).toEqual([]);
    const rejected = [{ grade: 'excessive', severity: 'major' }];
    expect(codes({ quantityKind: null, criterion: { kind: 'grade', accepted: ['good'], rejected } })).toEqual(
      [],
    );
    expect(
      codes({ quantityKind: null, criterion: { kind: 'grade', accepted: ['excessive'], rejected } }),
    ).toEqual(['/criterion/rejected/0/grade namedTwice']);
  });

  it('wants an advisory criterion of the same shape and not wider', () => {
    const bound = (value: string): object => ({ comparator: 'atLeast', value: { value, unit: 'mm' } });
    expect(codes({ advisory: { kind: 'minimum', bound: bound('3') } })).toEqual([]);
    expect(codes({ advisory: { kind: 'minimum', bound: bound('1') } })).toEqual([
      '/advisory advisoryNotStricter',
    ]);
    expect(codes({ advisory: { kind: 'yesNo', accepted: 'yes' } })).toContain(
      '/advisory/kind advisoryOfAnotherShape',
    );
  });

  it('wants thresholds in order, a source, exclusions and corrections complete', () => {
    expect(codes({ thresholds: { inside: 0.05, outside: 0.95 } })).toEqual([
      '/thresholds thresholdsOutOfRange',
    ]);
    expect(codes({ thresholds: { inside: 1, outside: 0.05 } })).toEqual(['/thresholds thresholdsOutOfRange']);
    expect(codes({ edition: { ...tread.edition, citation: ' ' } })).toEqual(['/edition/citation empty']);
    expect(
      codes({ exclusions: [{ id: 'Low Effort', key: 'x', rule: { kind: 'oneOf', values: [] } }] }),
    ).toEqual(['/exclusions/0/id notAnId', '/exclusions/0/rule/values empty']);
    const correction = {
      by: 'altitude',
      byKind: 'length',
      per: { value: '1000', unit: '[ft_i]' },
      change: { value: '-1', unit: 'mm' },
    };
    expect(codes({ correction })).toEqual([]);
    expect(codes({ correction: { ...correction, change: { value: '-1', unit: 'kPa' } } })).toEqual([
      '/correction/change wrongKindOfUnit',
    ]);
  });

  it('knows tables, formulas, ratios and classes', () => {
    const value = { value: '2', unit: '[in_i]' };
    const table = {
      kind: 'tabulated',
      by: 'wheelDiameter',
      byKind: 'length',
      side: 'maximum',
      comparator: 'atMost',
      rows: [{ match: 'upTo', key: { value: '16', unit: '[in_i]' }, value }],
      outside: { kind: 'angleAtRim', angle: { value: '14', unit: 'deg' } },
    };
    expect(codes({ criterion: table })).toEqual([]);
    expect(codes({ criterion: { ...table, rows: [], outside: { kind: 'none', angle: 1 } } })).toEqual([
      '/criterion/rows empty',
      '/criterion/outside/angle unknownMember',
    ]);
    const formula = {
      kind: 'formula',
      form: 'factorTimesMakerValue',
      factor: '1.5',
      makerValueKey: 'toe',
      isAbsolute: true,
      side: 'maximum',
      comparator: 'atMost',
    };
    expect(codes({ criterion: formula })).toEqual([]);
    expect(codes({ criterion: { ...formula, side: 'minimum', comparator: 'atLeast', factor: 'x' } })).toEqual(
      ['/criterion/factor notADecimal', '/criterion/side comparatorAgainstSide'],
    );
    const ratio = {
      kind: 'ratioToBest',
      form: 'lowestOverReference',
      side: 'minimum',
      bound: { comparator: 'atLeast', value: { value: '70', unit: '%' } },
      floor: { value: '690', unit: 'kPa' },
    };
    expect(codes({ quantityKind: 'gaugePressure', criterion: ratio })).toEqual([]);
    expect(codes({ criterion: ratio })).toEqual(['/criterion/floor wrongKindOfUnit']);
    const steps = [
      { name: 'full', from: '12.6' },
      { name: 'half', from: '12.2' },
      { name: 'flat', from: null },
    ];
    expect(codes({ quantityKind: 'voltage', criterion: { kind: 'classes', unit: 'V', steps } })).toEqual([]);
    expect(
      codes({
        quantityKind: 'voltage',
        criterion: { kind: 'classes', unit: 'V', steps: [steps[1], steps[0], steps[2]] },
      }),
    ).toEqual(['/criterion/steps/1/from notDescending']);
  });
});
