import {
  findRoot,
  gammaQuantile,
  gammaSurvival,
  gammaCdf,
  gammaLogPdf,
  logGamma,
  normalCdf,
  normalLogPdf,
  normalQuantile,
  normalSurvival,
} from '@endfloat/statistics';
import type { OpenInterval } from './conformance-probability.js';
import { integratePiecewise } from './integrate-piecewise.js';

/** What the true values of such items are like before any is measured. */
export type PopulationPrior =
  | { readonly kind: 'normal'; readonly mean: number; readonly standardDeviation: number }
  | { readonly kind: 'gamma'; readonly shape: number; readonly rate: number };

/** Risks of an acceptance rule over all items, each a joint probability. */
export interface GlobalRisk {
  /** Share of items whose true value is not permitted. */
  readonly nonconforming: number;
  /** Not permitted and accepted. */
  readonly consumerRisk: number;
  /** Permitted and rejected. */
  readonly producerRisk: number;
}

/**
 * Risks of accepting by a reading, over a population: the joint probability of a bad item accepted (consumer) and of a
 * good item rejected (producer), for a normal measurement of standard uncertainty u.
 *
 * @param prior       distribution of true values
 * @param standardUncertainty  of a reading, above zero
 * @param permitted   limits for the true value; null: open to that side
 * @param acceptance  limits for the reading, alike
 * @returns the three probabilities; the joint ones are integrated over the true value, to about 1e-9, for a gamma shape
 *   of any size from 0.01 on
 * @throws RangeError on parameters outside their ranges, limits that are not finite or exchanged
 * @source JCGM 106:2012, 9.5.2 to 9.5.4
 * @oracle libs/metrology/src/published-cases (JCGM 106 clause 9.5.4 example)
 * @example globalRisk({ kind: 'normal', mean: 0, standardDeviation: 1 }, 0.1,
 *   { lower: null, upper: 0 }, { lower: null, upper: 0 }).nonconforming // => 0.5
 */
export function globalRisk(
  prior: PopulationPrior,
  standardUncertainty: number,
  permitted: OpenInterval,
  acceptance: OpenInterval,
): GlobalRisk {
  if (!(standardUncertainty > 0) || !Number.isFinite(standardUncertainty)) {
    throw new RangeError('a standard uncertainty is a finite number above zero');
  }
  for (const interval of [permitted, acceptance]) requireEnds(interval);
  const population = populationOf(prior);
  const accepted = (x: number): number => acceptanceProbability(x, standardUncertainty, acceptance);
  const rejected = (x: number): number => rejectionProbability(x, standardUncertainty, acceptance);
  const breaks = [
    ...population.breaks,
    ...[acceptance.lower, acceptance.upper].flatMap((end) =>
      end === null ? [] : [-8, -4, -2, -1, 0, 1, 2, 4, 8].map((k) => end + k * standardUncertainty),
    ),
  ];
  const { axis } = population;
  const marks = breaks.map((x) => axis.placeOf(x));
  const integrate = (chance: (x: number) => number, from: number, to: number): number => {
    const low = Math.max(axis.placeOf(from), axis.placeOf(population.from));
    const high = Math.min(axis.placeOf(to), axis.placeOf(population.to));
    const density = (place: number): number => axis.density(place) * chance(axis.valueAt(place));
    return low < high ? Math.min(1, integratePiecewise(density, low, high, marks)) : 0;
  };
  const lower = permitted.lower ?? -Infinity;
  const upper = permitted.upper ?? Infinity;
  return {
    nonconforming:
      (permitted.lower === null ? 0 : population.below(lower)) +
      (permitted.upper === null ? 0 : population.above(upper)),
    consumerRisk: integrate(accepted, -Infinity, lower) + integrate(accepted, upper, Infinity),
    producerRisk: integrate(rejected, lower, upper),
  };
}

function requireEnds({ lower, upper }: OpenInterval): void {
  if (![lower, upper].every((end) => end === null || Number.isFinite(end)))
    throw new RangeError('limits are finite numbers');
  if (lower !== null && upper !== null && lower > upper)
    throw new RangeError('the lower limit is above the upper limit');
}

/** An acceptance limit, or that no limit has the wanted risk (the risk cannot exceed the share of bad items). */
export type AcceptanceLimitResult =
  | { readonly kind: 'estimated'; readonly acceptanceLimit: number; readonly risk: GlobalRisk }
  | {
      readonly kind: 'notReachable';
      readonly leastConsumerRisk: number;
      readonly greatestConsumerRisk: number;
    }
  | { readonly kind: 'notConverged' };

/**
 * Upper acceptance limit that brings the global consumer's risk for an upper limit to a wanted value.
 *
 * @param prior       distribution of true values
 * @param standardUncertainty  of a reading, above zero
 * @param upperLimit  upper limit for the true value
 * @param consumerRisk  wanted joint probability, above 0, below 1
 * @returns the acceptance limit, searched within 20 standard uncertainties on either side of the limit, with its risks;
 *   `notReachable` with the least and greatest risk there; `notConverged`
 * @throws RangeError on parameters outside their ranges
 * @source JCGM 106:2012, 9.5.4
 * @example upperAcceptanceLimit({ kind: 'gamma', shape: 4, rate: 4 }, 0.25, 2, 0.001).kind // => 'estimated'
 */
