import type { LearnedTables } from '../tables/learned-tables.js';

const MOST_ENTRIES = 1200;

/** What was worked out from tables; it goes when they go. Tables are never changed in place. */
const known = new WeakMap<LearnedTables, Map<string, unknown>>();

/**
 * Something that follows from the tables and a key alone, worked out once as long as the same tables are used. Whoever
 * wants assessments fast keeps one object of tables; the answers are the same to the last bit either way. The oldest
 * entries are dropped beyond a fixed number.
 *
 * @param tables  it follows from
 * @param key     tells it from everything else that follows from tables
 * @param make    works it out; nobody changes what it returns
 * @returns what `make` returns for the key
 */
export function recalled<T>(tables: LearnedTables, key: string, make: () => T): T {
  let entries = known.get(tables);
  if (entries === undefined) {
    entries = new Map();
    known.set(tables, entries);
  }
  const before = entries.get(key);
  if (before !== undefined) return before as T;
  const made = make();
  entries.set(key, made);
  if (entries.size > MOST_ENTRIES) entries.delete(entries.keys().next().value!);
  return made;
}
