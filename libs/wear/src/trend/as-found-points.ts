import type { WearPoint } from './wear-point.js';

export const readingPhases = ['asFound', 'asLeft'] as const;
export type ReadingPhase = (typeof readingPhases)[number];

/** One reading of a characteristic of one fitted part. */
export interface PartReading {
  readonly readingId: string;
  readonly inspectionId: string;
  readonly phase: ReadingPhase;
  /** km since the part was fitted; null where the odometer cannot be relied on */
  readonly kmSinceFitted: number | null;
  readonly value: number;
  /** standard uncertainty by repeats of one reading; averages out; null: unknown */
  readonly repeatU: number | null;
  /** standard uncertainty that repeats of an inspection share: resolution, set-up; null: unknown */
  readonly setupU: number | null;
  readonly instrumentId: string | null;
  /** its calibration had run out, failed or never happened when it was read */
  readonly instrumentOverdue?: boolean | undefined;
  /** standard uncertainty of the instrument's bias; null: unknown */
  readonly biasU: number | null;
  /** taken back: it was of another part, or of nothing */
  readonly withdrawn?: boolean | undefined;
  /** implausible and not confirmed */
  readonly awaitingConfirmation?: boolean | undefined;
}

/** Why a reading is kept but does not enter a trend. */
export const notTrendableReasons = [
  'asLeft',
  'awaitingConfirmation',
  'distanceUnknown',
  'instrumentUnknown',
  'uncertaintyUnknown',
  'withdrawn',
] as const;
export type NotTrendableReason = (typeof notTrendableReasons)[number];

export interface AsFoundPoints {
  readonly points: readonly WearPoint[];
  readonly leftOut: readonly { readonly readingId: string; readonly reason: NotTrendableReason }[];
}

function notTrendable(reading: PartReading): NotTrendableReason | null {
  if (reading.withdrawn === true) return 'withdrawn';
  if (reading.phase === 'asLeft') return 'asLeft';
  if (reading.awaitingConfirmation === true) return 'awaitingConfirmation';
  if (reading.kmSinceFitted === null) return 'distanceUnknown';
  if (reading.instrumentId === null) return 'instrumentUnknown';
  const isUnknown = reading.repeatU === null || reading.setupU === null || reading.biasU === null;
  return isUnknown ? 'uncertaintyUnknown' : null;
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

function pointOf(readings: readonly PartReading[]): WearPoint {
  const first = readings[0]!;
  const repeat = mean(readings.map(({ repeatU }) => repeatU! ** 2)) / readings.length;
  const setup = mean(readings.map(({ setupU }) => setupU! ** 2));
  return {
    km: mean(readings.map(({ kmSinceFitted }) => kmSinceFitted!)),
    value: mean(readings.map(({ value }) => value)),
    u: Math.sqrt(repeat + setup),
    instrumentId: first.instrumentId!,
    biasU: first.biasU!,
    instrumentOverdue: readings.some(({ instrumentOverdue }) => instrumentOverdue === true),
  };
}

/**
 * Points of a trend: the mean of each inspection's as-found readings by one instrument. As-left readings, readings without
 * distance, instrument or uncertainty, readings that still await confirmation and those taken back are left out, each with
 * its reason.
 *
 * u² = mean(repeatU²) / n + mean(setupU²): repeats average out, the set-up does not. The bias is taken from the first
 * reading.
 *
 * @param readings  of one characteristic of one fitted part, any order; their numbers are checked by `wearTrend`
 * @returns points in order of distance, none where nothing remains, and what was left out
 * @source JCGM 100:2008, 4.2 and 5.1; common practice: a trend uses as-found readings of one part only
 */
export function asFoundPoints(readings: readonly PartReading[]): AsFoundPoints {
  const groups = new Map<string, PartReading[]>();
  const leftOut: AsFoundPoints['leftOut'][number][] = [];
  for (const reading of readings) {
    const reason = notTrendable(reading);
    if (reason !== null) {
      leftOut.push({ readingId: reading.readingId, reason });
      continue;
    }
    const key = JSON.stringify([reading.inspectionId, reading.instrumentId]);
    groups.set(key, [...(groups.get(key) ?? []), reading]);
  }
  const points = [...groups.values()].map(pointOf).sort((a, b) => a.km - b.km);
  return { points, leftOut };
}
