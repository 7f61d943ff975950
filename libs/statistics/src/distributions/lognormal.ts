import { requireFinite, requireNumber, requirePositive, requireProbability } from './checked-arguments.js';
import { normalCdf, normalLogPdf, normalQuantile, normalSurvival } from './normal.js';

function requireLognormal(logMean: number, logStandardDeviation: number): void {
  requireFinite('logMean', logMean);
  requirePositive('logStandardDeviation', logStandardDeviation);
}

const logOrBelow = (x: number): number => (x <= 0 ? -Infinity : Math.log(x));

/**
 * Lognormal distribution function, P(X ≤ x).
 *
 * @param x  any number; 0 or less gives 0
 * @param logMean  mean of ln X, finite
 * @param logStandardDeviation  standard deviation of ln X, positive
 * @returns a probability
 * @throws RangeError on NaN or a standard deviation that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.9
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example lognormalCdf(1, 0, 2) // => 0.5
 */
export function lognormalCdf(x: number, logMean: number, logStandardDeviation: number): number {
  requireNumber('x', x);
  requireLognormal(logMean, logStandardDeviation);
  return normalCdf(logOrBelow(x), logMean, logStandardDeviation);
}

/**
 * Lognormal survival function, P(X > x).
 *
 * @param x  any number; 0 or less gives 1
 * @param logMean  mean of ln X, finite
 * @param logStandardDeviation  standard deviation of ln X, positive
 * @returns a probability, with full relative precision for large x
 * @throws RangeError on NaN or a standard deviation that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.9
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example lognormalSurvival(1, 0, 2) // => 0.5
 */
export function lognormalSurvival(x: number, logMean: number, logStandardDeviation: number): number {
  requireNumber('x', x);
  requireLognormal(logMean, logStandardDeviation);
  return normalSurvival(logOrBelow(x), logMean, logStandardDeviation);
}

/**
 * Quantile of the lognormal distribution.
 *
 * @param probability  between 0 and 1
 * @param logMean  mean of ln X, finite
 * @param logStandardDeviation  standard deviation of ln X, positive
 * @returns the x with P(X ≤ x) = probability; 0 at 0, Infinity at 1
 * @throws RangeError on arguments outside these ranges
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.9
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example lognormalQuantile(0.5, 0, 2) // => 1
 */
export function lognormalQuantile(
  probability: number,
  logMean: number,
  logStandardDeviation: number,
): number {
  requireProbability('probability', probability);
  requireLognormal(logMean, logStandardDeviation);
  return Math.exp(normalQuantile(probability, logMean, logStandardDeviation));
}

/**
 * Logarithm of the lognormal density.
 *
 * @param x  any number; −Infinity at 0 or less
 * @param logMean  mean of ln X, finite
 * @param logStandardDeviation  standard deviation of ln X, positive
 * @returns ln f(x)
 * @throws RangeError on NaN or a standard deviation that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.9
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example lognormalLogPdf(1, 0, 1) // => -0.9189385332046727
 */
export function lognormalLogPdf(x: number, logMean: number, logStandardDeviation: number): number {
  requireNumber('x', x);
  requireLognormal(logMean, logStandardDeviation);
  if (x <= 0 || x === Infinity) return -Infinity;
  const logX = Math.log(x);
  return normalLogPdf(logX, logMean, logStandardDeviation) - logX;
}
