import { gammaGrowth, readingLikelihood } from '../belief/part-belief.js';
import { wearNodes } from '../belief/wear-grid.js';
import { stepFields, stepIncrements } from '../look-ahead/step-fields.js';
import type { StepIncrements } from '../look-ahead/step-fields.js';
import { exp, log } from '../portable/elementary.js';
import type { SettledPart } from './settled-history.js';

const LONGEST_KM = 10_000;
const ROUND_KM = 250;

/** A stretch of a part's life, and what was seen at its end. */
export interface Stretch {
  readonly km: number;
  /** distance that counts at its end: half of this stretch and half of the next, so that wear between is met halfway */
  readonly exposureKm: number;
  /** likelihood of readings, by wear node; null where there were none */
  readonly readings: Float64Array | null;
  readonly positives: number;
  readonly negatives: number;
  readonly complaints: number;
}

/** Numbers the smoother works with. */
export interface SmootherModel {
  readonly rates: Float64Array;
  readonly growth: (km: number) => readonly StepIncrements[];
  /** complaints per 100,000 km, by wear node */
  readonly hazard: Float64Array;
  /** chance of a positive functional criterion, by wear node */
  readonly positive: Float64Array;
}

/** What a part's life says: posterior weights, added to what is there. */
export interface LifeSums {
  readonly start: Float64Array;
  readonly rates: Float64Array;
  /** expected distance at each wear node, in 100,000 km, and complaints there */
  readonly exposure: Float64Array;
  readonly complaints: Float64Array;
  readonly positives: Float64Array;
  readonly negatives: Float64Array;
}

/** Growth with its step sums, worked out once a distance. */
export function smootherGrowth(rates: Float64Array, scale: number): SmootherModel['growth'] {
  const known = new Map<number, readonly StepIncrements[]>();
  return (km) => {
    const before = known.get(km);
    if (before !== undefined) return before;
    const made = gammaGrowth(rates, scale, km).map(stepIncrements);
    known.set(km, made);
    return made;
  };
}

/** Empty sums. */
export function noSums(rates: number): LifeSums {
  const nodes = () => new Float64Array(wearNodes.length);
  return {
    start: nodes(),
    rates: new Float64Array(rates),
    exposure: nodes(),
    complaints: nodes(),
    positives: nodes(),
    negatives: nodes(),
  };
}

/**
 * Cuts a part's life into stretches of at most 10,000 km that end wherever something was seen; distances to 250 km.
 *
 * @param part  its history
 * @returns stretches in order; the first has no length
 * @throws RangeError on a distance that is negative, not finite, or beyond what was watched
 */
export function stretchesOf(part: SettledPart): readonly Stretch[] {
  const rounded = (km: number): number => {
    if (!(km >= 0) || km > part.watchedKm + ROUND_KM)
      throw new RangeError(`a distance lies between 0 and what was watched, got ${km}`);
    return Math.round(km / ROUND_KM) * ROUND_KM;
  };
  const end = rounded(part.watchedKm);
  const places = new Set<number>([0, end]);
  for (const { kmSinceFitted } of [...part.inspections, ...part.criterion])
    places.add(rounded(kmSinceFitted));
  for (const km of part.complaintsKm) places.add(rounded(km));
  for (let km = LONGEST_KM; km < end; km += LONGEST_KM) places.add(km);
  const ordered = [...places].sort((a, b) => a - b);
  return ordered.map((km, k): Stretch => {
    const read = part.inspections.filter(({ kmSinceFitted }) => rounded(kmSinceFitted) === km);
    const judged = part.criterion.filter(({ kmSinceFitted }) => rounded(kmSinceFitted) === km);
    return {
      km: km - (ordered[k - 1] ?? 0),
      exposureKm: ((ordered[k + 1] ?? km) - (ordered[k - 1] ?? km)) / 2,
      readings:
        read.length === 0
          ? null
          : read
              .map(readingLikelihood)
              .reduce((product, likelihood) => product.map((value, i) => value * (likelihood[i]! + 1e-9))),
      positives: judged.filter(({ isPositive }) => isPositive).length,
      negatives: judged.filter(({ isPositive }) => !isPositive).length,
      complaints: part.complaintsKm.filter((at) => rounded(at) === km).length,
    };
  });
}

/** Likelihood of what was seen over and at the end of a stretch, by wear node. */
function seen(stretch: Stretch, { hazard, positive }: SmootherModel): Float64Array {
  const distance = stretch.exposureKm / 100_000;
  return wearNodes.map((_, i) => {
    let value = exp(-hazard[i]! * distance) * (stretch.readings === null ? 1 : stretch.readings[i]! + 1e-12);
    for (let k = 0; k < stretch.positives; k += 1) value *= positive[i]!;
    for (let k = 0; k < stretch.negatives; k += 1) value *= 1 - positive[i]!;
    for (let k = 0; k < stretch.complaints; k += 1) value *= hazard[i]!;
    return value;
  });
}

