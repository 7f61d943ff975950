import type pg from 'pg';
import { onConnection } from '../embedded/admin-connection.js';
import { MigrationError } from './migration.error.js';

/** The lock that Prisma's own engine takes, so that runners of either kind wait for each other. */
const migrationLock = 72707369;

/**
 * Runs the work on one connection of its own while no other runner works on the database. The lock belongs to the
 * session: the URL must lead to the server itself, not to a pool of transactions.
 *
 * @param patienceMs - how long to wait for another runner
 * @throws MigrationError when another runner is not done within that time
 */
export function withMigrationLock<T>(
  url: string,
  patienceMs: number,
  work: (session: pg.Client) => Promise<T>,
): Promise<T> {
  return onConnection(url, async (session) => {
    await session.query(`SET statement_timeout = 0; SET lock_timeout = ${Math.ceil(patienceMs)}`);
    try {
      await session.query('SELECT pg_advisory_lock($1)', [migrationLock]);
    } catch (cause) {
      if ((cause as { code?: string }).code !== '55P03') throw cause;
      const message = `Another runner has been migrating this database for over ${patienceMs} ms.`;
      throw new MigrationError('locked', message, undefined, { cause });
    }
    await resetSession(session);
    return work(session);
  });
}

/** What a file has set does not reach the next one. */
export async function resetSession(session: pg.Client): Promise<void> {
  await session.query('RESET ALL; RESET ROLE; SET statement_timeout = 0');
}
