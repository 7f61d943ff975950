import { requireCount, requireFinite } from '../distributions/checked-arguments.js';
import { poissonCdf, poissonLogPmf } from '../distributions/poisson.js';

/** Σ over x > level of (x − level) p(x), term by term: no difference of nearly equal numbers. */
function tailSum(level: number, mean: number): number {
  let probability = Math.exp(poissonLogPmf(level + 1, mean));
  let sum = 0;
  for (let short = 1; ; short += 1) {
    const term = short * probability;
    sum += term;
    if (term <= sum * 1e-17) return sum;
    probability *= mean / (level + short + 1);
  }
}

/**
 * Mean number of demands waiting, E(D − S)⁺, for one-for-one replenishment and Poisson demand during the lead time.
 *
 * @param level  base stock S, whole number, 0 or more
 * @param leadTimeDemand  mean demand during the lead time, 0 or more
 * @returns expected backorders; the mean itself at level 0; full relative precision also where they are rare
 * @throws RangeError on a level that is not whole or negative, or a mean that is negative or not finite
 * @source Sherbrooke (2004), Optimal Inventory Modeling of Systems, eq. 2.3
 * @oracle test/oracles/statistics-regression/generate.R (direct sum)
 * @example expectedBackorders(0, 2.5) // => 2.5
 */
export function expectedBackorders(level: number, leadTimeDemand: number): number {
  requireCount('level', level);
  requireFinite('leadTimeDemand', leadTimeDemand);
  if (leadTimeDemand < 0) throw new RangeError(`leadTimeDemand must be 0 or more, got ${leadTimeDemand}`);
  if (level === 0 || leadTimeDemand === 0) return level === 0 ? leadTimeDemand : 0;
  if (level >= leadTimeDemand) return tailSum(level, leadTimeDemand);
  // Below the mean the shortage dominates: E(D − S)⁺ = μ − S + E(S − D)⁺, in incomplete gamma form.
  const surplus =
    level * poissonCdf(level, leadTimeDemand) - leadTimeDemand * poissonCdf(level - 1, leadTimeDemand);
  return leadTimeDemand - level + surplus;
}
