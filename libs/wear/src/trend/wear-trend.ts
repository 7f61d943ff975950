import type { InsufficientData } from '@endfloat/statistics';
import type { AccelerationTest } from './acceleration-test.js';
import { accelerationTest } from './acceleration-test.js';
import type { HandChecks } from './hand-checks.js';
import { handChecks } from './hand-checks.js';
import type { InstrumentBias } from './instrument-bias.js';
import { instrumentBias } from './instrument-bias.js';
import type { LevelForecast } from './level-forecast.js';
import { distanceQuantiles, farthestKm, levelForecast, levelNow, reachedBy } from './level-forecast.js';
import type { OrientedPart } from './level-given-rate.js';
import { orientedPart } from './level-given-rate.js';
import { ownPrior } from './own-prior.js';
import type { ForecastToLimit } from './probability-of-reaching.js';
import type { WearModel, WearPrior } from './wear-model.js';
import { fleetPrior, requireWearModel } from './wear-model.js';
import type { WearDirection, WearPoint } from './wear-point.js';
import { distinctDistances, requireWearPoints } from './wear-point.js';
import type { WearPosterior } from './wear-posterior.js';
import { averaged, wearPosterior } from './wear-posterior.js';

/** What a trend is asked about: one fitted part, one characteristic, one limit. */
export interface WearQuestion {
  readonly points: readonly WearPoint[];
  readonly direction: WearDirection;
  /** in the characteristic's unit */
  readonly limit: number;
  /** km since fitting at present; default: of the last point */
  readonly nowKm?: number | undefined;
  /** of a fleet or stated; null: the part's own readings alone */
  readonly model: WearModel | null;
  /** two-sided level, default 0.9 */
  readonly confidence?: number | undefined;
}

/** Whose strength the answer rests on beside the part's own readings. */
export const borrowedStrengths = ['fleet', 'statedModel', 'none'] as const;
export type BorrowedStrength = (typeof borrowedStrengths)[number];

export interface WearTrend {
  readonly kind: 'estimated';
  readonly method: 'cumulativeWearWithMeasurementError';
  readonly borrowed: BorrowedStrength;
  readonly observations: number;
  readonly confidence: number;
  readonly nowKm: number;
  /** level now, in the characteristic's unit */
  readonly level: { readonly value: number; readonly u: number };
  /** units per km in the direction of wear */
  readonly rate: { readonly mean: number; readonly lower: number; readonly upper: number };
  /** km from now; null: farther than `farthestKm` */
  readonly distanceToLimit: {
    readonly median: number | null;
    readonly lower: number;
    readonly upper: number | null;
  };
  /** probability that the limit is reached already */
  readonly reachedNow: number;
  readonly acceleration: AccelerationTest;
  readonly extrapolation: {
    /** km between first and last point */
    readonly observedKm: number;
    /** the median lies farther beyond the last point than the points lie apart */
    readonly beyondData: boolean;
  };
  /** one an instrument where more than one was used */
  readonly instruments: readonly InstrumentBias[];
  readonly handChecks: HandChecks;
  /** for further questions: `probabilityOfReaching` */
  readonly forecast: LevelForecast;
  readonly orientedLimit: number;
}

export type WearTrendOutcome =
  | WearTrend
  | InsufficientData
  | {
      /** the points differ by less than their doubt: nothing may be drawn through them */
      readonly kind: 'riseWithinUncertainty';
      readonly rise: number;
      readonly expandedUncertainty: number;
    };

const fewestOwnDistances = 3;

/** Weighted quantile of the possible rates, linear between their mid-points. */
function rateQuantile(posterior: WearPosterior, probability: number): number {
  const nodes = [...posterior.nodes].sort((a, b) => a.rate - b.rate);
  let below = 0;
  let previous: { at: number; rate: number } | null = null;
  for (const { weight, rate } of nodes) {
    const at = below + weight / 2;
    if (at >= probability) {
      if (previous === null) return rate;
      return previous.rate + ((probability - previous.at) / (at - previous.at)) * (rate - previous.rate);
    }
    previous = { at, rate };
    below += weight;
  }
  return nodes.at(-1)!.rate;
}

