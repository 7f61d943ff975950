import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { MigrationError } from './migration.error.js';

export interface Migration {
  /** Name of its folder, `<stamp>_<name>`; the order of names is the order of migrations. */
  readonly name: string;
  readonly sql: string;
  /** SHA-256 of the file in hexadecimal, as Prisma records it. */
  readonly checksum: string;
  /** False for a file that begins with the line `-- endfloat: no transaction`. */
  readonly inTransaction: boolean;
}

const outsideTransaction = /^-- endfloat: no transaction\s*$/m;
const transactionControl =
  /^\s*(?:begin|commit|rollback|start\s+transaction)(?:\s+(?:work|transaction))?\s*;/im;

/**
 * The migrations of a folder `prisma/migrations`, in order.
 *
 * @throws MigrationError when the folder or a file cannot be read, or a file controls the transaction it runs in
 */
export function readMigrations(folder: string): Migration[] {
  return foldersIn(folder).map((name) => {
    const file = join(folder, name, 'migration.sql');
    if (!existsSync(file))
      throw new MigrationError('unreadable', `The migration ${name} has no migration.sql.`, name);
    const bytes = readFileSync(file);
    const sql = bytes.toString('utf8');
    const inTransaction = !outsideTransaction.test(sql.slice(0, sql.indexOf('\n') + 1));
    if (inTransaction && transactionControl.test(sql)) {
      throw new MigrationError(
        'unusableFile',
        `The migration ${name} begins or ends a transaction. Each file runs in one of its own; leave the statement out, ` +
          'or make `-- endfloat: no transaction` the first line where a statement cannot run in one.',
        name,
      );
    }
    return { name, sql, inTransaction, checksum: createHash('sha256').update(bytes).digest('hex') };
  });
}

function foldersIn(folder: string): string[] {
  try {
    const entries = readdirSync(folder, { withFileTypes: true });
    return entries
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name)
      .sort();
  } catch (cause) {
    throw new MigrationError(
      'unreadable',
      `The migrations in ${folder} cannot be read: ${String(cause)}`,
      undefined,
      { cause },
    );
  }
}
