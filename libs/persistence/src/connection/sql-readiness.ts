import type pg from 'pg';

const patienceMs = 1000;

/** Why the database cannot serve, in a word or two; undefined when it can and the migrations have been applied. */
export async function sqlReadiness(pool: pg.Pool): Promise<string | undefined> {
  const late = new Promise<string>((resolve) =>
    setTimeout(resolve, patienceMs, 'database does not answer').unref(),
  );
  const asked = pool.query("SELECT to_regclass('outbox') IS NOT NULL AS migrated").then(
    ({ rows }: { rows: { migrated: boolean }[] }) =>
      rows[0]?.migrated === true ? undefined : 'database is not migrated',
    () => 'database cannot be reached',
  );
  return Promise.race([asked, late]);
}
