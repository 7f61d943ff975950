import { requireProbability } from '../distributions/checked-arguments.js';

/**
 * Probability of an effect under several possible causes that act on their own (noisy-OR): 1 − (1 − leak) Π (1 − wᵢ) over
 * the causes present.
 *
 * @param strengths  wᵢ: how often each cause that is present brings about the effect by itself
 * @param leak  how often the effect comes about by none of them; 0 when left out
 * @returns a probability; the leak alone without a cause
 * @throws RangeError on a number outside [0, 1]
 * @source Pearl (1988), Probabilistic Reasoning in Intelligent Systems, sec. 4.3.2; Russell & Norvig, AIMA, ch. 14
 * @oracle the fever table of Russell & Norvig in the spec
 * @example noisyOr([0.5, 0.5]) // => 0.75
 */
export function noisyOr(strengths: readonly number[], leak = 0): number {
  requireProbability('leak', leak);
  strengths.forEach((strength, i) => requireProbability(`strength ${i}`, strength));
  return -Math.expm1(strengths.reduce((sum, strength) => sum + Math.log1p(-strength), Math.log1p(-leak))) + 0;
}
