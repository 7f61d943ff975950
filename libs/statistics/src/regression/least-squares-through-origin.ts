import { fitLine } from './fit-line.js';
import type { LineFitOutcome, ScatterSource } from './line-fit.js';
import { checkedWeights, type WeightedPoint } from './weighted-least-squares.js';

/**
 * Straight line through the origin by (weighted) least squares, y = slope · x.
 * For quantities that are 0 at the start by their nature; a wrong choice biases the slope and hides it.
 *
 * @param observations  points with positive weights (1 each for the unweighted fit), any order
 * @param scatter  'estimated' (default; n − 1 degrees of freedom) or 'known' (weight = 1 / variance)
 * @returns the line; `exactlyDetermined` for one point under estimated scatter; `insufficientData` with no point or when
 *   every x is 0. R² is taken about 0, not about the mean, and is not comparable with that of a line with an intercept.
 * @throws RangeError on a non-finite number, a weight that is not positive, or squares out of double precision
 * @complexity O(n)
 * @source Draper & Smith (1998), Applied Regression Analysis, 3rd ed., sec. 1.2; R² as NIST StRD NoInt1
 * @oracle test/oracles/statistics-regression/generate.R; NIST StRD NoInt1 and NoInt2
 * @example leastSquaresThroughOrigin([{ point: [2, 6], weight: 1 }]) // => { kind: 'exactlyDetermined', slope: 3, intercept: 0 }
 */
export function leastSquaresThroughOrigin(
  observations: readonly WeightedPoint[],
  scatter: ScatterSource = 'estimated',
): LineFitOutcome {
  return fitLine(
    observations.map(({ point }) => point),
    checkedWeights(observations),
    'throughOrigin',
    scatter,
  );
}
