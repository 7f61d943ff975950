import type { IdSource, RecordStore, ShopTransaction, Stamp } from '@endfloat/workshop';

/** What a sample needs to know of a table of records; given by the room that owns the tables. */
export interface SampledTable {
  readonly name: string;
  readonly identity: Readonly<Record<string, string>>;
  readonly columns: Readonly<Record<string, string>>;
}
export type SampledTables = Readonly<Record<string, SampledTable>>;

/** What the database says of its columns. */
export interface ColumnFacts {
  /** `table.column`, columns that may be null */
  readonly nullable: ReadonlySet<string>;
  /** `table.column` -> table that a foreign key leads to */
  readonly leadsTo: ReadonlyMap<string, string>;
}

/** The query from which `readColumnFacts` makes them; schema `public`. */
export const columnFactsQuery = `
SELECT c.table_name || '.' || c.column_name AS column, c.is_nullable = 'YES' AS nullable,
  (SELECT k.confrelid::regclass::text FROM pg_constraint k
   JOIN pg_attribute a ON a.attrelid = k.conrelid AND a.attnum = k.conkey[2]
   WHERE k.contype = 'f' AND k.conrelid = (quote_ident(c.table_name))::regclass AND a.attname = c.column_name) AS "leadsTo"
FROM information_schema.columns c WHERE c.table_schema = 'public'`;

export function columnFacts(
  rows: readonly { column: string; nullable: boolean; leadsTo: string | null }[],
): ColumnFacts {
  return {
    nullable: new Set(rows.filter(({ nullable }) => nullable).map(({ column }) => column)),
    leadsTo: new Map(rows.flatMap(({ column, leadsTo }) => (leadsTo === null ? [] : [[column, leadsTo]]))),
  };
}

type Members = Readonly<Record<string, unknown>>;
export interface Sample {
  readonly id: string;
  readonly identity: Members;
  readonly content: Members;
}
export type AnyStore = RecordStore<object, object>;

export const sampleStamp: Stamp = {
  at: '2031-05-04T09:30:00.125Z',
  by: '0193f2c0-0000-7000-8000-00000000aaaa',
};

/**
 * Records of every kind with a value in every column (`full`) or with null wherever that may be (`bare`), on parents
 * that are recorded first, so that no two samples share a key.
 */
export class RecordSamples {
  private made = 0;

  constructor(
    private readonly tables: SampledTables,
    private readonly facts: ColumnFacts,
    private readonly ids: IdSource,
  ) {}

  storeOf(tx: ShopTransaction, store: string): AnyStore {
    return (tx as unknown as Record<string, AnyStore>)[store]!;
  }

  /** A sample that has not been recorded yet; its parents have. */
  async make(tx: ShopTransaction, store: string, form: 'full' | 'bare' = 'full'): Promise<Sample> {
    const table = this.tables[store]!;
    const members = async (types: Members, lies: string): Promise<Members> => {
      const entries: [string, unknown][] = [];
      for (const [member, type] of Object.entries(types)) {
        const column = `${lies}.${columnOf(member)}`;
        const isNull = form === 'bare' && this.facts.nullable.has(column);
        entries.push([member, isNull ? null : await this.value(tx, member, String(type), column)]);
      }
      return Object.fromEntries(entries);
    };
    const inside = {
      words: 'quoted "so", \\ and \u{1f527}',
      list: [1, 0.25, null, { deep: [true] }],
      nothing: null,
    };
    return {
      id: this.ids.next(),
      identity: await members(table.identity, table.name),
      content: { ...(await members(table.columns, `${table.name}_revision`)), inside },
    };
  }

  async record(tx: ShopTransaction, store: string, form: 'full' | 'bare' = 'full'): Promise<Sample> {
    const sample = await this.make(tx, store, form);
    const outcome = await this.storeOf(tx, store).add(
      sample.id,
      sample.identity,
      sample.content,
      sampleStamp,
    );
    if (outcome !== 'added') throw new Error(`${store}: ${outcome}`);
    return sample;
  }

  private async value(tx: ShopTransaction, member: string, type: string, column: string): Promise<unknown> {
    this.made += 1;
    const parent = this.facts.leadsTo.get(column);
    if (parent !== undefined) return (await this.record(tx, this.storeNamed(parent), 'bare')).id;
    switch (type) {
      case 'uuid':
        return this.ids.next();
      case 'timestamptz':
        return new Date(Date.UTC(2031, 0, 1) + this.made * 61_001).toISOString();
      case 'date':
        return new Date(Date.UTC(2031, 0, 1) + this.made * 86_400_000).toISOString().slice(0, 10);
      case 'numeric':
        // As many digits as the column holds, the last of them not zero.
        return `${this.made % 2 === 0 ? '-' : ''}123456789012${String(100 + (this.made % 900))}.00000000${String(1 + (this.made % 9))}`;
      case 'int4':
        return this.made;
      case 'bool':
        return this.made % 2 === 0;
      case 'text[]':
        return [`${member} ${String(this.made)}`, 'with, comma', 'and "quotes"'];
      default:
        return `${member} ${String(this.made)} – é, "quotes", \\ and \u{1f527}`;
    }
  }

  private storeNamed(table: string): string {
    const found = Object.entries(this.tables).find(([, { name }]) => name === table);
    if (found === undefined) throw new Error(`no store lies in ${table}`);
    return found[0];
  }
}

const columnOf = (member: string): string => member.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
