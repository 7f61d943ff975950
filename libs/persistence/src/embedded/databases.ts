import pg from 'pg';
import { onConnection } from './admin-connection.js';

export interface NewDatabase {
  /** Connection of a role that may make databases. */
  readonly adminUrl: string;
  readonly name: string;
  /** Database to copy, to which nobody may be connected; an empty one when left out. */
  readonly template?: string;
}

/** Makes a database owned by `endfloat_owner`, open to the two working roles and to nobody else. */
export function createDatabase({ adminUrl, name, template = 'template0' }: NewDatabase): Promise<void> {
  return onConnection(adminUrl, async (admin) => {
    const [database, source] = [name, template].map((text) => pg.escapeIdentifier(text)) as [string, string];
    await admin.query(`CREATE DATABASE ${database} OWNER endfloat_owner ENCODING 'UTF8' TEMPLATE ${source}`);
    await openToWorkingRoles(admin, name);
  });
}

/** Removes a database, ending the sessions that use it. One that is not there is no fault. */
export async function dropDatabase(adminUrl: string, name: string): Promise<void> {
  await onConnection(adminUrl, (admin) =>
    admin.query(`DROP DATABASE IF EXISTS ${pg.escapeIdentifier(name)} WITH (FORCE)`),
  );
}

/** Removes all databases whose names begin like that. */
export async function dropDatabases(adminUrl: string, prefix: string): Promise<void> {
  const names = await onConnection(adminUrl, async (admin) => {
    const { rows } = await admin.query<{ datname: string }>(
      'SELECT datname FROM pg_database WHERE starts_with(datname, $1)',
      [prefix],
    );
    return rows.map(({ datname }) => datname);
  });
  for (const name of names) await dropDatabase(adminUrl, name);
}

/** Whether a database of the name exists. */
export async function hasDatabase(admin: pg.Client, name: string): Promise<boolean> {
  const { rowCount } = await admin.query('SELECT FROM pg_database WHERE datname = $1', [name]);
  return rowCount !== 0;
}

export async function openToWorkingRoles(admin: pg.Client, name: string): Promise<void> {
  const database = pg.escapeIdentifier(name);
  await admin.query(`REVOKE ALL ON DATABASE ${database} FROM PUBLIC`);
  await admin.query(`GRANT CONNECT ON DATABASE ${database} TO endfloat_api, endfloat_worker`);
}
