import { field, type FieldOptions } from './field.js';
import { value } from './value-shape.js';

const pattern = '^(?:19|2[01])[0-9]{2}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])$';
const matcher = new RegExp(pattern, 'u');

/** Day in the shop's own time zone, `YYYY-MM-DD`. */
export const LocalDateField = (options: FieldOptions): PropertyDecorator =>
  field(options, {
    schema: () => ({ type: 'string', format: 'date', pattern, maxLength: 10 }),
    rules: [
      {
        name: 'localDate',
        detail: 'must be a day of the calendar, such as 2031-05-04',
        test: (given) => typeof given === 'string' && isCalendarDate(given),
      },
    ],
    shape: value,
  });

/** Whether `YYYY-MM-DD` names a day that exists (Gregorian, 1900 to 2199). */
export function isCalendarDate(text: string): boolean {
  if (!matcher.test(text)) return false;
  const [year, month, day] = text.split('-').map(Number) as [number, number, number];
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1]!;
  return day <= days;
}
