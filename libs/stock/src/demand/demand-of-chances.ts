import type { DemandDistribution } from './demand-distribution.js';

/**
 * Number of pieces needed when each of several vans needs one with a chance of its own, independently (Poisson binomial
 * distribution). Exact: the vans are taken in one after the other, nothing is simulated and nothing approximated.
 *
 * @param chances  one per van, between 0 and 1; none gives no demand
 * @returns distribution of the number of pieces, from 0 to the number of vans
 * @throws RangeError on a chance outside [0, 1]
 * @complexity O(n²) time, O(n) memory
 * @source Hong (2013), On computing the distribution function for the Poisson binomial distribution, Computational
 *   Statistics & Data Analysis 59:41–51, sec. 2 (recursive formulas)
 * @example demandOfChances([0.5, 0.5]).probabilities // => [0.25, 0.5, 0.25]
 */
export function demandOfChances(chances: readonly number[]): DemandDistribution {
  const probabilities = new Float64Array(chances.length + 1);
  probabilities[0] = 1;
  chances.forEach((chance, taken) => {
    if (!(chance >= 0 && chance <= 1))
      throw new RangeError(`chance ${taken} must lie between 0 and 1, got ${chance}`);
    for (let count = taken + 1; count > 0; count -= 1)
      probabilities[count] = probabilities[count]! * (1 - chance) + probabilities[count - 1]! * chance;
    probabilities[0] = probabilities[0]! * (1 - chance);
  });
  return { probabilities: [...probabilities] };
}

/**
 * Chance that at least one of several independent reasons makes the same van need the piece.
 *
 * @param chances  of the single reasons, between 0 and 1; none gives 0
 * @returns 1 − ∏(1 − chance)
 * @throws RangeError on a chance outside [0, 1]
 * @source rule of complements for independent events
 * @example chanceOfAny([0.5, 0.5]) // => 0.75
 */
export function chanceOfAny(chances: readonly number[]): number {
  return (
    1 -
    chances.reduce((left, chance) => {
      if (!(chance >= 0 && chance <= 1))
        throw new RangeError(`a chance must lie between 0 and 1, got ${chance}`);
      return left * (1 - chance);
    }, 1)
  );
}
