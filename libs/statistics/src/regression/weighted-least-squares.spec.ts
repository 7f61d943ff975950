import fc from 'fast-check';
import type { LineFit, LineFitOutcome } from './line-fit.js';
import { ordinaryLeastSquares } from './ordinary-least-squares.js';
import type { Point } from './point.js';
import { predictOnLine } from './predict-on-line.js';
import { weightedLeastSquares } from './weighted-least-squares.js';

function line(outcome: LineFitOutcome): LineFit {
  if (outcome.kind !== 'estimated') throw new Error(`expected a line, got ${outcome.kind}`);
  return outcome;
}

const observations = (points: readonly Point[], weights: readonly number[]) =>
  points.map((point, i) => ({ point, weight: weights[i]! }));

describe('weightedLeastSquares', () => {
  it('agrees with three points worked by hand', () => {
    // x 0 1 2, y 0 1 4, weights 1 2 1. Weighted means: x (0+2+2)/4 = 1, y (0+2+4)/4 = 1.5.
    // Sxx = 1+0+1 = 2, Sxy = 1*1.5 + 0 + 1*2.5 = 4: slope 2, intercept 1.5 - 2 = -0.5.
    // Residuals 0.5, -0.5, 0.5: weighted squares 0.25 + 0.5 + 0.25 = 1, one degree of freedom.
    const fit = line(
      weightedLeastSquares(
        observations(
          [
            [0, 0],
            [1, 1],
            [2, 4],
          ],
          [1, 2, 1],
        ),
      ),
    );
    expect(fit.slope).toBe(2);
    expect(fit.intercept).toBe(-0.5);
    expect(fit.residualVariance).toBe(1);
    expect(fit.slopeVariance).toBe(0.5);
    expect(fit.centreVariance).toBe(0.25);
  });

  it('counts a whole-number weight as so many equal observations, apart from the degrees of freedom', () => {
    const weighted = line(
      weightedLeastSquares(
        observations(
          [
            [0, 1],
            [2, 2],
            [5, 7],
          ],
          [1, 3, 2],
        ),
      ),
    );
    const repeated = line(
      ordinaryLeastSquares([
        [0, 1],
        [2, 2],
        [2, 2],
        [2, 2],
        [5, 7],
        [5, 7],
      ]),
    );
    expect(weighted.slope).toBeCloseTo(repeated.slope, 13);
    expect(weighted.residualSumOfSquares).toBeCloseTo(repeated.residualSumOfSquares, 13);
    expect(weighted.degreesOfFreedom).toBe(1);
    expect(repeated.degreesOfFreedom).toBe(4);
  });

  it('takes known variances at their word, even for two points', () => {
    // Heights 0 and 10 at x 0 and 1, standard deviations 3 and 4: the slope 10 has variance 9 + 16 = 25.
    const fit = line(
      weightedLeastSquares(
        observations(
          [
            [0, 0],
            [1, 10],
          ],
          [1 / 9, 1 / 16],
        ),
        'known',
      ),
    );
    expect(fit.slope).toBeCloseTo(10, 12);
    expect(fit.slopeStandardError).toBeCloseTo(5, 12);
    expect(fit.interceptStandardError).toBeCloseTo(3, 12);
    expect(fit.degreesOfFreedom).toBeNull();
    // At x = 1 the line is known as well as the second observation: half-width 1.959963984540054 * 4.
    expect(predictOnLine(fit, 1).confidenceInterval.upper).toBeCloseTo(10 + 1.959963984540054 * 4, 10);
    // A new observation there with standard deviation 3 adds up to 5.
    expect(predictOnLine(fit, 1, { weight: 1 / 9 }).predictionInterval.lower).toBeCloseTo(
      10 - 1.959963984540054 * 5,
      10,
    );
  });

  it.each([0, -1, NaN, Infinity])('refuses the weight %p', (weight) => {
    expect(() => weightedLeastSquares([{ point: [0, 0], weight }])).toThrow(RangeError);
  });

  describe('for any points', () => {
    const series = fc
      .array(
        fc.tuple(
          fc.integer({ min: -100, max: 100 }),
          fc.integer({ min: -100, max: 100 }),
          fc.integer({ min: 1, max: 9 }),
        ),
        { minLength: 3, maxLength: 20 },
      )
      .filter((rows) => new Set(rows.map(([x]) => x)).size >= 2);
    const build = (rows: [number, number, number][], factor = 1) =>
      rows.map(([x, y, w]) => ({ point: [x, y] as Point, weight: w * factor }));

    it('equals the unweighted line when all weights are equal', () => {
      fc.assert(
        fc.property(series, (rows) => {
          const weighted = line(weightedLeastSquares(rows.map(([x, y]) => ({ point: [x, y], weight: 7 }))));
          const plain = line(ordinaryLeastSquares(rows.map(([x, y]) => [x, y])));
          expect(weighted.slope).toBeCloseTo(plain.slope, 9);
          expect(weighted.slopeStandardError).toBeCloseTo(plain.slopeStandardError, 9);
          expect(weighted.rSquared ?? 0).toBeCloseTo(plain.rSquared ?? 0, 9);
        }),
        { seed: 5, numRuns: 150 },
      );
    });

    it('ignores a common factor of the weights when the scatter is estimated', () => {
      fc.assert(
        fc.property(series, fc.integer({ min: 2, max: 50 }), (rows, factor) => {
          const plain = line(weightedLeastSquares(build(rows)));
          const scaled = line(weightedLeastSquares(build(rows, factor)));
          expect(scaled.slope).toBeCloseTo(plain.slope, 9);
          expect(scaled.slopeStandardError).toBeCloseTo(plain.slopeStandardError, 9);
        }),
        { seed: 6, numRuns: 150 },
      );
    });

    it('narrows by the root of the factor when the scatter is known', () => {
      fc.assert(
        fc.property(series, (rows) => {
          const plain = line(weightedLeastSquares(build(rows), 'known'));
          const fourfold = line(weightedLeastSquares(build(rows, 4), 'known'));
          expect(fourfold.slopeStandardError).toBeCloseTo(plain.slopeStandardError / 2, 10);
        }),
        { seed: 7, numRuns: 150 },
      );
    });
  });
});
