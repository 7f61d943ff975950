import type pg from 'pg';
import { onConnection } from '../embedded/admin-connection.js';
import { readSchema, type SchemaFact } from './read-schema.js';
import { ddlOfSchema } from './schema-engine.js';

export interface DriftCheck {
  /** A database on which all migrations have run. */
  readonly migratedUrl: string;
  /** An empty database; the schema's own tables are made in it. */
  readonly emptyUrl: string;
  /** Text of `schema.prisma`. */
  readonly schema: string;
  /** Tables that migrations make and the schema does not name. */
  readonly sqlOnlyTables?: readonly string[];
}

export interface Drift {
  readonly subject: string;
  /** Undefined: the migrations do not make it. */
  readonly inMigrations: string | undefined;
  /** Undefined: the schema does not name it. */
  readonly inSchema: string | undefined;
}

/**
 * Where migrations and Prisma schema say different things, among what a Prisma schema can say. Empty: they agree.
 *
 * @throws RangeError when the database said to be empty has tables
 */
export async function findDrift({
  migratedUrl,
  emptyUrl,
  schema,
  sqlOnlyTables = [],
}: DriftCheck): Promise<Drift[]> {
  const ddl = await ddlOfSchema(schema, emptyUrl);
  const inSchema = await onConnection(emptyUrl, async (session) => {
    await refuseTables(session);
    await session.query(ddl);
    return readSchema(session, []);
  });
  const inMigrations = await onConnection(migratedUrl, (session) => readSchema(session, sqlOnlyTables));
  return compare(inMigrations, inSchema);
}

async function refuseTables(session: pg.Client): Promise<void> {
  const tables = await readSchema(session, []);
  if (tables.length > 0)
    throw new RangeError(`The database for the schema's own tables is not empty: ${tables[0]!.subject}.`);
}

function compare(migrations: readonly SchemaFact[], schema: readonly SchemaFact[]): Drift[] {
  const [made, named] = [migrations, schema].map(
    (list) => new Map(list.map(({ subject, definition }) => [subject, definition])),
  ) as [Map<string, string>, Map<string, string>];
  return [...new Set([...made.keys(), ...named.keys()])]
    .sort()
    .map((subject) => ({ subject, inMigrations: made.get(subject), inSchema: named.get(subject) }))
    .filter((entry) => entry.inMigrations !== entry.inSchema);
}
