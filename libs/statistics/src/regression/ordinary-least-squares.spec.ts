import fc from 'fast-check';
import { norris } from '../../../../test/oracles/statistics-regression/norris.js';
import type { LineFit } from './line-fit.js';
import { ordinaryLeastSquares } from './ordinary-least-squares.js';
import type { Point } from './point.js';
import { predictOnLine } from './predict-on-line.js';
import { slopeInterval } from './slope-interval.js';

function estimated(points: readonly Point[]): LineFit {
  const outcome = ordinaryLeastSquares(points);
  if (outcome.kind !== 'estimated') throw new Error(`expected a line, got ${outcome.kind}`);
  return outcome;
}

/** |actual / expected − 1|, for values of any size. */
const relative = (actual: number, expected: number): number => Math.abs(actual / expected - 1);

describe('ordinaryLeastSquares', () => {
  describe('on the NIST reference data set Norris', () => {
    const fit = estimated(norris);

    // Certified values, NIST StRD, printed to 15 digits; data of lower difficulty, so 10 digits are asked for.
    it.each([
      ['intercept', fit.intercept, -0.262323073774029],
      ['intercept standard error', fit.interceptStandardError, 0.232818234301152],
      ['slope', fit.slope, 1.00211681802045],
      ['slope standard error', fit.slopeStandardError, 0.429796848199937e-3],
      ['residual standard deviation', fit.residualStandardDeviation, 0.884796396144373],
      ['R squared', fit.rSquared!, 0.999993745883712],
    ])('gives the certified %s', (_name, actual, expected) => {
      expect(relative(actual, expected)).toBeLessThan(1e-10);
    });

    it('has 34 degrees of freedom', () => {
      expect(fit.degreesOfFreedom).toBe(34);
    });

    // R 4.2.2, predict.lm, level 0.95 (generate.R), 12 digits.
    it.each([
      [0, -2.12165354328, 1.59700739573, -0.735466652102, 0.210820504553],
      [500, 498.97179405418, 502.62037781872, 500.488196471533, 501.103975401373],
      [1100, 1100.14870846111, 1103.98364503634, 1101.400264078104, 1102.732089419347],
    ])('predicts at x = %d with the limits of R', (x, lower, upper, lineLower, lineUpper) => {
      const { predictionInterval, confidenceInterval } = predictOnLine(fit, x);
      expect(relative(predictionInterval.lower, lower)).toBeLessThan(1e-10);
      expect(relative(predictionInterval.upper, upper)).toBeLessThan(1e-10);
      expect(relative(confidenceInterval.lower, lineLower)).toBeLessThan(1e-9);
      expect(relative(confidenceInterval.upper, lineUpper)).toBeLessThan(1e-9);
    });
  });

  it('agrees with four points worked by hand', () => {
    // x 0 1 2 3, y 1 2 2 4. Means 1.5 and 2.25; Sxx = 5, Sxy = (-1.5)(-1.25) + (-0.5)(-0.25) + 0.5(-0.25) + 1.5(1.75)
    // = 1.875 + 0.125 - 0.125 + 2.625 = 4.5, so the slope is 0.9 and the intercept 2.25 - 1.35 = 0.9.
    // Residuals 0.1, 0.2, -0.7, 0.4: sum of squares 0.70, two degrees of freedom, variance 0.35.
    const fit = estimated([
      [0, 1],
      [1, 2],
      [2, 2],
      [3, 4],
    ]);
    expect(fit.slope).toBeCloseTo(0.9, 14);
    expect(fit.intercept).toBeCloseTo(0.9, 14);
    expect(fit.residualVariance).toBeCloseTo(0.35, 14);
    expect(fit.slopeStandardError).toBeCloseTo(Math.sqrt(0.35 / 5), 14);
    expect(fit.interceptStandardError).toBeCloseTo(Math.sqrt(0.35 * (1 / 4 + 1.5 ** 2 / 5)), 14);
    // Total about the mean: 1.5625 + 0.0625 + 0.0625 + 3.0625 = 4.75.
    expect(fit.rSquared).toBeCloseTo(1 - 0.7 / 4.75, 14);
  });

  it('keeps its digits when x sits far from zero', () => {
    const near = estimated(norris);
    const far = estimated(norris.map(([x, y]) => [x + 2 ** 30, y]));
    expect(relative(far.slope, near.slope)).toBeLessThan(1e-8);
    expect(relative(far.residualStandardDeviation, near.residualStandardDeviation)).toBeLessThan(1e-8);
  });

  it('says how many points are needed', () => {
    expect(ordinaryLeastSquares([])).toEqual({
      kind: 'insufficientData',
      of: 'points',
      needed: 2,
      got: 0,
    });
    expect(
      ordinaryLeastSquares([
        [3, 1],
        [3, 2],
        [3, 5],
      ]),
    ).toEqual({ kind: 'insufficientData', of: 'distinctX', needed: 2, got: 1 });
  });

  it('passes two points exactly and claims no scatter', () => {
    expect(
      ordinaryLeastSquares([
        [1, 5],
        [3, 9],
      ]),
    ).toEqual({ kind: 'exactlyDetermined', slope: 2, intercept: 3 });
  });

  it('explains nothing where y does not vary', () => {
    const fit = estimated([
      [0, 2],
      [1, 2],
      [2, 2],
    ]);
    expect(fit.rSquared).toBeNull();
    expect(fit.slope).toBe(0);
    expect(slopeInterval(fit).pValue).toBe(1);
  });

  it.each([NaN, Infinity])('refuses %p as a coordinate', (value) => {
    expect(() =>
      ordinaryLeastSquares([
        [0, 1],
        [1, value],
      ]),
    ).toThrow(RangeError);
  });

  it('refuses numbers whose squares overflow', () => {
    expect(() =>
      ordinaryLeastSquares([
        [0, 0],
        [1e200, 1],
        [2e200, 3],
      ]),
    ).toThrow(RangeError);
  });

  describe('for any points', () => {
    const coordinate = fc.integer({ min: -500, max: 500 });
    const series = fc
      .array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 30 })
      .filter((points) => new Set(points.map(([x]) => x)).size >= 2);
    const settings = { seed: 4, numRuns: 200 };

    it('does not depend on their order', () => {
      fc.assert(
        fc.property(series, (points) => {
          const forward = estimated(points);
          const backward = estimated(points.toReversed());
          expect(backward.slope).toBeCloseTo(forward.slope, 9);
          expect(backward.residualVariance).toBeCloseTo(forward.residualVariance, 6);
        }),
        settings,
      );
    });

    it('moves with a shift and stretches with a scale of y', () => {
      fc.assert(
        fc.property(series, coordinate, fc.integer({ min: 1, max: 20 }), (points, shift, scale) => {
          const plain = estimated(points);
          const changed = estimated(points.map(([x, y]) => [x, scale * y + shift]));
          expect(changed.slope).toBeCloseTo(scale * plain.slope, 8);
          expect(changed.intercept).toBeCloseTo(scale * plain.intercept + shift, 6);
          expect(changed.slopeStandardError).toBeCloseTo(scale * plain.slopeStandardError, 8);
        }),
        settings,
      );
    });

    it('leaves residuals that sum to zero and are uncorrelated with x', () => {
      fc.assert(
        fc.property(series, (points) => {
          const fit = estimated(points);
          const residuals = points.map(([x, y]) => y - fit.intercept - fit.slope * x);
          expect(residuals.reduce((sum, r) => sum + r, 0)).toBeCloseTo(0, 6);
          expect(points.reduce((sum, [x], i) => sum + x * residuals[i]!, 0) / 1000).toBeCloseTo(0, 5);
        }),
        settings,
      );
    });
  });
});
