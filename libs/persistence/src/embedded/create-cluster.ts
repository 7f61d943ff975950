import { randomUUID } from 'node:crypto';
import { chownSync, existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import type { Binaries } from './binaries.js';
import type { DataFolder } from './data-folder.js';
import { DatabaseStartError, faultOf } from './database-start.error.js';
import { asAccount } from './server-account.js';

/** Name of the role that `initdb` makes; used for roles, databases and the owner's lock only. */
export const superuser = 'postgres';

/**
 * Makes an empty cluster unless there is one: UTF-8 with the built-in C.UTF-8 locale whatever the environment says,
 * passwords by SCRAM. It is made under another name first, so that an interrupted one is never taken for a cluster.
 *
 * @param durable - false where the loss of everything is no loss: nothing waits for the disk then
 * @throws DatabaseStartError when `initdb` fails or the cluster is of another major version
 */
export async function createCluster(
  folder: DataFolder,
  binaries: Binaries,
  password: string,
  durable: boolean,
): Promise<void> {
  const { path, cluster, account } = folder;
  if (existsSync(cluster)) {
    refuseOtherMajor(cluster, binaries);
    return;
  }
  const unfinished = `${cluster}.${randomUUID()}`;
  const passwordFile = `${unfinished}.password`;
  try {
    writeFileSync(passwordFile, password, { mode: 0o600 });
    if (account) chownSync(passwordFile, account.uid, account.gid);
    await runInitdb(folder, binaries, unfinished, [
      `--pwfile=${passwordFile}`,
      ...(durable ? [] : ['--no-sync']),
    ]);
    renameSync(unfinished, cluster);
  } catch (cause) {
    // Of two that start at once, the first one's cluster holds.
    if (existsSync(cluster)) return;
    throw cause instanceof DatabaseStartError
      ? cause
      : faultOf(String(cause), path, 'initialisationFailed', cause);
  } finally {
    rmSync(passwordFile, { force: true });
    rmSync(unfinished, { recursive: true, force: true });
  }
}

function refuseOtherMajor(cluster: string, { major }: Binaries): void {
  const found = readFileSync(join(cluster, 'PG_VERSION'), 'utf8').trim();
  if (found === String(major)) return;
  throw new DatabaseStartError(
    'otherMajor',
    `The data in ${cluster} were made by PostgreSQL ${found}; this release brings PostgreSQL ${major}. ` +
      'Export them with the release that made them and import them into an empty data folder.',
  );
}

function runInitdb(
  { path, account }: DataFolder,
  { initdb }: Binaries,
  target: string,
  more: readonly string[],
): Promise<void> {
  const args = [
    ['-D', target, ...more],
    [`--username=${superuser}`, '--auth=scram-sha-256'],
    ['--encoding=UTF8', '--locale-provider=builtin', '--builtin-locale=C.UTF-8', '--locale=C'],
  ].flat();
  return new Promise((resolve, reject) => {
    const child = spawn(initdb, args, { ...asAccount(account), stdio: ['ignore', 'ignore', 'pipe'] });
    let complaint = '';
    child.stderr.on('data', (chunk: Buffer) => (complaint += chunk.toString()));
    child.on('error', (error) => reject(faultOf(error.message, path, 'initialisationFailed', error)));
    child.on('close', (code) => {
      if (code === 0) resolve();
      else reject(faultOf(`initdb failed: ${complaint.trim()}`, path, 'initialisationFailed'));
    });
  });
}
