import type {
  EarlierInspection,
  FurtherReadings,
  WearingCharacteristic,
  WearNow,
  WearRate,
} from '@endfloat/decision';
import { wearTrend, type WearPoint, type WearTrendOutcome } from '@endfloat/wear';
import type { WearOmission } from '../ports/records/decide.records.js';

/** Doubt about readings, standard uncertainties in the characteristic's unit. */
export interface ReadingDoubt {
  /** of one reading by repeats; averages out */
  readonly repeat: number;
  /** shared by repeats of one inspection: set-up, resolution */
  readonly setUp: number;
  /** of the instrument's bias, common to all its readings */
  readonly bias: number;
}

/** As-found readings of one inspection by one instrument. */
export interface MeasuredSet {
  /** km since the part was fitted; null where distance cannot be relied on */
  readonly km: number | null;
  readonly instrument: string;
  readonly values: readonly number[];
  /** null: not known, and then the readings say nothing about wear */
  readonly doubt: ReadingDoubt | null;
  readonly verdict: Extract<WearNow, { kind: 'measured' }>['verdict'];
  readonly isContradictory: boolean;
  readonly evidence: readonly string[];
}

/** A further set of readings as it would be taken. */
export interface ReadingsOnOffer {
  readonly count: number;
  readonly minutes: number;
  /** where nothing was measured yet */
  readonly usualDoubt: ReadingDoubt | null;
  readonly wereOffered: boolean;
}

/** Wear of one part as an assessment takes it. */
export interface WearFindings {
  readonly wearNow: WearNow;
  readonly wearRate: WearRate;
  /** course of the wear towards the criterion */
  readonly trend: WearTrendOutcome;
  readonly furtherReadings: FurtherReadings;
  readonly leftOut: WearOmission | null;
  readonly readings: number;
  readonly points: number;
}

// Sorted, so that rounding does not depend on the order in which the readings were taken.
const meanOf = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b).reduce((sum, value) => sum + value, 0) / values.length;

const withoutBias = ({ repeat, setUp }: ReadingDoubt, count: number): number =>
  Math.sqrt((repeat * repeat) / count + setUp * setUp);

/** u of the mean: repeats average out, set-up and bias do not. */
const ofMean = (doubt: ReadingDoubt, count: number): number =>
  Math.hypot(withoutBias(doubt, count), doubt.bias);

/** Inspections before the latest one that can be placed and weighed; null where the latest itself has no distance. */
function earlierThan(latest: MeasuredSet, sets: readonly MeasuredSet[]): readonly EarlierInspection[] | null {
  const now = latest.km;
  if (now === null) return null;
  return sets.flatMap(({ km, values, doubt, isContradictory }) =>
    km === null || km < 0 || km > now || doubt === null || isContradictory
      ? []
      : [
          {
            kmBefore: now - km,
            value: meanOf(values),
            standardUncertainty: ofMean(doubt, values.length),
          },
        ],
  );
}

function wearNowOf(sets: readonly MeasuredSet[]): { wearNow: WearNow; leftOut: WearOmission | null } {
  const latest = sets.at(-1);
  if (latest === undefined) return { wearNow: { kind: 'notMeasured' }, leftOut: 'noReadings' };
  const { doubt, values, verdict, evidence } = latest;
  if (latest.isContradictory) return { wearNow: { kind: 'contradictory', evidence }, leftOut: null };
  if (doubt === null) return { wearNow: { kind: 'notMeasured' }, leftOut: 'uncertaintyUnknown' };
  const earlier = earlierThan(latest, sets.slice(0, -1));
  const wearNow: WearNow = {
    kind: 'measured',
    value: meanOf(values),
    standardUncertainty: ofMean(doubt, values.length),
    count: values.length,
    verdict,
    ...(earlier === null ? {} : { earlier }),
    evidence,
  };
  return { wearNow, leftOut: null };
}

/** Points of the trend; readings without distance or uncertainty cannot be one. */
function pointsOf(sets: readonly MeasuredSet[]): readonly WearPoint[] {
  return sets.flatMap(({ km, values, doubt, instrument }) => {
    if (km === null || km < 0 || doubt === null) return [];
    const u = withoutBias(doubt, values.length);
    return u > 0 ? [{ km, value: meanOf(values), u, instrumentId: instrument, biasU: doubt.bias }] : [];
  });
}

function trendOf(
  points: readonly WearPoint[],
  { direction, criterionSize }: WearingCharacteristic,
): WearTrendOutcome {
  return wearTrend({
    points,
    direction: direction === 'up' ? 'rising' : 'falling',
    limit: criterionSize,
    model: null,
  });
}

function wearRateOf(
  trend: WearTrendOutcome,
  points: readonly WearPoint[],
  evidence: readonly string[],
): WearRate {
  if (trend.kind === 'insufficientData')
    return { kind: 'insufficientData', needed: trend.needed, got: trend.got };
  // The points differ by less than their doubt: one more is the least that could change that.
  if (trend.kind === 'riseWithinUncertainty')
    return { kind: 'insufficientData', needed: points.length + 1, got: points.length };
  const ninetyPerCent = 2 * 1.6448536269514722;
  return {
    kind: 'estimated',
    perThousandKm: trend.rate.mean * 1000,
    standardError: ((trend.rate.upper - trend.rate.lower) / ninetyPerCent) * 1000,
    points: trend.observations,
    evidence,
  };
}

function furtherReadingsOf(latest: MeasuredSet | undefined, offer: ReadingsOnOffer | null): FurtherReadings {
  const doubt = latest?.doubt ?? offer?.usualDoubt ?? null;
  if (offer === null || doubt === null) return { kind: 'notAvailable' };
  return {
    kind: 'available',
    count: offer.count,
    standardUncertainty: withoutBias(doubt, offer.count),
    labourHours: offer.minutes / 60,
    wereOffered: offer.wereOffered,
  };
}

/**
 * What the as-found readings of one part say: wear now from the latest inspection, the rate from all of them, and what one
 * more set would be.
 *
 * @param sets            in order of time
 * @param characteristic  sizes in its unit
 * @param offer           a further set, null where none can be had
 * @returns findings; a reading without known uncertainty is never taken for exact, it is left out with the reason
 */
export function wearFindings(
  sets: readonly MeasuredSet[],
  characteristic: WearingCharacteristic,
  offer: ReadingsOnOffer | null,
): WearFindings {
  const latest = sets.at(-1);
  const points = pointsOf(sets);
  const trend = trendOf(points, characteristic);
  const evidence = sets.slice(0, -1).flatMap((set) => set.evidence);
  return {
    ...wearNowOf(sets),
    wearRate: wearRateOf(trend, points, evidence),
    trend,
    furtherReadings: furtherReadingsOf(latest, offer),
    readings: sets.reduce((sum, { values }) => sum + values.length, 0),
    points: points.length,
  };
}
