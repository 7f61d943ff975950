import { requireCount, requireNumber, requireProbability } from './checked-arguments.js';
import { normalQuantile } from './normal.js';
import { smallestCount } from './smallest-count.js';
import { logGamma, regularisedBeta, regularisedBetaUpper } from './special-functions.js';

/**
 * Binomial distribution function, P(K ≤ k).
 *
 * @param k  any number; its whole part counts, below 0 gives 0, from `trials` up gives 1
 * @param trials  whole number, 0 or more
 * @param chance  chance of success of one trial, between 0 and 1
 * @returns a probability
 * @throws RangeError on arguments outside these ranges
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.18; incomplete beta form NIST DLMF 8.17.5
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example binomialCdf(0, 1, 0.5) // => 0.5
 */
export function binomialCdf(k: number, trials: number, chance: number): number {
  requireNumber('k', k);
  requireCount('trials', trials);
  requireProbability('chance', chance);
  if (k < 0) return 0;
  const whole = Math.floor(k);
  if (whole >= trials) return 1;
  return regularisedBetaUpper(chance, whole + 1, trials - whole);
}

/**
 * Upper tail of the binomial distribution, P(K > k), strictly above k.
 *
 * @param k  any number; its whole part counts
 * @param trials  whole number, 0 or more
 * @param chance  chance of success of one trial, between 0 and 1
 * @returns a probability, with full relative precision when small
 * @throws RangeError on arguments outside these ranges
 * @source NIST DLMF 8.17.5
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example binomialSurvival(1, 1, 0.5) // => 0
 */
export function binomialSurvival(k: number, trials: number, chance: number): number {
  requireNumber('k', k);
  requireCount('trials', trials);
  requireProbability('chance', chance);
  if (k < 0) return 1;
  const whole = Math.floor(k);
  if (whole >= trials) return 0;
  return regularisedBeta(chance, whole + 1, trials - whole);
}

/**
 * Quantile of the binomial distribution: the smallest k with P(K ≤ k) ≥ probability.
 *
 * @param probability  between 0 and 1
 * @param trials  whole number, 0 or more
 * @param chance  chance of success of one trial, between 0 and 1
 * @returns a whole number between 0 and `trials`
 * @throws RangeError on arguments outside these ranges
 * @source definition of the quantile of a discrete distribution
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example binomialQuantile(0.5, 10, 0.5) // => 5
 */
export function binomialQuantile(probability: number, trials: number, chance: number): number {
  requireProbability('probability', probability);
  requireCount('trials', trials);
  requireProbability('chance', chance);
  if (probability === 0 || chance === 0) return 0;
  if (probability === 1) return trials;
  const spread = Math.sqrt(trials * chance * (1 - chance));
  const guess = trials * chance + normalQuantile(probability) * spread;
  return smallestCount(probability, guess, trials, (k) => binomialCdf(k, trials, chance));
}

/**
 * Logarithm of the binomial probability of exactly k.
 *
 * @param k  whole number; above `trials` gives −Infinity
 * @param trials  whole number, 0 or more
 * @param chance  chance of success of one trial, between 0 and 1
 * @returns ln P(K = k)
 * @throws RangeError on arguments outside these ranges
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.18
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example binomialLogPmf(1, 1, 0.5) // => -0.6931471805599453
 */
export function binomialLogPmf(k: number, trials: number, chance: number): number {
  requireCount('k', k);
  requireCount('trials', trials);
  requireProbability('chance', chance);
  if (k > trials) return -Infinity;
  const fails = trials - k;
  const logChoices = logGamma(trials + 1) - logGamma(k + 1) - logGamma(fails + 1);
  const hits = k === 0 ? 0 : k * Math.log(chance);
  const misses = fails === 0 ? 0 : fails * Math.log1p(-chance);
  return logChoices + hits + misses;
}
