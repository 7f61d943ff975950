import {
  probabilityOfReaching,
  wearOutlook,
  wearTrend,
  type Horizon,
  type ForecastToLimit,
  type WearModel,
  type WearQuestion,
  type WearTrendOutcome,
} from '@endfloat/wear';
import type { Vehicle } from '../ports/records/vehicles.records.js';
import { wearLimitOf, type WearCase, type WearLimit } from './wear-case.js';
import { kmAtFitting } from './part-readings.js';
import type { WearSeries } from './wear-series.js';
import {
  daysBetween,
  presentKm,
  yearlyDistanceOf,
  type DistanceSeen,
  type YearlyDistance,
} from './yearly-distance.js';

/** Until when a limit is asked about: a further distance, or a local day. */
export type WearUntil =
  { readonly kind: 'distance'; readonly km: number } | { readonly kind: 'day'; readonly day: string };

/** Whether a limit is reached before then. */
export type WearChance =
  | {
      readonly kind: 'estimated';
      readonly probability: number;
      readonly until: WearUntil;
      /** null where a distance was asked about */
      readonly yearlyDistance: YearlyDistance | null;
    }
  | { readonly kind: 'yearlyDistanceUnknown' }
  | { readonly kind: 'noTrend' };

export interface WearView {
  readonly found: WearCase;
  readonly series: WearSeries;
  readonly limit: WearLimit | null;
  readonly outcome: WearTrendOutcome | { readonly kind: 'noWearLimit' };
  /** null where nothing was asked */
  readonly chance: WearChance | null;
}

export interface VehicleDistances {
  readonly vehicle: Vehicle;
  readonly entries: readonly DistanceSeen[];
}

export interface WearQuestionOfPart {
  readonly found: WearCase;
  readonly series: WearSeries;
  readonly distances: VehicleDistances;
  readonly model: WearModel | null;
  readonly today: string;
  readonly until: WearUntil | null;
}

/** Trend of one series and the chance asked about. Computes only. */
export function wearViewOf(question: WearQuestionOfPart): WearView {
  const { found, series, distances, today, until } = question;
  const limit = wearLimitOf(found, distances.vehicle, today);
  const outcome =
    limit === null ? ({ kind: 'noWearLimit' } as const) : wearTrend(trendQuestion(question, limit));
  return {
    found,
    series,
    limit,
    outcome,
    chance: until === null ? null : chanceOf(outcome, question, until),
  };
}

/** Where a series stands among many: the same chance and median as of its view, without the rest. */
export function wearStandingOf(
  question: WearQuestionOfPart,
  limit: WearLimit | null,
): { readonly probability: number; readonly median: number | null } | null {
  if (limit === null || question.until === null) return null;
  const outlook = wearOutlook(trendQuestion(question, limit));
  const chance = chanceOf(outlook, question, question.until);
  if (chance.kind !== 'estimated' || outlook.kind !== 'estimated') return null;
  return { probability: chance.probability, median: outlook.median };
}

const trendQuestion = (
  { found, series, distances, model }: WearQuestionOfPart,
  limit: WearLimit,
): WearQuestion => ({
  points: series.points,
  direction: found.direction,
  limit: limit.value,
  nowKm: nowKmOf(series, distances.entries),
  model,
});

function chanceOf(
  trend: ({ readonly kind: 'estimated' } & ForecastToLimit) | { readonly kind: Unestimated },
  { distances, today }: WearQuestionOfPart,
  until: WearUntil,
): WearChance {
  if (trend.kind !== 'estimated') return { kind: 'noTrend' };
  if (until.kind === 'distance') {
    const probability = probabilityOfReaching(trend, until);
    return { kind: 'estimated', probability, until, yearlyDistance: null };
  }
  const yearlyDistance = yearlyDistanceOf(distances.vehicle, distances.entries);
  if (yearlyDistance === null) return { kind: 'yearlyDistanceUnknown' };
  const horizon: Horizon = {
    kind: 'days',
    days: daysBetween(today, until.day),
    kmPerYear: yearlyDistance.kmPerYear,
    kmPerYearU: yearlyDistance.u,
  };
  return { kind: 'estimated', probability: probabilityOfReaching(trend, horizon), until, yearlyDistance };
}

type Unestimated = Exclude<WearView['outcome']['kind'], 'estimated'>;

/** Km the part has gone: by the odometer, never less than at its last point; for a removed part, until its removal. */
function nowKmOf({ part, points }: WearSeries, entries: readonly DistanceSeen[]): number {
  const last = Math.max(0, ...points.map(({ km }) => km));
  const start = kmAtFitting(part);
  const { removedAt, removedKm } = part.content;
  const end = removedAt === null ? presentKm(entries) : removedKm === null ? null : Number(removedKm);
  return start === null || end === null ? last : Math.max(last, end - start);
}
