import { Transform } from 'class-transformer';
import { field, type FieldOptions } from './field.js';
import { isCalendarDate } from './local-date.field.js';
import { value } from './value-shape.js';

const pattern =
  '^(?:19|2[01])[0-9]{2}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])T(?:[01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9](?:\\.[0-9]{1,6})?(?:Z|[+-](?:0[0-9]|1[0-4]):[0-5][0-9])$';
const matcher = new RegExp(pattern, 'u');

/**
 * Moment in time (RFC 3339): offset required, real calendar day, at most six fraction digits, no leap second.
 * Handed on in UTC with milliseconds, so that instants compare as text.
 */
export const InstantField = (options: FieldOptions): PropertyDecorator =>
  field(options, {
    schema: () => ({ type: 'string', format: 'date-time', pattern, maxLength: 32 }),
    rules: [
      {
        name: 'instant',
        detail: 'must be a date and time with offset, such as 2031-05-04T09:30:00Z',
        test: isInstant,
      },
    ],
    shape: value,
    also: [Transform(({ value: given }: { value: unknown }) => (isInstant(given) ? inUtc(given) : given))],
  });

/** Whether the text is a moment as the interface accepts it. */
export function isInstant(given: unknown): given is string {
  return typeof given === 'string' && matcher.test(given) && isCalendarDate(given.slice(0, 10));
}

/** 2031-05-04T11:30:00.5+02:00 -> 2031-05-04T09:30:00.500Z; digits below a millisecond are cut. */
function inUtc(given: string): string {
  return new Date(given).toISOString();
}
