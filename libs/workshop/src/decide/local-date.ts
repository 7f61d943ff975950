/**
 * The day it is in the shop at a moment.
 *
 * @param instant   RFC 3339 in UTC
 * @param timeZone  IANA name
 * @returns YYYY-MM-DD
 * @throws RangeError on an unknown time zone
 */
export function localDateOf(instant: string, timeZone: string): string {
  const parts = new Intl.DateTimeFormat('en', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  }).formatToParts(new Date(instant));
  const part = (type: string): string => parts.find((each) => each.type === type)?.value ?? '';
  return `${part('year')}-${part('month')}-${part('day')}`;
}

/** Whole days from one day to another, both YYYY-MM-DD. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
}
