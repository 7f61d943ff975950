const grammar = /^(\d{4})-(\d{2})-(\d{2})T\d{2}:\d{2}(?::\d{2}(?:\.\d{1,9})?)?(?:Z|[+-]\d{2}:\d{2})$/;

/** Milliseconds in a day of 24 hours. */
export const millisecondsPerDay = 86_400_000;

/**
 * Milliseconds since 1970 of an instant written in ISO 8601 with its offset.
 *
 * @param text  date, time and offset
 * @returns milliseconds
 * @throws RangeError on a text without offset, or one that names no instant
 */
export function instantOf(text: string): number {
  const parts = grammar.exec(text);
  const at = parts === null ? Number.NaN : Date.parse(text);
  if (Number.isNaN(at) || !hasDay(parts!))
    throw new RangeError(`not an instant with offset: ${text.slice(0, 64)}`);
  return at;
}

/** Whether the month has the day: `Date.parse` takes the 31st of every month. */
const hasDay = ([, year, month, day]: readonly string[]): boolean =>
  Number(day) <= new Date(Date.UTC(Number(year), Number(month), 0)).getUTCDate();

/** Days between two instants, fractions kept; negative where the second is the earlier. */
export const daysBetween = (from: string, until: string): number =>
  (instantOf(until) - instantOf(from)) / millisecondsPerDay;
