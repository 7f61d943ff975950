/** How one kind of record lies in the database: the identity's columns, and those of a revision beside `document`. */
export interface RecordTable<I extends object, C extends object> {
  /** identity table; revisions lie in `<name>_revision` */
  readonly name: string;
  readonly identity: Readonly<Record<keyof I & string, ColumnType>>;
  /** members of the content that are columns of their own; all others go into `document` */
  readonly columns: Readonly<Partial<Record<keyof C & string, ColumnType>>>;
  /** the order of lists; ties are broken by id */
  readonly sort: { readonly by: (keyof C & string) | 'firstRecordedAt'; readonly descending: boolean };
}

export const columnTypes = [
  'text',
  'uuid',
  'timestamptz',
  'date',
  'numeric',
  'int4',
  'bool',
  'text[]',
] as const;
export type ColumnType = (typeof columnTypes)[number];

/** fittedAt -> fitted_at */
export function columnName(member: string): string {
  return member.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}

/** The content's members that are columns, in the table's order, and the rest as one document. */
export function splitContent<I extends object, C extends object>(
  table: RecordTable<I, C>,
  content: C,
): { readonly values: readonly unknown[]; readonly document: Readonly<Record<string, unknown>> } {
  const columns = Object.keys(table.columns);
  const members = Object.entries(content as Record<string, unknown>);
  return {
    values: columns.map((column) => (content as Record<string, unknown>)[column] ?? null),
    document: Object.fromEntries(members.filter(([member]) => !columns.includes(member))),
  };
}
