import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import pg from 'pg';
import { superuser } from './create-cluster.js';
import type { DataFolder } from './data-folder.js';
import { DatabaseStartError, faultOf } from './database-start.error.js';
import { exists, findRunningServer, type RunningServer } from './running-server.js';

/** Session lock of the one process that may stop the server. A killed owner loses it, a living one does not. */
const ownerLock = 72707370;
/** A killed owner's process may still be listed, and its session still ending, for a moment. */
const patienceMs = { ownerListed: 1_000, ownerGone: 10_000 };
const notYetAccepting = new Set(['57P03', 'ECONNREFUSED', 'ECONNRESET']);

interface Owner {
  readonly pid: number;
  readonly startedFrom: string;
}

/**
 * Waits until the server accepts connections and becomes its owner. The connection returned holds the lock.
 *
 * @throws DatabaseStartError when another living process owns it, or it accepts nobody within the time
 */
export async function takeOwnership(
  folder: DataFolder,
  server: RunningServer,
  password: string,
  { startedFrom, timeoutMs }: { readonly startedFrom: string; readonly timeoutMs: number },
): Promise<pg.Client> {
  const session = await connectWhenReady(folder, server, password, timeoutMs);
  try {
    const begun = Date.now();
    while (!(await tryLock(session))) {
      const owner = readOwner(folder);
      const patience = owner && exists(owner.pid) ? patienceMs.ownerListed : patienceMs.ownerGone;
      if (Date.now() - begun > patience) throw alreadyRunning(folder, server, owner);
      await wait(50);
    }
    const self: Owner = { pid: process.pid, startedFrom };
    writeFileSync(join(folder.path, 'owner.json'), JSON.stringify(self), { mode: 0o600 });
    return session;
  } catch (error) {
    await session.end();
    throw error;
  }
}

async function connectWhenReady(
  { path, log, cluster }: DataFolder,
  { port }: RunningServer,
  password: string,
  timeoutMs: number,
): Promise<pg.Client> {
  const deadline = Date.now() + timeoutMs;
  for (;;) {
    const session = new pg.Client({
      ...{ host: '127.0.0.1', port, user: superuser, password, database: 'postgres' },
      ...{ application_name: 'endfloat owner', connectionTimeoutMillis: 10_000 },
    });
    // Without a listener a broken connection would end the process; whoever keeps the session adds one that acts.
    session.on('error', () => undefined);
    try {
      await session.connect();
      return session;
    } catch (cause) {
      const { code = '', message } = cause as Error & { code?: string };
      const mayCome =
        notYetAccepting.has(code) && findRunningServer(cluster) !== undefined && Date.now() < deadline;
      if (!mayCome) {
        throw faultOf(
          `The database on port ${port} accepts no connection (${log} may say why): ${message}`,
          path,
          'startFailed',
          cause,
        );
      }
      await wait(20);
    }
  }
}

async function tryLock(session: pg.Client): Promise<boolean> {
  const { rows } = await session.query<{ taken: boolean }>('SELECT pg_try_advisory_lock($1) AS taken', [
    ownerLock,
  ]);
  return rows[0]?.taken === true;
}

function alreadyRunning(
  folder: DataFolder,
  { port }: RunningServer,
  owner: Owner | undefined,
): DatabaseStartError {
  const whose = owner ? `from ${owner.startedFrom} (process ${owner.pid})` : 'from another process';
  return new DatabaseStartError(
    'alreadyRunning',
    `Endfloat is already running ${whose}, with the data in ${folder.path} and its database on port ${port}. ` +
      'Stop it first, or give this one a data folder of its own.',
  );
}

function readOwner({ path }: DataFolder): Owner | undefined {
  const file = join(path, 'owner.json');
  if (!existsSync(file)) return undefined;
  try {
    return JSON.parse(readFileSync(file, 'utf8')) as Owner;
  } catch {
    return undefined;
  }
}
