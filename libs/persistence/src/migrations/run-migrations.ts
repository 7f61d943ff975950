import type pg from 'pg';
import { MigrationError } from './migration.error.js';
import { resetSession, withMigrationLock } from './migration-session.js';
import {
  readHistory,
  recordApplied,
  recordBegun,
  recordFinished,
  recordLogs,
  type RecordedMigration,
} from './migration-table.js';
import { readMigrations, type Migration } from './read-migrations.js';
import { splitStatements } from './split-statements.js';

export interface MigrationRun {
  /** Role that owns the database, on a direct connection. */
  readonly url: string;
  /** The folder `prisma/migrations`. */
  readonly folder: string;
  /** How long to wait for another runner; 10 minutes when left out. */
  readonly patienceMs?: number;
}

export interface MigrationResult {
  readonly name: string;
  readonly outcome: 'applied' | 'appliedBefore';
}

/**
 * Brings a database up to date: applies each file that its history does not name, in order, each in a transaction.
 * Of several runners at once one works, the others wait and find the work done.
 *
 * A file that fails leaves nothing behind but the record of its failure, and everything after it is refused until
 * `resolveMigration` has settled it. A file that runs outside a transaction may leave its first statements behind.
 *
 * @throws MigrationError when a file fails, failed before, was edited after it was applied, or is missing here
 */
export async function runMigrations({
  url,
  folder,
  patienceMs = 600_000,
}: MigrationRun): Promise<MigrationResult[]> {
  const migrations = readMigrations(folder);
  return withMigrationLock(url, patienceMs, async (session) => {
    const history = await readHistory(session);
    refuseFailed(history);
    refuseUnknownOrEdited(history, migrations);
    const done = new Set(history.map(({ name }) => name));
    const results: MigrationResult[] = [];
    for (const migration of migrations) {
      if (done.has(migration.name)) {
        results.push({ name: migration.name, outcome: 'appliedBefore' });
        continue;
      }
      await (migration.inTransaction ? applyInTransaction : applyStatementByStatement)(session, migration);
      await resetSession(session);
      results.push({ name: migration.name, outcome: 'applied' });
    }
    return results;
  });
}

function refuseFailed(history: readonly RecordedMigration[]): void {
  const failed = history.find(({ finished }) => !finished);
  if (!failed) return;
  throw new MigrationError(
    'failedBefore',
    `The migration ${failed.name} failed or was cut off before, and nothing is migrated until that is settled: see to ` +
      `what it left, then mark it as rolled back or as applied. ${failed.logs ?? ''}`.trimEnd(),
    failed.name,
  );
}

function refuseUnknownOrEdited(
  history: readonly RecordedMigration[],
  migrations: readonly Migration[],
): void {
  for (const { name, checksum } of history) {
    const migration = migrations.find((candidate) => candidate.name === name);
    if (!migration) {
      throw new MigrationError(
        'unknown',
        `The database has the migration ${name}, which this release does not know: it was migrated by a newer one.`,
        name,
      );
    }
    if (migration.checksum !== checksum) {
      throw new MigrationError(
        'edited',
        `The migration ${name} was edited after it was applied to this database. Restore the file and put the change ` +
          'into a new migration.',
        name,
      );
    }
  }
}

/** The record is part of the transaction: whoever is killed meanwhile leaves neither. */
async function applyInTransaction(session: pg.Client, migration: Migration): Promise<void> {
  try {
    await session.query('BEGIN');
    await session.query(migration.sql);
    await session.query('RESET ALL; RESET ROLE');
    await recordApplied(session, migration, 1);
    await session.query('COMMIT');
  } catch (cause) {
    const failure = failureOf(migration, migration.sql, cause);
    // Where the connection itself is gone, nothing of the file is left and no record is needed.
    await session.query('ROLLBACK').then(
      () => recordBegun(session, migration, failure.message),
      () => undefined,
    );
    throw failure;
  }
}

async function applyStatementByStatement(session: pg.Client, migration: Migration): Promise<void> {
  const id = await recordBegun(session, migration, null);
  for (const statement of splitStatements(migration.sql)) {
    try {
      await session.query(statement);
    } catch (cause) {
      const failure = failureOf(migration, statement, cause);
      await resetSession(session);
      await recordLogs(session, id, failure.message);
      throw failure;
    }
  }
  await resetSession(session);
  await recordFinished(session, id);
}

function failureOf({ name, sql }: Migration, sent: string, cause: unknown): MigrationError {
  const { message, position, code } = cause as Error & { position?: string; code?: string };
  const at = position === undefined ? -1 : sql.indexOf(sent) + Number(position);
  const place = at < 0 ? '' : `, line ${sql.slice(0, at).split('\n').length}`;
  return new MigrationError(
    'failed',
    `The migration ${name}${place} failed: ${message} (${code ?? 'no code'})`,
    name,
    { cause },
  );
}