function refusedAlone(points: readonly WearPoint[]): Exclude<WearTrendOutcome, WearTrend> | null {
  const distances = distinctDistances(points);
  if (distances < fewestOwnDistances) {
    return { kind: 'insufficientData', of: 'distances', needed: fewestOwnDistances, got: distances };
  }
  const sorted = [...points].sort((a, b) => a.value - b.value);
  const [low, high] = [sorted[0]!, sorted.at(-1)!];
  const isSameInstrument = low.instrumentId === high.instrumentId;
  const bias = isSameInstrument ? 0 : low.biasU ** 2 + high.biasU ** 2;
  const expandedUncertainty = 2 * Math.sqrt(low.u ** 2 + high.u ** 2 + bias);
  const rise = high.value - low.value;
  return rise < expandedUncertainty ? { kind: 'riseWithinUncertainty', rise, expandedUncertainty } : null;
}

function checked(question: WearQuestion): { nowKm: number; confidence: number } {
  const { points, limit, model, confidence = 0.9 } = question;
  requireWearPoints(points);
  if (!Number.isFinite(limit)) throw new RangeError(`the limit must be finite: ${limit}`);
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError(`confidence lies between 0 and 1: ${confidence}`);
  if (model !== null) requireWearModel(model);
  const lastKm = Math.max(0, ...points.map(({ km }) => km));
  const nowKm = question.nowKm ?? lastKm;
  if (!(nowKm >= lastKm && Number.isFinite(nowKm))) {
    throw new RangeError(`the present distance ${nowKm} lies before the last point at ${lastKm}`);
  }
  return { nowKm, confidence };
}

/** What trend and outlook have in common: level now and wear to come. */
interface Prepared {
  readonly kind: 'prepared';
  readonly nowKm: number;
  readonly confidence: number;
  readonly sign: 1 | -1;
  readonly part: OrientedPart;
  readonly prior: WearPrior;
  readonly posterior: WearPosterior;
  readonly forecast: LevelForecast;
  readonly orientedLimit: number;
}

function prepared(question: WearQuestion): Prepared | Exclude<WearTrendOutcome, WearTrend> {
  const { nowKm, confidence } = checked(question);
  const { points, direction, model, limit } = question;
  if (points.length === 0) return { kind: 'insufficientData', of: 'points', needed: 1, got: 0 };
  const refusal = model === null ? refusedAlone(points) : null;
  if (refusal !== null) return refusal;
  const sign = direction === 'rising' ? 1 : -1;
  const part = orientedPart(points, sign);
  const orientedLimit = sign * limit;
  const prior = model === null ? ownPrior(part, orientedLimit) : fleetPrior(model);
  const posterior = wearPosterior(part, prior);
  const forecast = levelForecast(part, prior, posterior, nowKm);
  return { kind: 'prepared', nowKm, confidence, sign, part, prior, posterior, forecast, orientedLimit };
}

/** The part of a trend that vans are put in order by. */
export interface WearOutlook extends ForecastToLimit {
  readonly kind: 'estimated';
  /** median km from now to the limit; null: farther than `farthestKm` */
  readonly median: number | null;
}

export type WearOutlookOutcome = WearOutlook | Exclude<WearTrendOutcome, WearTrend>;

/**
 * What `wearTrend` says of the median distance to the limit, without the rest of it: for putting many parts in order.
 *
 * @param question  as for `wearTrend`
 * @returns forecast and median, the same figures as of the trend; the same refusals
 * @throws RangeError as `wearTrend`
 * @source as `wearTrend`
 * @oracle `wearTrend`, in the spec
 */
export function wearOutlook(question: WearQuestion): WearOutlookOutcome {
  const found = prepared(question);
  if (found.kind !== 'prepared') return found;
  const { forecast, orientedLimit } = found;
  const [median = null] = distanceQuantiles(reachedBy(forecast, orientedLimit), [0.5]);
  return { kind: 'estimated', forecast, orientedLimit, median };
}

