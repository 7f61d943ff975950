import { gammaCdf, gammaLogPdf, gammaQuantile, gammaSurvival } from './gamma.js';

/**
 * Chi-square distribution function, P(X ≤ x).
 *
 * @param x  any number; 0 or less gives 0
 * @param degreesOfFreedom  positive, need not be whole
 * @returns a probability
 * @throws RangeError on NaN or degrees of freedom that are not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.6
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example chiSquareCdf(0, 3) // => 0
 */
export function chiSquareCdf(x: number, degreesOfFreedom: number): number {
  return gammaCdf(x, degreesOfFreedom / 2, 0.5);
}

/**
 * Upper tail of the chi-square distribution, P(X > x): the usual p-value.
 *
 * @param x  any number; 0 or less gives 1
 * @param degreesOfFreedom  positive, need not be whole
 * @returns a probability, with full relative precision for large x
 * @throws RangeError on NaN or degrees of freedom that are not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.6
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example chiSquareSurvival(0, 3) // => 1
 */
export function chiSquareSurvival(x: number, degreesOfFreedom: number): number {
  return gammaSurvival(x, degreesOfFreedom / 2, 0.5);
}

/**
 * Quantile of the chi-square distribution.
 *
 * @param probability  between 0 and 1
 * @param degreesOfFreedom  positive, need not be whole
 * @returns the x with P(X ≤ x) = probability; 0 at 0, Infinity at 1
 * @throws RangeError on arguments outside these ranges
 * @source NIST/SEMATECH e-Handbook 1.3.6.7.4
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example chiSquareQuantile(0.5, 2) // => 1.3862943611198906
 */
export function chiSquareQuantile(probability: number, degreesOfFreedom: number): number {
  return gammaQuantile(probability, degreesOfFreedom / 2, 0.5);
}

/**
 * Logarithm of the chi-square density.
 *
 * @param x  any number; −Infinity below 0
 * @param degreesOfFreedom  positive, need not be whole
 * @returns ln f(x)
 * @throws RangeError on NaN or degrees of freedom that are not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.6
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example chiSquareLogPdf(0, 2) // => -0.6931471805599453
 */
export function chiSquareLogPdf(x: number, degreesOfFreedom: number): number {
  return gammaLogPdf(x, degreesOfFreedom / 2, 0.5);
}
