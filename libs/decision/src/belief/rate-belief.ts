import { hatWeights, withoutFaint } from '../grid/hat-weights.js';
import { logNormalShortfall, normalShortfall } from '../grid/shortfall.js';
import { exp } from '../portable/elementary.js';
import type { LogNormalBelief } from '../tables/learned-tables.js';
import { logNormalMean } from './wear-belief.js';

/** A rate estimated from readings of one part, shares of the criterion per 100,000 km. */
export interface EstimatedRate {
  readonly mean: number;
  readonly standardError: number;
}

const STEPS = 7;
const TOP = 3;

/**
 * Rates the look-ahead is solved for: none, then rising quadratically to three logarithmic standard deviations above
 * the fastest population, and where the part at hand has its own estimate, that estimate and two standard errors above it.
 *
 * @param populations  of all parts that may be fitted
 * @param estimate     of the part fitted now, or null
 * @returns rising rates, shares per 100,000 km, the first 0
 */
export function rateNodes(
  populations: readonly LogNormalBelief[],
  estimate: EstimatedRate | null,
): Float64Array {
  const top = Math.max(...populations.map(({ median, logSd }) => median * exp(TOP * logSd)));
  const nodes = Array.from({ length: STEPS + 1 }, (_, i) => (top * i * i) / (STEPS * STEPS));
  if (estimate !== null) nodes.push(estimate.mean, estimate.mean + 2 * estimate.standardError);
  const rising = [...new Set(nodes.filter((node) => node >= 0))].sort((a, b) => a - b);
  return Float64Array.from(rising);
}

/**
 * Weights over the rates for a population.
 *
 * @param nodes       rising rates
 * @param population  lognormal, shares per 100,000 km
 * @returns weights that add up to one
 */
export function populationRateWeights(nodes: Float64Array, population: LogNormalBelief): Float64Array {
  return withoutFaint(
    hatWeights(nodes, logNormalShortfall(population.median, population.logSd, logNormalMean(population))),
  );
}

/**
 * Weights over the rates for an estimate: normal, cut off at no wear (wear does not heal; what lies below counts as none).
 *
 * @param nodes     rising rates
 * @param estimate  mean and standard error
 * @returns weights that add up to one
 * @throws RangeError on an estimate that is not finite or a standard error below zero
 */
export function estimatedRateWeights(nodes: Float64Array, estimate: EstimatedRate): Float64Array {
  return withoutFaint(hatWeights(nodes, normalShortfall(estimate.mean, estimate.standardError)));
}
