import { ordinaryLeastSquares } from './ordinary-least-squares.js';
import type { Point } from './point.js';
import { predictOnLine } from './predict-on-line.js';
import { slopeInterval } from './slope-interval.js';

/** Uniform numbers in (0, 1) from a 32-bit linear congruential generator (Numerical Recipes constants). */
function uniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 4294967296;
  };
}

describe('predictOnLine', () => {
  it('covers a new observation as often as it says', () => {
    // 4000 lines of eight points with normal errors, one new observation each beyond the data, level 0.90. The count is
    // binomial: four standard errors are 4 * sqrt(0.9 * 0.1 / 4000) = 0.019.
    const next = uniform(20);
    const normal = (): number => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
    let predicted = 0;
    let slopes = 0;
    const runs = 4000;
    for (let run = 0; run < runs; run += 1) {
      const points = Array.from({ length: 8 }, (_, i): Point => [i, 3 - 0.5 * i + 2 * normal()]);
      const fit = ordinaryLeastSquares(points);
      if (fit.kind !== 'estimated') throw new Error(fit.kind);
      const fresh = 3 - 0.5 * 10 + 2 * normal();
      const { lower, upper } = predictOnLine(fit, 10, { confidence: 0.9 }).predictionInterval;
      if (lower <= fresh && fresh <= upper) predicted += 1;
      const slope = slopeInterval(fit, 0.9);
      if (slope.lower <= -0.5 && -0.5 <= slope.upper) slopes += 1;
    }
    expect(Math.abs(predicted / runs - 0.9)).toBeLessThan(0.019);
    expect(Math.abs(slopes / runs - 0.9)).toBeLessThan(0.019);
  });

  it('widens with the level and with the distance from the centre', () => {
    const fit = ordinaryLeastSquares([
      [0, 1],
      [1, 2],
      [2, 2],
      [3, 4],
    ]);
    if (fit.kind !== 'estimated') throw new Error(fit.kind);
    const width = (x: number, confidence: number): number => {
      const { lower, upper } = predictOnLine(fit, x, { confidence }).predictionInterval;
      return upper - lower;
    };
    expect(width(1.5, 0.9)).toBeLessThan(width(1.5, 0.95));
    expect(width(1.5, 0.9)).toBeLessThan(width(5, 0.9));
    expect(width(0, 0.9)).toBeCloseTo(width(3, 0.9), 12);
  });

  it('refuses a non-finite x', () => {
    const fit = ordinaryLeastSquares([
      [0, 1],
      [1, 2],
      [2, 2],
    ]);
    if (fit.kind !== 'estimated') throw new Error(fit.kind);
    expect(() => predictOnLine(fit, Infinity)).toThrow(RangeError);
    expect(() => predictOnLine(fit, 0, { confidence: 0 })).toThrow(RangeError);
  });
});
