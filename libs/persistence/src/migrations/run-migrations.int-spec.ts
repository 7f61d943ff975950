import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { jest } from '@jest/globals';
import pg from 'pg';
import { createTestDatabase, type TestDatabase } from '../../../../test/support/database.js';
import { onConnection } from '../embedded/admin-connection.js';
import { MigrationError } from './migration.error.js';
import { resolveMigration } from './resolve-migration.js';
import { runMigrations } from './run-migrations.js';

jest.setTimeout(60_000);

describe('the migration runner', () => {
  let database: TestDatabase;
  let folder: string;
  let url: string;

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'endfloat-migrations-'));
    database = await createTestDatabase('empty');
    url = database.ownerUrl;
  });

  afterEach(async () => {
    rmSync(folder, { recursive: true, force: true });
    await database.drop();
  });

  const put = (name: string, sql: string) => {
    mkdirSync(join(folder, name), { recursive: true });
    writeFileSync(join(folder, name, 'migration.sql'), sql);
  };
  const run = () => runMigrations({ url, folder });
  const rows = (sql: string): Promise<Record<string, unknown>[]> =>
    onConnection(url, async (session) => (await session.query<Record<string, unknown>>(sql)).rows);
  const tables = async () =>
    (
      await rows(
        `SELECT tablename FROM pg_tables WHERE schemaname = 'public' AND tablename <> '_prisma_migrations' ORDER BY 1`,
      )
    ).map(({ tablename }) => tablename);
  const faultOf = async (work: Promise<unknown>): Promise<MigrationError> => {
    try {
      await work;
    } catch (error) {
      if (error instanceof MigrationError) return error;
      throw error;
    }
    throw new Error('Nothing was refused.');
  };

  it('applies the files in the order of their names, and each only once', async () => {
    put('20270102000000_second', 'ALTER TABLE one ADD COLUMN two int;');
    put('20270101000000_first', 'CREATE TABLE one (id int);');

    expect(await run()).toEqual([
      { name: '20270101000000_first', outcome: 'applied' },
      { name: '20270102000000_second', outcome: 'applied' },
    ]);

    put('20270103000000_third', 'CREATE TABLE three (id int);');

    expect((await run()).map(({ outcome }) => outcome)).toEqual([
      'appliedBefore',
      'appliedBefore',
      'applied',
    ]);
    expect(await tables()).toEqual(['one', 'three']);
  });

  it('records what it did as Prisma does', async () => {
    const sql = 'CREATE TABLE one (id int);\n-- é\n';
    put('20270101000000_first', sql);
    await run();

    expect(await rows('SELECT * FROM _prisma_migrations')).toEqual([
      {
        id: expect.stringMatching(/^[0-9a-f-]{36}$/),
        checksum: createHash('sha256').update(sql).digest('hex'),
        migration_name: '20270101000000_first',
        started_at: expect.any(Date),
        finished_at: expect.any(Date),
        rolled_back_at: null,
        logs: null,
        applied_steps_count: 1,
      },
    ]);
  });

  it('refuses a file edited after it was applied, and everything beside it', async () => {
    put('20270101000000_first', 'CREATE TABLE one (id int);');
    await run();
    put('20270101000000_first', 'CREATE TABLE one (id bigint);');
    put('20270102000000_second', 'CREATE TABLE two (id int);');

    expect(await faultOf(run())).toMatchObject({ fault: 'edited', migration: '20270101000000_first' });
    expect(await tables()).toEqual(['one']);
  });

  it('refuses a database that a newer release has migrated', async () => {
    put('20270101000000_first', 'CREATE TABLE one (id int);');
    put('20270102000000_second', 'CREATE TABLE two (id int);');
    await run();
    rmSync(join(folder, '20270102000000_second'), { recursive: true });

    expect(await faultOf(run())).toMatchObject({ fault: 'unknown', migration: '20270102000000_second' });
  });

  it('leaves nothing of a file that fails, names the line, and refuses later ones until that is settled', async () => {
    put('20270101000000_first', 'CREATE TABLE one (id int);');
    put('20270102000000_broken', 'CREATE TABLE two (id int);\n\nINSERT INTO missing VALUES (1);\n');
    put('20270103000000_third', 'CREATE TABLE three (id int);');

    const failed = await faultOf(run());
    expect(failed).toMatchObject({ fault: 'failed', migration: '20270102000000_broken' });
    expect(failed.message).toContain('line 3');
    expect(failed.message).toContain('42P01');
    expect(await tables()).toEqual(['one']);

    const again = await faultOf(run());
    expect(again).toMatchObject({ fault: 'failedBefore', migration: '20270102000000_broken' });
    expect(again.message).toContain('line 3');

    put('20270102000000_broken', 'CREATE TABLE two (id int);');
    await resolveMigration({ url, folder, name: '20270102000000_broken', as: 'rolledBack' });

    expect((await run()).map(({ outcome }) => outcome)).toEqual(['appliedBefore', 'applied', 'applied']);
    expect(await tables()).toEqual(['one', 'three', 'two']);
  });

  it('goes on after a failed one that was completed by hand', async () => {
    put('20270101000000_broken', 'INSERT INTO missing VALUES (1);');
    await faultOf(run());
    await resolveMigration({ url, folder, name: '20270101000000_broken', as: 'applied' });

    expect(await run()).toEqual([{ name: '20270101000000_broken', outcome: 'appliedBefore' }]);
  });

  it('settles only what has failed', async () => {
    put('20270101000000_first', 'CREATE TABLE one (id int);');
    await run();
    const settle = resolveMigration({ url, folder, name: '20270101000000_first', as: 'rolledBack' });

    expect(await faultOf(settle)).toMatchObject({ fault: 'notFailed' });
  });

  it('leaves nothing, not even a record, when it is cut off in the middle of a file', async () => {
    put('20270101000000_slow', 'CREATE TABLE one (id int);\nSELECT pg_sleep(60);');
    const cutOff = faultOf(run());
    const end = `SELECT pg_terminate_backend(pid) FROM pg_stat_activity
                 WHERE datname = current_database() AND wait_event = 'PgSleep'`;
    while ((await rows(end)).length === 0);

    expect(await cutOff).toMatchObject({ fault: 'failed' });
    expect(await tables()).toEqual([]);
    expect(await rows('SELECT * FROM _prisma_migrations')).toEqual([]);
  });

  it('applies each file once when three run at once', async () => {
    put('20270101000000_first', 'CREATE TABLE one (id int);\nSELECT pg_sleep(0.2);');
    put('20270102000000_second', 'INSERT INTO one VALUES (1);');
    const results = await Promise.all([run(), run(), run()]);

    const outcomes = results.map((result) => result.map(({ outcome }) => outcome).join()).sort();
    expect(outcomes).toEqual([
      'applied,applied',
      'appliedBefore,appliedBefore',
      'appliedBefore,appliedBefore',
    ]);
    expect(await rows('SELECT count(*)::int AS count FROM one')).toEqual([{ count: 1 }]);
  });

  it('waits for whoever holds the lock of Prisma, and gives up after the time it was given', async () => {
    put('20270101000000_first', 'CREATE TABLE one (id int);');
    const holder = new pg.Client({ connectionString: url });
    await holder.connect();
    await holder.query('SELECT pg_advisory_lock(72707369)');

    expect(await faultOf(runMigrations({ url, folder, patienceMs: 50 }))).toMatchObject({ fault: 'locked' });

    const waiting = run();
    await holder.end();
    expect(await waiting).toEqual([{ name: '20270101000000_first', outcome: 'applied' }]);
  });

  it('runs a file outside a transaction when its first line says so', async () => {
    put('20270101000000_first', 'CREATE TABLE one (id int);');
    put(
      '20270102000000_index',
      `-- endfloat: no transaction\nCREATE INDEX CONCURRENTLY one_id ON one (id); -- a;b\nSELECT ';';\n`,
    );
    await run();

    expect(await rows(`SELECT indexname FROM pg_indexes WHERE tablename = 'one'`)).toEqual([
      { indexname: 'one_id' },
    ]);
  });

  it('keeps what a file outside a transaction had done before it failed, and records the failure', async () => {
    put(
      '20270101000000_open',
      '-- endfloat: no transaction\nCREATE TABLE one (id int);\nINSERT INTO missing VALUES (1);\n',
    );

    const failed = await faultOf(run());
    expect(failed).toMatchObject({ fault: 'failed' });
    expect(failed.message).toContain('line 3');
    expect(await tables()).toEqual(['one']);
    expect(await faultOf(run())).toMatchObject({ fault: 'failedBefore' });
  });

  it('refuses a file that ends the transaction it runs in', async () => {
    put('20270101000000_own', 'BEGIN;\nCREATE TABLE one (id int);\nCOMMIT;\n');

    expect(await faultOf(run())).toMatchObject({ fault: 'unusableFile', migration: '20270101000000_own' });
    expect(await tables()).toEqual([]);
  });

  it('lets nothing a file has set reach the next one', async () => {
    put('20270101000000_first', `CREATE SCHEMA other;\nSET search_path = other;\nSET ROLE endfloat_owner;`);
    put('20270102000000_second', 'CREATE TABLE one (id int);');
    await run();

    expect(await tables()).toEqual(['one']);
  });

  it('says which folder it could not read', async () => {
    const missing = join(folder, 'missing');

    expect(await faultOf(runMigrations({ url, folder: missing }))).toMatchObject({ fault: 'unreadable' });
    mkdirSync(join(folder, '20270101000000_empty'));
    expect(await faultOf(run())).toMatchObject({ fault: 'unreadable', migration: '20270101000000_empty' });
  });

  it('migrates an empty database with the files of this repository', async () => {
    const own = fileURLToPath(new URL('../../../../prisma/migrations', import.meta.url));
    const names = readdirSync(own).filter((name) => /^\d{14}_/.test(name));
    const results = await runMigrations({ url, folder: own });

    expect(results).toEqual(names.sort().map((name) => ({ name, outcome: 'applied' })));
    expect(await tables()).toContain('shop');
    expect(readFileSync(join(own, 'migration_lock.toml'), 'utf8')).toContain('provider = "postgresql"');
  });
});
