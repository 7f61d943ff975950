import { readFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { DatabaseStartError } from './database-start.error.js';

/** System user under which the server runs when this process is root, which PostgreSQL refuses. */
export interface ServerAccount {
  readonly name: string;
  readonly uid: number;
  readonly gid: number;
}

const candidates = ['postgres', 'nobody'];

/**
 * The account to run the server under; undefined for an ordinary user, who runs it as himself.
 *
 * @throws DatabaseStartError when this process is root and the system has none of the usual accounts
 */
export function findServerAccount(
  isRoot = process.getuid?.() === 0,
  accounts = () => readFileSync('/etc/passwd', 'utf8'),
): ServerAccount | undefined {
  if (!isRoot) return undefined;
  const lines = accounts()
    .split('\n')
    .map((line) => line.split(':'));
  for (const name of candidates) {
    const line = lines.find(([user]) => user === name);
    const uid = Number(line?.[2]);
    const gid = Number(line?.[3]);
    if (line && uid > 0 && gid > 0) return { name, uid, gid };
  }
  throw new DatabaseStartError(
    'accountMissing',
    `PostgreSQL does not run as root, and this system has no user ${candidates.join(' or ')} to run it as. ` +
      'Start as an ordinary user, or give DATABASE_URL.',
  );
}

/**
 * Options for a child process to run under the account: nothing of this process's environment, and a working folder
 * that every account may enter.
 */
export function asAccount(account: ServerAccount | undefined) {
  return {
    cwd: '/',
    ...(account ? { uid: account.uid, gid: account.gid } : {}),
    env: { PATH: process.env['PATH'] ?? '/usr/bin:/bin', LC_ALL: 'C', TZ: 'UTC', PGTZ: 'UTC' },
  };
}

/** Whether the account may write into the folder; access lists and closed parent folders are taken into account. */
export function accountMayWrite(account: ServerAccount | undefined, folder: string): boolean {
  return spawnSync('test', ['-w', folder, '-a', '-x', folder], asAccount(account)).status === 0;
}
