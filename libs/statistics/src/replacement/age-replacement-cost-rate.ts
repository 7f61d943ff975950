import { requirePositive } from '../distributions/checked-arguments.js';
import { integrate } from './integrate.js';
import { requireLifeDistribution, survivalAt, type LifeDistribution } from './life-distribution.js';
import { requireReplacementCosts, type ReplacementCosts } from './replacement-costs.js';

/**
 * Long-run cost per unit of age when every unit is replaced at the given age or at failure, whichever comes first:
 * (planned · R(t) + failure · F(t)) / ∫₀ᵗ R.
 *
 * @param life  survival function with its end
 * @param costs  planned (positive) and failure cost
 * @param age  positive; from the end of the lives on it is the cost of running to failure
 * @returns cost per unit of age
 * @throws RangeError on an age or planned cost that is not positive, a negative failure cost, or a life that
 *   `ageReplacement` refuses
 * @source Barlow & Hunter (1960), Operations Research 8:90–100, policy I
 * @oracle Jardine & Tsang, Maintenance, Replacement and Reliability, ch. 2, problem 2, in the spec
 * @example ageReplacementCostRate({ survival: (t) => 1 - t / 10, density: () => 0.1, end: 10, typical: 5 }, { planned: 1, failure: 2 }, 10) // => 0.4
 */
export function ageReplacementCostRate(life: LifeDistribution, costs: ReplacementCosts, age: number): number {
  requireLifeDistribution(life);
  requireReplacementCosts(costs);
  requirePositive('age', age);
  const until = Math.min(age, life.end);
  const survival = survivalAt(life, until);
  const cycle = integrate((t) => survivalAt(life, t), 0, until);
  return (costs.planned * survival + costs.failure * (1 - survival)) / cycle;
}