/**
 * Trend of one characteristic of one fitted part, and the distance left to a limit with an interval.
 *
 * Model: level = start + cumulative wear (rate per km; variance = scale x mean, as a gamma process) + bias of the
 * instrument, common to its readings + a reading's own error. Start and rate are those of this part; the fleet's model, or
 * a stated one, says how they differ from part to part, and one point is enough. Without a model, the part's own
 * readings have to carry it: three distances at least, values farther apart than their doubt; then every rate above 0
 * is taken as equally likely beforehand and the unevenness of wear as 0.03, 0.1 or 0.3 of the way to the limit
 * (judgement).
 *
 * The interval is for the distance at which this part will really reach the limit: doubt of level, rate and instrument and
 * the unevenness to come. Found by simulation for nominal 90 % (gamma wear, lognormal rates; about 1 % doubt each):
 * fleets of 25 with 4 to 8 readings a part 91-92 %, of 25 with 1 to 4 readings 93 %, of 10 with 4 to 8 readings
 * 91-92 %, of 8 with 2 to 5 readings 88-90 %; no fleet and 8 readings of its own 92 %; no fleet and 3 or 4 readings
 * 89 % of the two in five that are answered at all, nearly all misses beyond the upper end.
 *
 * `distanceToLimit.lower` is a bound even where the true figure lies beyond `farthestKm`.
 *
 * @param question  points, direction, limit; model or null
 * @returns the trend; `insufficientData` without a point, or below three distances where there is no model;
 *   `riseWithinUncertainty` where there is no model and lowest and highest value differ by less than U (k = 2), in
 *   either direction
 * @throws RangeError on a negative km or biasU, a u that is not positive, a present distance before the last point, a
 *   confidence outside (0, 1), a model whose spreads are not positive or wider than exp(5), a number that is not finite
 * @source van Noortwijk (2009), Reliab. Eng. Syst. Saf. 94:2-21; Lawless & Crowder (2004), Lifetime Data Analysis
 *   10:213-227; Whitmore (1995), Lifetime Data Analysis 1:307-319 (measurement error)
 * @oracle coverage by seeded simulation of gamma wear; `degradingLasers` for the straight-line check
 */
export function wearTrend(question: WearQuestion): WearTrendOutcome {
  const found = prepared(question);
  if (found.kind !== 'prepared') return found;
  const { nowKm, confidence, sign, part, prior, posterior, forecast, orientedLimit } = found;
  const { points, model, limit } = question;
  const level = levelNow(forecast);
  const tail = (1 - confidence) / 2;
  const reached = reachedBy(forecast, orientedLimit);
  const [median = null, lower = null, upper = null] = distanceQuantiles(reached, [0.5, tail, 1 - tail]);
  const observedKm = part.km.at(-1)! - part.km[0]!;
  const rate = averaged(posterior, (node) => node.rate);
  return {
    kind: 'estimated',
    method: 'cumulativeWearWithMeasurementError',
    borrowed: model === null ? 'none' : model.learned === null ? 'statedModel' : 'fleet',
    observations: points.length,
    confidence,
    nowKm,
    level: { value: sign * level.mean, u: level.u },
    rate: { mean: rate, lower: rateQuantile(posterior, tail), upper: rateQuantile(posterior, 1 - tail) },
    distanceToLimit: { median, lower: lower ?? farthestKm, upper },
    reachedNow: reached(0),
    acceleration: accelerationTest(
      part,
      rate,
      averaged(posterior, (node) => node.scale),
    ),
    extrapolation: {
      observedKm,
      beyondData: median === null || nowKm - part.km.at(-1)! + median > observedKm,
    },
    instruments: instrumentBias(part, points, prior, posterior, sign),
    handChecks: handChecks(points, limit, nowKm, confidence),
    forecast,
    orientedLimit,
  };
}
