import type {
  FilterValue,
  ListPage,
  ListQuery,
  Recorded,
  RecordStore,
  Stamp,
} from '@endfloat/workshop/ports';
import type { ShopConnection } from '../connection/shop-connection.js';
import { recordFromRow, selectedColumns, type RecordRow } from '../mappers/record.row-mapper.js';
import { referenceError } from './reference-error.js';
import { columnName, splitContent, type ColumnType, type RecordTable } from './record-table.js';
import { DomainError, sameContent } from '@endfloat/workshop/ports';

/** The one implementation of `RecordStore`, for every kind of record. */
export class SqlRecordStore<I extends object, C extends object> implements RecordStore<I, C> {
  constructor(
    private readonly connection: ShopConnection,
    private readonly table: RecordTable<I, C>,
  ) {}

  async add(
    id: string,
    identity: I,
    content: C,
    stamp: Stamp,
  ): Promise<'added' | 'sameAgain' | 'otherContent'> {
    const members = Object.keys(this.table.identity);
    const values = members.map((member) => (identity as Record<string, unknown>)[member] ?? null);
    const { rowCount } = await this.connection.sql
      .query(
        `INSERT INTO ${this.table.name} (shop_id, id, recorded_at, recorded_by${members.map((m) => `, ${columnName(m)}`).join('')})
         VALUES ($1, $2, $3, $4${members.map((_, at) => `, $${String(at + 5)}`).join('')}) ON CONFLICT DO NOTHING`,
        [this.connection.shopId, id, stamp.at, stamp.by, ...values],
      )
      .catch(referenceError);
    if (rowCount === 1) {
      await this.insertRevisions([{ id, revision: 1, content }], stamp);
      return 'added';
    }
    const first = (await this.history(id))[0];
    return first !== undefined && sameContent(first.identity, identity) && sameContent(first.content, content)
      ? 'sameAgain'
      : 'otherContent';
  }

  async addMany(
    records: readonly { readonly id: string; readonly identity: I; readonly content: C }[],
    stamp: Stamp,
  ): Promise<void> {
    if (records.length === 0) return;
    const identity = Object.entries<ColumnType>(this.table.identity);
    const columns = identity.map(([member]) =>
      records.map((record) => (record.identity as Record<string, unknown>)[member] ?? null),
    );
    const { rowCount } = await this.connection.sql
      .query(
        `INSERT INTO ${this.table.name} (shop_id, recorded_at, recorded_by, id${identity.map(([m]) => `, ${columnName(m)}`).join('')})
         SELECT $1::uuid, $2::timestamptz, $3::uuid, given.* FROM unnest($4::uuid[]${unnested(identity, 5)}) AS given
         ON CONFLICT DO NOTHING`,
        [this.connection.shopId, stamp.at, stamp.by, records.map((record) => record.id), ...columns],
      )
      .catch(referenceError);
    if (rowCount !== records.length) {
      throw new DomainError(
        'record.idTaken',
        'One of the records is already recorded under its id. Choose new ids, or leave out what was sent before.',
      );
    }
    await this.insertRevisions(
      records.map(({ id, content }) => ({ id, revision: 1, content })),
      stamp,
    );
  }

  async correct(
    id: string,
    fromRevision: number,
    content: C,
    stamp: Stamp,
  ): Promise<'corrected' | 'changedMeanwhile' | 'notFound'> {
    // Who waited for another writer was stamped before that one was: the later revision never begins before the earlier.
    const { rows } = await this.connection.sql.query<{ replaced_at: string }>(
      `UPDATE ${this.table.name}_revision SET replaced_at = GREATEST($4::timestamptz, recorded_at)
       WHERE shop_id = $1 AND id = $2 AND revision = $3 AND replaced_at IS NULL RETURNING replaced_at`,
      [this.connection.shopId, id, fromRevision, stamp.at],
    );
    const [replaced] = rows;
    if (replaced !== undefined) {
      const next = { id, revision: fromRevision + 1, content };
      await this.insertRevisions([next], { ...stamp, at: replaced.replaced_at });
      return 'corrected';
    }
    return (await this.find(id)) === undefined ? 'notFound' : 'changedMeanwhile';
  }

  async find(id: string, asOf?: string): Promise<Recorded<I, C> | undefined> {
    return (await this.findMany([id], asOf))[0];
  }

  findMany(ids: readonly string[], asOf?: string): Promise<readonly Recorded<I, C>[]> {
    return this.all({ id: ids } as NonNullable<ListQuery<I, C>['where']>, asOf);
  }

  async all(where: NonNullable<ListQuery<I, C>['where']>, asOf?: string): Promise<readonly Recorded<I, C>[]> {
    const { conditions, values } = this.conditions(where, asOf);
    return this.rows(`WHERE ${conditions.join(' AND ')} ORDER BY ${this.order()}`, values);
  }

