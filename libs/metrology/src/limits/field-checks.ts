import { parseDecimalText } from '../quantities/parse-decimal-text.js';
import { parseQuantity } from '../quantities/parse-quantity.js';
import type { QuantityKind } from '../quantities/quantity-kind.js';
import { isUnitCode } from '../quantities/unit-code.js';
import type { ReportIssue } from './limit-issue.js';

/** Data from outside, an object. */
export type DataRecord = Readonly<Record<string, unknown>>;

const longestText = 2000;

/**
 * Checks that data is an object with all members of one list, possibly those of another, and no others.
 *
 * @param data      anything
 * @param pointer   JSON Pointer of the data
 * @param required  members that must be there
 * @param optional  members that may be there
 * @param report    takes down findings
 * @returns the record, or null where it is no object
 */
export function checkRecord(
  data: unknown,
  pointer: string,
  required: readonly string[],
  optional: readonly string[],
  report: ReportIssue,
): DataRecord | null {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) {
    report(pointer, 'wrongType', 'object');
    return null;
  }
  for (const key of required) {
    if (!Object.hasOwn(data, key)) report(`${pointer}/${escapeKey(key)}`, 'missing');
  }
  for (const key of Object.keys(data)) {
    if (!required.includes(key) && !optional.includes(key))
      report(`${pointer}/${escapeKey(key)}`, 'unknownMember');
  }
  return data as DataRecord;
}

/**
 * A member name as a part of a JSON Pointer.
 *
 * @param key  any text
 * @returns the text with ~ and / escaped
 * @source RFC 6901, section 3
 */
export function escapeKey(key: string): string {
  return key.replaceAll('~', '~0').replaceAll('/', '~1');
}

/**
 * Checks for a text that is not empty and not too long.
 *
 * @param data     anything; undefined is left to `checkRecord`
 * @param pointer  JSON Pointer of the data
 * @param report   takes down findings
 * @returns true for such a text
 */
export function checkText(data: unknown, pointer: string, report: ReportIssue): data is string {
  if (data === undefined) return false;
  if (typeof data !== 'string') {
    report(pointer, 'wrongType', 'text');
  } else if (data.trim() === '') {
    report(pointer, 'empty');
  } else if (data.length > longestText) {
    report(pointer, 'tooLong', `at most ${longestText} characters`);
  } else {
    return true;
  }
  return false;
}

/**
 * Checks for a kebab-case id.
 *
 * @param data     anything; undefined is left to `checkRecord`
 * @param pointer  JSON Pointer of the data
 * @param report   takes down findings
 */
export function checkId(data: unknown, pointer: string, report: ReportIssue): void {
  if (!checkText(data, pointer, report)) return;
  if (!/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(data))
    report(pointer, 'notAnId', 'lower case words joined by hyphens');
}

/**
 * Checks for one text of a list.
 *
 * @param data     anything; undefined is left to `checkRecord`
 * @param allowed  the texts
 * @param pointer  JSON Pointer of the data
 * @param report   takes down findings
 * @returns true for one of them
 */
export function checkOneOf<T extends string>(
  data: unknown,
  allowed: readonly T[],
  pointer: string,
  report: ReportIssue,
): data is T {
  if (data === undefined) return false;
  if (typeof data === 'string' && (allowed as readonly string[]).includes(data)) return true;
  report(pointer, 'notOneOf', allowed.join(', '));
  return false;
}

/**
 * Checks for a list with at least so many entries.
 *
 * @param data     anything; undefined is left to `checkRecord`
 * @param pointer  JSON Pointer of the data
 * @param report   takes down findings
 * @param least    entries needed, 1 unless given
 * @returns the list, empty where it is none
 */
export function checkList(
  data: unknown,
  pointer: string,
  report: ReportIssue,
  least = 1,
): readonly unknown[] {
  if (data === undefined) return [];
  if (!Array.isArray(data)) {
    report(pointer, 'wrongType', 'list');
    return [];
  }
  if (data.length < least) report(pointer, 'empty');
  return data as readonly unknown[];
}

/**
 * Checks for a local date YYYY-MM-DD that exists.
 *
 * @param data     anything; undefined is left to `checkRecord`
 * @param pointer  JSON Pointer of the data
 * @param report   takes down findings
 * @returns true for such a date
 */
export function checkDate(data: unknown, pointer: string, report: ReportIssue): data is string {
  if (data === undefined) return false;
  const isDate =
    typeof data === 'string' &&
    /^[0-9]{4}-[0-9]{2}-[0-9]{2}$/.test(data) &&
    !Number.isNaN(Date.parse(data)) &&
    new Date(data).toISOString().startsWith(data);
  if (!isDate) report(pointer, 'notADate', 'YYYY-MM-DD');
  return isDate;
}

/**
 * Checks for decimal text.
 *
 * @param data     anything; undefined is left to `checkRecord`
 * @param pointer  JSON Pointer of the data
 * @param report   takes down findings
 * @returns true for decimal text
 */
export function checkDecimal(data: unknown, pointer: string, report: ReportIssue): data is string {
  if (data === undefined) return false;
  const isDecimal = typeof data === 'string' && parseDecimalText(data).kind === 'decimal';
  if (!isDecimal) report(pointer, 'notADecimal');
  return isDecimal;
}

/**
 * Checks for a quantity of a kind; with `alsoPrinted` where a printed figure is asked for.
 *
 * @param data     anything
 * @param kind     kind it must be of; null where that kind itself is wrong and only the shape is checked
 * @param pointer  JSON Pointer of the data
 * @param report   takes down findings
 * @param form     a plain quantity, a printed figure, or a signed difference (not held to the kind's lowest value)
 * @returns true for a good quantity
 */
export function checkQuantity(
  data: unknown,
  kind: QuantityKind | null,
  pointer: string,
  report: ReportIssue,
  form: 'quantity' | 'printed' | 'difference' = 'quantity',
): boolean {
  if (data === undefined) return false;
  const record = checkRecord(
    data,
    pointer,
    ['value', 'unit'],
    form === 'printed' ? ['alsoPrinted'] : [],
    report,
  );
  if (record === null) return false;
  const { value, unit, alsoPrinted } = record;
  if (typeof value !== 'string' || typeof unit !== 'string') {
    report(pointer, 'notAQuantity', 'decimal text and unit code');
    return false;
  }
  checkList(alsoPrinted, `${pointer}/alsoPrinted`, report).forEach((figure, index) => {
    checkQuantity(figure, kind, `${pointer}/alsoPrinted/${index}`, report);
  });
  if (kind === null) return isUnitCode(unit) && parseDecimalText(value).kind === 'decimal';
  const parsed = parseQuantity(form === 'difference' ? value.replace('-', '') : value, unit, kind);
  if (parsed.kind === 'quantity') return true;
  report(
    pointer,
    parsed.kind === 'wrongKindOfUnit' ? 'wrongKindOfUnit' : 'notAQuantity',
    `${kind}: ${parsed.kind}`,
  );
  return false;
}
