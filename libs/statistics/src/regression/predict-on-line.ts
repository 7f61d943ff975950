import { requireFinite, requirePositive } from '../distributions/checked-arguments.js';
import type { Interval } from '../inference/interval.js';
import type { LineFit } from './line-fit.js';
import { lineQuantile } from './line-quantile.js';

export interface LinePrediction {
  /** Height of the fitted line at x. */
  readonly fitted: number;
  /** Standard error of the fitted height. */
  readonly standardError: number;
  /** For the true height of the line at x. */
  readonly confidenceInterval: Interval;
  /** For one new observation at x. */
  readonly predictionInterval: Interval;
}

export interface LinePredictionOptions {
  /** Level of both intervals, two-sided; 0.95 when left out. */
  readonly confidence?: number;
  /** Weight of the new observation, on the scale of the weights of the fit; 1 when left out. */
  readonly weight?: number;
}

/**
 * Height of a fitted line at x, with the interval for the line and the interval for one new observation.
 * Both hold for one x at a time, not for a whole band, and only as far as the line itself holds.
 *
 * @param fit  a line with an estimated or known scatter
 * @param x  finite, in u; inside or outside the range of the data
 * @param options  level (default 0.95) and weight of the new observation (default 1)
 * @returns heights in v
 * @throws RangeError on a non-finite x, a level outside (0, 1) or a weight that is not positive
 * @source Draper & Smith (1998), Applied Regression Analysis, 3rd ed., sec. 3.1
 * @oracle test/oracles/statistics-regression/generate.R (predict.lm)
 * @example predictOnLine(ordinaryLeastSquares([[0, 0], [1, 1], [2, 2]]), 3) // => { fitted: 3, standardError: 0 }
 */
export function predictOnLine(fit: LineFit, x: number, options: LinePredictionOptions = {}): LinePrediction {
  requireFinite('x', x);
  const { confidence = 0.95, weight = 1 } = options;
  requirePositive('weight', weight);
  const quantile = lineQuantile(fit, confidence);
  const distance = x - fit.centre.x;
  const fitted = fit.centre.y + fit.slope * distance;
  const variance = fit.centreVariance + distance * distance * fit.slopeVariance;
  const half = quantile * Math.sqrt(variance);
  const halfNew = quantile * Math.sqrt(variance + fit.residualVariance / weight);
  return {
    fitted,
    standardError: Math.sqrt(variance),
    confidenceInterval: { lower: fitted - half, upper: fitted + half },
    predictionInterval: { lower: fitted - halfNew, upper: fitted + halfNew },
  };
}
