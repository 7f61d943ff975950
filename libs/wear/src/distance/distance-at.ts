import { convertQuantity } from '@endfloat/metrology';
import type { ExactDecimal } from './exact-decimal.js';
import { exactDecimal, exactText, minus, plus, times } from './exact-decimal.js';
import type { OdometerSegment, OdometerUnit } from './odometer-segment.js';
import { isHourMeter, segmentAt } from './odometer-segment.js';

/** What a display stood for. */
export type DistanceAt =
  | { readonly kind: 'distance'; readonly km: string; readonly segment: OdometerSegment }
  | { readonly kind: 'operatingHours'; readonly hours: string; readonly segment: OdometerSegment }
  | { readonly kind: 'belowZero'; readonly value: string; readonly segment: OdometerSegment }
  | { readonly kind: 'noSegment' }
  | { readonly kind: 'notReadable'; readonly shown: string };

const displayGrammar = /^[0-9]{1,12}(?:\.[0-9]{1,3})?$/;

/** Whether a text is what a display can show: digits, with a point where tenths are shown. */
export const isDisplayText = (shown: string): boolean => displayGrammar.test(shown);

/** Kilometres in one unit shown, exactly; an hour is counted as one hour. */
export function factorOfUnit(unit: OdometerUnit): string {
  if (unit === 'h') return '1';
  const converted = convertQuantity({ value: '1', unit }, 'distance', 'km');
  if (converted.kind !== 'converted') throw new RangeError(`not a unit of distance: ${unit}`);
  return converted.value;
}

/** A display switched to the other unit shows the same distance, so what it shows is converted before it is counted. */
function countedInSegment(raw: ExactDecimal, unit: OdometerUnit, segment: OdometerSegment): ExactDecimal {
  const factor = exactDecimal(segment.factor);
  const atStart = exactDecimal(segment.rawAtStart);
  if (unit === segment.unit) return times(factor, minus(raw, atStart));
  if (unit === 'km' && segment.factor === factorOfUnit(segment.unit))
    return minus(raw, times(factor, atStart));
  const converted = convertQuantity({ value: exactText(raw), unit }, 'distance', segment.unit);
  if (converted.kind !== 'converted') throw new RangeError(`cannot be converted: ${converted.kind}`);
  return times(factor, minus(exactDecimal(converted.value), atStart));
}

/**
 * Distance (or operating hours) a display stands for: offset + factor x (raw - raw at the start of the segment), exactly.
 *
 * A reading in miles on a display recorded in km (or the reverse) is converted by 1 mi = 1.609344 km first; that needs a
 * division, and is then cut at 24 digits, only where the segment counts miles with a factor of its own.
 *
 * @param segments  of one vehicle, any order
 * @param shown     digits as displayed, leading zeros allowed
 * @param unit      of the display
 * @param readAt    instant, with offset
 * @returns `distance` in km or `operatingHours` as decimal text with the segment used; `noSegment` where none holds at
 *   that moment; `notReadable` where the text is not digits; `belowZero` where the segment would say less than nothing
 * @throws RangeError on an instant that is none, or a segment whose numbers are none
 * @source international mile: NIST SP 811 (2008), Appendix B.8; segments: common practice, with the sticker rule of
 *   49 USC 32704 (value on the notice + present reading)
 */
export function distanceAt(
  segments: readonly OdometerSegment[],
  shown: string,
  unit: OdometerUnit,
  readAt: string,
): DistanceAt {
  const segment = segmentAt(segments, unit, readAt);
  if (!isDisplayText(shown)) return { kind: 'notReadable', shown: shown.slice(0, 64) };
  if (segment === null) return { kind: 'noSegment' };
  const counted = countedInSegment(exactDecimal(shown), unit, segment);
  const total = plus(exactDecimal(segment.offsetKm), counted);
  const text = exactText(total);
  if (total.units < 0n) return { kind: 'belowZero', value: text, segment };
  return isHourMeter(unit)
    ? { kind: 'operatingHours', hours: text, segment }
    : { kind: 'distance', km: text, segment };
}
