import pg from 'pg';
import { onConnection } from './admin-connection.js';
import { DatabaseStartError } from './database-start.error.js';
import { openToWorkingRoles } from './databases.js';
import { createRoles, roles, whileNobodyMakesRoles, type Role } from './roles.js';
import { rolePassword } from './secret.js';

export interface ExternalDatabase {
  /** DATABASE_URL: leads to the server itself and names a database that exists. */
  readonly databaseUrl: string;
  /** ENDFLOAT_API_DATABASE_URL and ENDFLOAT_WORKER_DATABASE_URL: roles made by hand; both or none. */
  readonly apiDatabaseUrl?: string;
  readonly workerDatabaseUrl?: string;
  /** From which the passwords of the roles follow when they are made here; the password in `databaseUrl` when left out. */
  readonly secret?: string;
}

export interface DatabaseUrls {
  readonly ownerUrl: string;
  readonly apiUrl: string;
  readonly workerUrl: string;
  /** What the operator should know, in sentences. */
  readonly warnings: readonly string[];
}

interface Facts {
  readonly encoding: string;
  readonly version: number;
  readonly database: string;
  readonly user: string;
  readonly superuser: boolean;
  readonly seesAllRows: boolean;
  readonly makesRoles: boolean;
}

const oldestVersion = 150000;

/**
 * The three connections on a server that runs elsewhere. A role that may make roles makes the three of Endfloat, in
 * the same way at each start; otherwise the URLs given for them are used, and without those the one URL serves all.
 *
 * @throws DatabaseStartError when the server is out of reach, too old, not UTF-8, or a role would see all shops' rows
 */
export async function databaseUrls(settings: ExternalDatabase): Promise<DatabaseUrls> {
  const { databaseUrl, apiDatabaseUrl, workerDatabaseUrl } = settings;
  const facts = await readFacts(databaseUrl, 'DATABASE_URL');
  if (apiDatabaseUrl !== undefined && workerDatabaseUrl !== undefined) {
    refuseIfItSeesAllRows(await readFacts(apiDatabaseUrl, 'ENDFLOAT_API_DATABASE_URL'));
    refuseIfItSeesAllRows(await readFacts(workerDatabaseUrl, 'ENDFLOAT_WORKER_DATABASE_URL'));
    return { ownerUrl: databaseUrl, apiUrl: apiDatabaseUrl, workerUrl: workerDatabaseUrl, warnings: [] };
  }
  if (apiDatabaseUrl !== undefined || workerDatabaseUrl !== undefined) {
    throw unavailable('Give both ENDFLOAT_API_DATABASE_URL and ENDFLOAT_WORKER_DATABASE_URL, or none.');
  }
  if (facts.superuser || facts.makesRoles) return makeRoles(settings, facts);
  refuseIfItSeesAllRows(facts);
  const warning =
    `The role ${facts.user} may not make roles, so it runs migrations, API and worker alike. Shops are still kept apart ` +
    'by row-level security, but the API could change tables. Make roles endfloat_api and endfloat_worker (LOGIN) ' +
    'before the first migration and name them in ENDFLOAT_API_DATABASE_URL and ENDFLOAT_WORKER_DATABASE_URL.';
  return { ownerUrl: databaseUrl, apiUrl: databaseUrl, workerUrl: databaseUrl, warnings: [warning] };
}

async function makeRoles(settings: ExternalDatabase, { database }: Facts): Promise<DatabaseUrls> {
  const secret = settings.secret ?? decodeURIComponent(new URL(settings.databaseUrl).password);
  if (secret === '') {
    throw unavailable(
      'DATABASE_URL names a role that may make roles, but no password from which theirs could follow. ' +
        'Give ENDFLOAT_DATABASE_SECRET, the same for all processes on this database.',
    );
  }
  const passwordOf = (role: Role) => rolePassword(secret, role);
  try {
    await whileNobodyMakesRoles(settings.databaseUrl, async (admin) => {
      await createRoles(admin, roles, passwordOf);
      await openToWorkingRoles(admin, database);
      const name = pg.escapeIdentifier(database);
      await admin.query(`GRANT CONNECT, CREATE, TEMPORARY ON DATABASE ${name} TO endfloat_owner`);
      await admin.query('GRANT USAGE, CREATE ON SCHEMA public TO endfloat_owner');
    });
  } catch (cause) {
    throw unavailable(
      `The roles of Endfloat cannot be made with DATABASE_URL: ${(cause as Error).message}. Make endfloat_owner, ` +
        'endfloat_api and endfloat_worker by hand and give their three URLs.',
      cause,
    );
  }
  const urlFor = (role: Role) => {
    const url = new URL(settings.databaseUrl);
    url.username = role;
    url.password = passwordOf(role);
    return url.href;
  };
  return {
    ownerUrl: urlFor('endfloat_owner'),
    apiUrl: urlFor('endfloat_api'),
    workerUrl: urlFor('endfloat_worker'),
    warnings: [],
  };
}

async function readFacts(url: string, setting: string): Promise<Facts> {
  const facts = await onConnection(url, async (session) => {
    const { rows } = await session.query<Facts>(
      `SELECT current_setting('server_encoding') AS encoding, current_setting('server_version_num')::int AS version,
              current_database() AS database, rolname AS user, rolsuper AS superuser,
              rolsuper OR rolbypassrls AS "seesAllRows", rolcreaterole AS "makesRoles"
       FROM pg_roles WHERE rolname = current_user`,
    );
    return rows[0]!;
  }).catch((cause: unknown) => {
    throw new DatabaseStartError(
      'startFailed',
      `The database of ${setting} cannot be used: ${reasonOf(cause)}`,
      { cause },
    );
  });
  if (facts.version < oldestVersion) {
    throw new DatabaseStartError(
      'serverTooOld',
      `The server of ${setting} is older than PostgreSQL ${oldestVersion / 10000}.`,
    );
  }
  if (facts.encoding !== 'UTF8') {
    throw new DatabaseStartError(
      'notUtf8',
      `The database of ${setting} stores text as ${facts.encoding}, not as UTF8.`,
    );
  }
  return facts;
}

function refuseIfItSeesAllRows({ user, seesAllRows }: Facts): void {
  if (!seesAllRows) return;
  throw unavailable(
    `The role ${user} is not bound by row-level security and would see the rows of all shops.`,
  );
}

/** A connection refused on several addresses has its reasons in a list. */
function reasonOf(cause: unknown): string {
  if (cause instanceof AggregateError)
    return cause.errors.map((error) => (error as Error).message).join('; ');
  return (cause as Error).message;
}

function unavailable(message: string, cause?: unknown): DatabaseStartError {
  return new DatabaseStartError('rolesUnavailable', message, { cause });
}
