import { requirePositive } from './checked-arguments.js';
import { weibullCdf, weibullLogPdf, weibullQuantile, weibullSurvival } from './weibull.js';

/**
 * Exponential distribution function, F(x) = 1 − exp(−x / mean).
 *
 * @param x  any number; 0 or less gives 0
 * @param mean  positive
 * @returns a probability
 * @throws RangeError on NaN or a mean that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.7
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example exponentialCdf(0, 10) // => 0
 */
export function exponentialCdf(x: number, mean: number): number {
  requirePositive('mean', mean);
  return weibullCdf(x, mean, 1);
}

/**
 * Exponential survival function, S(x) = exp(−x / mean).
 *
 * @param x  any number; 0 or less gives 1
 * @param mean  positive
 * @returns a probability
 * @throws RangeError on NaN or a mean that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.7
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example exponentialSurvival(0, 10) // => 1
 */
export function exponentialSurvival(x: number, mean: number): number {
  requirePositive('mean', mean);
  return weibullSurvival(x, mean, 1);
}

/**
 * Quantile of the exponential distribution, −mean · ln(1 − p).
 *
 * @param probability  between 0 and 1
 * @param mean  positive
 * @returns 0 at 0, Infinity at 1
 * @throws RangeError on arguments outside these ranges
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.7
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example exponentialQuantile(0.5, 1) // => 0.6931471805599453
 */
export function exponentialQuantile(probability: number, mean: number): number {
  requirePositive('mean', mean);
  return weibullQuantile(probability, mean, 1);
}

/**
 * Logarithm of the exponential density.
 *
 * @param x  any number; −Infinity below 0
 * @param mean  positive
 * @returns ln f(x)
 * @throws RangeError on NaN or a mean that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.7
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example exponentialLogPdf(2, 1) // => -2
 */
export function exponentialLogPdf(x: number, mean: number): number {
  requirePositive('mean', mean);
  return weibullLogPdf(x, mean, 1);
}
