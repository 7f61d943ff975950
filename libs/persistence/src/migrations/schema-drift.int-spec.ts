import { readFileSync } from 'node:fs';
import { jest } from '@jest/globals';
import { createTestDatabase, type TestDatabase } from '../../../../test/support/database.js';
import { onConnection } from '../embedded/admin-connection.js';
import { findDrift } from './find-drift.js';
import { findUnguardedTables } from './find-unguarded-tables.js';

/** The engine is compiled on first use. */
jest.setTimeout(60_000);

const schema = readFileSync(new URL('../../../../prisma/schema.prisma', import.meta.url), 'utf8');

describe('the Prisma schema and the migrations', () => {
  let migrated: TestDatabase;
  let empty: TestDatabase;

  beforeEach(async () => {
    [migrated, empty] = await Promise.all([createTestDatabase(), createTestDatabase('empty')]);
  });

  afterEach(async () => {
    await Promise.all([migrated.drop(), empty.drop()]);
  });

  const drift = () => findDrift({ migratedUrl: migrated.ownerUrl, emptyUrl: empty.ownerUrl, schema });
  const inMigrated = (sql: string) => onConnection(migrated.ownerUrl, (session) => session.query(sql));

  it('say the same of every table, column, key and index', async () => {
    expect(await drift()).toEqual([]);
  });

  it('differ where a migration adds a column, changes one, or adds an index that the schema does not name', async () => {
    await inMigrated(`
      ALTER TABLE shop ADD COLUMN planted text;
      ALTER TABLE personal_record ALTER COLUMN kind DROP NOT NULL;
      CREATE INDEX planted_index ON personal_record (kind)`);

    expect(await drift()).toEqual([
      { subject: 'column personal_record.kind', inMigrations: 'text', inSchema: 'text not null' },
      { subject: 'column shop.planted', inMigrations: 'text', inSchema: undefined },
      {
        subject: 'index personal_record.planted_index',
        inMigrations: 'CREATE INDEX planted_index ON public.personal_record USING btree (kind)',
        inSchema: undefined,
      },
    ]);
  });

  it('agree also beside what only SQL can say', async () => {
    await inMigrated(`
      CREATE INDEX planted_partial ON personal_record (kind) WHERE erased_at IS NULL;
      ALTER TABLE personal_record ADD CONSTRAINT planted_check CHECK (kind <> '')`);

    expect(await drift()).toEqual([]);
  });

  it('refuses to compare when the database for the schema has tables', async () => {
    const twice = { migratedUrl: migrated.ownerUrl, emptyUrl: migrated.ownerUrl, schema };

    await expect(findDrift(twice)).rejects.toThrow(RangeError);
  });
});

describe('row-level security', () => {
  let database: TestDatabase;

  beforeAll(async () => {
    database = await createTestDatabase();
  });

  afterAll(() => database.drop());

  it('guards every table with a shop column, and a planted table without it is found', async () => {
    expect(await findUnguardedTables(database.ownerUrl)).toEqual([]);

    await onConnection(database.ownerUrl, (session) =>
      session.query(`
        CREATE TABLE planted_open (shop_id uuid);
        CREATE TABLE planted_unforced (shop_id uuid);
        ALTER TABLE planted_unforced ENABLE ROW LEVEL SECURITY;
        CREATE POLICY own ON planted_unforced USING (false)`),
    );

    expect(await findUnguardedTables(database.ownerUrl)).toEqual([
      { table: 'planted_open', missing: ['enabled', 'forced', 'policy'] },
      { table: 'planted_unforced', missing: ['forced'] },
    ]);
  });
});
