import type { DiagnosisTables } from './diagnosis-tables.js';

/**
 * One text for one content of the tables, for hashing in the shell: rows keep their order (it is the order of work and
 * breaks no tie), members are sorted, numbers are written by the shortest text that reads back to the same value.
 *
 * @param tables  any tables
 * @returns JSON text; equal content gives equal text whatever the order of members
 * @example canonicalTablesText({ version: 'a', causes: [], symptoms: [], checks: [] }) // => '{"causes":[],"checks":[],"symptoms":[],"version":"a"}'
 */
export function canonicalTablesText(tables: DiagnosisTables): string {
  return JSON.stringify(tables, (_key, value: unknown) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
    return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));
  });
}
