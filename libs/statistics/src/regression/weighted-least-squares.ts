import { requirePositive } from '../distributions/checked-arguments.js';
import { fitLine } from './fit-line.js';
import type { LineFitOutcome, ScatterSource } from './line-fit.js';
import type { Point } from './point.js';

/** An observation and its weight: relative precision, or 1 / variance when the scatter is known. */
export interface WeightedPoint {
  readonly point: Point;
  readonly weight: number;
}

/** Weights of the points; refuses one that is not positive and finite. */
export function checkedWeights(observations: readonly WeightedPoint[]): readonly number[] {
  return observations.map(({ weight }, index) => {
    requirePositive(`weight of point ${index}`, weight);
    return weight;
  });
}

/**
 * Straight line by weighted least squares.
 *
 * With `scatter` 'estimated' (the default) weights are relative: their common scale is estimated from the residuals
 * (n − 2 degrees of freedom, t quantiles) and multiplying all weights by a constant changes no interval of the line.
 * With 'known' the weight of an observation is 1 / its known variance (v⁻²): nothing is estimated from the residuals,
 * normal quantiles apply, and two points are enough for intervals.
 *
 * @param observations  points with positive weights, any order
 * @param scatter  'estimated' (default) or 'known'
 * @returns the line; `exactlyDetermined` for two points under estimated scatter; `insufficientData` with fewer than two
 *   points or a single distinct x
 * @throws RangeError on a non-finite number, a weight that is not positive, or squares out of double precision
 * @complexity O(n)
 * @source Draper & Smith (1998), Applied Regression Analysis, 3rd ed., ch. 9
 * @oracle test/oracles/statistics-regression/generate.R
 * @example weightedLeastSquares([{ point: [1, 2], weight: 1 }]) // => { kind: 'insufficientData', of: 'points', needed: 2, got: 1 }
 */
export function weightedLeastSquares(
  observations: readonly WeightedPoint[],
  scatter: ScatterSource = 'estimated',
): LineFitOutcome {
  return fitLine(
    observations.map(({ point }) => point),
    checkedWeights(observations),
    'interceptAndSlope',
    scatter,
  );
}