function carried(before: Float64Array, growth: readonly StepIncrements[]): Float64Array {
  const nodes = wearNodes.length;
  const after = new Float64Array(before.length);
  growth.forEach(({ weights, longer }, r) => {
    const row = r * nodes;
    for (let i = 0; i < nodes; i += 1) {
      const weight = before[row + i]!;
      if (weight < 1e-14) continue;
      const inside = Math.min(weights.length, nodes - 1 - i);
      for (let j = 0; j < inside; j += 1) after[row + i + j] = after[row + i + j]! + weight * weights[j]!;
      after[row + nodes - 1] = after[row + nodes - 1]! + weight * longer[inside]!;
    }
  });
  return after;
}

/** Multiplies by a likelihood and makes the weights add up to one; returns the logarithm of what they added up to. */
function tell(places: Float64Array, likelihood: Float64Array): number {
  const nodes = likelihood.length;
  let sum = 0;
  for (let k = 0; k < places.length; k += 1) {
    places[k] = places[k]! * likelihood[k % nodes]!;
    sum += places[k]!;
  }
  if (!(sum > 0)) throw new RangeError('a history that no wear explains');
  for (let k = 0; k < places.length; k += 1) places[k] = places[k]! / sum;
  return log(sum);
}

function addLife(sums: LifeSums, stretch: Stretch, smoothed: Float64Array): void {
  const nodes = wearNodes.length;
  for (let k = 0; k < smoothed.length; k += 1) {
    const i = k % nodes;
    const weight = smoothed[k]!;
    sums.exposure[i] = sums.exposure[i]! + (weight * stretch.exposureKm) / 100_000;
    sums.complaints[i] = sums.complaints[i]! + weight * stretch.complaints;
    sums.positives[i] = sums.positives[i]! + weight * stretch.positives;
    sums.negatives[i] = sums.negatives[i]! + weight * stretch.negatives;
  }
}

/**
 * Smooths one part's life: wear and rate given everything that was seen of it.
 *
 * @param stretches  of `stretchesOf`
 * @param start      weights over rate x node before anything was seen
 * @param model      growth, complaints and criterion
 * @param sums       receives the posterior sums; null where only the likelihood is wanted
 * @returns log likelihood of the life
 * @throws RangeError on a history that no wear explains
 * @source forward-backward algorithm: Rabiner (1989), Proc. IEEE 77:257-286
 */
export function smoothLife(
  stretches: readonly Stretch[],
  start: Float64Array,
  model: SmootherModel,
  sums: LifeSums | null,
): number {
  const likelihoods = stretches.map((stretch) => seen(stretch, model));
  const forward: Float64Array[] = [];
  let logLikelihood = 0;
  let places: Float64Array = Float64Array.from(start);
  stretches.forEach((stretch, k) => {
    if (stretch.km > 0) places = carried(places, model.growth(stretch.km));
    logLikelihood += tell(places, likelihoods[k]!);
    if (sums !== null) forward.push(Float64Array.from(places));
  });
  if (sums === null) return logLikelihood;
  const nodes = wearNodes.length;
  let ahead: Float64Array = new Float64Array(places.length).fill(1);
  for (let k = stretches.length - 1; k >= 0; k -= 1) {
    const smoothed = forward[k]!.map((weight, at) => weight * ahead[at]!);
    tell(smoothed, new Float64Array(nodes).fill(1));
    addLife(sums, stretches[k]!, smoothed);
    if (k === 0) {
      smoothed.forEach((weight, at) => {
        const r = Math.floor(at / nodes);
        sums.start[at - r * nodes] = sums.start[at - r * nodes]! + weight;
        sums.rates[r] = sums.rates[r]! + weight;
      });
      break;
    }
    ahead = behind(ahead, likelihoods[k]!, stretches[k]!.km, model);
  }
  return logLikelihood;
}

function behind(
  ahead: Float64Array,
  likelihood: Float64Array,
  km: number,
  model: SmootherModel,
): Float64Array {
  const nodes = likelihood.length;
  let greatest = 0;
  const told = ahead.map((value, at) => {
    const product = value * likelihood[at % nodes]!;
    if (product > greatest) greatest = product;
    return product;
  });
  for (let at = 0; at < told.length; at += 1) told[at] = told[at]! / greatest;
  if (km === 0) return told;
  const before = new Float64Array(told.length);
  const unused = new Float64Array(told.length);
  stepFields(model.growth(km), nodes, told, told, before, unused);
  return before;
}
