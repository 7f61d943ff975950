import beta from '@stdlib/stats-base-dists-beta';
import { requireNumber, requirePositive, requireProbability } from './checked-arguments.js';
import { regularisedBeta, regularisedBetaUpper } from './special-functions.js';

const clamped = (x: number): number => Math.min(1, Math.max(0, x));

/**
 * Beta distribution function, P(X ≤ x).
 *
 * @param x  any number; 0 below the interval [0, 1], 1 above it
 * @param a  positive
 * @param b  positive
 * @returns a probability
 * @throws RangeError on NaN or a parameter that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.17
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example betaCdf(0.5, 2, 2) // => 0.5
 */
export function betaCdf(x: number, a: number, b: number): number {
  requireNumber('x', x);
  return regularisedBeta(clamped(x), a, b);
}

/**
 * Upper tail of the beta distribution, P(X > x), with full relative precision near 1.
 *
 * @param x  any number
 * @param a  positive
 * @param b  positive
 * @returns a probability
 * @throws RangeError on NaN or a parameter that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.17
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example betaSurvival(1, 2, 2) // => 0
 */
export function betaSurvival(x: number, a: number, b: number): number {
  requireNumber('x', x);
  return regularisedBetaUpper(clamped(x), a, b);
}

/**
 * Quantile of the beta distribution.
 *
 * @param probability  between 0 and 1
 * @param a  positive
 * @param b  positive
 * @returns the x with P(X ≤ x) = probability; 0 at 0, 1 at 1
 * @throws RangeError on arguments outside these ranges
 * @source NIST DLMF 8.17.2, inverted
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example betaQuantile(0.25, 1, 1) // => 0.25
 */
export function betaQuantile(probability: number, a: number, b: number): number {
  requireProbability('probability', probability);
  requirePositive('a', a);
  requirePositive('b', b);
  if (probability === 0 || probability === 1) return probability;
  return beta.quantile(probability, a, b);
}

/**
 * Logarithm of the beta density.
 *
 * @param x  any number; −Infinity outside [0, 1]
 * @param a  positive
 * @param b  positive
 * @returns ln f(x)
 * @throws RangeError on NaN or a parameter that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.17
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example betaLogPdf(0.5, 1, 1) // => 0
 */
export function betaLogPdf(x: number, a: number, b: number): number {
  requireNumber('x', x);
  requirePositive('a', a);
  requirePositive('b', b);
  if (x < 0 || x > 1) return -Infinity;
  return beta.logpdf(x, a, b);
}
