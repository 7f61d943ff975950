import type { Quantity, QuantityKind } from '@endfloat/metrology';
import { isUnitOfKind, quantityKindTable, toCanonical, unitCodes } from '@endfloat/metrology';
import type { Report } from './data-issue.js';

/** Data from outside, an object. */
export type DataRecord = Readonly<Record<string, unknown>>;

const LONGEST_TEXT = 2000;
const LONGEST_LIST = 500;
const LONGEST_ID = 80;
const ID = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;

const escaped = (key: string): string => key.replaceAll('~', '~0').replaceAll('/', '~1');

/** An object with all the required members and none besides the optional ones; null where it is no object. */
export function readRecord(
  data: unknown,
  at: string,
  required: readonly string[],
  optional: readonly string[],
  report: Report,
): DataRecord | null {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) {
    report(at, 'wrongType', 'object');
    return null;
  }
  for (const key of required) if (!Object.hasOwn(data, key)) report(`${at}/${escaped(key)}`, 'missing');
  for (const key of Object.keys(data)) {
    if (!required.includes(key) && !optional.includes(key)) report(`${at}/${escaped(key)}`, 'unknownMember');
  }
  return data as DataRecord;
}

/** A text that says something; '' after a finding. A member that is missing was reported with its record. */
export function readText(data: unknown, at: string, report: Report): string {
  if (data === undefined) return '';
  if (typeof data !== 'string') report(at, 'wrongType', 'text');
  else if (data.trim() === '') report(at, 'empty');
  else if (data.length > LONGEST_TEXT) report(at, 'tooLong', `at most ${LONGEST_TEXT} characters`);
  else return data;
  return '';
}

/** A kebab-case id. */
export function readId(data: unknown, at: string, report: Report): string {
  const text = readText(data, at, report);
  if (text !== '' && (text.length > LONGEST_ID || !ID.test(text)))
    report(at, 'notAnId', `kebab-case, at most ${LONGEST_ID} characters`);
  return text;
}

/** One value of a list; the first of the list after a finding. */
export function readOneOf<T extends string>(
  data: unknown,
  values: readonly [T, ...T[]],
  at: string,
  report: Report,
): T {
  const found = values.find((value) => value === data);
  if (found === undefined && data !== undefined) report(at, 'notOneOf', values.join(', '));
  return found ?? values[0];
}

/** A list; each entry is read at its own pointer. */
export function readList<T>(
  data: unknown,
  at: string,
  report: Report,
  each: (entry: unknown, at: string) => T,
): readonly T[] {
  if (data === undefined) return [];
  if (!Array.isArray(data)) {
    report(at, 'wrongType', 'list');
    return [];
  }
  if (data.length > LONGEST_LIST) {
    report(at, 'tooMany', `at most ${LONGEST_LIST} entries`);
    return [];
  }
  return data.map((entry: unknown, index) => each(entry, `${at}/${index}`));
}

/** A finite number within bounds. */
export function readNumber(
  data: unknown,
  at: string,
  report: Report,
  lowest: number,
  highest: number,
): number {
  if (data === undefined) return lowest;
  if (typeof data !== 'number' || !Number.isFinite(data)) report(at, 'wrongType', 'number');
  else if (data < lowest || data > highest) report(at, 'outOfRange', `${lowest} to ${highest}`);
  else return data;
  return lowest;
}

/** A whole number within bounds. */
export function readCount(
  data: unknown,
  at: string,
  report: Report,
  lowest: number,
  highest: number,
): number {
  const value = readNumber(data, at, report, lowest, highest);
  if (!Number.isInteger(value)) report(at, 'wrongType', 'whole number');
  return value;
}

export function readFlag(data: unknown, at: string, report: Report): boolean {
  if (data !== undefined && typeof data !== 'boolean') report(at, 'wrongType', 'true or false');
  return data === true;
}

/** A quantity of a kind; null after a finding. */
export function readQuantity(data: unknown, kind: QuantityKind, at: string, report: Report): Quantity | null {
  const record = readRecord(data, at, ['value', 'unit'], [], report);
  if (record === null || record['value'] === undefined || record['unit'] === undefined) return null;
  const unit = unitCodes.find((code) => code === record['unit']);
  if (unit === undefined || !isUnitOfKind(kind, unit)) {
    report(`${at}/unit`, 'wrongKindOfUnit', quantityKindTable[kind].units.join(', '));
    return null;
  }
  if (typeof record['value'] !== 'string') {
    report(`${at}/value`, 'wrongType', 'decimal text');
    return null;
  }
  const quantity: Quantity = { value: record['value'], unit };
  const canonical = toCanonical(quantity, kind);
  if (canonical.kind !== 'converted') {
    report(`${at}/value`, 'notAQuantity', canonical.kind);
    return null;
  }
  return quantity;
}

/** Reports every id that occurs twice, at the later place. */
export function reportRepeats(ids: readonly string[], at: (index: number) => string, report: Report): void {
  ids.forEach((id, index) => {
    if (id !== '' && ids.indexOf(id) < index) report(at(index), 'idRepeats', id);
  });
}
