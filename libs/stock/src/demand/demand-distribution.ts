import { compensatedSum } from '@endfloat/statistics';

/** How many pieces are asked for in one stretch of time: `probabilities[k]` is the chance of exactly k. They add up to 1. */
export interface DemandDistribution {
  readonly probabilities: readonly number[];
}

/** Chance beyond which the tail of an unbounded demand is laid on its last number. */
export const neglectedTail = 1e-13;

/** No demand at all, for certain. */
export const noDemand: DemandDistribution = { probabilities: [1] };

/**
 * Distribution function of a demand.
 *
 * @param demand  a distribution
 * @param count   any whole number; below 0 gives 0
 * @returns P(D ≤ count)
 * @throws RangeError on a count that is not whole
 * @source definition
 * @example demandUpTo({ probabilities: [0.5, 0.5] }, 0) // => 0.5
 */
export function demandUpTo({ probabilities }: DemandDistribution, count: number): number {
  if (!Number.isInteger(count)) throw new RangeError(`count must be whole, got ${count}`);
  if (count >= probabilities.length - 1) return 1;
  return count < 0 ? 0 : Math.min(1, compensatedSum(probabilities.slice(0, count + 1)));
}

/** What is said of a demand: mean, spread and the numbers it lies between. */
export interface DemandSummary {
  readonly mean: number;
  readonly standardDeviation: number;
  readonly median: number;
  /** equal-tailed: not more than (1 − confidence) / 2 lies below `lower`, nor above `upper` */
  readonly lower: number;
  readonly upper: number;
  readonly confidence: number;
}

/**
 * Smallest number that is not exceeded with at least a probability, which counts as met to 1 part in 10¹³.
 *
 * @param demand       a distribution
 * @param probability  between 0 and 1; 0 gives 0
 * @returns pieces
 * @throws RangeError on a probability outside [0, 1]
 * @source definition of the quantile of a discrete distribution
 * @example demandQuantile({ probabilities: [0.5, 0.3, 0.2] }, 0.8) // => 1
 */
export function demandQuantile(demand: DemandDistribution, probability: number): number {
  if (!(probability >= 0 && probability <= 1))
    throw new RangeError(`probability must lie between 0 and 1, got ${probability}`);
  const most = demand.probabilities.length - 1;
  for (let count = 0; count < most; count += 1) {
    // A relative slack keeps an exactly met probability from slipping one piece up.
    if (demandUpTo(demand, count) >= probability * (1 - 1e-13)) return count;
  }
  return most;
}

/**
 * Mean, spread and interval of a demand.
 *
 * @param demand      a distribution
 * @param confidence  two-sided, default 0.9
 * @returns moments (divisor of the variance: the whole distribution), median and equal-tailed interval, in pieces
 * @throws RangeError on a confidence outside (0, 1)
 * @source definitions
 * @example summariseDemand({ probabilities: [0.25, 0.5, 0.25] }).mean // => 1
 */
export function summariseDemand(demand: DemandDistribution, confidence = 0.9): DemandSummary {
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError(`confidence must lie between 0 and 1, got ${confidence}`);
  const { probabilities } = demand;
  const mean = compensatedSum(probabilities.map((chance, count) => chance * count));
  const variance = compensatedSum(probabilities.map((chance, count) => chance * (count - mean) ** 2));
  const tail = (1 - confidence) / 2;
  return {
    mean,
    standardDeviation: Math.sqrt(Math.max(0, variance)),
    median: demandQuantile(demand, 0.5),
    lower: demandQuantile(demand, tail),
    upper: demandQuantile(demand, 1 - tail),
    confidence,
  };
}
