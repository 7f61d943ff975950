import fc from 'fast-check';
import type { Limit } from '../limits/limit.js';
import { defaultThresholds } from '../limits/limit.js';
import type { LimitCriterion } from '../limits/limit-criterion.js';
import type { Quantity } from '../quantities/quantity.js';
import type { UncertaintyBudget } from '../uncertainty/uncertainty-budget.js';
import type { BladePair } from './grade-blade-pair.js';
import { gradeBladePair } from './grade-blade-pair.js';
import { judgeBladePair, judgeGrade, judgeYesNo } from './judge-by-rule.js';
import { judgeFunctionalCriterion } from './judge-functional-criterion.js';
import { judgeRatio } from './judge-ratio.js';
import type { Verdict } from './verdict.js';

const mm = (value: string): Quantity => ({ value, unit: 'mm' });
const window = { lower: mm('0.05'), upper: mm('0.10') };

const limitOf = (criterion: LimitCriterion, changes: Partial<Limit> = {}): Limit => ({
  id: 'example',
  characteristic: 'example',
  quantityKind: 'length',
  criterion,
  advisory: null,
  severity: 'minor',
  jurisdiction: null,
  applicability: {},
  conditions: {},
  exclusions: [],
  correction: null,
  edition: { validFrom: null, validTo: null, source: 'common practice', citation: 'no source' },
  origin: 'commonPractice',
  judging: 'allowed',
  thresholds: defaultThresholds,
  asWritten: 'example',
  note: null,
  ...changes,
});

const blades = (largest: string | null, smallest: string | null): BladePair => ({
  largestHolding: largest === null ? null : mm(largest),
  smallestChanged: smallest === null ? null : mm(smallest),
});

describe('a pair of blades against the window 0.05 to 0.10 mm', () => {
  it.each([
    ['0.05', '0.08', 'pass'],
    ['0.07', '0.10', 'pass'],
    ['0.05', '0.10', 'pass'],
    ['0.07', '0.07', 'contradictory'],
    ['0.10', '0.05', 'contradictory'],
    ['0.04', '0.05', 'tooSmall'],
    [null, '0.05', 'tooSmall'],
    ['0.10', '0.15', 'tooLarge'],
    ['0.12', null, 'tooLarge'],
    ['0.04', '0.07', 'undecided'],
    ['0.07', '0.15', 'undecided'],
    [null, '0.07', 'undecided'],
    ['0.07', null, 'undecided'],
    ['0.04', '0.15', 'undecided'],
  ] as const)('closed at %s, open at %s: %s', (largest, smallest, grade) => {
    expect(gradeBladePair(blades(largest, smallest), window)).toBe(grade);
  });

  it('tests the contradiction first: closed at 0.10 and open at 0.05 is neither too small nor too large', () => {
    expect(gradeBladePair(blades('0.10', '0.05'), window)).toBe('contradictory');
    expect(gradeBladePair(blades('0.03', '0.03'), window)).toBe('contradictory');
  });

  it('refuses no blade at all and a window turned round', () => {
    expect(() => gradeBladePair(blades(null, null), window)).toThrow(RangeError);
    expect(() => gradeBladePair(blades('0.05', '0.10'), { lower: mm('0.10'), upper: mm('0.05') })).toThrow(
      RangeError,
    );
  });

  it('grades a bracket around a true gap so that pass is never wrong and the clear fails lie on or outside the edges', () => {
    const set = [0.02, 0.03, 0.04, 0.05, 0.06, 0.07, 0.08, 0.09, 0.1, 0.12, 0.15, 0.2];
    fc.assert(
      fc.property(fc.double({ min: 0.021, max: 0.199, noNaN: true }), (gap) => {
        const holding = set.filter((blade) => blade <= gap).at(-1)!;
        const changed = set.find((blade) => blade > gap)!;
        const grade = gradeBladePair(blades(holding.toFixed(2), changed.toFixed(2)), window);
        if (grade === 'pass') expect(gap >= 0.05 && gap < 0.1).toBe(true);
        if (grade === 'tooSmall') expect(gap).toBeLessThan(0.05);
        if (grade === 'tooLarge') expect(gap).toBeGreaterThanOrEqual(0.1);
        expect(grade).not.toBe('contradictory');
      }),
      { seed: 20260504, numRuns: 300 },
    );
  });

  it('becomes a verdict by simple acceptance; the share of the bracket in the window is information only', () => {
    const limit = limitOf({ kind: 'pair', ...window });
    const of = (largest: string, smallest: string): unknown =>
      judgeBladePair(limit, blades(largest, smallest), {}).verdict;
    expect(of('0.05', '0.08')).toMatchObject({ kind: 'judged', outcome: 'inside', probabilityInside: 1 });
    // bracket 0.07 to 0.15: 0.03 of 0.08 lies in the window
    const wide = judgeBladePair(limit, blades('0.07', '0.15'), {});
    expect(wide).toMatchObject({
      grade: 'undecided',
      verdict: { outcome: 'undecided', furtherReadings: { kind: 'needed' } },
    });
    expect(wide.verdict.kind === 'judged' && wide.verdict.probabilityInside).toBeCloseTo(0.375, 9);
    expect(of('0.04', '0.05')).toMatchObject({ outcome: 'outside', probabilityInside: 0 });
    expect(of('0.10', '0.05')).toMatchObject({ kind: 'notJudged', reason: 'contradictoryPair' });
  });

  it('keeps its grade while prerequisites are open, without a verdict', () => {
    const limit = limitOf({ kind: 'pair', ...window });
    const early = judgeBladePair(limit, blades('0.05', '0.08'), {}, { openPrerequisites: ['stop-screw'] });
    expect(early).toMatchObject({
      grade: 'pass',
      verdict: { kind: 'notJudged', reason: 'prerequisitesOpen' },
    });
  });
});

