import { prismaModels, type PrismaModel } from './prisma-models.js';
import { valuesOf } from './project-files.js';

interface RecordTable {
  readonly name: string;
  readonly identity: Readonly<Record<string, string>>;
  readonly columns: Readonly<Record<string, string>>;
  readonly sort: { readonly by: string };
}

/** Tables without revisions, each with a store of its own. */
const plainTables = [
  'shop',
  'personal_record',
  'api_key',
  'learned_tables',
  'settled_job',
  'settled_job_change',
  'outbox',
  'stored_answer',
  'webhook_secret',
  'webhook_delivery',
  'webhook_attempt',
];

const models = new Map(prismaModels().map((model) => [model.table, model]));
const typesOf = (model: PrismaModel | undefined): Record<string, string> =>
  Object.fromEntries((model?.columns ?? []).map(({ member, type }) => [member, type]));

const { recordTables } = (await valuesOf('libs/persistence/src/repositories/record-tables.ts')) as {
  recordTables: Readonly<Record<string, RecordTable>>;
};
const { columnName } = (await valuesOf('libs/persistence/src/repositories/record-table.ts')) as {
  columnName: (member: string) => string;
};
const tables = Object.entries(recordTables).map(([store, table]) => ({ store, table }));

describe('tables of records', () => {
  it.each(tables)(
    '$store: identity and revision are the columns of the schema, types included',
    ({ table }) => {
      expect(typesOf(models.get(table.name))).toEqual({
        shopId: 'uuid',
        id: 'uuid',
        recordedAt: 'timestamptz',
        recordedBy: 'uuid',
        ...table.identity,
      });
      expect(typesOf(models.get(`${table.name}_revision`))).toEqual({
        shopId: 'uuid',
        id: 'uuid',
        revision: 'int4',
        document: 'jsonb',
        recordedAt: 'timestamptz',
        recordedBy: 'uuid',
        reason: 'text',
        replacedAt: 'timestamptz',
        ...table.columns,
      });
    },
  );

  it.each(tables)('$store: lists are sorted by a column that is always there', ({ table }) => {
    const column = models
      .get(`${table.name}_revision`)
      ?.columns.find(({ member }) => member === table.sort.by);
    if (table.sort.by !== 'firstRecordedAt') expect(column).toMatchObject({ nullable: false });
  });

  it.each(tables)('$store: the shop leads the keys', ({ table }) => {
    expect(models.get(table.name)?.key).toEqual(['shopId', 'id']);
    expect(models.get(`${table.name}_revision`)?.key).toEqual(['shopId', 'id', 'revision']);
  });

  it('are named as the columns they lie in', () => {
    const columns = tables.flatMap(({ table }) => [
      ...(models.get(table.name)?.columns ?? []),
      ...(models.get(`${table.name}_revision`)?.columns ?? []),
    ]);
    expect(columns.length).toBeGreaterThan(200);
    expect(columns.filter(({ member, column }) => columnName(member) !== column)).toEqual([]);
  });

  it('are, with the plain ones, all tables of the schema', () => {
    const known = [...plainTables, ...tables.flatMap(({ table: { name } }) => [name, `${name}_revision`])];
    expect([...models.keys()].sort()).toEqual(known.sort());
  });
});
