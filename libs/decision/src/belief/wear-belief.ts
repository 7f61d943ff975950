import type { FunctionalEvidence } from '../comeback/comeback-predictor.js';
import { hatWeights, normalised, withoutFaint } from '../grid/hat-weights.js';
import { logNormalShortfall, normalShortfall } from '../grid/shortfall.js';
import { exp, log, logistic } from '../portable/elementary.js';
import type { LogNormalBelief } from '../tables/learned-tables.js';
import { wearNodes } from './wear-grid.js';

/** A reading of wear: share of the criterion and its standard uncertainty in the same shares. */
export interface WearReading {
  readonly share: number;
  readonly standardUncertainty: number;
}

/** Mean of a lognormal distribution. */
export const logNormalMean = ({ median, logSd }: LogNormalBelief): number =>
  median * exp(0.5 * logSd * logSd);

const logDensity = ({ median, logSd }: LogNormalBelief, x: number): number => {
  const z = log(x / median) / logSd;
  return -0.5 * z * z - log(x);
};

/**
 * Weights over the wear nodes for a population of parts nobody measured.
 *
 * @param population  lognormal in shares of the criterion
 * @returns weights that add up to one
 */
export function populationWeights(population: LogNormalBelief): Float64Array {
  return withoutFaint(
    hatWeights(wearNodes, logNormalShortfall(population.median, population.logSd, logNormalMean(population))),
  );
}

/**
 * Weights over the wear nodes after a reading: likelihood of the reading times the population, as far as the reading
 * leaves doubt. An exact reading leaves none. Wear is not negative: what a reading puts below zero counts as zero.
 *
 * @param population  what is believed without the reading
 * @param reading     share and standard uncertainty; null where there is none
 * @param functional  validly judged criterion; it speaks for wear beyond or within the criterion
 * @param functionalWidth  share of the criterion over which the functional criterion turns
 * @returns weights that add up to one
 * @throws RangeError on a reading that is not finite or an uncertainty that is negative
 * @source Bayes' rule on a grid
 */
export function wearBelief(
  population: LogNormalBelief,
  reading: WearReading | null,
  functional: FunctionalEvidence,
  functionalWidth: number,
): Float64Array {
  if (reading === null) return withFunctional(populationWeights(population), functional, functionalWidth);
  const direct = withoutFaint(
    hatWeights(wearNodes, normalShortfall(reading.share, reading.standardUncertainty)),
  );
  if (reading.standardUncertainty === 0 || population.logSd === 0) return direct;
  // Relative to the greatest, so that a population far from the reading cannot underflow everywhere.
  const logs = Array.from(direct, (weight, i) =>
    weight === 0 ? -Infinity : log(weight) + logDensity(population, Math.max(wearNodes[i]!, 0.01)),
  );
  const greatest = Math.max(...logs);
  const posterior = withoutFaint(normalised(Float64Array.from(logs, (value) => exp(value - greatest))));
  return withFunctional(posterior, functional, functionalWidth);
}

function withFunctional(weights: Float64Array, functional: FunctionalEvidence, width: number): Float64Array {
  if (functional === 'none') return weights;
  const sign = functional === 'positive' ? 1 : -1;
  const told = weights.map((weight, i) => weight * logistic((sign * (wearNodes[i]! - 1)) / width));
  return withoutFaint(normalised(told));
}
