import pg from 'pg';
import { onConnection } from './admin-connection.js';
import { createDatabase, hasDatabase, openToWorkingRoles } from './databases.js';

/** The owner of the database runs the migrations; the other two work under row-level security. */
export const roles = ['endfloat_owner', 'endfloat_api', 'endfloat_worker'] as const;
export type Role = (typeof roles)[number];

/** Two processes that make roles at once would change the same catalogue rows: one waits for the other. */
const rolesLock = 72707371;

/**
 * Limits of each role's sessions. Those of the API stay below the time-out of a request; the worker may compute
 * longer; a migration may run as long as it must, but does not queue behind others' locks for ever.
 */
const timeouts: Readonly<Record<Role, Readonly<Record<string, string>>>> = {
  endfloat_owner: {
    statement_timeout: '0',
    lock_timeout: '30s',
    idle_in_transaction_session_timeout: '5min',
  },
  endfloat_api: { statement_timeout: '15s', lock_timeout: '5s', idle_in_transaction_session_timeout: '20s' },
  endfloat_worker: {
    statement_timeout: '5min',
    lock_timeout: '15s',
    idle_in_transaction_session_timeout: '1min',
  },
};

export interface RolesAndDatabase {
  /** Connection of a role that may make roles and databases. */
  readonly adminUrl: string;
  readonly database: string;
  readonly passwordOf: (role: Role) => string;
}

/**
 * Makes the three roles and the database owned by `endfloat_owner`, or brings existing ones up to date. Before the
 * first migration, which grants rights to them.
 */
export async function createRolesAndDatabase({
  adminUrl,
  database,
  passwordOf,
}: RolesAndDatabase): Promise<void> {
  await whileNobodyMakesRoles(adminUrl, async (admin) => {
    await createRoles(admin, roles, passwordOf);
    if (!(await hasDatabase(admin, database))) await createDatabase({ adminUrl, name: database });
    await openToWorkingRoles(admin, database);
  });
}

/** Makes the roles, or gives existing ones their password and limits again and takes privileges they may not have. */
export async function createRoles(
  admin: pg.Client,
  wanted: readonly Role[],
  passwordOf: (role: Role) => string,
): Promise<void> {
  for (const role of wanted) {
    const { rows } = await admin.query<{ privileged: boolean }>(
      'SELECT rolsuper OR rolbypassrls OR rolcreaterole OR rolcreatedb AS privileged FROM pg_roles WHERE rolname = $1',
      [role],
    );
    const [existing] = rows;
    // Whoever is no superuser may not even repeat that a role is none.
    const privileges =
      existing?.privileged === false ? '' : 'NOSUPERUSER NOBYPASSRLS NOCREATEDB NOCREATEROLE';
    await admin.query(
      `${existing ? 'ALTER' : 'CREATE'} ROLE ${role} LOGIN ${privileges} PASSWORD ${pg.escapeLiteral(passwordOf(role))}`,
    );
    for (const [name, value] of Object.entries(timeouts[role])) {
      await admin.query(`ALTER ROLE ${role} SET ${name} = ${pg.escapeLiteral(value)}`);
    }
  }
}

/** Runs the work on one connection while no other process makes roles. */
export function whileNobodyMakesRoles<T>(
  adminUrl: string,
  work: (admin: pg.Client) => Promise<T>,
): Promise<T> {
  return onConnection(adminUrl, async (admin) => {
    await admin.query('SELECT pg_advisory_lock($1)', [rolesLock]);
    return work(admin);
  });
}
