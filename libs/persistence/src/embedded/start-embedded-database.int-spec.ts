import { execFileSync, spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { jest } from '@jest/globals';
import { onConnection } from './admin-connection.js';
import { DatabaseStartError } from './database-start.error.js';
import { findRunningServer, stopServer } from './running-server.js';
import {
  startEmbeddedDatabase,
  type EmbeddedDatabase,
  type EmbeddedDatabaseOptions,
} from './start-embedded-database.js';

jest.setTimeout(120_000);

const root = fileURLToPath(new URL('../../../..', import.meta.url));
const isRoot = process.getuid?.() === 0;

/** A killed process loses nothing of what it wrote; only the machine could. */
const settings = { fsync: 'off' };

/** Starts the database in a process of its own, which then does nothing until it is killed. */
const ownerProgram = (folder: string) => `
  import { startEmbeddedDatabase } from './libs/persistence/src/embedded/index.ts';
  const { port } = await startEmbeddedDatabase({ dataFolder: ${JSON.stringify(folder)}, startedFrom: 'another clone', settings: { fsync: 'off' } });
  console.log(port);
  setInterval(() => {}, 1000);`;

describe('the embedded database', () => {
  /** A data folder that was started and stopped once, to be copied: making a cluster takes longer than most tests. */
  let prepared: string;
  let folder: string;
  /** A data folder that does not exist yet. */
  let fresh: string;
  let owners: ChildProcess[];

  beforeAll(async () => {
    prepared = mkdtempSync(join(tmpdir(), 'endfloat-embedded-'));
    const database = await startEmbeddedDatabase({ dataFolder: prepared, settings });
    await database.stop();
  });

  afterAll(() => rmSync(prepared, { recursive: true, force: true }));

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'endfloat-embedded-'));
    execFileSync('cp', ['-a', `${prepared}/.`, folder]);
    fresh = join(folder, 'fresh');
    owners = [];
  });

  afterEach(async () => {
    for (const owner of owners) await killed(owner);
    for (const cluster of [join(folder, 'cluster'), join(fresh, 'cluster')]) {
      const left = findRunningServer(cluster);
      if (left) await stopServer(cluster, left);
    }
    rmSync(folder, { recursive: true, force: true });
  });

  const start = (options: Partial<EmbeddedDatabaseOptions> = {}): Promise<EmbeddedDatabase> =>
    startEmbeddedDatabase({ dataFolder: folder, settings, ...options });

  const faultOfStart = async (
    options: Partial<EmbeddedDatabaseOptions> = {},
  ): Promise<DatabaseStartError> => {
    try {
      const database = await start(options);
      await database.stop();
    } catch (error) {
      if (error instanceof DatabaseStartError) return error;
      throw error;
    }
    throw new Error('The start was not refused.');
  };

  const startOwner = async (): Promise<{ owner: ChildProcess; port: number }> => {
    const loader = [
      '--no-warnings',
      '--conditions=@endfloat/source',
      '--import',
      './.config/typescript-register.mjs',
    ];
    const owner = spawn(
      process.execPath,
      [...loader, '--input-type=module', '--eval', ownerProgram(folder)],
      {
        cwd: root,
        stdio: ['ignore', 'pipe', 'inherit'],
      },
    );
    owners.push(owner);
    const [line] = (await once(createInterface(owner.stdout), 'line')) as [string];
    return { owner, port: Number(line) };
  };

  const value = (url: string, sql: string) =>
    onConnection(
      url,
      async (session) => Object.values((await session.query<Record<string, unknown>>(sql)).rows[0]!)[0],
    );

  it('keeps its data, passwords and roles over a second start', async () => {
    const first = await start();
    await onConnection(first.ownerUrl, (session) => session.query('CREATE TABLE kept AS SELECT 7 AS number'));
    await first.stop();
    const second = await start();

    expect(await value(second.ownerUrl, 'SELECT number FROM kept')).toBe(7);
    expect(new URL(second.ownerUrl).password).toBe(new URL(first.ownerUrl).password);
    expect(second.adopted).toBe(false);
    await second.stop();
  });

  it('starts again while the one before it is still stopping', async () => {
    const first = await start();
    const stopped = first.stop();
    const second = await start();

    expect(await value(second.ownerUrl, 'SELECT 1')).toBe(1);
    await stopped;
    await second.stop();
  });

  it('is gone after its stop', async () => {
    const database = await start();
    await database.stop();

    expect(findRunningServer(join(folder, 'cluster'))).toBeUndefined();
    await expect(value(database.ownerUrl, 'SELECT 1')).rejects.toThrow('ECONNREFUSED');
  });

  it('lets a session finish in a smart stop, and ends it when it lasts too long', async () => {
    const database = await start();
    const finishing = value(database.ownerUrl, `SELECT 'finished' FROM pg_sleep(0.3)`);
    await untilSleeping(database);
    await database.stop({ mode: 'smart', patienceMs: 60_000 });

    expect(await finishing).toBe('finished');

    const again = await start();
    const cutOff = value(again.ownerUrl, 'SELECT 1 FROM pg_sleep(60)').catch(String);
    await untilSleeping(again);
    await again.stop({ mode: 'smart', patienceMs: 50 });

    expect(await cutOff).toContain('terminat');
  });

  it('is taken over running when its owner was killed', async () => {
    const { owner, port } = await startOwner();
    const before = findRunningServer(join(folder, 'cluster'));
    await killed(owner);
    const database = await start();

    expect(database).toMatchObject({ adopted: true, port });
    expect(findRunningServer(join(folder, 'cluster'))).toEqual(before);
    await database.stop();
  });

  it('is started anew instead of taken over when other settings are asked for', async () => {
    const { owner } = await startOwner();
    await killed(owner);
    const database = await start({ settings: { max_connections: '33' } });

    expect(database.adopted).toBe(false);
    expect(await value(database.ownerUrl, 'SHOW max_connections')).toBe('33');
    await database.stop();
  });

  it('recovers what was committed when owner and server were both killed', async () => {
    const { owner } = await startOwner();
    await killed(owner);
    const adopted = await start();
    await onConnection(adopted.ownerUrl, (session) =>
      session.query('CREATE TABLE kept AS SELECT 7 AS number'),
    );
    process.kill(findRunningServer(join(folder, 'cluster'))!.pid, 'SIGKILL');
    const database = await start();

    expect(await value(database.ownerUrl, 'SELECT number FROM kept')).toBe(7);
    await database.stop();
  });

  it('refuses a second start beside a living owner, says whose it is, and leaves the first alone', async () => {
    const { owner, port } = await startOwner();
    const error = await faultOfStart();

    expect(error.fault).toBe('alreadyRunning');
    expect(error.message).toContain(`already running from another clone (process ${owner.pid})`);
    expect(error.message).toContain(`on port ${port}`);
    expect(owner.exitCode).toBeNull();
    expect(findRunningServer(join(folder, 'cluster'))?.port).toBe(port);
  });

  it('starts once when two start at the same moment on nothing', async () => {
    const outcomes = await Promise.allSettled([start({ dataFolder: fresh }), start({ dataFolder: fresh })]);
    const started = outcomes.filter((outcome) => outcome.status === 'fulfilled');
    const refused = outcomes.filter((outcome) => outcome.status === 'rejected');

    expect(started).toHaveLength(1);
    expect(refused.map(({ reason }) => (reason as DatabaseStartError).fault)).toEqual(['alreadyRunning']);
    await started[0]!.value.stop();
  });

  it('starts although a left-over pid file names the process of another program', async () => {
    const first = await start();
    await first.stop();
    const lines = [process.pid, join(folder, 'cluster'), 1_700_000_000, first.port, '', '127.0.0.1'];
    writeFileSync(join(folder, 'cluster', 'postmaster.pid'), `${lines.join('\n')}\n`);
    const database = await start();

    expect(await value(database.ownerUrl, 'SELECT 1')).toBe(1);
    await database.stop();
  });

  it('stores UTF-8 in code point order whatever the environment says of languages', async () => {
    const names = ['LANG', 'LC_ALL', 'LC_CTYPE', 'LANGUAGE'];
    const before = new Map(names.map((name) => [name, process.env[name]]));
    for (const name of names) Reflect.deleteProperty(process.env, name);
    try {
      const database = await start({ dataFolder: fresh });

      expect(await value(database.ownerUrl, 'SHOW server_encoding')).toBe('UTF8');
      expect(await value(database.adminUrl, 'SHOW server_encoding')).toBe('UTF8');
      expect(
        await value(
          database.ownerUrl,
          `SELECT string_agg(t, '' ORDER BY t) FROM unnest('{é,Z,a}'::text[]) t`,
        ),
      ).toBe('Zaé');
      expect(await value(database.ownerUrl, `SELECT upper('é')`)).toBe('É');
      await database.stop();
    } finally {
      for (const [name, text] of before) if (text !== undefined) process.env[name] = text;
    }
  });

  it('is reachable on loopback by password only, and keeps its secret closed to others', async () => {
    const database = await start({ dataFolder: fresh });
    const wrong = new URL(database.ownerUrl);
    wrong.password = 'wrong';

    expect(await value(database.adminUrl, 'SHOW listen_addresses')).toBe('127.0.0.1');
    expect(await value(database.adminUrl, 'SHOW unix_socket_directories')).toBe('');
    expect(
      await value(
        database.adminUrl,
        `SELECT count(*)::int FROM pg_authid WHERE rolpassword LIKE 'SCRAM-SHA-256$%'`,
      ),
    ).toBe(4);
    await expect(value(wrong.href, 'SELECT 1')).rejects.toThrow('password authentication failed');
    expect(statSync(join(fresh, 'secret')).mode & 0o777).toBe(0o600);
    expect(statSync(fresh).mode & 0o777).toBe(0o700);
    await database.stop();
  });

  it('tells when the server is lost', async () => {
    const lost = new Promise<Error>((resolve) => {
      void start({ onLost: resolve }).then(() =>
        process.kill(findRunningServer(join(folder, 'cluster'))!.pid, 'SIGKILL'),
      );
    });

    expect((await lost).message).toContain('server.log');
  });

  it('refuses data of another major version', async () => {
    const database = await start();
    await database.stop();
    writeFileSync(join(folder, 'cluster', 'PG_VERSION'), '17\n');
    const error = await faultOfStart();

    expect(error.fault).toBe('otherMajor');
    expect(error.message).toContain('PostgreSQL 17');
  });

  it('refuses data whose secret is gone', async () => {
    const database = await start();
    await database.stop();
    rmSync(join(folder, 'secret'));
    const error = await faultOfStart();

    expect(error.fault).toBe('secretUnusable');
    expect(existsSync(join(folder, 'secret'))).toBe(false);
  });

  it('says so when the port asked for is taken', async () => {
    const database = await start();
    const error = await faultOfStart({ dataFolder: fresh, port: database.port });

    expect(error.fault).toBe('startFailed');
    expect(error.message).toContain('Address already in use');
    await database.stop();
  });

  it('says so when its folder cannot be used', async () => {
    // Closed to the account of the server for root, to everybody for an ordinary user.
    const closed = join(folder, 'closed');
    mkdirSync(closed, { mode: isRoot ? 0o700 : 0o500 });
    const error = await faultOfStart({ dataFolder: join(closed, 'data') });

    expect(error.fault).toBe('folderUnusable');
    expect(error.message).toContain(closed);
  });

  it('leaves a log in its folder and nothing of this process in the environment of the server', async () => {
    process.env['ENDFLOAT_PLANTED'] = 'planted';
    const database = await start();
    const { pid } = findRunningServer(join(folder, 'cluster'))!;
    delete process.env['ENDFLOAT_PLANTED'];

    expect(readFileSync(join(folder, 'server.log'), 'utf8')).toContain('ready to accept connections');
    if (process.platform === 'linux')
      expect(readFileSync(`/proc/${pid}/environ`, 'utf8')).not.toContain('planted');
    await database.stop();
  });

  async function untilSleeping({ adminUrl }: EmbeddedDatabase): Promise<void> {
    const sleeping = `SELECT count(*)::int FROM pg_stat_activity WHERE wait_event = 'PgSleep'`;
    while ((await value(adminUrl, sleeping)) === 0);
  }
});

async function killed(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  child.kill('SIGKILL');
  await once(child, 'exit');
}
