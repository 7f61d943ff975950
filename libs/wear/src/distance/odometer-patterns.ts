import { daysBetween, instantOf } from '../time/instant-of.js';
import { distanceAt } from './distance-at.js';
import type { OdometerUnit } from './odometer-segment.js';
import { isHourMeter } from './odometer-segment.js';
import type { OdometerSituation } from './odometer-situation.js';
import { isPlausible, placedValue } from './odometer-situation.js';
import { odometerThresholds } from './odometer-thresholds.js';
import type { OdometerProposal, OdometerWarning } from './odometer-warning.js';
import { odometerWarning } from './odometer-warning.js';
import { displayDigits, proposedSegment } from './proposed-segment.js';

const rounded = (value: number): string => String(Math.round(value));

/** What the display would show for a distance, in the segment's unit. */
const rawFor = ({ segment }: OdometerSituation, value: number): number =>
  Number(segment.rawAtStart) + (value - Number(segment.offsetKm)) / Number(segment.factor);

/** Reading over expected reading; null where the expected one is unknown or too small to tell by. */
export function ratioToExpected(situation: OdometerSituation): number | null {
  if (situation.expected === null) return null;
  const expected = rawFor(situation, situation.expected);
  return expected < odometerThresholds.smallestExpectedForRatio
    ? null
    : rawFor(situation, situation.value) / expected;
}

const isNear = (ratio: number, target: number, tolerance: number): boolean =>
  Math.abs(ratio / target - 1) <= tolerance;

const segmentProposal = (
  situation: OdometerSituation,
  cause: 'rollover' | 'displayReplaced',
): OdometerProposal[] => {
  const { entry, segments, last } = situation;
  const proposed = proposedSegment({ cause, entry, segments, last: last?.reading ?? null });
  return proposed.kind === 'proposed' ? [{ kind: 'segment', segment: proposed.segment }] : [];
};

/** Lower than last, and the last was near the capacity of the display (five digits where nothing else is known). */
export function rolloverPattern(
  situation: OdometerSituation,
): { warning: OdometerWarning; plausible: boolean } | null {
  const { last, value, segment } = situation;
  if (last === null || value >= last.value) return null;
  const capacity = 10 ** displayDigits(segment, last.reading);
  const lastRaw = rawFor(situation, last.value);
  if (lastRaw > capacity || lastRaw < odometerThresholds.rolloverFrom * capacity) return null;
  const added = capacity * Number(segment.factor);
  const values = { last: last.reading.shown, shown: situation.entry.shown, added: rounded(added) };
  return {
    warning: odometerWarning('rolloverLikely', values, segmentProposal(situation, 'rollover')),
    plausible: isPlausible(situation, value + added),
  };
}

const otherUnit: Readonly<Record<'km' | '[mi_i]', OdometerUnit>> = { km: '[mi_i]', '[mi_i]': 'km' };

/** Reading / expected near 1.609 or 0.621. */
export function unitPattern(situation: OdometerSituation): OdometerWarning | null {
  const { entry, segments } = situation;
  const ratio = ratioToExpected(situation);
  if (ratio === null || isHourMeter(entry.unit)) return null;
  const mile = 1.609344;
  const tolerance = odometerThresholds.unitRatioTolerance;
  const isTooLarge = isNear(ratio, mile, tolerance);
  if (!isTooLarge && !isNear(ratio, 1 / mile, tolerance)) return null;
  const unit = otherUnit[entry.unit as 'km' | '[mi_i]'];
  const values = { shown: entry.shown, unit: entry.unit, ratio: ratio.toFixed(3) };
  // Written as miles and too large, or as km and too small: the entry's own unit is the likely slip.
  const isOwnUnit = isTooLarge === (entry.unit === '[mi_i]');
  if (!isOwnUnit) return odometerWarning('unitMixedUp', values, [{ kind: 'unitOfEarlierReadings', unit }]);
  const value = placedValue(distanceAt(segments, entry.shown, unit, entry.readAt));
  if (value === null || !isPlausible(situation, value)) return null;
  return odometerWarning('unitMixedUp', values, [{ kind: 'unit', unit }]);
}

