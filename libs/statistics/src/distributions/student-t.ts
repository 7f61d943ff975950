import studentT from '@stdlib/stats-base-dists-t';
import { requireNumber, requirePositive, requireProbability } from './checked-arguments.js';

/**
 * Distribution function of Student's t, P(T ≤ x).
 *
 * @param x  any number, infinities included
 * @param degreesOfFreedom  positive, need not be whole
 * @returns a probability, with full relative precision in the lower tail
 * @throws RangeError on NaN or degrees of freedom that are not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.4
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example studentTCdf(0, 5) // => 0.5
 */
export function studentTCdf(x: number, degreesOfFreedom: number): number {
  requireNumber('x', x);
  requirePositive('degreesOfFreedom', degreesOfFreedom);
  return studentT.cdf(x, degreesOfFreedom);
}

/**
 * Upper tail of Student's t, P(T > x), with full relative precision for large x.
 *
 * @param x  any number, infinities included
 * @param degreesOfFreedom  positive, need not be whole
 * @returns a probability
 * @throws RangeError on NaN or degrees of freedom that are not positive
 * @source symmetry of the t distribution
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example studentTSurvival(0, 5) // => 0.5
 */
export function studentTSurvival(x: number, degreesOfFreedom: number): number {
  return studentTCdf(-x, degreesOfFreedom);
}

/**
 * Quantile of Student's t.
 *
 * @param probability  between 0 and 1
 * @param degreesOfFreedom  positive, need not be whole
 * @returns the x with P(T ≤ x) = probability; ∓Infinity at 0 and 1
 * @throws RangeError on arguments outside these ranges
 * @source NIST/SEMATECH e-Handbook 1.3.6.7.2
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example studentTQuantile(0.5, 5) // => 0
 */
export function studentTQuantile(probability: number, degreesOfFreedom: number): number {
  requireProbability('probability', probability);
  requirePositive('degreesOfFreedom', degreesOfFreedom);
  if (probability === 0) return -Infinity;
  if (probability === 1) return Infinity;
  if (probability === 0.5) return 0;
  return studentT.quantile(probability, degreesOfFreedom);
}

/**
 * Logarithm of the density of Student's t.
 *
 * @param x  any number; ±Infinity gives −Infinity
 * @param degreesOfFreedom  positive, need not be whole
 * @returns ln f(x)
 * @throws RangeError on NaN or degrees of freedom that are not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.4
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example studentTLogPdf(0, 1) // => -1.1447298858494
 */
export function studentTLogPdf(x: number, degreesOfFreedom: number): number {
  requireNumber('x', x);
  requirePositive('degreesOfFreedom', degreesOfFreedom);
  if (!Number.isFinite(x)) return -Infinity;
  return studentT.logpdf(x, degreesOfFreedom);
}
