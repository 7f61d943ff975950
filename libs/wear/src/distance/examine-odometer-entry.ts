import type { DistanceAt } from './distance-at.js';
import { distanceAt } from './distance-at.js';
import { exactDecimal, exactText } from './exact-decimal.js';
import {
  backFillPatterns,
  digitPattern,
  lowerPattern,
  rolloverPattern,
  speedPattern,
  standstillPattern,
  unitPattern,
} from './odometer-patterns.js';
import type { OdometerReading, OdometerSegment } from './odometer-segment.js';
import type { OdometerSituation } from './odometer-situation.js';
import { odometerSituation, placedValue } from './odometer-situation.js';
import type { OdometerWarning } from './odometer-warning.js';
import { informationCodes, odometerWarning } from './odometer-warning.js';
import { proposedSegment } from './proposed-segment.js';

export interface ExaminedOdometerEntry {
  /** by the segment that holds, exact decimal text; null for hours and where no segment can say */
  readonly distanceKm: string | null;
  readonly operatingHours: string | null;
  /** false: intervals and windows go by days until a person has settled the warnings */
  readonly reliable: boolean;
  readonly warnings: readonly OdometerWarning[];
  /** instants of later readings that have to be examined again, because this one now stands before them */
  readonly reexamine: readonly string[];
}

function displayWarnings(
  entry: OdometerReading,
  segments: readonly OdometerSegment[],
  last: OdometerReading | null,
  segment: OdometerSegment,
): OdometerWarning[] {
  const warnings: OdometerWarning[] = [];
  const digits = entry.shown.replace(/\..*$/, '').length;
  if (segment.digits !== null && digits > segment.digits) {
    warnings.push(
      odometerWarning('moreDigitsThanDisplay', { shown: entry.shown, digits: String(segment.digits) }, [
        { kind: 'shown', shown: entry.shown.slice(0, segment.digits) },
      ]),
    );
  }
  if (entry.unit !== segment.unit) {
    const proposed = proposedSegment({ cause: 'unitChanged', entry, segments, last });
    const values = { unit: entry.unit, segmentUnit: segment.unit };
    const proposals =
      proposed.kind === 'proposed' ? [{ kind: 'segment' as const, segment: proposed.segment }] : [];
    warnings.push(odometerWarning('unitDiffersFromSegment', values, proposals));
  }
  return warnings;
}

function patternWarnings(situation: OdometerSituation): OdometerWarning[] {
  const rollover = rolloverPattern(situation);
  const stories = [unitPattern(situation), digitPattern(situation)].filter((found) => found !== null);
  const isTold = stories.length > 0 || rollover?.plausible === true;
  return [
    ...(rollover === null ? [] : [rollover.warning]),
    ...stories,
    ...[
      isTold ? null : lowerPattern(situation),
      speedPattern(situation),
      standstillPattern(situation),
    ].filter((found) => found !== null),
    ...backFillPatterns(situation),
  ];
}

/** An entry no segment can place: it is kept, with what would place it. */
function unplaced(
  entry: OdometerReading,
  at: Extract<DistanceAt, { kind: 'notReadable' | 'noSegment' }>,
  segments: readonly OdometerSegment[],
): OdometerWarning {
  if (at.kind === 'notReadable') return odometerWarning('notReadable', { shown: at.shown });
  const proposed = proposedSegment({ cause: 'firstSeen', entry, segments, last: null });
  const proposals =
    proposed.kind === 'proposed' ? [{ kind: 'segment' as const, segment: proposed.segment }] : [];
  return odometerWarning('noSegment', {}, proposals);
}

/**
 * Looks at an odometer entry among its neighbours. Nothing is refused: each oddity is a warning with the likely story and
 * what a person may confirm; a contradiction marks the entry unreliable until settled.
 *
 * | pattern | warning |
 * |---|---|
 * | lower than last, last above nine tenths of the display's capacity | `rolloverLikely`, segment with the capacity added |
 * | lower than last, no better story | `lowerThanLast`, reason required, segment for a replaced display |
 * | reading / expected within 5 % of 1.609 or 0.621 | `unitMixedUp`, the other unit |
 * | reading / expected within 10 % of 10 or 0.1 | `digitTooMany`, `digitMissing` |
 * | more than 1000 km (24 h) a day since the last, one day at least | `fasterThanPlausible` |
 * | the same on one display for 60 days or more | `unchangedOverMonths`, not reliable from the first sight |
 * | before a later reading | `backFilled`; above it `higherThanNext`, reason required |
 *
 * Expected is the last reading plus the owner's distance a year, else plus the earlier readings' own rate (30 days of
 * them at least), else the last reading itself. Unit and digit stories are told only where they explain the reading and
 * 1000 or more was expected, and standing still is none where 0 is expected. Without neighbours only the entry itself
 * is looked at: `notReadable`, `noSegment`, `belowZero`, `moreDigitsThanDisplay`, `unitDiffersFromSegment`. Reliable is
 * an entry whose warnings are all `informationCodes`.
 *
 * @param entry              as displayed
 * @param neighbours         other readings of the vehicle, any order; those marked unreliable are left out
 * @param segments           of the vehicle; a rollover or replacement that was settled is a segment of its own
 * @param expectedKmPerYear  decimal text; null or absent: not known; `0`: stands still on purpose
 * @returns distance (or hours) by the segment, warnings, whether to rely on it, later readings to examine again
 * @throws RangeError on an instant or a segment number that is none, or a negative expectation
 * @source common practice; thresholds are judgement (`odometerThresholds`)
 */
export function examineOdometerEntry(
  entry: OdometerReading,
  neighbours: readonly OdometerReading[],
  segments: readonly OdometerSegment[],
  expectedKmPerYear?: string | null,
): ExaminedOdometerEntry {
  const yearly = yearlyKm(expectedKmPerYear ?? null);
  const at = distanceAt(segments, entry.shown, entry.unit, entry.readAt);
  if (at.kind === 'notReadable' || at.kind === 'noSegment') {
    const warning = unplaced(entry, at, segments);
    const reliable = isInformation(warning);
    return { distanceKm: null, operatingHours: null, warnings: [warning], reexamine: [], reliable };
  }
  const { segment } = at;
  const value = at.kind === 'belowZero' ? Number(at.value) : placedValue(at)!;
  const situation = odometerSituation(entry, { value, segment }, neighbours, segments, yearly);
  const warnings = [
    ...(at.kind === 'belowZero'
      ? [odometerWarning('belowZero', { shown: entry.shown, value: at.value })]
      : []),
    ...displayWarnings(entry, segments, situation.last?.reading ?? null, segment),
    ...patternWarnings(situation).filter(({ code }) => !(code === 'unchangedOverMonths' && yearly === 0)),
  ];
  return {
    distanceKm: at.kind === 'distance' ? at.km : null,
    operatingHours: at.kind === 'operatingHours' ? at.hours : null,
    reliable: warnings.every(isInformation),
    warnings,
    reexamine: situation.next === null ? [] : [situation.next.reading.readAt],
  };
}

function yearlyKm(text: string | null): number | null {
  if (text === null) return null;
  const km = Number(exactText(exactDecimal(text)));
  if (km < 0) throw new RangeError(`an expected distance is not negative: ${text}`);
  return km;
}

const isInformation = ({ code }: OdometerWarning): boolean => informationCodes.includes(code);
