import { instantOf } from '../time/instant-of.js';

/** What a display counts in. */
export const odometerUnits = ['km', '[mi_i]', 'h'] as const;
export type OdometerUnit = (typeof odometerUnits)[number];

/** Why a new segment begins. */
export const odometerSegmentCauses = ['firstSeen', 'rollover', 'displayReplaced', 'unitChanged'] as const;
export type OdometerSegmentCause = (typeof odometerSegmentCauses)[number];

/**
 * A stretch with one unit, offset and display: distance = offsetKm + factor x (raw - rawAtStart), from `startedAt` until
 * the next segment of the same kind of display starts. For an hour meter, offset and factor are in hours.
 */
export interface OdometerSegment {
  readonly startedAt: string;
  /** decimal text, km (hours for an hour meter) */
  readonly offsetKm: string;
  /** decimal text, km per unit shown */
  readonly factor: string;
  readonly rawAtStart: string;
  readonly unit: OdometerUnit;
  readonly cause: OdometerSegmentCause;
  /** digits of the display without tenths; null: not known */
  readonly digits: number | null;
}

/** What was read off a display. */
export interface OdometerReading {
  /** digits as displayed, with the point where tenths are shown */
  readonly shown: string;
  readonly unit: OdometerUnit;
  readonly readAt: string;
  /** false: a contradiction nobody has settled; absent: reliable */
  readonly reliable?: boolean | undefined;
}

/** Whether a display counts operating hours; distance and hours are counted by different displays. */
export const isHourMeter = (unit: OdometerUnit): boolean => unit === 'h';

const byStart = (a: OdometerSegment, b: OdometerSegment): number =>
  instantOf(a.startedAt) - instantOf(b.startedAt);

/**
 * Segment that holds at a moment: the last that has started. The segment in which a display was first seen also holds
 * before its start, because nothing is known to have changed.
 *
 * @param segments  of one vehicle, any order
 * @param unit      of the reading; an hour meter has segments of its own
 * @param readAt    instant
 * @returns the segment, or null where none holds
 * @throws RangeError on an instant that is none
 * @source judgement
 */
export function segmentAt(
  segments: readonly OdometerSegment[],
  unit: OdometerUnit,
  readAt: string,
): OdometerSegment | null {
  const ofDisplay = segments
    .filter((segment) => isHourMeter(segment.unit) === isHourMeter(unit))
    .sort(byStart);
  const at = instantOf(readAt);
  const started = ofDisplay.filter((segment) => instantOf(segment.startedAt) <= at).at(-1);
  if (started !== undefined) return started;
  const first = ofDisplay[0];
  return first?.cause === 'firstSeen' ? first : null;
}
