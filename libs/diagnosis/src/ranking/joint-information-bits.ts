import { entropyBits } from '../single-cause/entropy-bits.js';

const LONGEST_CHAIN = 16;

/**
 * Expected information of doing several checks together: entropy of the cause now, less the expected entropy after all
 * their results, over all combinations of positive and negative.
 *
 * @param causes  probabilities of the causes, adding up to one
 * @param positive  for each check, probability of a positive result under each cause, in the order of `causes`
 * @returns bits, never negative; 0 for no check
 * @throws RangeError beyond 16 checks (2^n combinations)
 * @complexity O(2^checks x causes)
 * @source Lindley (1956), Annals of Mathematical Statistics 27:986-1005
 * @example jointInformationBits([0.5, 0.5], [[1, 0]]) // => 1
 */
export function jointInformationBits(
  causes: readonly number[],
  positive: readonly (readonly number[])[],
): number {
  if (positive.length > LONGEST_CHAIN)
    throw new RangeError(`a chain of ${positive.length} checks is longer than ${LONGEST_CHAIN}`);
  const expectedAfter = (weights: readonly number[], depth: number): number => {
    const total = weights.reduce((sum, w) => sum + w, 0);
    if (total === 0) return 0;
    const row = positive[depth];
    if (row === undefined) return total * entropyBits(weights.map((w) => w / total));
    const whenPositive = weights.map((w, i) => w * row[i]!);
    const whenNegative = weights.map((w, i) => w * (1 - row[i]!));
    return expectedAfter(whenPositive, depth + 1) + expectedAfter(whenNegative, depth + 1);
  };
  return Math.max(0, entropyBits(causes) - expectedAfter(causes, 0));
}
