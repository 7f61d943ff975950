import fc from 'fast-check';
import { kaplanMeier } from './kaplan-meier.js';
import { rightCensoredLives, type LifeSample } from './life-sample.js';
import { turnbullEstimate, type TurnbullCurve } from './turnbull-estimate.js';

const curveOf = (sample: LifeSample): TurnbullCurve => {
  const outcome = turnbullEstimate(sample);
  if (outcome.kind !== 'estimated') throw new Error(outcome.kind);
  return outcome;
};

const expectClose = (
  actual: readonly (number | null)[],
  expected: readonly number[],
  digits: number,
): void => {
  expect(actual).toHaveLength(expected.length);
  actual.forEach((value, i) => expect(value).toBeCloseTo(expected[i]!, digits));
};

describe('turnbullEstimate', () => {
  it('gives the life table worked by hand, with Greenwood errors, for inspections common to all', () => {
    // 100 units; at 10, 4 of 100 had failed and 20 left; at 20, 6 of 76 more, and 70 ran on.
    // S(10) = 0.96, S(20) = 0.96 · 70/76; Greenwood sums 4/(100·96) and that plus 6/(76·70).
    const curve = curveOf({
      lower: [0, 10, 10, 20],
      upper: [10, Infinity, 20, Infinity],
      weights: [4, 20, 6, 70],
    });
    expect(curve.lowerAges).toEqual([0, 10, 20]);
    expect(curve.upperAges).toEqual([10, 20, Infinity]);
    const second = (0.96 * 70) / 76;
    expectClose(curve.survival, [0.96, second, 0], 9);
    expect(curve.standardErrors[0]).toBeCloseTo(0.96 * Math.sqrt(4 / 9600), 9);
    expect(curve.standardErrors[1]).toBeCloseTo(second * Math.sqrt(4 / 9600 + 6 / 5320), 9);
    expect([curve.standardErrors[2], curve.lower[2], curve.upper[2]]).toEqual([null, null, null]);
    expect(curve.units).toBe(100);
  });

  it('gives masses that solve the likelihood equations written out', () => {
    // (0,1] (4,6] (2,6] (0,3] (2,4] (5,7], after Gentleman & Geyer (1994): mass on (0,1], (2,3], (5,6], and
    // likelihood p₁ · p₃ · (p₂ + p₃) · (p₁ + p₂) · p₂ · p₃; each slope must be the number of rows, 6.
    const curve = curveOf({ lower: [0, 4, 2, 0, 2, 5], upper: [1, 6, 6, 3, 4, 7] });
    expect(curve.lowerAges).toEqual([0, 2, 5]);
    expect(curve.upperAges).toEqual([1, 3, 6]);
    const [p1 = 0, p2 = 0, p3 = 0] = curve.masses;
    expectClose(
      [1 / p1 + 1 / (p1 + p2), 1 / (p2 + p3) + 1 / (p1 + p2) + 1 / p2, 2 / p3 + 1 / (p2 + p3)],
      [6, 6, 6],
      7,
    );
    expect(curve.logLikelihood).toBeCloseTo(Math.log(p1 * p3 * (p2 + p3) * (p1 + p2) * p2 * p3), 9);
  });

  it('answers degenerate samples plainly', () => {
    expect(turnbullEstimate({ lower: [], upper: [] })).toEqual({
      kind: 'insufficientData',
      of: 'units',
      needed: 1,
      got: 0,
    });
    expect(turnbullEstimate({ lower: [1], upper: [2], weights: [0] }).kind).toBe('insufficientData');
    // All censored: all the mass behind the last age.
    expect(curveOf({ lower: [3, 5], upper: [Infinity, Infinity] })).toMatchObject({
      lowerAges: [5],
      upperAges: [Infinity],
      masses: [1],
      survival: [0],
    });
    // One place meets all rows.
    expect(curveOf({ lower: [1, 2], upper: [4, 6] })).toMatchObject({
      lowerAges: [2],
      upperAges: [4],
      survival: [0],
    });
    expect(curveOf({ lower: [5, 5], upper: [5, 5] })).toMatchObject({
      lowerAges: [5],
      upperAges: [5],
      masses: [1],
    });
    expect(curveOf({ lower: [0, 0, 4], upper: [0, 0, 4] }).masses[0]).toBeCloseTo(2 / 3, 9);
    // A life known to be exactly 5 lies in (2, 5] but not in (5, 8].
    expect(curveOf({ lower: [5, 2, 5], upper: [5, 5, 8] })).toMatchObject({
      lowerAges: [5, 5],
      upperAges: [5, 8],
    });
    expect(() => turnbullEstimate({ lower: [2], upper: [3], entryAges: [1] })).toThrow(RangeError);
    expect(() => turnbullEstimate({ lower: [2], upper: [1] })).toThrow(RangeError);
  });

  const options = { seed: 41, numRuns: 60, endOnFailure: true };
  const interval = fc
    .tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 8 }), fc.boolean())
    .map(([lower, width, open]) => ({ lower, upper: open && width > 5 ? Infinity : lower + width }));
  const intervals = fc.array(interval, { minLength: 2, maxLength: 25 });
  const sampleOf = (rows: readonly { lower: number; upper: number }[]): LifeSample => ({
    lower: rows.map(({ lower }) => lower),
    upper: rows.map(({ upper }) => upper),
  });

  it('meets the conditions of a maximum at every place where mass could lie', () => {
    fc.assert(
      fc.property(intervals, (rows) => {
        const curve = curveOf(sampleOf(rows));
        const covers = (row: { lower: number; upper: number }, lower: number, upper: number): boolean =>
          upper <= row.upper &&
          (row.lower === row.upper
            ? lower === row.lower && upper === row.upper
            : lower === upper
              ? lower > row.lower
              : lower >= row.lower);
        const covered = rows.map((row) =>
          curve.masses.reduce(
            (sum, mass, i) => sum + (covers(row, curve.lowerAges[i]!, curve.upperAges[i]!) ? mass : 0),
            0,
          ),
        );
        const slope = (lower: number, upper: number): number =>
          rows.reduce((sum, row, i) => sum + (covers(row, lower, upper) ? 1 / covered[i]! : 0), 0);
        curve.masses.forEach((_, i) => {
          expect(slope(curve.lowerAges[i]!, curve.upperAges[i]!) / rows.length).toBeCloseTo(1, 6);
        });
        // Mass at any whole age, or between two, would not raise the likelihood.
        for (let age = 0; age <= 30; age += 0.5)
          expect(slope(age, age)).toBeLessThanOrEqual(rows.length * (1 + 1e-6));
        expect(curve.masses.reduce((sum, mass) => sum + mass, 0)).toBeCloseTo(1, 9);
        expect(curve.survival.at(-1)).toBe(0);
      }),
      options,
    );
  });

  it('is the Kaplan–Meier curve when lives are exact or right-censored', () => {
    const rows = fc.array(fc.tuple(fc.integer({ min: 1, max: 15 }), fc.boolean()), {
      minLength: 2,
      maxLength: 20,
    });
    fc.assert(
      fc.property(rows, (data) => {
        fc.pre(data.some(([, event]) => event));
        const sample = { ages: data.map(([age]) => age), events: data.map(([, event]) => event) };
        const expected = kaplanMeier(sample);
        if (expected.kind !== 'estimated') throw new Error(expected.kind);
        const curve = curveOf(rightCensoredLives(sample));
        const steps = curve.upperAges.map((age, i) => ({ age, i })).filter(({ age }) => age < Infinity);
        expect(steps.map(({ age }) => age)).toEqual(expected.ages);
        steps.forEach(({ i }, step) => {
          expect(curve.survival[i]).toBeCloseTo(expected.survival[step]!, 7);
          const standardError = expected.standardErrors[step];
          if (standardError != null) expect(curve.standardErrors[i]).toBeCloseTo(standardError, 6);
        });
      }),
      options,
    );
  });

  it('does not depend on the order of rows, and moves with the unit of age', () => {
    fc.assert(
      fc.property(intervals, (rows) => {
        const curve = curveOf(sampleOf(rows));
        const moved = curveOf(
          sampleOf(rows.map(({ lower, upper }) => ({ lower: 8 * lower, upper: 8 * upper })).reverse()),
        );
        expect(moved.upperAges).toEqual(curve.upperAges.map((age) => 8 * age));
        moved.survival.forEach((survival, i) => expect(survival).toBeCloseTo(curve.survival[i]!, 6));
      }),
      options,
    );
  });
});
