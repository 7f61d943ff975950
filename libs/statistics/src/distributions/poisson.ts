import { requireCount, requireNumber, requireProbability } from './checked-arguments.js';
import { logGammaKernel, regularisedGammaLower, regularisedGammaUpper } from './incomplete-gamma.js';
import { normalQuantile } from './normal.js';
import { smallestCount } from './smallest-count.js';

function requireMean(mean: number): void {
  if (!(mean >= 0) || mean === Infinity) throw new RangeError(`mean must be 0 or more, got ${mean}`);
}

/**
 * Poisson distribution function, P(K ≤ k).
 *
 * @param k  any number; its whole part counts, below 0 gives 0
 * @param mean  0 or more
 * @returns a probability
 * @throws RangeError on NaN or a negative mean
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.19; incomplete gamma form NIST DLMF 8.4.10
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example poissonCdf(0, 0) // => 1
 */
export function poissonCdf(k: number, mean: number): number {
  requireNumber('k', k);
  requireMean(mean);
  if (k < 0) return 0;
  if (mean === 0 || k === Infinity) return 1;
  return regularisedGammaUpper(Math.floor(k) + 1, mean);
}

/**
 * Upper tail of the Poisson distribution, P(K > k), strictly above k.
 *
 * @param k  any number; its whole part counts, below 0 gives 1
 * @param mean  0 or more
 * @returns a probability, with full relative precision for large k
 * @throws RangeError on NaN or a negative mean
 * @source NIST DLMF 8.4.10
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example poissonSurvival(0, 0) // => 0
 */
export function poissonSurvival(k: number, mean: number): number {
  requireNumber('k', k);
  requireMean(mean);
  if (k < 0) return 1;
  if (mean === 0 || k === Infinity) return 0;
  return regularisedGammaLower(Math.floor(k) + 1, mean);
}

/**
 * Quantile of the Poisson distribution: the smallest k with P(K ≤ k) ≥ probability.
 *
 * @param probability  between 0 and 1
 * @param mean  0 or more
 * @returns a whole number; Infinity at 1 unless the mean is 0
 * @throws RangeError on arguments outside these ranges
 * @source definition of the quantile of a discrete distribution
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example poissonQuantile(0.5, 1) // => 1
 */
export function poissonQuantile(probability: number, mean: number): number {
  requireProbability('probability', probability);
  requireMean(mean);
  if (probability === 0 || mean === 0) return 0;
  if (probability === 1) return Infinity;
  const guess = mean + normalQuantile(probability) * Math.sqrt(mean);
  return smallestCount(probability, guess, Infinity, (k) => poissonCdf(k, mean));
}

/**
 * Logarithm of the Poisson probability of exactly k.
 *
 * @param k  whole number, 0 or more
 * @param mean  0 or more; a mean of 0 gives −Infinity for k above 0
 * @returns ln P(K = k)
 * @throws RangeError on arguments outside these ranges
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.19
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example poissonLogPmf(0, 2) // => -2
 */
export function poissonLogPmf(k: number, mean: number): number {
  requireCount('k', k);
  requireMean(mean);
  if (mean === 0) return k === 0 ? 0 : -Infinity;
  return k === 0 ? -mean : logGammaKernel(k, mean);
}
