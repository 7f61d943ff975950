import type pg from 'pg';
import { prepareBinaries, type Binaries } from './binaries.js';
import { createCluster, superuser } from './create-cluster.js';
import { prepareDataFolder, type DataFolder } from './data-folder.js';
import { DatabaseStartError } from './database-start.error.js';
import { launchServer, wasLaunchedWith, type LaunchOptions } from './launch-server.js';
import { takeOwnership } from './ownership.js';
import { createRolesAndDatabase } from './roles.js';
import { findRunningServer, stopServer, type RunningServer, type StopMode } from './running-server.js';
import { readOrCreateSecret, rolePassword } from './secret.js';

export interface EmbeddedDatabaseOptions {
  /** Made when missing; see `defaultDataFolder`. */
  readonly dataFolder: string;
  /** Any free one when left out. */
  readonly port?: number;
  /** Configuration parameters of the server, for example `{ max_connections: '200' }`. */
  readonly settings?: Readonly<Record<string, string>>;
  /** Folder or command named to whoever starts a second time; the working folder when left out. */
  readonly startedFrom?: string;
  /** How long the server may take to accept connections; recovery after a crash takes its time. 5 minutes when left out. */
  readonly timeoutMs?: number;
  /** Called once when the server is gone although nobody stopped it. */
  readonly onLost?: (error: Error) => void;
}

export interface EmbeddedDatabase {
  readonly ownerUrl: string;
  readonly apiUrl: string;
  readonly workerUrl: string;
  /** Superuser, database `postgres`: for backups and for further databases, never for requests. */
  readonly adminUrl: string;
  readonly port: number;
  /** True when a server left by a killed process was taken over. */
  readonly adopted: boolean;
  /** Ends the server: last, after everything that uses it. Fast (sessions are ended) unless told otherwise. */
  readonly stop: (options?: { readonly mode?: StopMode; readonly patienceMs?: number }) => Promise<void>;
}

const database = 'endfloat';

/**
 * The embedded PostgreSQL with its roles and an empty or earlier database `endfloat`, reachable on loopback only.
 * A server whose owner was killed is taken over; beside a living owner the start is refused.
 *
 * @throws DatabaseStartError with a fault and a message for the operator
 */
export async function startEmbeddedDatabase(options: EmbeddedDatabaseOptions): Promise<EmbeddedDatabase> {
  const folder = prepareDataFolder(options.dataFolder);
  const secret = readOrCreateSecret(folder);
  const password = rolePassword(secret, superuser);
  const binaries = prepareBinaries(folder.path, folder.account);
  await createCluster(folder, binaries, password, options.settings?.['fsync'] !== 'off');
  const { server, session, adopted } = await ownServer(folder, binaries, password, options);

  let stopping = false;
  session.on('end', () => {
    if (!stopping) options.onLost?.(new Error(`The database is gone; ${folder.log} may say why.`));
  });
  const stop: EmbeddedDatabase['stop'] = async ({ mode, patienceMs } = {}) => {
    if (stopping) return;
    stopping = true;
    // A smart stop waits for every session, ours included; a fast one keeps the lock until the server is gone.
    if (mode === 'smart') await session.end();
    await stopServer(folder.cluster, server, mode, patienceMs);
    await session.end();
  };
  const urlFor = (role: string, name: string) =>
    `postgresql://${role}:${rolePassword(secret, role)}@127.0.0.1:${server.port}/${name}`;
  const adminUrl = urlFor(superuser, 'postgres');
  try {
    await refuseUnlessUtf8(session);
    await createRolesAndDatabase({ adminUrl, database, passwordOf: (role) => rolePassword(secret, role) });
  } catch (error) {
    await stop();
    throw error;
  }
  return {
    ownerUrl: urlFor('endfloat_owner', database),
    apiUrl: urlFor('endfloat_api', database),
    workerUrl: urlFor('endfloat_worker', database),
    ...{ adminUrl, port: server.port, adopted, stop },
  };
}

async function ownServer(
  folder: DataFolder,
  binaries: Binaries,
  password: string,
  options: EmbeddedDatabaseOptions,
): Promise<{ server: RunningServer; session: pg.Client; adopted: boolean }> {
  const launch: LaunchOptions = { port: options.port, settings: options.settings ?? {} };
  const owner = {
    startedFrom: options.startedFrom ?? process.cwd(),
    timeoutMs: options.timeoutMs ?? 300_000,
  };
  const left = findRunningServer(folder.cluster);
  const session = left && (await takeOwnershipUnlessItEnds(folder, left, password, owner));
  if (left && session) {
    if (wasLaunchedWith(folder, binaries, left.port, launch)) return { server: left, session, adopted: true };
    await stopServer(folder.cluster, left);
    await session.end();
  }
  const server = await launchServer(folder, binaries, launch);
  return { server, session: await takeOwnership(folder, server, password, owner), adopted: false };
}

/** Undefined when the server found was on its way out, ordered by its owner or killed. */
async function takeOwnershipUnlessItEnds(
  ...[folder, server, password, owner]: Parameters<typeof takeOwnership>
): Promise<pg.Client | undefined> {
  try {
    return await takeOwnership(folder, server, password, owner);
  } catch (error) {
    if (findRunningServer(folder.cluster)?.pid !== server.pid) return undefined;
    throw error;
  }
}

async function refuseUnlessUtf8(session: pg.Client): Promise<void> {
  const { rows } = await session.query<{ server_encoding: string }>('SHOW server_encoding');
  if (rows[0]?.server_encoding === 'UTF8') return;
  throw new DatabaseStartError(
    'notUtf8',
    `The database stores text as ${rows[0]?.server_encoding}, not as UTF8.`,
  );
}
