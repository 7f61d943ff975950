import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { jest } from '@jest/globals';
import { runMigrations } from '../migrations/run-migrations.js';
import { onConnection } from './admin-connection.js';
import { DatabaseStartError } from './database-start.error.js';
import { databaseUrls, type ExternalDatabase } from './external-database.js';
import { roles } from './roles.js';
import { startEmbeddedDatabase, type EmbeddedDatabase } from './start-embedded-database.js';

jest.setTimeout(120_000);

const migrations = fileURLToPath(new URL('../../../../prisma/migrations', import.meta.url));

describe('a database by URL', () => {
  let folder: string;
  let server: EmbeddedDatabase;

  // A server of its own: roles belong to the whole server, and these tests change them.
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'endfloat-external-'));
    server = await startEmbeddedDatabase({ dataFolder: folder, settings: { fsync: 'off' } });
    await admin('DROP DATABASE endfloat');
    await admin(`CREATE ROLE hoster LOGIN CREATEROLE PASSWORD 'hoster'`);
    await admin(`CREATE ROLE tenant LOGIN PASSWORD 'tenant'`);
    await admin(`CREATE ROLE overseer LOGIN BYPASSRLS PASSWORD 'overseer'`);
  });

  afterAll(async () => {
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  beforeEach(async () => {
    await admin('DROP DATABASE IF EXISTS theirs WITH (FORCE)');
    for (const role of roles) await admin(`DROP ROLE IF EXISTS ${role}`);
    await admin('CREATE DATABASE theirs OWNER hoster');
    await admin('GRANT ALL ON DATABASE theirs TO tenant');
    await sql(urlOf('postgres'), 'GRANT ALL ON SCHEMA public TO tenant');
  });

  const admin = (statement: string) => sql(server.adminUrl, statement);
  const sql = (url: string, statement: string): Promise<Record<string, unknown>[]> =>
    onConnection(url, async (session) => (await session.query<Record<string, unknown>>(statement)).rows);
  const urlOf = (user: string, password = user): string => {
    const url = new URL(server.adminUrl);
    if (user !== 'postgres') Object.assign(url, { username: user, password });
    url.pathname = '/theirs';
    return url.href;
  };
  const faultOf = async (settings: ExternalDatabase): Promise<DatabaseStartError> => {
    try {
      await databaseUrls(settings);
    } catch (error) {
      if (error instanceof DatabaseStartError) return error;
      throw error;
    }
    throw new Error('Nothing was refused.');
  };

  it.each(['postgres', 'hoster'])(
    'gets the three roles when the role %s may make them, the same at each start',
    async (user) => {
      const urls = await databaseUrls({ databaseUrl: urlOf(user) });
      const again = await databaseUrls({ databaseUrl: urlOf(user) });

      expect(again).toEqual(urls);
      expect(urls.warnings).toEqual([]);
      const names = [urls.ownerUrl, urls.apiUrl, urls.workerUrl].map((url) => new URL(url).username);
      expect(names).toEqual([...roles]);

      await runMigrations({ url: urls.ownerUrl, folder: migrations });

      expect(await sql(urls.apiUrl, 'SELECT * FROM shop')).toEqual([]);
      await expect(sql(urls.apiUrl, 'CREATE TABLE planted (id int)')).rejects.toThrow(/permission denied/);
      const bound = `SELECT rolname FROM pg_roles WHERE rolname ^@ 'endfloat_' AND (rolsuper OR rolbypassrls OR rolcreaterole)`;
      expect(await admin(bound)).toEqual([]);
    },
  );

  it('takes privileges away that one of the roles had', async () => {
    await admin(`CREATE ROLE endfloat_api LOGIN BYPASSRLS CREATEROLE PASSWORD 'x'`);
    await databaseUrls({ databaseUrl: urlOf('postgres') });

    expect(
      await admin(`SELECT rolbypassrls, rolcreaterole FROM pg_roles WHERE rolname = 'endfloat_api'`),
    ).toEqual([{ rolbypassrls: false, rolcreaterole: false }]);
  });

  it('is used by several processes that start at once', async () => {
    const starts = Array.from({ length: 4 }, () => databaseUrls({ databaseUrl: urlOf('postgres') }));
    const [first, ...others] = await Promise.all(starts);

    for (const other of others) expect(other).toEqual(first);
    expect(await sql(first!.workerUrl, 'SELECT 1 AS one')).toEqual([{ one: 1 }]);
  });

  it('is used with one URL for everything, and a warning, when its role may make none', async () => {
    const databaseUrl = urlOf('tenant');
    const { warnings, ...urls } = await databaseUrls({ databaseUrl });

    expect(urls).toEqual({ ownerUrl: databaseUrl, apiUrl: databaseUrl, workerUrl: databaseUrl });
    expect(warnings).toEqual([expect.stringContaining('The role tenant may not make roles')]);

    await runMigrations({ url: urls.ownerUrl, folder: migrations });

    expect(await sql(urls.apiUrl, 'SELECT * FROM shop')).toEqual([]);
  });

  it('is used with roles made by hand when their URLs are given', async () => {
    const [databaseUrl, apiDatabaseUrl, workerDatabaseUrl] = [
      urlOf('postgres'),
      urlOf('tenant'),
      urlOf('hoster'),
    ];

    expect(await databaseUrls({ databaseUrl, apiDatabaseUrl, workerDatabaseUrl })).toEqual({
      ...{ ownerUrl: databaseUrl, apiUrl: apiDatabaseUrl, workerUrl: workerDatabaseUrl, warnings: [] },
    });
    expect(await admin(`SELECT rolname FROM pg_roles WHERE rolname ^@ 'endfloat_'`)).toEqual([]);
  });

  it('is refused when a role would see the rows of all shops', async () => {
    const tenant = urlOf('tenant');
    const overseer = urlOf('overseer');

    expect(await faultOf({ databaseUrl: overseer })).toMatchObject({ fault: 'rolesUnavailable' });
    for (const given of [
      { apiDatabaseUrl: overseer, workerDatabaseUrl: tenant },
      { apiDatabaseUrl: tenant, workerDatabaseUrl: urlOf('postgres') },
    ]) {
      const error = await faultOf({ databaseUrl: tenant, ...given });

      expect(error.fault).toBe('rolesUnavailable');
      expect(error.message).toContain('would see the rows of all shops');
    }
  });

  it('is refused when only one of the two further URLs is given', async () => {
    const [databaseUrl, apiDatabaseUrl] = [urlOf('tenant'), urlOf('tenant')];

    expect(await faultOf({ databaseUrl, apiDatabaseUrl })).toMatchObject({ fault: 'rolesUnavailable' });
  });

  it('says what to do when its role may make roles but not change those that exist', async () => {
    await admin(`CREATE ROLE endfloat_api LOGIN PASSWORD 'x'`);
    const error = await faultOf({ databaseUrl: urlOf('hoster') });

    expect(error.fault).toBe('rolesUnavailable');
    expect(error.message).toContain('by hand');
  });

  it('asks for a secret when its URL has no password from which theirs could follow', async () => {
    const before = process.env['PGPASSWORD'];
    const bare = new URL(urlOf('hoster'));
    bare.password = '';
    process.env['PGPASSWORD'] = 'hoster';
    try {
      expect((await faultOf({ databaseUrl: bare.href })).message).toContain('ENDFLOAT_DATABASE_SECRET');
      const { apiUrl } = await databaseUrls({ databaseUrl: bare.href, secret: 'a secret of the operator' });
      expect(await sql(apiUrl, 'SELECT 1 AS one')).toEqual([{ one: 1 }]);
    } finally {
      if (before === undefined) delete process.env['PGPASSWORD'];
      else process.env['PGPASSWORD'] = before;
    }
  });

  it('is refused unless it stores UTF-8', async () => {
    await admin('DROP DATABASE theirs');
    await admin(
      `CREATE DATABASE theirs ENCODING 'SQL_ASCII' LOCALE_PROVIDER libc LOCALE 'C' TEMPLATE template0`,
    );

    expect(await faultOf({ databaseUrl: urlOf('postgres') })).toMatchObject({ fault: 'notUtf8' });
  });

  it('says which setting leads nowhere, without its password', async () => {
    const missing = new URL(urlOf('tenant'));
    missing.pathname = '/missing';
    const nowhere = new URL(urlOf('tenant'));
    nowhere.port = '1';

    expect((await faultOf({ databaseUrl: missing.href })).message).toContain('"missing" does not exist');
    const error = await faultOf({ databaseUrl: nowhere.href });
    expect(error.message).toContain('DATABASE_URL');
    expect(error.message).toContain('ECONNREFUSED');
    expect(error.message).not.toContain('tenant');
  });
});
