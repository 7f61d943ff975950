import pg from 'pg';

const { types } = pg;
/** Numbers of types, as the server sends them; it knows more than the package has names for. */
const oids: Readonly<Record<'TIMESTAMPTZ' | 'DATE' | 'NUMERIC' | 'INT8', number>> = types.builtins;
const usualParser = types.getTypeParser as (oid: number) => (text: string) => unknown;

/** How values of the database reach us: instants as RFC 3339 text, decimals as trimmed text, dates as they are. */
function parserOf(oid: number): (text: string) => unknown {
  switch (oid) {
    case oids.TIMESTAMPTZ:
      return (text) => new Date(text).toISOString();
    case oids.DATE:
      return (text) => text;
    case oids.NUMERIC:
      return trimDecimal;
    case oids.INT8:
      return Number;
    default:
      return usualParser(oid);
  }
}

/** 0.330200000 -> 0.3302; 12.000 -> 12. The stored scale is no information. */
export function trimDecimal(text: string): string {
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

export interface DatabasePoolSettings {
  readonly url: string;
  readonly size: number;
  /** how long a request waits for a connection before it is told to come back, in milliseconds */
  readonly waitMs: number;
}

/** The one pool of a process: Prisma, plain SQL and the hot queries all run on its connections. */
export function openDatabasePool(settings: DatabasePoolSettings): pg.Pool {
  const pool = new pg.Pool({
    connectionString: settings.url,
    max: settings.size,
    connectionTimeoutMillis: settings.waitMs,
    types: { getTypeParser: (oid: number) => parserOf(oid) },
  });
  // A connection that breaks while idle is replaced by the next request; without a listener it would end the process.
  pool.on('error', () => undefined);
  return pool;
}
