/**
 * Days since 1970 of a local day.
 *
 * @param day  YYYY-MM-DD
 * @returns whole days, negative before 1970
 * @throws RangeError on a text that is no day of the calendar
 * @source proleptic Gregorian calendar, ISO 8601
 */
export function dayNumber(day: string): number {
  const at = /^\d{4}-\d{2}-\d{2}$/.test(day) ? Date.parse(`${day}T00:00:00Z`) : Number.NaN;
  if (Number.isNaN(at) || new Date(at).toISOString().slice(0, 10) !== day)
    throw new RangeError(`no day: ${day.slice(0, 64)}`);
  return at / 86_400_000;
}