describe('yes/no and grades', () => {
  it('judge by the accepted answer', () => {
    const limit = limitOf({ kind: 'yesNo', accepted: 'no' }, { quantityKind: null });
    expect(judgeYesNo(limit, 'no', {})).toMatchObject({ outcome: 'inside', probabilityInside: null });
    expect(judgeYesNo(limit, 'yes', {})).toMatchObject({ outcome: 'outside', severity: 'minor' });
    expect(judgeYesNo(limit, 'yes', {}, { isValueToConfirm: true })).toMatchObject({
      reason: 'valueToConfirm',
    });
    expect(() => judgeGrade(limit, 'good', {})).toThrow(RangeError);
  });

  it('take the severity of the grade, and do not judge a grade nobody listed', () => {
    const rejected = [
      { grade: 'excessive play', severity: 'major' },
      { grade: 'loosening likely', severity: 'dangerous' },
    ] as const;
    const limit = limitOf({ kind: 'grade', accepted: ['good'], rejected }, { quantityKind: null });
    expect(judgeGrade(limit, 'good', {})).toMatchObject({ outcome: 'inside' });
    expect(judgeGrade(limit, 'loosening likely', {})).toMatchObject({
      outcome: 'outside',
      severity: 'dangerous',
    });
    expect(judgeGrade(limit, 'so-so', {})).toMatchObject({
      kind: 'notJudged',
      reason: 'gradeUnknown',
      details: ['so-so'],
    });
  });
});

describe('the functional criterion: moving the shaft by hand works the switch', () => {
  const validity = { leastGapForPositive: mm('0.05'), window };
  const judge = (isPositive: boolean, companion: BladePair | null): unknown =>
    judgeFunctionalCriterion({ isPositive, companion }, validity);

  it('fails, above any number, when positive with the switch closed at 0.05 mm or more', () => {
    const failed = { kind: 'failed', outcome: 'outside', outranksNumbers: true };
    expect(judge(true, blades('0.05', '0.08'))).toEqual(failed);
    expect(judge(true, blades('0.15', '0.20'))).toEqual(failed);
    expect(judge(true, blades('0.07', null))).toEqual(failed);
  });

  it('is not judged when positive with a switch that reacts to next to nothing: set the switch and repeat', () => {
    expect(judge(true, blades('0.03', '0.05'))).toMatchObject({
      kind: 'notJudged',
      reason: 'companionTooSmall',
      repeatAfter: 'companionSet',
    });
    expect(judge(true, blades('0.04', '0.07'))).toMatchObject({ reason: 'companionNotCertain' });
    expect(judge(true, blades('0.08', '0.06'))).toMatchObject({ reason: 'companionContradictory' });
    expect(judge(true, null)).toMatchObject({ reason: 'companionMissing' });
  });

  it('passes when negative with the switch in its window', () => {
    expect(judge(false, blades('0.05', '0.08'))).toEqual({
      kind: 'passed',
      outcome: 'inside',
      satisfiesPrerequisite: true,
    });
  });

  it('is provisional when negative before that: it satisfies the prerequisite and is to be repeated', () => {
    for (const companion of [null, blades('0.03', '0.05'), blades('0.10', '0.15'), blades('0.04', '0.07')]) {
      expect(judge(false, companion)).toMatchObject({
        kind: 'provisional',
        satisfiesPrerequisite: true,
        repeatAfter: 'companionInWindow',
      });
    }
  });
});

