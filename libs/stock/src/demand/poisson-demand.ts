import { poissonLogPmf, poissonQuantile } from '@endfloat/statistics';
import { neglectedTail, noDemand, type DemandDistribution } from './demand-distribution.js';

/**
 * Poisson demand, cut after the first number with at most 1e-13 beyond it; what lies beyond is laid on the next number.
 *
 * @param mean  pieces in the stretch of time, 0 or more, at most 10,000
 * @returns distribution of the number of pieces
 * @throws RangeError on a mean outside that range
 * @source definition of the Poisson distribution
 * @example poissonDemand(0).probabilities // => [1]
 */
export function poissonDemand(mean: number): DemandDistribution {
  if (!(mean >= 0 && mean <= 10_000)) throw new RangeError(`mean must lie between 0 and 10000, got ${mean}`);
  if (mean === 0) return noDemand;
  const most = poissonQuantile(1 - neglectedTail, mean) + 1;
  const probabilities = Array.from({ length: most }, (_, count) => Math.exp(poissonLogPmf(count, mean)));
  const rest = 1 - probabilities.reduce((sum, chance) => sum + chance, 0);
  return { probabilities: [...probabilities, Math.max(0, rest)] };
}
