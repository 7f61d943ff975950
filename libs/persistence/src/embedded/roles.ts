import pg from 'pg';

export const workingRoles = ['endfloat_api', 'endfloat_worker'] as const;
/** The owner of the database runs the migrations; the other two work under row-level security. */
export const roles = ['endfloat_owner', ...workingRoles] as const;
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
  await asAdmin(adminUrl, async (admin) => {
    await createRoles(admin, roles, passwordOf);
    const name = pg.escapeIdentifier(database);
    const { rowCount } = await admin.query('SELECT FROM pg_database WHERE datname = $1', [database]);
    if (rowCount === 0)
      await admin.query(`CREATE DATABASE ${name} OWNER endfloat_owner ENCODING 'UTF8' TEMPLATE template0`);
    await admin.query(`REVOKE ALL ON DATABASE ${name} FROM PUBLIC`);
    await admin.query(`GRANT CONNECT ON DATABASE ${name} TO ${workingRoles.join(', ')}`);
  });
}

/** Makes the roles, or gives existing ones their password, limits and lack of privileges again. */
export async function createRoles(
  admin: pg.Client,
  wanted: readonly Role[],
  passwordOf: (role: Role) => string,
): Promise<void> {
  for (const role of wanted) {
    const { rowCount } = await admin.query('SELECT FROM pg_roles WHERE rolname = $1', [role]);
    await admin.query(
      `${rowCount === 0 ? 'CREATE' : 'ALTER'} ROLE ${role} LOGIN NOSUPERUSER NOBYPASSRLS NOCREATEDB NOCREATEROLE ` +
        `PASSWORD ${pg.escapeLiteral(passwordOf(role))}`,
    );
    for (const [name, value] of Object.entries(timeouts[role])) {
      await admin.query(`ALTER ROLE ${role} SET ${name} = ${pg.escapeLiteral(value)}`);
    }
  }
}

/** Runs the work on one connection while no other process makes roles. */
export async function asAdmin<T>(adminUrl: string, work: (admin: pg.Client) => Promise<T>): Promise<T> {
  const admin = new pg.Client({ connectionString: adminUrl, application_name: 'endfloat roles' });
  await admin.connect();
  try {
    await admin.query('SELECT pg_advisory_lock($1)', [rolesLock]);
    return await work(admin);
  } finally {
    await admin.end();
  }
}