/** Tenths read as a whole digit, or a digit left out: reading / expected near 10 or 0.1. */
export function digitPattern(situation: OdometerSituation): OdometerWarning | null {
  const { entry, segments } = situation;
  const ratio = ratioToExpected(situation);
  if (ratio === null || entry.shown.includes('.')) return null;
  const values = { shown: entry.shown, ratio: ratio.toFixed(3) };
  const tolerance = odometerThresholds.digitRatioTolerance;
  const valueOf = (shown: string) => placedValue(distanceAt(segments, shown, entry.unit, entry.readAt));
  if (isNear(ratio, 10, tolerance)) {
    const shown = entry.shown.slice(0, -1);
    const value = valueOf(shown);
    if (value === null || !isPlausible(situation, value)) return null;
    return odometerWarning('digitTooMany', values, [{ kind: 'shown', shown }]);
  }
  if (!isNear(ratio, 0.1, tolerance)) return null;
  const [lowest, highest] = [`${entry.shown}0`, `${entry.shown}9`];
  const top = valueOf(highest);
  if (top === null || !isPlausible(situation, top)) return null;
  return odometerWarning('digitMissing', values, [{ kind: 'shownBetween', lowest, highest }]);
}

/** Lower than last, and no better story: typing error, display replaced, tampering. */
export function lowerPattern(situation: OdometerSituation): OdometerWarning | null {
  const { last, value, entry } = situation;
  if (last === null || value >= last.value) return null;
  const values = {
    shown: entry.shown,
    last: last.reading.shown,
    lastReadAt: last.reading.readAt,
    stories: 'typingError,displayReplaced,tampering',
  };
  return odometerWarning('lowerThanLast', values, segmentProposal(situation, 'displayReplaced'));
}

/** More since the last reading than any van does. */
export function speedPattern(situation: OdometerSituation): OdometerWarning | null {
  const { last, value, mostSinceLast, days, entry } = situation;
  if (last === null || value - last.value <= mostSinceLast) return null;
  const perDay = (value - last.value) / Math.max(1, days);
  const most = isHourMeter(entry.unit) ? odometerThresholds.hoursPerDay : odometerThresholds.kmPerDay;
  return odometerWarning('fasterThanPlausible', { perDay: rounded(perDay), most: String(most) });
}

/** Since when the display is the one that is read now; readings of the display before it cannot be tied to its own. */
function displaySince({ entry, segments }: OdometerSituation): number {
  const at = instantOf(entry.readAt);
  const replaced = segments
    .filter(({ cause, unit }) => cause === 'displayReplaced' && isHourMeter(unit) === isHourMeter(entry.unit))
    .map(({ startedAt }) => instantOf(startedAt))
    .filter((startedAt) => startedAt <= at);
  return Math.max(-Infinity, ...replaced);
}

/**
 * The same number over months: the display stands still, so distance is unknown from its first sight on. A replaced
 * display goes on from the last known distance, whatever was driven in between: its readings are compared among
 * themselves only.
 */
export function standstillPattern(situation: OdometerSituation): OdometerWarning | null {
  const { value, entry } = situation;
  const since = displaySince(situation);
  const earlier = situation.earlier.filter(({ reading }) => instantOf(reading.readAt) >= since);
  const lastOther = earlier.findLastIndex((placed) => placed.value !== value);
  const first = earlier[lastOther + 1];
  if (first === undefined) return null;
  const days = daysBetween(first.reading.readAt, entry.readAt);
  if (days < odometerThresholds.unchangedDays) return null;
  const from = first.reading.readAt;
  return odometerWarning('unchangedOverMonths', { from, days: String(Math.floor(days)) }, [
    { kind: 'notReliableFrom', from },
  ]);
}

/** Entered later with an earlier date: it stands in date order, and its neighbours have to be looked at again. */
export function backFillPatterns(situation: OdometerSituation): OdometerWarning[] {
  const { next, value, entry } = situation;
  if (next === null) return [];
  const values = { shown: entry.shown, next: next.reading.shown, nextReadAt: next.reading.readAt };
  const filled = odometerWarning('backFilled', { nextReadAt: next.reading.readAt });
  return value > next.value ? [filled, odometerWarning('higherThanNext', values)] : [filled];
}
