const formats = new Map<string, Intl.DateTimeFormat>();

/**
 * The day of an instant in a time zone, YYYY-MM-DD.
 *
 * @throws RangeError when the time zone does not exist
 */
export function localDay(at: string, timeZone: string): string {
  const format =
    formats.get(timeZone) ??
    new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
  formats.set(timeZone, format);
  const parts = new Map(format.formatToParts(new Date(at)).map(({ type, value }) => [type, value]));
  return `${parts.get('year') ?? ''}-${parts.get('month') ?? ''}-${parts.get('day') ?? ''}`;
}
