import { requireFinite } from '../distributions/checked-arguments.js';
import { normalQuantile } from '../distributions/normal.js';
import { upperProbability } from '../inference/confidence-level.js';
import type { Interval } from '../inference/interval.js';
import { shiftedCovariance, type UncertainLine } from './uncertain-line.js';

export interface UncertainLinePrediction {
  readonly height: number;
  readonly standardError: number;
  readonly interval: Interval;
}

/**
 * Height of an uncertain line at x with a normal interval. With an extra variance (that of one observation) the interval is
 * for a new observation. Normal quantiles take all variances as known: with few units behind them it is too narrow.
 *
 * @param line  level, slope and covariance
 * @param x  finite, in u
 * @param confidence  two-sided level, strictly between 0 and 1; default 0.95
 * @param extraVariance  added to the variance of the height, 0 or more, in v²; default 0
 * @returns height, standard error (extra variance included) and interval, in v
 * @throws RangeError on a non-finite x, a negative extra variance or a level outside (0, 1)
 * @source normal theory
 * @oracle cases worked by hand in the spec
 * @example predictOnUncertainLine({ centre: 2, level: 5, slope: 1, covariance: { level: 0, cross: 0, slope: 0 } }, 4).height // => 7
 */
export function predictOnUncertainLine(
  line: UncertainLine,
  x: number,
  confidence = 0.95,
  extraVariance = 0,
): UncertainLinePrediction {
  requireFinite('x', x);
  requireFinite('extraVariance', extraVariance);
  if (extraVariance < 0) throw new RangeError(`extraVariance must be 0 or more, got ${extraVariance}`);
  const quantile = normalQuantile(upperProbability(confidence));
  const distance = x - line.centre;
  const height = line.level + distance * line.slope;
  const standardError = Math.sqrt(shiftedCovariance(line.covariance, distance).level + extraVariance);
  const half = quantile * standardError;
  return { height, standardError, interval: { lower: height - half, upper: height + half } };
}
