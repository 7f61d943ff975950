import { MigrationError } from './migration.error.js';
import { withMigrationLock } from './migration-session.js';
import { readHistory, recordApplied, recordRolledBack } from './migration-table.js';
import { readMigrations } from './read-migrations.js';

export interface MigrationResolution {
  readonly url: string;
  readonly folder: string;
  readonly name: string;
  /** `rolledBack`: nothing of it is left, so the next run applies it anew. `applied`: someone has completed it by hand. */
  readonly as: 'rolledBack' | 'applied';
}

/**
 * Settles a failed migration, so that the next run goes on.
 *
 * @throws MigrationError when the history names no failed migration of that name, or no such file exists
 */
export async function resolveMigration({ url, folder, name, as }: MigrationResolution): Promise<void> {
  const migration = readMigrations(folder).find((candidate) => candidate.name === name);
  await withMigrationLock(url, 10_000, async (session) => {
    await readHistory(session);
    if (as === 'applied' && !migration) {
      throw new MigrationError('unreadable', `There is no file of the migration ${name}.`, name);
    }
    if (!(await recordRolledBack(session, name))) {
      throw new MigrationError('notFailed', `The database has no failed migration ${name}.`, name);
    }
    if (as === 'applied' && migration) await recordApplied(session, migration, 0);
  });
}
