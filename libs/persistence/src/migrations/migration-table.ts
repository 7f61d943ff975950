import { randomUUID } from 'node:crypto';
import type pg from 'pg';
import type { Migration } from './read-migrations.js';

export interface RecordedMigration {
  readonly name: string;
  readonly checksum: string;
  readonly finished: boolean;
  readonly logs: string | null;
}

/** Table, columns and meaning are Prisma's, so that `prisma migrate deploy` and `status` read the same history. */
const createTable = `
CREATE TABLE IF NOT EXISTS _prisma_migrations (
  id                  VARCHAR(36) PRIMARY KEY NOT NULL,
  checksum            VARCHAR(64) NOT NULL,
  finished_at         TIMESTAMPTZ,
  migration_name      VARCHAR(255) NOT NULL,
  logs                TEXT,
  rolled_back_at      TIMESTAMPTZ,
  started_at          TIMESTAMPTZ NOT NULL DEFAULT now(),
  applied_steps_count INTEGER NOT NULL DEFAULT 0
)`;

/** What was done or begun so far, without what was marked as rolled back. */
export async function readHistory(session: pg.Client): Promise<RecordedMigration[]> {
  const { rows: found } = await session.query<{ there: boolean }>(
    `SELECT to_regclass('_prisma_migrations') IS NOT NULL AS there`,
  );
  if (!found[0]?.there) await session.query(createTable);
  const { rows } = await session.query<RecordedMigration>(
    `SELECT migration_name AS name, checksum, finished_at IS NOT NULL AS finished, logs
     FROM _prisma_migrations WHERE rolled_back_at IS NULL ORDER BY started_at, migration_name`,
  );
  return rows;
}

export async function recordApplied(
  session: pg.Client,
  { name, checksum }: Migration,
  steps: number,
): Promise<void> {
  await session.query(
    `INSERT INTO _prisma_migrations (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
     VALUES ($1, $2, $3, now(), clock_timestamp(), $4)`,
    [randomUUID(), checksum, name, steps],
  );
}

/** @returns id of the record, to be finished or given its logs */
export async function recordBegun(
  session: pg.Client,
  { name, checksum }: Migration,
  logs: string | null,
): Promise<string> {
  const id = randomUUID();
  await session.query(
    'INSERT INTO _prisma_migrations (id, checksum, migration_name, logs) VALUES ($1, $2, $3, $4)',
    [id, checksum, name, logs],
  );
  return id;
}

export async function recordFinished(session: pg.Client, id: string): Promise<void> {
  await session.query(
    'UPDATE _prisma_migrations SET finished_at = now(), applied_steps_count = 1 WHERE id = $1',
    [id],
  );
}

export async function recordLogs(session: pg.Client, id: string, logs: string): Promise<void> {
  await session.query('UPDATE _prisma_migrations SET logs = $2 WHERE id = $1', [id, logs]);
}

/** @returns whether there was a failed one of that name */
export async function recordRolledBack(session: pg.Client, name: string): Promise<boolean> {
  const { rowCount } = await session.query(
    `UPDATE _prisma_migrations SET rolled_back_at = now()
     WHERE migration_name = $1 AND finished_at IS NULL AND rolled_back_at IS NULL`,
    [name],
  );
  return rowCount !== 0;
}
