import { wearNodes } from '../belief/wear-grid.js';
import { log, exp } from '../portable/elementary.js';
import type { LearnedTables, PopulationWear } from '../tables/learned-tables.js';
import type { RenewingAction } from '../terms/option-actions.js';
import { renewingActions } from '../terms/option-actions.js';
import { fitComplaints, fitFunctionalWidth, hazardAtNodes, positiveAtNodes } from './fit-complaints.js';
import { fitLognormal, lognormalWeights } from './fit-lognormal.js';
import type { LifeSums, SmootherModel, Stretch } from './part-smoother.js';
import { noSums, smoothLife, smootherGrowth, stretchesOf } from './part-smoother.js';
import type { SettledPart } from './settled-history.js';

const RATES = 14;
const ROUNDS = 8;

/** How far a population may be from the judgement, standard deviations of logarithms; JUDGEMENT. */
const doubts = {
  start: { logMedian: 0.5, logLogSd: 0.3 },
  rate: { logMedian: 0.3, logLogSd: 0.3 },
  /** of all rates together: a fleet wears faster or slower as a whole */
  pace: 0.6,
  scale: 0.7,
} as const;

type Source = 'found' | RenewingAction;
const sources: readonly Source[] = ['found', ...renewingActions];

interface Life {
  readonly source: Source;
  readonly stretches: readonly Stretch[];
}

/** What learning from parts updates. */
export type LearnedFromParts = Pick<LearnedTables, 'wear' | 'complaints' | 'functionalWidth'>;

const populationOf = (wear: LearnedTables['wear'], source: Source): PopulationWear =>
  source === 'found' ? wear.fittedPart : wear.byAction[source];

/** Rates from a twentieth of the slowest median to three logarithmic standard deviations above the fastest. */
function learningRates({ wear }: LearnedTables): Float64Array {
  const rates = sources.map((source) => populationOf(wear, source).rate);
  const low = Math.min(...rates.map(({ median }) => median)) / 20;
  const high = Math.max(...rates.map(({ median, logSd }) => median * exp(3 * logSd)));
  return Float64Array.from({ length: RATES }, (_, i) => low * exp((log(high / low) * i) / (RATES - 1)));
}

function startOf(rates: Float64Array, { start, rate }: PopulationWear): Float64Array {
  const byRate = lognormalWeights(rates, rate);
  const byNode = lognormalWeights(wearNodes, start);
  const places = new Float64Array(rates.length * wearNodes.length);
  // A hair of every start, so that no reading is impossible.
  byRate.forEach((weight, r) =>
    byNode.forEach((node, i) => (places[r * wearNodes.length + i] = (weight + 1e-9) * (node + 1e-7))),
  );
  return places;
}

function modelOf(
  tables: LearnedFromParts,
  rates: Float64Array,
  growth: SmootherModel['growth'],
): SmootherModel {
  return {
    rates,
    growth,
    hazard: hazardAtNodes(tables.complaints),
    positive: positiveAtNodes(tables.functionalWidth),
  };
}

function smoothAll(
  lives: readonly Life[],
  tables: LearnedFromParts,
  model: SmootherModel,
  sums: ReadonlyMap<Source, LifeSums> | null,
): number {
  const starts = new Map(
    sources.map((source) => [source, startOf(model.rates, populationOf(tables.wear, source))]),
  );
  return lives.reduce(
    (total, { source, stretches }) =>
      total + smoothLife(stretches, starts.get(source)!, model, sums?.get(source) ?? null),
    0,
  );
}

function added(all: readonly LifeSums[], member: keyof LifeSums): Float64Array {
  return all.reduce(
    (total, sums) => total.map((value, i) => value + sums[member][i]!),
    new Float64Array(all[0]![member].length),
  );
}