export function upperAcceptanceLimit(
  prior: PopulationPrior,
  standardUncertainty: number,
  upperLimit: number,
  consumerRisk: number,
): AcceptanceLimitResult {
  if (!(consumerRisk > 0 && consumerRisk < 1)) throw new RangeError('a risk lies between 0 and 1');
  const permitted = { lower: null, upper: upperLimit };
  const riskAt = (acceptanceLimit: number): GlobalRisk =>
    globalRisk(prior, standardUncertainty, permitted, { lower: null, upper: acceptanceLimit });
  const low = upperLimit - 20 * standardUncertainty;
  const high = upperLimit + 20 * standardUncertainty;
  const found = findRoot((limit) => riskAt(limit).consumerRisk - consumerRisk, low, high);
  switch (found.kind) {
    case 'found':
      return { kind: 'estimated', acceptanceLimit: found.root, risk: riskAt(found.root) };
    case 'noSignChange': {
      const [least, greatest] = [riskAt(low).consumerRisk, riskAt(high).consumerRisk];
      return { kind: 'notReachable', leastConsumerRisk: least, greatestConsumerRisk: greatest };
    }
    case 'notConverged':
      return { kind: 'notConverged' };
  }
}

const below = (x: number, mean: number, u: number): number => normalCdf((x - mean) / u);
const above = (x: number, mean: number, u: number): number => normalSurvival((x - mean) / u);

function acceptanceProbability(truth: number, u: number, { lower, upper }: OpenInterval): number {
  if (lower === null) return upper === null ? 1 : below(upper, truth, u);
  if (upper === null) return above(lower, truth, u);
  return Math.max(
    0,
    lower > truth
      ? above(lower, truth, u) - above(upper, truth, u)
      : below(upper, truth, u) - below(lower, truth, u),
  );
}

function rejectionProbability(truth: number, u: number, { lower, upper }: OpenInterval): number {
  return (lower === null ? 0 : below(lower, truth, u)) + (upper === null ? 0 : above(upper, truth, u));
}

/** Where a population is integrated: places s with values x(s), and the density of s. */
interface Axis {
  readonly placeOf: (x: number) => number;
  readonly valueAt: (place: number) => number;
  readonly density: (place: number) => number;
}

interface Population {
  readonly axis: Axis;
  readonly below: (x: number) => number;
  readonly above: (x: number) => number;
  /** Range outside which less than 1e-14 lies, and points between which the density is smooth. */
  readonly from: number;
  readonly to: number;
  readonly breaks: readonly number[];
}

const quantileMarks = [1e-6, 0.001, 0.02, 0.1, 0.3, 0.5, 0.7, 0.9, 0.98, 0.999, 1 - 1e-6];

function populationOf(prior: PopulationPrior): Population {
  if (prior.kind === 'normal') {
    const { mean, standardDeviation } = prior;
    return {
      axis: plainAxis((x) => normalLogPdf(x, mean, standardDeviation)),
      below: (x) => normalCdf(x, mean, standardDeviation),
      above: (x) => normalSurvival(x, mean, standardDeviation),
      from: mean - 9 * standardDeviation,
      to: mean + 9 * standardDeviation,
      breaks: quantileMarks.map((p) => normalQuantile(p, mean, standardDeviation)),
    };
  }
  const { shape, rate } = prior;
  return {
    axis: gammaAxis(shape, rate),
    below: (x) => gammaCdf(x, shape, rate),
    above: (x) => gammaSurvival(x, shape, rate),
    from: gammaQuantile(1e-14, shape, rate),
    to: gammaQuantile(1 - 1e-14, shape, rate),
    breaks: quantileMarks.map((p) => gammaQuantile(p, shape, rate)),
  };
}

/**
 * A gamma density of a shape below 5 is not smooth at 0, and of one below 1 not even finite there. Over s with x = s^m and
 * m · shape at least 5 it starts as the fourth power of s or higher, which Simpson's rule takes to full accuracy.
 */
function gammaAxis(shape: number, rate: number): Axis {
  const power = Math.max(1, Math.ceil(5 / shape));
  if (power === 1) return plainAxis((x) => gammaLogPdf(x, shape, rate));
  const logFactor = shape * Math.log(rate) - logGamma(shape) + Math.log(power);
  const valueAt = (place: number): number => place ** power;
  return {
    placeOf: (x) => (x > 0 ? x ** (1 / power) : 0),
    valueAt,
    density: (place) =>
      place === 0 ? 0 : Math.exp(logFactor + (power * shape - 1) * Math.log(place) - rate * valueAt(place)),
  };
}

const plainAxis = (logDensity: (x: number) => number): Axis => ({
  placeOf: (x) => x,
  valueAt: (place) => place,
  density: (place) => Math.exp(logDensity(place)),
});
