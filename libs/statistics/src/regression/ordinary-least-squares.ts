import { fitLine } from './fit-line.js';
import type { LineFitOutcome } from './line-fit.js';
import type { Point } from './point.js';

/**
 * Straight line by ordinary least squares: errors in y only, equal and independent; x taken as exact.
 * Computed about the mean point, which keeps all digits of the NIST reference data.
 *
 * @param points  pairs (x in u, y in v), any order, finite
 * @returns the line with standard errors and n − 2 degrees of freedom; `exactlyDetermined` for two points with different
 *   x; `insufficientData` with fewer than two points or a single distinct x. Points exactly on a line give a residual
 *   variance of 0, and every interval shrinks to the line.
 * @throws RangeError on a non-finite number, or numbers whose squares leave double precision
 * @complexity O(n)
 * @source Draper & Smith (1998), Applied Regression Analysis, 3rd ed., ch. 1
 * @oracle test/oracles/statistics-regression/generate.R; NIST StRD Norris (certified values)
 * @example ordinaryLeastSquares([[0, 1], [1, 3]]) // => { kind: 'exactlyDetermined', slope: 2, intercept: 1 }
 */
export function ordinaryLeastSquares(points: readonly Point[]): LineFitOutcome {
  return fitLine(
    points,
    points.map(() => 1),
    'interceptAndSlope',
    'estimated',
  );
}