/** Populations near their priors, the rates' priors moved by the pace of the whole fleet. */
function fitPopulations(
  priors: LearnedTables['wear'],
  sums: ReadonlyMap<Source, LifeSums>,
  rates: Float64Array,
  parts: ReadonlyMap<Source, number>,
): Pick<LearnedTables['wear'], 'fittedPart' | 'byAction'> {
  const alone = sources.map((source) => {
    const prior = populationOf(priors, source).rate;
    const doubt = { logMedian: doubts.pace, logLogSd: doubts.rate.logLogSd };
    const fitted = fitLognormal(rates, sums.get(source)!.rates, prior, doubt);
    const count = parts.get(source)!;
    const variance = doubts.rate.logMedian ** 2 + (prior.logSd * prior.logSd) / Math.max(0.1, count);
    return { shift: log(fitted.median / prior.median), precision: count === 0 ? 0 : 1 / variance };
  });
  const precision = alone.reduce((sum, each) => sum + each.precision, 1 / doubts.pace ** 2);
  const pace = exp(alone.reduce((sum, each) => sum + each.precision * each.shift, 0) / precision);
  const fitted = (source: Source): PopulationWear => {
    const prior = populationOf(priors, source);
    const { start, rates: counts } = sums.get(source)!;
    const moved = { median: prior.rate.median * pace, logSd: prior.rate.logSd };
    return {
      start: fitLognormal(wearNodes, start, prior.start, doubts.start),
      rate: fitLognormal(rates, counts, moved, doubts.rate),
      parts: prior.parts + parts.get(source)!,
    };
  };
  return {
    fittedPart: fitted('found'),
    byAction: {
      reBush: fitted('reBush'),
      fitUsed: fitted('fitUsed'),
      fitRemanufactured: fitted('fitRemanufactured'),
      fitNew: fitted('fitNew'),
    },
  };
}

/** Scale of the increments: the best of a few around the present one, by the likelihood of all lives. */
function betterScale(
  lives: readonly Life[],
  tables: LearnedFromParts,
  rates: Float64Array,
  prior: number,
): number {
  const now = tables.wear.incrementScale;
  if (now === 0) return 0;
  let best = { scale: now, value: -Infinity };
  for (const factor of [0.6, 1, 1.6]) {
    const scale = now * factor;
    const away = log(scale / prior) / doubts.scale;
    const model = modelOf(tables, rates, smootherGrowth(rates, scale));
    const value = smoothAll(lives, tables, model, null) - 0.5 * away * away;
    if (value > best.value) best = { scale, value };
  }
  return best.scale;
}

/**
 * Populations of wear, complaint rates and the width of the functional criterion, from parts that were watched.
 *
 * Every part counts for the distance it was watched and no further: what was removed or is still running is censored. Wear
 * between inspections is not seen; it is averaged over given all that was seen of the part, before and after.
 *
 * @param parts   their histories
 * @param priors  tables before
 * @returns learned members; the priors' own without parts
 * @throws RangeError on histories with distances or readings that cannot be
 * @source EM algorithm for a hidden Markov model (Baum et al. 1970), a fixed number of rounds; priors by judgement
 */
export function learnWear(parts: readonly SettledPart[], priors: LearnedTables): LearnedFromParts {
  let tables: LearnedFromParts = priors;
  if (parts.length === 0) return tables;
  const rates = learningRates(priors);
  const lives = parts.map((part): Life => ({ source: part.action ?? 'found', stretches: stretchesOf(part) }));
  const counts = new Map(
    sources.map((source) => [source, lives.filter((life) => life.source === source).length]),
  );
  let growth = smootherGrowth(rates, priors.wear.incrementScale);
  for (let round = 0; round < ROUNDS; round += 1) {
    const sums = new Map(sources.map((source) => [source, noSums(rates.length)]));
    smoothAll(lives, tables, modelOf(tables, rates, growth), sums);
    const all = [...sums.values()];
    tables = {
      wear: {
        ...fitPopulations(priors.wear, sums, rates, counts),
        incrementScale: tables.wear.incrementScale,
      },
      complaints: fitComplaints(
        { exposure: added(all, 'exposure'), complaints: added(all, 'complaints') },
        priors.complaints,
      ),
      functionalWidth: fitFunctionalWidth(
        { positives: added(all, 'positives'), negatives: added(all, 'negatives') },
        priors.functionalWidth,
      ),
    };
    if (round === 2 || round === 5) {
      const incrementScale = betterScale(lives, tables, rates, priors.wear.incrementScale);
      if (incrementScale !== tables.wear.incrementScale) growth = smootherGrowth(rates, incrementScale);
      tables = { ...tables, wear: { ...tables.wear, incrementScale } };
    }
  }
  return tables;
}
