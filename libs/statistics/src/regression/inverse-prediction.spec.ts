import fc from 'fast-check';
import { thermostat } from '../../../../test/oracles/statistics-regression/thermostat.js';
import { inversePrediction } from './inverse-prediction.js';
import type { LineFit, LineFitOutcome } from './line-fit.js';
import { leastSquaresThroughOrigin } from './least-squares-through-origin.js';
import { ordinaryLeastSquares } from './ordinary-least-squares.js';
import { predictOnLine } from './predict-on-line.js';
import { slopeInterval } from './slope-interval.js';

function line(outcome: LineFitOutcome): LineFit {
  if (outcome.kind !== 'estimated') throw new Error(`expected a line, got ${outcome.kind}`);
  return outcome;
}

describe('inversePrediction', () => {
  describe('on the thermostat of Graybill & Iyer (1994), p. 431', () => {
    const fit = line(ordinaryLeastSquares(thermostat));

    // Printed: 103.995 [103.4, 104.6] and 100.1 [99.63, 100.59]; 12 digits from R (generate.R).
    it.each([
      [104, 0.95, 103.994915646, 103.404051142, 104.589459385],
      [100, 0.9, 100.1123180032, 99.6294028953, 100.5885031323],
    ])('finds x for y = %d at level %d', (y, confidence, x, lower, upper) => {
      const found = inversePrediction(fit, y, { confidence });
      if (found.kind !== 'estimated') throw new Error(found.kind);
      expect(Math.abs(found.x / x - 1)).toBeLessThan(1e-8);
      expect(Math.abs(found.interval.lower / lower - 1)).toBeLessThan(1e-8);
      expect(Math.abs(found.interval.upper / upper - 1)).toBeLessThan(1e-8);
    });
  });

  it('refuses a slope that may be zero', () => {
    const level = line(
      ordinaryLeastSquares([
        [0, 1],
        [1, 3],
        [2, 1],
        [3, 3],
      ]),
    );
    expect(inversePrediction(level, 5)).toMatchObject({ kind: 'slopeNotSignificant' });
    const flat = line(
      ordinaryLeastSquares([
        [0, 1],
        [1, 1],
        [2, 1],
      ]),
    );
    expect(inversePrediction(flat, 5)).toEqual({ kind: 'slopeNotSignificant', g: null });
  });

  it('is exact on points without scatter', () => {
    const exact = line(
      ordinaryLeastSquares([
        [0, 0],
        [1, 2],
        [2, 4],
      ]),
    );
    expect(inversePrediction(exact, 6)).toEqual({
      kind: 'estimated',
      x: 3,
      interval: { lower: 3, upper: 3 },
      g: 0,
    });
  });

  it('is narrower for the line than for an observation, and narrows with repeats', () => {
    const fit = line(ordinaryLeastSquares(thermostat));
    const width = (options: Parameters<typeof inversePrediction>[2]): number => {
      const found = inversePrediction(fit, 104, options);
      if (found.kind !== 'estimated') throw new Error(found.kind);
      return found.interval.upper - found.interval.lower;
    };
    expect(width({ target: 'line' })).toBeLessThan(width({ weight: 4 }));
    expect(width({ weight: 4 })).toBeLessThan(width({}));
  });

  it('holds exactly the x whose prediction interval reaches y', () => {
    // The definition of Fieller's set: at either end a limit of the forward interval equals y.
    const noise = fc.integer({ min: -20, max: 20 });
    fc.assert(
      fc.property(
        fc.array(noise, { minLength: 4, maxLength: 12 }),
        fc.integer({ min: -100, max: 100 }),
        (errors, y) => {
          const fit = line(ordinaryLeastSquares(errors.map((e, i) => [i, 10 * i + e / 2])));
          const found = inversePrediction(fit, y);
          if (found.kind !== 'estimated') {
            const { lower, upper } = slopeInterval(fit);
            expect(lower <= 0 && upper >= 0).toBe(true);
            return;
          }
          const low = predictOnLine(fit, found.interval.lower).predictionInterval;
          const high = predictOnLine(fit, found.interval.upper).predictionInterval;
          expect(fit.slope > 0 ? low.upper : low.lower).toBeCloseTo(y, 6);
          expect(fit.slope > 0 ? high.lower : high.upper).toBeCloseTo(y, 6);
        },
      ),
      { seed: 8, numRuns: 300 },
    );
  });

  it('works through the origin too', () => {
    const fit = line(
      leastSquaresThroughOrigin(
        (
          [
            [1, 2],
            [2, 4.1],
            [3, 5.9],
          ] as const
        ).map((point) => ({ point, weight: 1 })),
      ),
    );
    const found = inversePrediction(fit, 8);
    if (found.kind !== 'estimated') throw new Error(found.kind);
    expect(predictOnLine(fit, found.interval.lower).predictionInterval.upper).toBeCloseTo(8, 10);
    expect(predictOnLine(fit, found.interval.upper).predictionInterval.lower).toBeCloseTo(8, 10);
  });

  it('refuses a non-finite height and an impossible level', () => {
    const fit = line(ordinaryLeastSquares(thermostat));
    expect(() => inversePrediction(fit, NaN)).toThrow(RangeError);
    expect(() => inversePrediction(fit, 1, { confidence: 1 })).toThrow(RangeError);
    expect(() => inversePrediction(fit, 1, { weight: 0 })).toThrow(RangeError);
  });
});
