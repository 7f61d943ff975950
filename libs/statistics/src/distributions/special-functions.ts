import betainc from '@stdlib/math-base-special-betainc';
import stdlibDigamma from '@stdlib/math-base-special-digamma';
import gammaln from '@stdlib/math-base-special-gammaln';
import { requirePositive, requireProbability } from './checked-arguments.js';

/**
 * Natural logarithm of the gamma function.
 *
 * @param x  positive, finite
 * @returns ln Γ(x)
 * @throws RangeError unless x is positive and finite
 * @source NIST DLMF 5.2
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example logGamma(1) // => 0
 */
export function logGamma(x: number): number {
  requirePositive('x', x);
  return gammaln(x);
}

/**
 * Derivative of the logarithm of the gamma function.
 *
 * @param x  positive, finite
 * @returns ψ(x)
 * @throws RangeError unless x is positive and finite
 * @source NIST DLMF 5.2.2
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example digamma(1) // => -0.5772156649015329
 */
export function digamma(x: number): number {
  requirePositive('x', x);
  return stdlibDigamma(x);
}

/**
 * Regularised incomplete beta function, lower tail: I_x(a, b).
 *
 * @param x  between 0 and 1
 * @param a  positive
 * @param b  positive
 * @returns a probability; 0 at x = 0, 1 at x = 1
 * @throws RangeError on arguments outside these ranges
 * @source NIST DLMF 8.17.2
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example regularisedBeta(0.5, 1, 1) // => 0.5
 */
export function regularisedBeta(x: number, a: number, b: number): number {
  requireProbability('x', x);
  requirePositive('a', a);
  requirePositive('b', b);
  return betainc(x, a, b, true, false);
}

/**
 * Regularised incomplete beta function, upper tail: 1 − I_x(a, b), without the loss of digits of the subtraction.
 *
 * @param x  between 0 and 1
 * @param a  positive
 * @param b  positive
 * @returns a probability; 1 at x = 0, 0 at x = 1
 * @throws RangeError on arguments outside these ranges
 * @source NIST DLMF 8.17.2 and 8.17.4
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example regularisedBetaUpper(0.25, 1, 1) // => 0.75
 */
export function regularisedBetaUpper(x: number, a: number, b: number): number {
  requireProbability('x', x);
  requirePositive('a', a);
  requirePositive('b', b);
  return betainc(x, a, b, true, true);
}
