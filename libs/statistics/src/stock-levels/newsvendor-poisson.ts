import { requireFinite } from '../distributions/checked-arguments.js';
import { poissonQuantile } from '../distributions/poisson.js';
import { expectedBackorders } from './expected-backorders.js';
import { criticalRatio, type NewsvendorCosts, type NewsvendorLevel } from './newsvendor-costs.js';

/**
 * Expected cost of a period at a given level under Poisson demand.
 *
 * @param costs  per piece left over and per piece short, both positive
 * @param mean  of the demand, 0 or more
 * @param level  whole number, 0 or more
 * @returns over · E(S − D)⁺ + under · E(D − S)⁺
 * @throws RangeError on a cost that is not positive, a mean that is negative or not finite, a level that is negative or
 *   not whole
 * @source Snyder & Shen (2019), Fundamentals of Supply Chain Theory, 2nd ed., eq. 4.3
 * @oracle Snyder & Shen example 4.7 in the spec (generate.R)
 * @example newsvendorPoissonCost({ over: 1, under: 4 }, 0, 3) // => 3
 */
export function newsvendorPoissonCost(costs: NewsvendorCosts, mean: number, level: number): number {
  criticalRatio(costs);
  const short = expectedBackorders(level, mean);
  return costs.over * (level - mean + short) + costs.under * short;
}

/**
 * Stock for one period under Poisson demand with the lowest expected cost: the smallest S with
 * P(D ≤ S) ≥ under / (under + over).
 *
 * @param costs  per piece left over and per piece short, both positive
 * @param mean  of the demand, 0 or more; 0 needs no stock
 * @returns level, its expected cost and the critical ratio
 * @throws RangeError on a cost that is not positive, or a mean that is negative or not finite
 * @source Snyder & Shen (2019), Fundamentals of Supply Chain Theory, 2nd ed., sec. 4.3.4
 * @oracle Snyder & Shen example 4.7 in the spec (generate.R)
 * @example newsvendorPoisson({ over: 1, under: 4 }, 0) // => { level: 0, expectedCost: 0, criticalRatio: 0.8 }
 */
export function newsvendorPoisson(costs: NewsvendorCosts, mean: number): NewsvendorLevel {
  const ratio = criticalRatio(costs);
  requireFinite('mean', mean);
  const level = poissonQuantile(ratio, mean);
  return { level, expectedCost: newsvendorPoissonCost(costs, mean, level), criticalRatio: ratio };
}
