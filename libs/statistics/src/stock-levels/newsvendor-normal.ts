import { requireFinite } from '../distributions/checked-arguments.js';
import { normalPdf, normalQuantile } from '../distributions/normal.js';
import { criticalRatio, type NewsvendorCosts, type NewsvendorLevel } from './newsvendor-costs.js';

/**
 * Stock for one period under normal demand with the lowest expected cost: the critical-ratio quantile.
 *
 * @param costs  per piece left over and per piece short, both positive
 * @param mean  of the demand, finite
 * @param standardDeviation  0 or more; 0 gives the mean at no cost
 * @returns level, its expected cost and the critical ratio; a continuous level, and negative where a normal distribution
 *   with much of its mass below 0 is a poor model of demand
 * @throws RangeError on a cost that is not positive, a mean that is not finite, a negative or non-finite standard
 *   deviation
 * @source Snyder & Shen (2019), Fundamentals of Supply Chain Theory, 2nd ed., sec. 4.3.2
 * @oracle Snyder & Shen examples 4.1, 4.3 and 4.4 in the spec (generate.R)
 * @example newsvendorNormal({ over: 1, under: 1 }, 50, 8).level // => 50
 */
export function newsvendorNormal(
  costs: NewsvendorCosts,
  mean: number,
  standardDeviation: number,
): NewsvendorLevel {
  const ratio = criticalRatio(costs);
  requireFinite('mean', mean);
  requireFinite('standardDeviation', standardDeviation);
  if (standardDeviation < 0)
    throw new RangeError(`standardDeviation must be 0 or more, got ${standardDeviation}`);
  const z = normalQuantile(ratio);
  return {
    level: mean + z * standardDeviation,
    expectedCost: (costs.over + costs.under) * normalPdf(z) * standardDeviation,
    criticalRatio: ratio,
  };
}