describe('ratios of readings', () => {
  const effort = (
    value: string,
    uncertainty: UncertaintyBudget,
  ): { value: Quantity; uncertainty: UncertaintyBudget } => ({
    value: { value, unit: 'kgf' },
    uncertainty,
  });
  const unknown: UncertaintyBudget = { kind: 'unknown', missing: ['instrument'] };
  const known = (standardUncertainty: number): UncertaintyBudget => ({
    kind: 'known',
    unit: 'N',
    standardUncertainty,
    effectiveDegreesOfFreedom: 'infinite',
    contributions: [],
    repeatability: null,
    method: 'given',
  });
  const percent = (value: string, comparator: 'atLeast' | 'lessThan') =>
    ({ comparator, value: { value, unit: '%' } }) as const;
  const weakerWheel = limitOf(
    { kind: 'ratioOfTwo', form: 'lesserOverGreater', side: 'minimum', bound: percent('70', 'atLeast') },
    {
      quantityKind: 'force',
      exclusions: [
        {
          id: 'higher-effort-too-low',
          key: 'greaterReading',
          rule: { kind: 'range', quantityKind: 'force', upTo: { value: '40', unit: 'kgf' } },
        },
      ],
    },
  );
  const difference = limitOf(
    { kind: 'ratioOfTwo', form: 'differenceOverGreater', side: 'maximum', bound: percent('30', 'lessThan') },
    {
      quantityKind: 'force',
      advisory: {
        kind: 'ratioOfTwo',
        form: 'differenceOverGreater',
        side: 'maximum',
        bound: percent('20', 'lessThan'),
      },
    },
  );
  const judge = (
    limit: Limit,
    left: string,
    right: string,
    uncertainty: UncertaintyBudget = unknown,
  ): Verdict =>
    judgeRatio({
      limit,
      quantityKind: 'force',
      places: [effort(left, uncertainty), effort(right, uncertainty)],
      context: {},
    });

  it('differ between two sources at exactly 30 %: 70 kgf against 100 kgf is accepted by the one and rejected by the other', () => {
    expect(judge(weakerWheel, '70', '100')).toMatchObject({ kind: 'faceValue', outcome: 'inside' });
    expect(judge(difference, '70', '100')).toMatchObject({ kind: 'faceValue', outcome: 'outside' });
    expect(judge(difference, '75', '100')).toMatchObject({ outcome: 'inside', advisory: 'outside' });
    expect(judge(weakerWheel, '69.9', '100')).toMatchObject({ outcome: 'outside' });
  });

  it('do not care which side is the weaker, unless they are asked for in order', () => {
    expect(judge(weakerWheel, '100', '70')).toEqual(judge(weakerWheel, '70', '100'));
    const ordered = limitOf(
      {
        kind: 'ratioOfTwo',
        form: 'firstOverSecond',
        side: 'maximum',
        bound: { comparator: 'lessThan', value: { value: '1', unit: '1' } },
      },
      { quantityKind: 'force' },
    );
    expect([judge(ordered, '70', '100'), judge(ordered, '100', '70')]).toMatchObject([
      { outcome: 'inside' },
      { outcome: 'outside' },
    ]);
  });

  it('are not judged below the effort the source names, nor where the reference is nothing', () => {
    expect(judge(weakerWheel, '10', '40')).toMatchObject({
      kind: 'notJudged',
      reason: 'excluded',
      details: ['higher-effort-too-low'],
    });
    expect(judge(weakerWheel, '10', '40.1')).toMatchObject({ kind: 'faceValue' });
    expect(judge(difference, '0', '0')).toMatchObject({ kind: 'notJudged', reason: 'ratioUndefined' });
  });

  it('carry the uncertainty of both: by hand, 750 and 1000 N with u = 20 N each give u = 0.02 x sqrt(1 + 0.75^2) = 0.025', () => {
    const places = [750, 1000].map((newtons) => ({
      value: { value: String(newtons), unit: 'N' } as const,
      uncertainty: known(20),
    }));
    const verdict = judgeRatio({ limit: weakerWheel, quantityKind: 'force', places, context: {} });
    // z = (0.75 - 0.70) / 0.025 = 2, probability 0.97725
    expect(verdict).toMatchObject({
      kind: 'judged',
      outcome: 'inside',
      standardUncertainty: { value: '0.025', unit: '1' },
    });
    expect(verdict.kind === 'judged' && verdict.probabilityInside).toBeCloseTo(0.97725, 5);
  });

  it('of the lowest cylinder to the best, and to the mean, are two different limits', () => {
    const cylinders = ['1100', '1000', '1000', '800'].map((value) => ({
      value: { value, unit: 'kPa' } as const,
      uncertainty: unknown,
    }));
    const compression = (
      kind: 'ratioToBest' | 'ratioToMean',
      edge: string,
      floor: Quantity | null = null,
    ): Verdict =>
      judgeRatio({
        limit: limitOf(
          { kind, form: 'lowestOverReference', side: 'minimum', bound: percent(edge, 'atLeast'), floor },
          { quantityKind: 'gaugePressure' },
        ),
        quantityKind: 'gaugePressure',
        places: cylinders,
        context: {},
      });
    // 800 / 1100 = 72.7 %, 800 / 975 = 82.1 %
    expect(compression('ratioToBest', '75')).toMatchObject({ outcome: 'outside' });
    expect(compression('ratioToMean', '80')).toMatchObject({ outcome: 'inside' });
    expect(compression('ratioToBest', '70', { value: '690', unit: 'kPa' })).toMatchObject({
      outcome: 'inside',
    });
    expect(compression('ratioToBest', '70', { value: '850', unit: 'kPa' })).toMatchObject({
      outcome: 'outside',
    });
  });

  it('of one reading with known and one with unknown uncertainty are taken at face value', () => {
    const places = [effort('90', known(20)), effort('100', unknown)];
    expect(judgeRatio({ limit: weakerWheel, quantityKind: 'force', places, context: {} })).toMatchObject({
      kind: 'faceValue',
      missing: ['instrument'],
    });
  });

  it('to the mean move less than to the best when the lowest moves, because it is part of the mean (by hand)', () => {
    const places = [800, 1000, 1200].map((newtons, index) => ({
      value: { value: String(newtons), unit: 'N' } as const,
      uncertainty: known(index === 0 ? 1 : 1e-9),
    }));
    const uncertaintyOf = (kind: 'ratioToBest' | 'ratioToMean'): number => {
      const criterion = {
        kind,
        form: 'lowestOverReference',
        side: 'minimum',
        bound: percent('80', 'atLeast'),
        floor: null,
      } as const;
      const verdict = judgeRatio({
        limit: limitOf(criterion, { quantityKind: 'force' }),
        quantityKind: 'force',
        places,
        context: {},
      });
      if (verdict.kind !== 'judged') throw new Error(verdict.kind);
      return Number(verdict.standardUncertainty?.value);
    };
    // d(low / mean) / d low = (1000 - 800 / 3) / 1000^2 = 7.3333e-4; d(low / best) / d low = 1 / 1200 = 8.3333e-4
    expect(uncertaintyOf('ratioToMean')).toBeCloseTo(7.33333e-4, 8);
    expect(uncertaintyOf('ratioToBest')).toBeCloseTo(8.33333e-4, 8);
  });
});
