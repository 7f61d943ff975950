import pg from 'pg';

/** What must hold in the database whatever happened to the process; each query lists the rows that break it. */
export interface Invariant {
  readonly name: string;
  readonly query: string;
}

export interface Breach {
  readonly invariant: string;
  readonly row: unknown;
}

/** A foreign key with the columns of both sides, in order. */
interface Parent {
  readonly child: string;
  readonly parent: string;
  readonly pairs: readonly { readonly from: string; readonly to: string }[];
}

const mostRows = 3;

/**
 * Breaches of the invariants, a few rows of each; empty when all hold.
 *
 * @param superuserUrl - a role that row-level security does not bind, so that all shops are seen at once
 */
export async function findBreaches(superuserUrl: string): Promise<readonly Breach[]> {
  const session = new pg.Client({ connectionString: superuserUrl });
  await session.connect();
  try {
    const found: Breach[] = [];
    for (const { name, query } of await invariantsOf(session)) {
      const { rows } = await session.query<Record<string, unknown>>(`${query} LIMIT ${String(mostRows)}`);
      found.push(...rows.map((row) => ({ invariant: name, row })));
    }
    return found;
  } finally {
    await session.end();
  }
}

/** The invariants of this database: those of every kind of record, as its catalogue lists them, and those of single ones. */
export async function invariantsOf(session: pg.Client): Promise<readonly Invariant[]> {
  const records = await recordTables(session);
  const parents = await parentsOf(session);
  return [
    ...records.flatMap(ofRecord),
    ...parents.map(parentOfSameShop),
    ...ofComebacks,
    outboxOfCommittedRecords(records),
  ];
}

async function recordTables(session: pg.Client): Promise<readonly string[]> {
  const { rows } = await session.query<{ name: string }>(
    `SELECT r.table_name AS name FROM information_schema.tables r
     JOIN information_schema.tables v ON v.table_schema = r.table_schema AND v.table_name = r.table_name || '_revision'
     WHERE r.table_schema = 'public' ORDER BY 1`,
  );
  return rows.map(({ name }) => name);
}

async function parentsOf(session: pg.Client): Promise<readonly Parent[]> {
  const { rows } = await session.query<Parent>(
    `SELECT c.conrelid::regclass::text AS child, c.confrelid::regclass::text AS parent,
            (SELECT json_agg(json_build_object('from', f.attname, 'to', t.attname) ORDER BY place.ordinality)
             FROM unnest(c.conkey, c.confkey) WITH ORDINALITY AS place(from_number, to_number, ordinality)
             JOIN pg_attribute f ON f.attrelid = c.conrelid AND f.attnum = place.from_number
             JOIN pg_attribute t ON t.attrelid = c.confrelid AND t.attnum = place.to_number) AS pairs
     FROM pg_constraint c JOIN pg_namespace n ON n.oid = c.connamespace
     WHERE c.contype = 'f' AND n.nspname = 'public' ORDER BY 1, c.conname`,
  );
  return rows;
}

function ofRecord(name: string): Invariant[] {
  const revision = `${name}_revision`;
  return [
    {
      name: `${name}: one current revision`,
      query: `SELECT r.shop_id, r.id, count(v.id) AS current FROM ${name} r
              LEFT JOIN ${revision} v ON v.shop_id = r.shop_id AND v.id = r.id AND v.replaced_at IS NULL
              GROUP BY 1, 2 HAVING count(v.id) <> 1`,
    },
    {
      name: `${name}: revisions numbered 1 to n, each replaced when the next was recorded, never before its own time`,
      query: `SELECT shop_id, id, revision, place, recorded_at, replaced_at, next_at FROM (
                SELECT shop_id, id, revision, recorded_at, replaced_at,
                       row_number() OVER w AS place, lead(recorded_at) OVER w AS next_at
                FROM ${revision} WINDOW w AS (PARTITION BY shop_id, id ORDER BY revision)) AS numbered
              WHERE revision <> place OR replaced_at IS DISTINCT FROM next_at OR replaced_at < recorded_at`,
    },
    {
      name: `${name}: no revision without its record`,
      query: `SELECT v.shop_id, v.id FROM ${revision} v
              WHERE NOT EXISTS (SELECT FROM ${name} r WHERE r.shop_id = v.shop_id AND r.id = v.id)`,
    },
  ];
}

/** The keys promise it; this looks whether they kept it, and whether the shop is part of every key. */
function parentOfSameShop({ child, parent, pairs }: Parent): Invariant {
  const named = pairs.filter(({ from }) => from !== 'shop_id');
  const given = named.map(({ from }) => `c.${from} IS NOT NULL`).join(' AND ');
  const same = named.map(({ from, to }) => `p.${to} = c.${from}`).join(' AND ');
  return {
    name: `${child}: ${named.map(({ from }) => from).join(', ')} is of the same shop`,
    query: `SELECT c.* FROM ${child} c WHERE ${given}
            AND NOT EXISTS (SELECT FROM ${parent} p WHERE p.shop_id = c.shop_id AND ${same})`,
  };
}

const ofComebacks: readonly Invariant[] = [
  {
    name: 'comeback: points to a released job of the vehicle of its complaint',
    query: `SELECT b.shop_id, b.id, c.vehicle_id AS complaint_of, j.vehicle_id AS job_of, l.id AS release_id
            FROM comeback b
            LEFT JOIN complaint c ON c.shop_id = b.shop_id AND c.id = b.complaint_id
            LEFT JOIN job j ON j.shop_id = b.shop_id AND j.id = b.job_id
            LEFT JOIN release l ON l.shop_id = b.shop_id AND l.job_id = b.job_id
            WHERE c.vehicle_id IS DISTINCT FROM j.vehicle_id OR l.id IS NULL`,
  },
];

/** What an event tells of was recorded by the same transaction, or before. */
function outboxOfCommittedRecords(records: readonly string[]): Invariant {
  const anyRecord = records
    .map((name) => `SELECT FROM ${name} r WHERE r.shop_id = o.shop_id AND r.id = o.subject_id`)
    .join(' UNION ALL ');
  return {
    name: 'outbox: every event is about a committed record',
    query: `SELECT o.shop_id, o.position, o.type, o.subject_id FROM outbox o WHERE NOT EXISTS (${anyRecord})`,
  };
}
