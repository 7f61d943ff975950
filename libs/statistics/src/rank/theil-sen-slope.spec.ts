import fc from 'fast-check';
import type { Point } from '../regression/point.js';
import { pairSlopeOrderStatistics } from './pair-slope-order-statistics.js';
import { theilSenSlope, type TheilSenSlope } from './theil-sen-slope.js';

function estimated(points: readonly Point[], confidence?: number): TheilSenSlope {
  const outcome = theilSenSlope(points, confidence);
  if (outcome.kind !== 'estimated') throw new Error(`expected a slope, got ${outcome.kind}`);
  return outcome;
}

describe('theilSenSlope', () => {
  it('agrees with five points worked by hand', () => {
    // x 1…5, y 3 5 4 8 6. Slopes by distance 1: 2 -1 4 -2; by 2: 0.5 1.5 1; by 3: 5/3 1/3; by 4: 0.75.
    // Sorted: -2 -1 1/3 0.5 0.75 1 1.5 5/3 2 4; median (0.75 + 1)/2 = 0.875. Medians of y and x: 5 and 3.
    // No ties: Var(S) = 5*4*15/18 = 50/3.
    // At 80 %: z = 1.2815515655, C = 5.2319; lower rank 2.384, upper rank 8.616.
    const points = [3, 5, 4, 8, 6].map((y, i): Point => [i + 1, y]);
    const fit = estimated(points, 0.8);
    expect(fit.pairs).toBe(10);
    expect(fit.slope).toBe(0.875);
    expect(fit.intercept).toBe(5 - 0.875 * 3);
    const half = 1.2815515655446004 * Math.sqrt(50 / 3);
    const low = (10 - half) / 2;
    const high = (10 + half) / 2 + 1;
    expect(fit.interval!.lower).toBeCloseTo(-1 + (low - 2) * (1 / 3 + 1), 12);
    expect(fit.interval!.upper).toBeCloseTo(5 / 3 + (high - 8) * (2 - 5 / 3), 12);
  });

  it('offers no interval where the level is out of reach', () => {
    // Three points: three slopes, C = 1.96 * sqrt(11/3) = 3.75 is more than all of them.
    expect(
      estimated([
        [0, 0],
        [1, 2],
        [2, 4],
      ]).interval,
    ).toBeNull();
  });

  it('is not carried away by one wild value', () => {
    // The wild value is the largest either way, so the median of y, and with it the intercept, stays too.
    const straight = Array.from({ length: 11 }, (_, i): Point => [i, 3 * i + 1]);
    expect(estimated(straight.with(10, [10, 900]))).toMatchObject({ slope: 3, intercept: 1 });
  });

  it('skips pairs with equal x', () => {
    const fit = estimated([
      [0, 0],
      [0, 4],
      [1, 6],
    ]);
    expect(fit.pairs).toBe(2);
    expect(fit.slope).toBe(4);
  });

  it('says what is missing', () => {
    expect(theilSenSlope([[1, 1]])).toEqual({ kind: 'insufficientData', of: 'points', needed: 2, got: 1 });
    expect(
      theilSenSlope([
        [1, 1],
        [1, 2],
      ]),
    ).toMatchObject({ of: 'distinctX', got: 1 });
    expect(() =>
      theilSenSlope([
        [0, 0],
        [NaN, 1],
      ]),
    ).toThrow(RangeError);
    expect(() => theilSenSlope([], 1)).toThrow(RangeError);
    expect(() =>
      theilSenSlope([
        [0, 0],
        [5e-324, 1],
      ]),
    ).toThrow(RangeError);
  });

  it('takes more pairs than it keeps in memory', () => {
    // y = x² has the pair slopes xi + xj: with x = 1…n their median is n + 1 by symmetry.
    const n = 3000;
    const fit = estimated(Array.from({ length: n }, (_, i): Point => [i + 1, (i + 1) ** 2]));
    expect(fit.pairs).toBe(4_498_500);
    expect(fit.slope).toBe(n + 1);
    // By the same symmetry the limits lie equally far on either side.
    expect(fit.interval!.lower + fit.interval!.upper).toBeCloseTo(2 * (n + 1), 6);
  });

  describe('for any points', () => {
    const coordinate = fc.integer({ min: -40, max: 40 });
    const series = fc
      .array(fc.tuple(coordinate, coordinate), { minLength: 4, maxLength: 40 })
      .filter((points) => new Set(points.map(([x]) => x)).size >= 2);

    it('does not depend on their order', () => {
      fc.assert(
        fc.property(series, (points) => {
          expect(estimated(points.toReversed())).toEqual(estimated(points));
        }),
        { seed: 9, numRuns: 200 },
      );
    });

    it('moves with a shift, stretches with a scale and turns over with a sign', () => {
      fc.assert(
        fc.property(series, coordinate, (points, shift) => {
          const plain = estimated(points, 0.8);
          const changed = estimated(
            points.map(([x, y]) => [x, -4 * y + shift]),
            0.8,
          );
          expect(changed.slope).toBeCloseTo(-4 * plain.slope, 9);
          expect(changed.interval === null).toBe(plain.interval === null);
          if (plain.interval === null || changed.interval === null) return;
          expect(changed.interval.lower).toBeCloseTo(-4 * plain.interval.upper, 9);
          expect(changed.interval.upper).toBeCloseTo(-4 * plain.interval.lower, 9);
        }),
        { seed: 10, numRuns: 200 },
      );
    });

    it('widens with the level and holds the slope', () => {
      fc.assert(
        fc.property(series, (points) => {
          const narrow = estimated(points, 0.5);
          const wide = estimated(points, 0.8);
          if (narrow.interval === null || wide.interval === null) return;
          expect(wide.interval.lower).toBeLessThanOrEqual(narrow.interval.lower);
          expect(wide.interval.upper).toBeGreaterThanOrEqual(narrow.interval.upper);
          expect(narrow.interval.lower).toBeLessThanOrEqual(narrow.slope);
          expect(narrow.interval.upper).toBeGreaterThanOrEqual(narrow.slope);
        }),
        { seed: 11, numRuns: 200 },
      );
    });

    it('finds the same ranks by counting as by sorting', () => {
      const wild = fc.oneof(coordinate, fc.double({ min: -1e6, max: 1e6, noNaN: true }));
      fc.assert(
        fc.property(fc.array(wild, { minLength: 3, maxLength: 30 }), fc.nat(20), (values, kept) => {
          const x = Float64Array.from(values, (_, i) => i);
          const y = Float64Array.from(values);
          const count = (values.length * (values.length - 1)) / 2;
          const ranks = [1, Math.ceil(count / 2), Math.ceil(count / 2) + 1, count, 2];
          expect(pairSlopeOrderStatistics(x, y, count, ranks, kept)).toEqual(
            pairSlopeOrderStatistics(x, y, count, ranks, count),
          );
        }),
        { seed: 12, numRuns: 60 },
      );
    });
  });
});