  async list(query: ListQuery<I, C>): Promise<ListPage<I, C>> {
    const { conditions, values } = this.conditions(query.where ?? {}, query.asOf);
    if (query.after !== undefined) {
      const at = values.push(query.after.sortValue, query.after.id);
      const compare = this.table.sort.descending ? '<' : '>';
      conditions.push(
        `(${this.sortColumn()}, i.id) ${compare} ($${String(at - 1)}::${this.sortType()}, $${String(at)}::uuid)`,
      );
    }
    const limit = values.push(query.limit + 1);
    const items = await this.rows(
      `WHERE ${conditions.join(' AND ')} ORDER BY ${this.order()} LIMIT $${String(limit)}`,
      values,
    );
    const last = items[query.limit - 1];
    if (items.length <= query.limit || last === undefined) return { items };
    return { items: items.slice(0, query.limit), next: { sortValue: this.sortValue(last), id: last.id } };
  }

  history(id: string): Promise<readonly Recorded<I, C>[]> {
    return this.rows('WHERE i.shop_id = $1 AND i.id = $2 ORDER BY r.revision', [this.connection.shopId, id]);
  }

  private async rows(rest: string, values: unknown[]): Promise<readonly Recorded<I, C>[]> {
    const { name } = this.table;
    const { rows } = await this.connection.sql.query<RecordRow>(
      `SELECT ${selectedColumns(this.table)} FROM ${name} i JOIN ${name}_revision r ON r.shop_id = i.shop_id AND r.id = i.id ${rest}`,
      values,
    );
    return rows.map((row) => recordFromRow(this.table, row));
  }

  private conditions(
    where: Partial<Record<string, FilterValue | undefined>>,
    asOf: string | undefined,
  ): { conditions: string[]; values: unknown[] } {
    const values: unknown[] = [this.connection.shopId];
    const conditions = ['i.shop_id = $1'];
    if (asOf === undefined) conditions.push('r.replaced_at IS NULL');
    else {
      values.push(asOf);
      conditions.push('r.recorded_at <= $2', '(r.replaced_at IS NULL OR r.replaced_at > $2)');
    }
    for (const [member, value] of Object.entries(where)) {
      if (value === undefined) continue;
      const column = this.filterColumn(member);
      if (value === null) conditions.push(`${column} IS NULL`);
      else
        conditions.push(
          Array.isArray(value)
            ? `${column} = ANY ($${String(values.push(value))})`
            : `${column} = $${String(values.push(value))}`,
        );
    }
    return { conditions, values };
  }

  private filterColumn(member: string): string {
    if (member === 'id' || member in this.table.identity) return `i.${columnName(member)}`;
    if (member in this.table.columns) return `r.${columnName(member)}`;
    throw new RangeError(`${this.table.name} cannot be searched by ${member}: it is not a column`);
  }

  private sortColumn(): string {
    const { by } = this.table.sort;
    return by === 'firstRecordedAt' ? 'i.recorded_at' : `r.${columnName(by)}`;
  }

  private sortType(): string {
    const { by } = this.table.sort;
    return by === 'firstRecordedAt'
      ? 'timestamptz'
      : ((this.table.columns as Record<string, ColumnType>)[by] ?? 'text');
  }

  private sortValue(record: Recorded<I, C>): string {
    const { by } = this.table.sort;
    return by === 'firstRecordedAt'
      ? record.firstRecordedAt
      : String((record.content as Record<string, unknown>)[by]);
  }

  private order(): string {
    const direction = this.table.sort.descending ? 'DESC' : 'ASC';
    return `${this.sortColumn()} ${direction}, i.id ${direction}`;
  }

  private async insertRevisions(
    revisions: readonly { id: string; revision: number; content: C }[],
    stamp: Stamp,
  ): Promise<void> {
    const columns = Object.entries(this.table.columns) as [string, ColumnType][];
    const split = revisions.map(({ content }) => splitContent(this.table, content));
    await this.connection.sql
      .query(
        `INSERT INTO ${this.table.name}_revision
           (shop_id, recorded_at, recorded_by, reason, id, revision, document${columns.map(([m]) => `, ${columnName(m)}`).join('')})
         SELECT $1::uuid, $2::timestamptz, $3::uuid, $4::text, given.* FROM unnest($5::uuid[], $6::int4[], $7::jsonb[]${unnested(columns, 8)}) AS given`,
        [
          this.connection.shopId,
          stamp.at,
          stamp.by,
          stamp.reason ?? null,
          revisions.map(({ id }) => id),
          revisions.map(({ revision }) => revision),
          split.map(({ document }) => JSON.stringify(document)),
          ...columns.map((_, at) => split.map(({ values }) => values[at])),
        ],
      )
      .catch(referenceError);
  }
}

function unnested(columns: readonly (readonly [string, ColumnType])[], from: number): string {
  return columns.map(([, type], at) => `, $${String(at + from)}::${type}[]`).join('');
}
