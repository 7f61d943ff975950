import { randomUUID } from 'node:crypto';
import { createTestDatabase, testServer, type TestDatabase } from '../../../../test/support/database.js';
import { onConnection } from './admin-connection.js';
import { roles } from './roles.js';

describe('the roles of the database', () => {
  let database: TestDatabase;

  beforeAll(async () => {
    database = await createTestDatabase();
    await onConnection(database.ownerUrl, (session) =>
      session.query(`
        CREATE TABLE tenant_row (shop_id uuid NOT NULL);
        ALTER TABLE tenant_row ENABLE ROW LEVEL SECURITY;
        ALTER TABLE tenant_row FORCE ROW LEVEL SECURITY;
        CREATE POLICY own_shop ON tenant_row
          USING (shop_id = nullif(current_setting('app.shop', true), '')::uuid);
        GRANT SELECT, INSERT, UPDATE, DELETE ON tenant_row TO endfloat_api, endfloat_worker`),
    );
  });

  afterAll(() => database.drop());

  const urls = () => [database.ownerUrl, database.apiUrl, database.workerUrl];
  const rows = (url: string, sql: string): Promise<Record<string, unknown>[]> =>
    onConnection(url, async (session) => (await session.query<Record<string, unknown>>(sql)).rows);

  it('may neither pass row-level security nor make roles or databases', async () => {
    const privileged = await rows(
      database.ownerUrl,
      `SELECT rolname FROM pg_roles WHERE rolname = ANY ('{${roles.join()}}')
         AND (rolsuper OR rolbypassrls OR rolcreaterole OR rolcreatedb OR NOT rolcanlogin)`,
    );
    const memberships = await rows(
      database.ownerUrl,
      `SELECT member::regrole FROM pg_auth_members WHERE member::regrole::text = ANY ('{${roles.join()}}')`,
    );

    expect(privileged).toEqual([]);
    expect(memberships).toEqual([]);
  });

  it('see the rows of the shop that is set, and none when none is', async () => {
    const [own, other] = [randomUUID(), randomUUID()];
    for (const shop of [own, other]) {
      await onConnection(database.apiUrl, async (session) => {
        await session.query(`SELECT set_config('app.shop', $1, false)`, [shop]);
        await session.query('INSERT INTO tenant_row VALUES ($1)', [shop]);
      });
    }
    for (const url of urls()) {
      expect(await rows(url, 'SELECT * FROM tenant_row')).toEqual([]);
      const seen = await onConnection(url, async (session) => {
        await session.query(`SELECT set_config('app.shop', $1, false)`, [own]);
        return (await session.query<{ shop_id: string }>('SELECT shop_id FROM tenant_row')).rows;
      });
      expect(seen).toEqual([{ shop_id: own }]);
    }
  });

  it.each([
    [
      'switch row-level security off for a session',
      'SET row_security = off; SELECT * FROM tenant_row',
      /row-level security/,
    ],
    ['take it from a table', 'ALTER TABLE tenant_row NO FORCE ROW LEVEL SECURITY', /must be owner/],
    ['take the role of the owner', 'SET ROLE endfloat_owner', /permission denied/],
    ['drop a policy', 'DROP POLICY own_shop ON tenant_row', /must be owner/],
    ['make a table', 'CREATE TABLE planted (id int)', /permission denied/],
    ['make a schema', 'CREATE SCHEMA planted', /permission denied/],
    ['read the history of migrations', 'SELECT * FROM _prisma_migrations', /permission denied/],
  ])('for API and worker may not %s', async (_what, sql, message) => {
    await expect(rows(database.apiUrl, sql)).rejects.toThrow(message);
    await expect(rows(database.workerUrl, sql)).rejects.toThrow(message);
  });

  it('limit what a session may wait for', async () => {
    const limits = `SELECT current_setting('statement_timeout') AS statement, current_setting('lock_timeout') AS lock,
                           current_setting('idle_in_transaction_session_timeout') AS idle`;

    expect(await rows(database.apiUrl, limits)).toEqual([{ statement: '15s', lock: '5s', idle: '20s' }]);
    expect(await rows(database.workerUrl, limits)).toEqual([
      { statement: '5min', lock: '15s', idle: '1min' },
    ]);
    expect(await rows(database.ownerUrl, limits)).toEqual([{ statement: '0', lock: '30s', idle: '5min' }]);
  });

  it('let nobody else into the database', async () => {
    const { adminUrl } = testServer();
    const stranger = `stranger_${randomUUID().slice(0, 8)}`;
    const url = new URL(database.apiUrl);
    Object.assign(url, { username: stranger, password: 'stranger' });
    await rows(adminUrl, `CREATE ROLE ${stranger} LOGIN PASSWORD 'stranger'`);
    try {
      await expect(rows(url.href, 'SELECT 1')).rejects.toThrow(/permission denied for database/);
    } finally {
      await rows(adminUrl, `DROP ROLE ${stranger}`);
    }
  });
});
