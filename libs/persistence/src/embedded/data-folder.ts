import {
  accessSync,
  chmodSync,
  chownSync,
  constants,
  existsSync,
  mkdirSync,
  readdirSync,
  realpathSync,
  statSync,
} from 'node:fs';
import { createHash } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { DatabaseStartError, faultOf } from './database-start.error.js';
import { accountMayWrite, findServerAccount, type ServerAccount } from './server-account.js';

export interface DataFolder {
  /** Holds everything below, closed to others. */
  readonly path: string;
  /** The cluster itself, which `initdb` makes. */
  readonly cluster: string;
  readonly secret: string;
  readonly log: string;
  readonly account: ServerAccount | undefined;
}

/**
 * Where the database of a project lies when nobody says otherwise: `.data` in the project for an ordinary user;
 * for root a system folder, because the account of the server seldom may enter the project.
 */
export function defaultDataFolder(projectFolder: string, isRoot = process.getuid?.() === 0): string {
  if (!isRoot) return join(projectFolder, '.data');
  const project = realpathSync(projectFolder);
  const mark = createHash('sha256').update(project).digest('hex').slice(0, 8);
  return join('/var/lib/endfloat', `${basename(project)}-${mark}`);
}

/**
 * Makes the folder where needed and gives it to the account of the server.
 *
 * @throws DatabaseStartError when it cannot be made, written, or entered by that account
 */
export function prepareDataFolder(folder: string): DataFolder {
  try {
    makeFolder(folder);
  } catch (cause) {
    throw faultOf(String(cause), folder, 'folderUnusable', cause);
  }
  const path = realpathSync(folder);
  const account = accountFor(path);
  if (account) giveTo(account, path);
  else refuseUnwritable(path);
  return {
    path,
    cluster: join(path, 'cluster'),
    secret: join(path, 'secret'),
    log: join(path, 'server.log'),
    account,
  };
}

function makeFolder(folder: string): void {
  const firstMade = mkdirSync(folder, { recursive: true });
  if (firstMade === undefined) return;
  chmodSync(folder, 0o700);
  // Folders made on the way must let the account through, whatever the mask of this process.
  if (firstMade === folder) return;
  for (let parent = dirname(folder); parent.length >= firstMade.length; parent = dirname(parent))
    chmodSync(parent, 0o755);
}

/** Who made a cluster must run it, also when another of the usual accounts has appeared since. */
function accountFor(path: string): ServerAccount | undefined {
  const usual = findServerAccount();
  const cluster = join(path, 'cluster');
  if (!usual || !existsSync(cluster)) return usual;
  const { uid, gid } = statSync(cluster);
  return uid === 0 || uid === usual.uid ? usual : { name: `with number ${uid}`, uid, gid };
}

function giveTo(account: ServerAccount, path: string): void {
  const { uid } = statSync(path);
  if (uid !== account.uid) {
    if (uid !== 0 || readdirSync(path).length > 0) {
      throw new DatabaseStartError(
        'folderUnusable',
        `The database runs as system user ${account.name}, but ${path} belongs to another user and is not empty. ` +
          'Choose an empty data folder or one made for it.',
      );
    }
    chownSync(path, account.uid, account.gid);
    chmodSync(path, 0o700);
  }
  if (accountMayWrite(account, path)) return;
  throw new DatabaseStartError(
    'folderUnusable',
    `The database does not run as root but as system user ${account.name}, who may not enter or write ${path}. ` +
      'Choose a data folder below folders that are open to all users, for example below /var/lib.',
  );
}

function refuseUnwritable(path: string): void {
  try {
    accessSync(path, constants.W_OK | constants.X_OK);
  } catch (cause) {
    throw faultOf(String(cause), path, 'folderUnusable', cause);
  }
}
