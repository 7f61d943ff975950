import { requireProbability } from '../distributions/checked-arguments.js';

/** Refuses a list of probabilities that does not add up to 1 within rounding. */
export function requireDistribution(probabilities: readonly number[]): void {
  probabilities.forEach((probability, i) => requireProbability(`probability ${i}`, probability));
  const sum = probabilities.reduce((total, probability) => total + probability, 0);
  if (Math.abs(sum - 1) > 1e-9) throw new RangeError(`probabilities must add up to 1, got ${sum}`);
}

/**
 * Shannon entropy of a discrete distribution, in bits: how many yes-or-no answers, on average, are still missing.
 *
 * @param probabilities  of exclusive and exhaustive cases, adding up to 1
 * @returns bits; 0 when one case is certain; cases of probability 0 add nothing
 * @throws RangeError on a number outside [0, 1], or a sum that is not 1 within 1e-9
 * @source Shannon (1948), Bell System Technical Journal 27:379–423
 * @oracle cases worked by hand in the spec
 * @example entropy([0.5, 0.25, 0.25]) // => 1.5
 */
export function entropy(probabilities: readonly number[]): number {
  requireDistribution(probabilities);
  return probabilities.reduce((sum, p) => (p === 0 ? sum : sum - p * Math.log2(p)), 0);
}
