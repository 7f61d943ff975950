import fc from 'fast-check';
import type { Point } from '../regression/point.js';
import { weightedLeastSquares } from '../regression/weighted-least-squares.js';
import { predictOnUncertainLine } from './predict-on-uncertain-line.js';
import { recentreLine } from './recentre-line.js';
import { shrunkenLine, type LinePopulation } from './shrunken-line.js';

const NOTHING = { level: 0, cross: 0, slope: 0 };
const population = (changes: Partial<LinePopulation>): LinePopulation => ({
  mean: { centre: 0, level: 0, slope: 0, covariance: NOTHING },
  between: NOTHING,
  residualVariance: 1,
  ...changes,
});

describe('shrunkenLine', () => {
  it('agrees with a level worked by hand', () => {
    // Spread of levels 1, residual variance 1, one observation 4 at x = 0: half of the way, variance ½.
    const line = shrunkenLine(population({ between: { level: 1, cross: 0, slope: 0 } }), [[0, 4]]);
    expect(line.level).toBe(2);
    expect(line.slope).toBe(0);
    expect(line.conditionalCovariance).toEqual({ level: 0.5, cross: 0, slope: 0 });
    expect(line.covariance).toEqual(line.conditionalCovariance);
    // A mean line known with variance 1 leaves its half: ¼ · 1 · … (1 − ½)² = ¼ more.
    const doubtful = shrunkenLine(
      population({
        mean: { centre: 0, level: 0, slope: 0, covariance: { level: 1, cross: 0, slope: 0 } },
        between: { level: 1, cross: 0, slope: 0 },
      }),
      [[0, 4]],
    );
    expect(doubtful.level).toBe(2);
    expect(doubtful.covariance.level).toBe(0.75);
  });

  it('is the mean line with the full spread without observations', () => {
    const prior = population({
      mean: { centre: 3, level: 10, slope: 2, covariance: { level: 0.1, cross: 0.01, slope: 0.02 } },
      between: { level: 4, cross: 0.5, slope: 1 },
    });
    const line = shrunkenLine(prior, []);
    expect(line).toMatchObject({ centre: 3, level: 10, slope: 2, conditionalCovariance: prior.between });
    expect(line.covariance.level).toBeCloseTo(4.1, 14);
    expect(line.covariance.cross).toBeCloseTo(0.51, 14);
    expect(line.covariance.slope).toBeCloseTo(1.02, 14);
  });

  it('comes to the unit’s own line as the spread grows', () => {
    const coordinate = fc.integer({ min: -20, max: 20 });
    const series = fc
      .array(fc.tuple(coordinate, coordinate), { minLength: 2, maxLength: 10 })
      .filter((points) => new Set(points.map(([x]) => x)).size >= 2);
    fc.assert(
      fc.property(series, (points) => {
        const own = weightedLeastSquares(
          points.map((point) => ({ point, weight: 1 / 4 })),
          'known',
        );
        if (own.kind !== 'estimated') throw new Error(own.kind);
        const wide = shrunkenLine(
          population({ between: { level: 1e9, cross: 0, slope: 1e9 }, residualVariance: 4 }),
          points,
        );
        expect(wide.slope).toBeCloseTo(own.slope, 4);
        expect(wide.level).toBeCloseTo(own.intercept, 3);
        expect(wide.conditionalCovariance.slope / own.slopeVariance).toBeCloseTo(1, 4);
      }),
      { seed: 42, numRuns: 100 },
    );
  });

  it('learns the same from all observations at once as one after the other', () => {
    const prior = population({ between: { level: 3, cross: 0.4, slope: 0.5 }, residualVariance: 2 });
    const points: Point[] = [
      [1, 3],
      [2, 2],
      [5, 9],
      [6, 7],
    ];
    const together = shrunkenLine(prior, points);
    let step = prior;
    for (const point of points) {
      const line = shrunkenLine(step, [point]);
      step = {
        mean: { centre: 0, level: line.level, slope: line.slope, covariance: NOTHING },
        between: line.conditionalCovariance,
        residualVariance: 2,
      };
    }
    expect(step.mean.level).toBeCloseTo(together.level, 12);
    expect(step.mean.slope).toBeCloseTo(together.slope, 12);
    expect(step.between.cross).toBeCloseTo(together.conditionalCovariance.cross, 12);
  });

  it('refuses variances that cannot be', () => {
    expect(() => shrunkenLine(population({ between: { level: 1, cross: 2, slope: 1 } }), [])).toThrow(
      RangeError,
    );
    expect(() => shrunkenLine(population({ between: { level: -1, cross: 0, slope: 1 } }), [])).toThrow(
      RangeError,
    );
    expect(() => shrunkenLine(population({ residualVariance: 0 }), [])).toThrow(RangeError);
    expect(() => shrunkenLine(population({}), [[0, NaN]])).toThrow(RangeError);
  });
});

describe('recentreLine and predictOnUncertainLine', () => {
  const line = { centre: 2, level: 5, slope: 1, covariance: { level: 1, cross: 0, slope: 4 } };

  it('move the level along the line and its variance with it', () => {
    // Two to the left: 5 − 2 · 1 = 3; variance 1 + 4 · 4 = 17, covariance with the slope −2 · 4.
    const moved = recentreLine(line, 0);
    expect(moved).toEqual({ centre: 0, level: 3, slope: 1, covariance: { level: 17, cross: -8, slope: 4 } });
    expect(recentreLine(moved, 2)).toEqual(line);
    expect(() => recentreLine(line, NaN)).toThrow(RangeError);
  });

  it('predict the same height from any centre', () => {
    const here = predictOnUncertainLine(line, 4, 0.9, 3);
    const there = predictOnUncertainLine(recentreLine(line, -10), 4, 0.9, 3);
    expect(here.height).toBe(7);
    expect(here.standardError).toBeCloseTo(Math.sqrt(1 + 4 * 4 + 3), 14);
    expect(here.interval.upper).toBeCloseTo(7 + 1.6448536269514722 * Math.sqrt(20), 10);
    expect(there.standardError).toBeCloseTo(here.standardError, 12);
    expect(there.height).toBeCloseTo(here.height, 12);
    expect(() => predictOnUncertainLine(line, 4, 0.9, -1)).toThrow(RangeError);
    expect(() => predictOnUncertainLine(line, 4, 1)).toThrow(RangeError);
  });
});
