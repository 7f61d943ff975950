import type { FunctionalEvidence } from '../comeback/comeback-predictor.js';
import { hatWeights, normalised, withoutFaint } from '../grid/hat-weights.js';
import { logNormalShortfall, normalShortfall } from '../grid/shortfall.js';
import { exp, log, logistic } from '../portable/elementary.js';
import type { LearnedTables, LogNormalBelief } from '../tables/learned-tables.js';
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
 * Density of a population at the wear nodes, relative to its greatest, and never nothing: a reading far from all
 * expectation is believed. Without spread it says nothing.
 *
 * @param population  lognormal in shares of the criterion
 * @returns one number a node, up to 1
 */
export function relativeDensity(population: LogNormalBelief): Float64Array {
  if (population.logSd === 0) return new Float64Array(wearNodes.length).fill(1);
  const logs = Array.from(wearNodes, (node) => logDensity(population, Math.max(node, 0.01)));
  const greatest = Math.max(...logs);
  return Float64Array.from(logs, (value) => Math.max(1e-30, exp(value - greatest)));
}

/** Share of parts that may have been fitted in the workshop's time, each renewal as likely as another; JUDGEMENT. */
const RENEWED = 0.5;

/**
 * Density of the wear a part may have had when it was first measured, at the wear nodes: found on the vehicle, or once
 * fitted as one of the renewals. What it was is not asked; the first reading tells them apart.
 *
 * @param wear  populations of the tables
 * @returns one number a node, up to 1 and never nothing; 1 everywhere where some population has no spread
 */
export function anyPartDensity({ fittedPart, byAction }: LearnedTables['wear']): Float64Array {
  const renewed = Object.values(byAction).map(({ start }) => start);
  if ([fittedPart.start, ...renewed].some(({ logSd }) => logSd === 0))
    return relativeDensity(fittedPart.start);
  const density = new Float64Array(wearNodes.length);
  const add = ({ median, logSd }: LogNormalBelief, share: number) => {
    wearNodes.forEach((node, i) => {
      const z = log(Math.max(node, 0.01) / median) / logSd;
      density[i] = density[i]! + (share * exp(-0.5 * z * z)) / (logSd * Math.max(node, 0.01));
    });
  };
  add(fittedPart.start, 1 - RENEWED);
  for (const start of renewed) add(start, RENEWED / renewed.length);
  const greatest = density.reduce((most, value) => Math.max(most, value), 0);
  return density.map((value) => Math.max(1e-30, value / greatest));
}

/**
 * Likelihood of the functional criterion as it was judged, by wear node.
 *
 * @param functional  validly judged, or none
 * @param width       share of the criterion over which it turns
 * @returns one number a node, up to 1
 */
export function functionalLikelihood(functional: FunctionalEvidence, width: number): Float64Array {
  if (functional === 'none') return new Float64Array(wearNodes.length).fill(1);
  const sign = functional === 'positive' ? 1 : -1;
  return wearNodes.map((node) => Math.max(1e-9, logistic((sign * (node - 1)) / width)));
}

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
  const density = relativeDensity(population);
  const posterior = withoutFaint(normalised(direct.map((weight, i) => weight * density[i]!)));
  return withFunctional(posterior, functional, functionalWidth);
}

function withFunctional(weights: Float64Array, functional: FunctionalEvidence, width: number): Float64Array {
  if (functional === 'none') return weights;
  const likelihood = functionalLikelihood(functional, width);
  return withoutFaint(normalised(weights.map((weight, i) => weight * likelihood[i]!)));
}
