import type { Recorded } from '@endfloat/workshop/ports';
import { columnName, type RecordTable } from '../repositories/record-table.js';

/** A row of an identity joined with one of its revisions, as the pool's parsers return it. */
export type RecordRow = Readonly<Record<string, unknown>>;

/** Columns of the joined row; `i` is the identity, `r` the revision. */
export function selectedColumns<I extends object, C extends object>(table: RecordTable<I, C>): string {
  return [
    'i.id',
    ...Object.keys(table.identity).map((member) => `i.${columnName(member)}`),
    'i.recorded_at AS first_recorded_at',
    'r.revision',
    ...Object.keys(table.columns).map((member) => `r.${columnName(member)}`),
    'r.document',
    'r.recorded_at',
    'r.recorded_by',
    'r.reason',
    'r.replaced_at',
  ].join(', ');
}

export function recordFromRow<I extends object, C extends object>(
  table: RecordTable<I, C>,
  row: RecordRow,
): Recorded<I, C> {
  const members = (names: object): Record<string, unknown> =>
    Object.fromEntries(Object.keys(names).map((member) => [member, row[columnName(member)]]));
  return {
    id: row.id as string,
    identity: members(table.identity) as I,
    revision: row.revision as number,
    content: { ...(row.document as object), ...members(table.columns) } as C,
    recordedAt: row.recorded_at as string,
    recordedBy: row.recorded_by as string,
    reason: row.reason as string | null,
    replacedAt: row.replaced_at as string | null,
    firstRecordedAt: row.first_recorded_at as string,
  };
}
