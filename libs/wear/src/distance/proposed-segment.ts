import { distanceAt, factorOfUnit, isDisplayText } from './distance-at.js';
import { compareExact, exactDecimal, exactText, minus, plus, times } from './exact-decimal.js';
import type { OdometerReading, OdometerSegment, OdometerSegmentCause } from './odometer-segment.js';
import { segmentAt } from './odometer-segment.js';

export interface NewDisplay {
  readonly cause: OdometerSegmentCause;
  /** the first reading of the new segment */
  readonly entry: OdometerReading;
  /** segments so far */
  readonly segments: readonly OdometerSegment[];
  /** the last reading before the change that can be relied on */
  readonly last: OdometerReading | null;
  /** digits of the display; null: as before, or unknown */
  readonly digits?: number | null | undefined;
  /** distance the vehicle had done when the new display was fitted, e.g. from the notice on the door frame */
  readonly distanceAtChangeKm?: string | null | undefined;
}

/** A segment to be offered to a person, or why none can be. */
export type ProposedSegment =
  | { readonly kind: 'proposed'; readonly segment: OdometerSegment }
  | { readonly kind: 'cannotPropose'; readonly reason: 'notReadable' | 'nothingBefore' };

/** Digits a display has room for: as recorded, else as many as the last reading shows, five at least. */
export function displayDigits(segment: OdometerSegment, last: OdometerReading): number {
  return segment.digits ?? Math.max(5, last.shown.replace(/\..*$/, '').length);
}

const started = (display: NewDisplay) => ({
  startedAt: display.entry.readAt,
  unit: display.entry.unit,
  cause: display.cause,
});

function rolledOver(display: NewDisplay, before: OdometerSegment, last: OdometerReading): ProposedSegment {
  const digits = display.digits ?? displayDigits(before, last);
  const capacity = exactDecimal(`1${'0'.repeat(digits)}`);
  const left = times(exactDecimal(before.factor), minus(capacity, exactDecimal(before.rawAtStart)));
  const offsetKm = exactText(plus(exactDecimal(before.offsetKm), left));
  const { factor, unit } = before;
  return {
    kind: 'proposed',
    segment: { ...started(display), unit, offsetKm, factor, rawAtStart: '0', digits },
  };
}

/** Distance known when the display changed: as stated, else of the last reading; never less than the latter. */
function knownAtChange(display: NewDisplay): string | null {
  const { last, segments } = display;
  if (display.distanceAtChangeKm !== null && display.distanceAtChangeKm !== undefined)
    return display.distanceAtChangeKm;
  if (last === null) return null;
  const before = distanceAt(segments, last.shown, last.unit, last.readAt);
  if (before.kind === 'operatingHours') return before.hours;
  if (before.kind !== 'distance') return null;
  if (display.cause !== 'unitChanged') return before.km;
  const now = distanceAt(segments, display.entry.shown, display.entry.unit, display.entry.readAt);
  if (now.kind !== 'distance') return before.km;
  return compareExact(exactDecimal(now.km), exactDecimal(before.km)) < 0 ? before.km : now.km;
}

/**
 * Segment that would make sense of a reading, to be confirmed by a person.
 *
 * - `firstSeen`: the display is taken at its word, unless a distance is stated.
 * - `rollover`: distance runs on where the display began again at zero; offset = what the old segment says at the
 *   display's capacity (+100,000 for five digits).
 * - `displayReplaced`: distance at the change as stated (the notice's value), else of the last reliable reading, so that
 *   no distance since a repair is negative; what was driven between that reading and the change is then missing.
 * - `unitChanged`: the same distance in another unit, where that is not below the last reading.
 *
 * @param display  the change, the reading that showed it and what was known before
 * @returns the segment, starting with the reading; `cannotPropose` where the reading is no digits, or nothing is known
 *   from before it (but for `firstSeen`)
 * @throws RangeError on an instant or a number that is none
 * @source 49 USC 32704 (from memory); common practice
 */
export function proposedSegment(display: NewDisplay): ProposedSegment {
  const { entry, segments, last } = display;
  if (!isDisplayText(entry.shown)) return { kind: 'cannotPropose', reason: 'notReadable' };
  const factor = factorOfUnit(entry.unit);
  const rawAtStart = exactText(exactDecimal(entry.shown));
  const digits = display.digits ?? null;
  if (display.cause === 'firstSeen') {
    const offsetKm =
      display.distanceAtChangeKm ?? exactText(times(exactDecimal(factor), exactDecimal(entry.shown)));
    return { kind: 'proposed', segment: { ...started(display), offsetKm, factor, rawAtStart, digits } };
  }
  const before = segmentAt(segments, entry.unit, entry.readAt);
  if (display.cause === 'rollover') {
    if (before === null || last === null) return { kind: 'cannotPropose', reason: 'nothingBefore' };
    return rolledOver(display, before, last);
  }
  const offsetKm = knownAtChange(display);
  if (offsetKm === null) return { kind: 'cannotPropose', reason: 'nothingBefore' };
  const kept = display.cause === 'unitChanged' ? (before?.digits ?? null) : null;
  return {
    kind: 'proposed',
    segment: { ...started(display), offsetKm, factor, rawAtStart, digits: digits ?? kept },
  };
}
