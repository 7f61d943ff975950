import { hatWeights, normalised, withoutFaint } from '../grid/hat-weights.js';
import { gammaShortfall, normalShortfall } from '../grid/shortfall.js';
import type { LearnedTables } from '../tables/learned-tables.js';
import type { WearReading } from './wear-belief.js';
import { anyPartDensity, populationWeights } from './wear-belief.js';
import { wearNodes } from './wear-grid.js';

/** An inspection of the part before the present one, in shares of the criterion. */
export interface EarlierReading extends WearReading {
  readonly kmBefore: number;
}

/** What is believed of a part: weights over rate x node (index rate x nodes + node), and the two margins. */
export interface PartBelief {
  readonly places: Float64Array;
  readonly wear: Float64Array;
  readonly rates: Float64Array;
}

/** Growth of wear over a distance as weights over steps of the grid, one row a rate. */
export type Growth = (km: number) => readonly Float64Array[];

/** Share of another part altogether that keeps a reading far from all expectation from being impossible; JUDGEMENT. */
const SURPRISE = 1e-6;

const FAINT_STEP = 1e-5;

/**
 * Growth by a gamma process.
 *
 * @param rates  shares of the criterion per 100,000 km
 * @param scale  variance of an increment / its mean
 * @param km     distance
 * @returns weights over steps of the grid, one row a rate; steps below 1e-5 are left out and the rest made up to one
 */
export function gammaGrowth(rates: Float64Array, scale: number, km: number): readonly Float64Array[] {
  return Array.from(rates, (rate) => {
    const weights = hatWeights(wearNodes, gammaShortfall((rate * km) / 100_000, scale));
    let length = weights.length;
    while (length > 1 && weights[length - 1]! < FAINT_STEP) length -= 1;
    return normalised(weights.slice(0, length));
  });
}

/**
 * Weights over rate x node after a distance; what goes beyond the last node stays on it.
 *
 * @param places  weights before
 * @param growth  one row a rate
 * @returns weights after
 */
export function afterDistance(places: Float64Array, growth: readonly Float64Array[]): Float64Array {
  const nodes = wearNodes.length;
  const after = new Float64Array(places.length);
  growth.forEach((steps, r) => {
    const row = r * nodes;
    for (let i = 0; i < nodes; i += 1) {
      const weight = places[row + i]!;
      if (weight < 1e-12) continue;
      const inside = Math.min(steps.length, nodes - i);
      let left = weight;
      for (let j = 0; j < inside; j += 1) {
        const part = weight * steps[j]!;
        after[row + i + j] = after[row + i + j]! + part;
        left -= part;
      }
      if (steps.length > inside) after[row + nodes - 1] = after[row + nodes - 1]! + Math.max(0, left);
    }
  });
  return after;
}

/** Likelihood of a reading over the wear nodes. */
export const readingLikelihood = ({ share, standardUncertainty }: WearReading): Float64Array =>
  withoutFaint(hatWeights(wearNodes, normalShortfall(share, standardUncertainty)));

function told(places: Float64Array, likelihood: Float64Array): Float64Array {
  const nodes = wearNodes.length;
  return normalised(places.map((weight, index) => weight * likelihood[index % nodes]!));
}

/** An exact reading leaves no doubt about the wear, whatever was believed; it may still tell rates apart. */
function exactly(before: Float64Array, likelihood: Float64Array): Float64Array {
  const nodes = wearNodes.length;
  const rates = new Float64Array(before.length / nodes);
  before.forEach((weight, index) => {
    const r = Math.floor(index / nodes);
    rates[r] = rates[r]! + weight * likelihood[index % nodes]!;
  });
  return product(normalised(rates), likelihood);
}

function product(rates: Float64Array, wear: Float64Array): Float64Array {
  const nodes = wear.length;
  const places = new Float64Array(rates.length * nodes);
  rates.forEach((rate, r) => wear.forEach((weight, i) => (places[r * nodes + i] = rate * weight)));
  return places;
}

/** Never impossible: a hair of every wear at every rate that has weight. */
function withSurprise(places: Float64Array, rates: Float64Array): Float64Array {
  const nodes = wearNodes.length;
  return places.map((weight, index) => weight + (SURPRISE * rates[Math.floor(index / nodes)]!) / nodes);
}

/**
 * What is believed of wear and rate before the present reading: the population, taught by every earlier inspection of the
 * part, carried over the distances between.
 *
 * @param wear        populations of parts nobody measured
 * @param rates       weights over the rates
 * @param earlier     earlier inspections, any order
 * @param isMeasuredNow  whether a present reading follows; without any the population itself is the belief
 * @param growth      of wear
 * @returns weights over rate x node, to be multiplied with what the present reading says
 * @throws RangeError on a distance that is negative or not finite
 * @source Bayes' rule on a grid (hidden Markov filter)
 */
export function beforeReading(
  wear: LearnedTables['wear'],
  rates: Float64Array,
  earlier: readonly EarlierReading[],
  isMeasuredNow: boolean,
  growth: Growth,
): Float64Array {
  if (earlier.length === 0)
    return product(rates, isMeasuredNow ? anyPartDensity(wear) : populationWeights(wear.fittedPart.start));
  const ordered = earlier.toSorted((a, b) => b.kmBefore - a.kmBefore || a.share - b.share);
  let places = product(rates, anyPartDensity(wear));
  ordered.forEach((reading, k) => {
    if (!Number.isFinite(reading.kmBefore) || reading.kmBefore < 0)
      throw new RangeError(`an earlier inspection lies 0 km or more back, got ${reading.kmBefore}`);
    places = told(places, readingLikelihood(reading));
    const km = reading.kmBefore - (ordered[k + 1]?.kmBefore ?? 0);
    // Also on one occasion: two sets that cannot both be true must not leave nothing.
    places = withSurprise(km > 0 ? afterDistance(places, growth(km)) : places, rates);
  });
  return places;
}

/**
 * The belief after the present reading and what else speaks for more or less wear.
 *
 * @param before    of `beforeReading`
 * @param reading   the present one, or null
 * @param evidence  likelihood of everything else, by wear node
 * @returns weights over rate x node and their margins
 */
export function believedPart(
  before: Float64Array,
  reading: WearReading | null,
  evidence: Float64Array,
): PartBelief {
  const nodes = wearNodes.length;
  const likelihood = reading === null ? null : readingLikelihood(reading);
  const isExact = reading?.standardUncertainty === 0;
  const all = likelihood === null || isExact ? evidence : evidence.map((value, i) => value * likelihood[i]!);
  const places = isExact ? exactly(before, likelihood!) : told(before, all);
  for (let k = 0; k < places.length; k += 1) if (places[k]! < 1e-9) places[k] = 0;
  normalised(places);
  const wear = new Float64Array(nodes);
  const rates = new Float64Array(places.length / nodes);
  places.forEach((weight, index) => {
    const r = Math.floor(index / nodes);
    wear[index - r * nodes] = wear[index - r * nodes]! + weight;
    rates[r] = rates[r]! + weight;
  });
  return { places, wear, rates };
}
