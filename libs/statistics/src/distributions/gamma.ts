import { requireNumber, requirePositive } from './checked-arguments.js';
import {
  inverseRegularisedGamma,
  logGammaKernel,
  regularisedGammaLower,
  regularisedGammaUpper,
} from './incomplete-gamma.js';

/**
 * Gamma distribution function, P(X ≤ x).
 *
 * @param x  any number; 0 or less gives 0
 * @param shape  positive
 * @param rate  positive; the mean is shape / rate
 * @returns a probability
 * @throws RangeError on NaN or a parameter that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.11
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example gammaCdf(0, 2, 1) // => 0
 */
export function gammaCdf(x: number, shape: number, rate: number): number {
  requireNumber('x', x);
  requirePositive('rate', rate);
  return regularisedGammaLower(shape, Math.max(0, x) * rate);
}

/**
 * Upper tail of the gamma distribution, P(X > x), with full relative precision for large x.
 *
 * @param x  any number; 0 or less gives 1
 * @param shape  positive
 * @param rate  positive
 * @returns a probability
 * @throws RangeError on NaN or a parameter that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.11
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example gammaSurvival(0, 2, 1) // => 1
 */
export function gammaSurvival(x: number, shape: number, rate: number): number {
  requireNumber('x', x);
  requirePositive('rate', rate);
  return regularisedGammaUpper(shape, Math.max(0, x) * rate);
}

/**
 * Quantile of the gamma distribution.
 *
 * @param probability  between 0 and 1
 * @param shape  positive
 * @param rate  positive
 * @returns the x with P(X ≤ x) = probability; 0 at 0, Infinity at 1
 * @throws RangeError on arguments outside these ranges
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.11
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example gammaQuantile(0.5, 1, 1) // => 0.6931471805599453
 */
export function gammaQuantile(probability: number, shape: number, rate: number): number {
  requirePositive('rate', rate);
  return inverseRegularisedGamma(shape, probability) / rate;
}

/**
 * Logarithm of the gamma density.
 *
 * @param x  any number; −Infinity below 0; at 0 the limit (Infinity for a shape under 1)
 * @param shape  positive
 * @param rate  positive
 * @returns ln f(x)
 * @throws RangeError on NaN or a parameter that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.11
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example gammaLogPdf(0, 1, 1) // => 0
 */
export function gammaLogPdf(x: number, shape: number, rate: number): number {
  requireNumber('x', x);
  requirePositive('shape', shape);
  requirePositive('rate', rate);
  if (x < 0 || x === Infinity) return -Infinity;
  if (x === 0) return shape === 1 ? Math.log(rate) : shape < 1 ? Infinity : -Infinity;
  return logGammaKernel(shape, x * rate) + Math.log(shape) - Math.log(x);
}
