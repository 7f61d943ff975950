import {
  closeSync,
  existsSync,
  fchownSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { spawn, type ChildProcess } from 'node:child_process';
import { createServer, type AddressInfo } from 'node:net';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import type { Binaries } from './binaries.js';
import type { DataFolder } from './data-folder.js';
import { faultOf } from './database-start.error.js';
import { findRunningServer, isLeftOver, type RunningServer } from './running-server.js';
import { asAccount } from './server-account.js';

export interface LaunchOptions {
  /** Undefined: any free one. */
  readonly port: number | undefined;
  /** Configuration parameters of the server; they win over our own. */
  readonly settings: Readonly<Record<string, string>>;
}

/** How long the processes of a server that was just killed may take to end. */
const patienceMs = 20_000;
const largestLog = 5_000_000;
/** Reachable on loopback by TCP only; times in logs and answers are UTC unless a session asks otherwise. */
const ownSettings = {
  listen_addresses: '127.0.0.1',
  unix_socket_directories: '',
  timezone: 'UTC',
  log_timezone: 'UTC',
  log_checkpoints: 'off',
};

/**
 * Starts a server that outlives this process, so that a killed owner does not take running transactions with it and
 * an ordered stop is ours to order. Resolves as soon as it has its port; it may still be recovering.
 *
 * @throws DatabaseStartError when it ends before that, with what it had to say
 */
export async function launchServer(
  folder: DataFolder,
  binaries: Binaries,
  options: LaunchOptions,
): Promise<RunningServer> {
  const deadline = Date.now() + patienceMs;
  for (;;) {
    if (isLeftOver(folder.cluster)) rmSync(join(folder.cluster, 'postmaster.pid'), { force: true });
    const port = options.port ?? (await findFreePort());
    const logStart = prepareLog(folder);
    const child = spawnServer(folder, binaries, serverArguments(folder.cluster, port, options.settings));
    const server = await untilListed(folder.cluster, child);
    if (server) return server;
    // Someone else started one on the same data in the meantime; whose it is, is settled next.
    const other = findRunningServer(folder.cluster);
    if (other) return other;
    const said = readFileSync(folder.log, 'utf8').slice(logStart).trim();
    // Another program took the port after it was found free, or a killed server's processes are still ending.
    const passing = /Address already in use/.test(said)
      ? options.port === undefined
      : /still in use|already exists/.test(said);
    if (!passing || Date.now() > deadline)
      throw faultOf(`The database did not start: ${said || 'no message'}`, folder.path, 'startFailed');
    await wait(200);
  }
}

/** Whether the server on the cluster was started with exactly these programs and settings. */
export function wasLaunchedWith(
  folder: DataFolder,
  { postgres }: Binaries,
  port: number,
  options: LaunchOptions,
): boolean {
  if (options.port !== undefined && options.port !== port) return false;
  const file = join(folder.cluster, 'postmaster.opts');
  const wanted = serverArguments(folder.cluster, port, options.settings).map((argument) => `"${argument}"`);
  return existsSync(file) && readFileSync(file, 'utf8').trim() === [postgres, ...wanted].join(' ');
}

function serverArguments(
  cluster: string,
  port: number,
  settings: Readonly<Record<string, string>>,
): string[] {
  const all = Object.entries({ port: String(port), ...ownSettings, ...settings });
  return ['-D', cluster, ...all.flatMap(([name, value]) => ['-c', `${name}=${value}`])];
}

function spawnServer({ log, account }: DataFolder, { postgres }: Binaries, args: string[]): ChildProcess {
  const output = openSync(log, 'a', 0o600);
  try {
    if (account) fchownSync(output, account.uid, account.gid);
    const child = spawn(postgres, args, {
      ...asAccount(account),
      detached: true,
      stdio: ['ignore', output, output],
    });
    child.on('error', () => undefined);
    child.unref();
    return child;
  } finally {
    closeSync(output);
  }
}

/** Undefined when the process ended instead. */
async function untilListed(cluster: string, child: ChildProcess): Promise<RunningServer | undefined> {
  while (child.pid !== undefined && child.exitCode === null && child.signalCode === null) {
    const server = findRunningServer(cluster);
    if (server?.pid === child.pid) return server;
    await wait(10);
  }
  return undefined;
}

/** The length of the log so far; one that has grown large makes room for a new one. */
function prepareLog({ log }: DataFolder): number {
  if (!existsSync(log)) return 0;
  const { size } = statSync(log);
  if (size <= largestLog) return size;
  renameSync(log, `${log}.old`);
  return 0;
}

function findFreePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer().on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });
}
