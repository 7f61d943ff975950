import fDistribution from '@stdlib/stats-base-dists-f';
import { requireNumber, requirePositive, requireProbability } from './checked-arguments.js';
import { logGamma, regularisedBeta, regularisedBetaUpper } from './special-functions.js';

/** One tail of F through the incomplete beta function, in whichever of the two complementary variables is under ½. */
function tail(x: number, d1: number, d2: number, side: 'lower' | 'upper'): number {
  if (x <= 0) return side === 'lower' ? 0 : 1;
  if (x === Infinity) return side === 'lower' ? 1 : 0;
  const above = d2 / (d1 * x + d2);
  if (above < 0.5) {
    return side === 'upper'
      ? regularisedBeta(above, d2 / 2, d1 / 2)
      : regularisedBetaUpper(above, d2 / 2, d1 / 2);
  }
  const below = (d1 * x) / (d1 * x + d2);
  return side === 'lower'
    ? regularisedBeta(below, d1 / 2, d2 / 2)
    : regularisedBetaUpper(below, d1 / 2, d2 / 2);
}

/**
 * Distribution function of Fisher's F, P(X ≤ x).
 *
 * @param x  any number; 0 or less gives 0
 * @param numeratorDegrees  positive
 * @param denominatorDegrees  positive
 * @returns a probability
 * @throws RangeError on NaN or degrees of freedom that are not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.5
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example fCdf(1, 2, 2) // => 0.5
 */
export function fCdf(x: number, numeratorDegrees: number, denominatorDegrees: number): number {
  requireNumber('x', x);
  requirePositive('numeratorDegrees', numeratorDegrees);
  requirePositive('denominatorDegrees', denominatorDegrees);
  return tail(x, numeratorDegrees, denominatorDegrees, 'lower');
}

/**
 * Upper tail of Fisher's F, P(X > x): the usual p-value, with full relative precision for large x.
 *
 * @param x  any number; 0 or less gives 1
 * @param numeratorDegrees  positive
 * @param denominatorDegrees  positive
 * @returns a probability
 * @throws RangeError on NaN or degrees of freedom that are not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.5
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example fSurvival(1, 2, 2) // => 0.5
 */
export function fSurvival(x: number, numeratorDegrees: number, denominatorDegrees: number): number {
  requireNumber('x', x);
  requirePositive('numeratorDegrees', numeratorDegrees);
  requirePositive('denominatorDegrees', denominatorDegrees);
  return tail(x, numeratorDegrees, denominatorDegrees, 'upper');
}

/**
 * Quantile of Fisher's F.
 *
 * @param probability  between 0 and 1
 * @param numeratorDegrees  positive
 * @param denominatorDegrees  positive
 * @returns the x with P(X ≤ x) = probability; 0 at 0, Infinity at 1
 * @throws RangeError on arguments outside these ranges
 * @source NIST/SEMATECH e-Handbook 1.3.6.7.3
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example fQuantile(0, 2, 2) // => 0
 */
export function fQuantile(probability: number, numeratorDegrees: number, denominatorDegrees: number): number {
  requireProbability('probability', probability);
  requirePositive('numeratorDegrees', numeratorDegrees);
  requirePositive('denominatorDegrees', denominatorDegrees);
  if (probability === 0) return 0;
  if (probability === 1) return Infinity;
  return fDistribution.quantile(probability, numeratorDegrees, denominatorDegrees);
}

/**
 * Logarithm of the density of Fisher's F.
 *
 * @param x  any number; −Infinity below 0; at 0 the limit
 * @param numeratorDegrees  positive
 * @param denominatorDegrees  positive
 * @returns ln f(x)
 * @throws RangeError on NaN or degrees of freedom that are not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.5
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example fLogPdf(0, 2, 2) // => 0
 */
export function fLogPdf(x: number, numeratorDegrees: number, denominatorDegrees: number): number {
  requireNumber('x', x);
  requirePositive('numeratorDegrees', numeratorDegrees);
  requirePositive('denominatorDegrees', denominatorDegrees);
  if (x < 0 || x === Infinity) return -Infinity;
  const a = numeratorDegrees / 2;
  const b = denominatorDegrees / 2;
  if (x === 0) return a === 1 ? 0 : a < 1 ? Infinity : -Infinity;
  const ratio = numeratorDegrees / denominatorDegrees;
  const logBeta = logGamma(a) + logGamma(b) - logGamma(a + b);
  return a * Math.log(ratio) + (a - 1) * Math.log(x) - (a + b) * Math.log1p(ratio * x) - logBeta;
}
