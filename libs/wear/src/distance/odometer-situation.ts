import { daysBetween, instantOf } from '../time/instant-of.js';
import type { DistanceAt } from './distance-at.js';
import { distanceAt } from './distance-at.js';
import type { OdometerReading, OdometerSegment } from './odometer-segment.js';
import { isHourMeter } from './odometer-segment.js';
import { odometerThresholds } from './odometer-thresholds.js';

/** A reading with the distance (km) or hours its segment gives. */
export interface PlacedReading {
  readonly reading: OdometerReading;
  readonly value: number;
}

/** An entry among its reliable neighbours of the same kind of display, as numbers. */
export interface OdometerSituation {
  readonly entry: OdometerReading;
  readonly segments: readonly OdometerSegment[];
  readonly segment: OdometerSegment;
  readonly value: number;
  /** reliable readings at or before the entry, in order of time */
  readonly earlier: readonly PlacedReading[];
  readonly last: PlacedReading | null;
  readonly next: PlacedReading | null;
  /** since the last reading; 0 without one */
  readonly days: number;
  /** most that is plausible since the last reading */
  readonly mostSinceLast: number;
  /** distance or hours expected by now; null without a last reading */
  readonly expected: number | null;
}

/** Number of a distance or of hours; null where the display says neither. */
export function placedValue(at: DistanceAt): number | null {
  if (at.kind === 'distance') return Number(at.km);
  return at.kind === 'operatingHours' ? Number(at.hours) : null;
}

const dailyMost = (reading: OdometerReading): number =>
  isHourMeter(reading.unit) ? odometerThresholds.hoursPerDay : odometerThresholds.kmPerDay;

/** Per day: as the owner expects (distance only), else as the earlier readings went, else nothing. */
function dailyRate(earlier: readonly PlacedReading[], expectedKmPerYear: number | null): number {
  const [first, last] = [earlier[0], earlier.at(-1)];
  if (first === undefined || last === undefined) return 0;
  if (expectedKmPerYear !== null && !isHourMeter(last.reading.unit)) return expectedKmPerYear / 365.25;
  const days = daysBetween(first.reading.readAt, last.reading.readAt);
  return days < odometerThresholds.rateSpanDays ? 0 : Math.max(0, (last.value - first.value) / days);
}

function placedNeighbours(
  entry: OdometerReading,
  neighbours: readonly OdometerReading[],
  segments: readonly OdometerSegment[],
): PlacedReading[] {
  return neighbours
    .filter((reading) => reading.reliable !== false && isHourMeter(reading.unit) === isHourMeter(entry.unit))
    .flatMap((reading) => {
      const value = placedValue(distanceAt(segments, reading.shown, reading.unit, reading.readAt));
      return value === null ? [] : [{ reading, value }];
    })
    .sort((a, b) => instantOf(a.reading.readAt) - instantOf(b.reading.readAt) || a.value - b.value);
}

/**
 * Sets an entry among its neighbours.
 *
 * @param entry              readable, with a segment
 * @param at                 what its segment makes of it
 * @param neighbours         other readings of the vehicle, any order; unreliable ones are left out
 * @param segments           of the vehicle
 * @param expectedKmPerYear  as the owner expects; null: not known
 * @returns the situation, as numbers
 */
export function odometerSituation(
  entry: OdometerReading,
  at: { readonly value: number; readonly segment: OdometerSegment },
  neighbours: readonly OdometerReading[],
  segments: readonly OdometerSegment[],
  expectedKmPerYear: number | null,
): OdometerSituation {
  const placed = placedNeighbours(entry, neighbours, segments);
  const moment = instantOf(entry.readAt);
  const earlier = placed.filter(({ reading }) => instantOf(reading.readAt) <= moment);
  const next = placed.find(({ reading }) => instantOf(reading.readAt) > moment) ?? null;
  const last = earlier.at(-1) ?? null;
  const days = last === null ? 0 : daysBetween(last.reading.readAt, entry.readAt);
  const expected = last === null ? null : last.value + days * dailyRate(earlier, expectedKmPerYear);
  const mostSinceLast = dailyMost(entry) * Math.max(1, days);
  return { entry, segments, ...at, earlier, last, next, days, mostSinceLast, expected };
}

/** Whether a distance could have been reached since the last reading. */
export function isPlausible({ last, mostSinceLast }: OdometerSituation, value: number): boolean {
  return last === null || (value >= last.value && value - last.value <= mostSinceLast);
}
