import { leastSquaresThroughOrigin } from './least-squares-through-origin.js';
import type { LineFit } from './line-fit.js';
import type { Point } from './point.js';
import { predictOnLine } from './predict-on-line.js';

function fitted(points: readonly Point[]): LineFit {
  const outcome = leastSquaresThroughOrigin(points.map((point) => ({ point, weight: 1 })));
  if (outcome.kind !== 'estimated') throw new Error(`expected a line, got ${outcome.kind}`);
  return outcome;
}
const relative = (actual: number, expected: number): number => Math.abs(actual / expected - 1);

describe('leastSquaresThroughOrigin', () => {
  it('gives the certified values of NIST StRD NoInt1', () => {
    // x 60 … 70, y 130 … 140; certified values as printed by NIST (cited from memory), recomputed from exact sums:
    // sum xy = 96635, sum xx = 46585.
    const fit = fitted(Array.from({ length: 11 }, (_, i): Point => [60 + i, 130 + i]));
    expect(relative(fit.slope, 96635 / 46585)).toBeLessThan(1e-14);
    expect(relative(fit.slope, 2.07438016528926)).toBeLessThan(1e-10);
    expect(relative(fit.slopeStandardError, 0.0165289256198347)).toBeLessThan(1e-10);
    expect(relative(fit.residualStandardDeviation, 3.56753034006338)).toBeLessThan(1e-10);
    expect(relative(fit.rSquared!, 0.999365492298663)).toBeLessThan(1e-10);
    expect(fit.degreesOfFreedom).toBe(10);
  });

  it('gives the certified values of NIST StRD NoInt2', () => {
    // sum xy = 12 + 20 + 24 = 56, sum xx = 16 + 25 + 36 = 77: slope 8/11; residual squares 41 - 56²/77 = 3/11.
    const fit = fitted([
      [4, 3],
      [5, 4],
      [6, 4],
    ]);
    expect(relative(fit.slope, 8 / 11)).toBeLessThan(1e-14);
    expect(relative(fit.slopeStandardError, Math.sqrt(3 / 22 / 77))).toBeLessThan(1e-12);
    expect(relative(fit.residualStandardDeviation, 0.369274472937998)).toBeLessThan(1e-10);
    expect(relative(fit.rSquared!, 0.993348115299335)).toBeLessThan(1e-10);
  });

  it('is certain at the origin and less so further out', () => {
    const fit = fitted([
      [1, 2],
      [2, 3],
      [3, 7],
    ]);
    expect(predictOnLine(fit, 0)).toMatchObject({ fitted: 0, standardError: 0 });
    expect(predictOnLine(fit, 4).standardError).toBeCloseTo(2 * predictOnLine(fit, 2).standardError, 12);
    expect(fit.intercept).toBe(0);
    expect(fit.interceptStandardError).toBe(0);
  });

  it('says what is missing', () => {
    expect(leastSquaresThroughOrigin([])).toMatchObject({ of: 'points', needed: 1 });
    expect(leastSquaresThroughOrigin([{ point: [0, 4], weight: 1 }])).toMatchObject({ of: 'nonZeroX' });
    expect(leastSquaresThroughOrigin([{ point: [2, 6], weight: 1 }])).toEqual({
      kind: 'exactlyDetermined',
      slope: 3,
      intercept: 0,
    });
  });
});
