import { exactDecimal, exactText, minus } from './exact-decimal.js';

/** Distance driven between two moments, or why it is not known. */
export type DistanceBetween =
  | { readonly kind: 'distance'; readonly km: string }
  | { readonly kind: 'unreliable'; readonly reason: 'earlierUnknown' | 'laterUnknown' | 'laterIsLower' };

/**
 * Distance driven since an earlier moment, such as a repair. It is never negative: a later distance below the earlier one
 * is a contradiction, and the answer is that distance cannot be relied on (windows and intervals then go by days).
 *
 * @param earlierKm  decimal text; null where unknown or unreliable
 * @param laterKm    decimal text; null where unknown or unreliable
 * @returns exact difference (0 for equal ones), or the reason why there is none; `earlierUnknown` where both are
 *   unknown
 * @throws RangeError on text that is no decimal number
 * @source definition
 * @example distanceBetween('1000', '1250.5') // => { kind: 'distance', km: '250.5' }
 */
export function distanceBetween(earlierKm: string | null, laterKm: string | null): DistanceBetween {
  if (earlierKm === null) return { kind: 'unreliable', reason: 'earlierUnknown' };
  if (laterKm === null) return { kind: 'unreliable', reason: 'laterUnknown' };
  const driven = minus(exactDecimal(laterKm), exactDecimal(earlierKm));
  if (driven.units < 0n) return { kind: 'unreliable', reason: 'laterIsLower' };
  return { kind: 'distance', km: exactText(driven) };
}
