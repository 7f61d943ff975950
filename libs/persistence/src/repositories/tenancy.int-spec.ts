import type pg from 'pg';
import type { SettledJobRow, ShopTransaction } from '@endfloat/workshop/ports';
import { createTestDatabase, type TestDatabase } from '../../../../test/support/database.js';
import {
  columnFacts,
  columnFactsQuery,
  RecordSamples,
  sampleStamp,
  type SampledTables,
} from '../../../../test/integration/record-samples.js';
import { openDatabasePool } from '../connection/database-pool.js';
import { ShopConnections } from '../connection/shop-connection.js';
import { UuidSource } from '../system/uuid-source.js';
import { listShopIds } from './list-shops.js';
import { recordTables } from './record-tables.js';
import { SqlUnitOfWork } from './sql-unit-of-work.repository.js';

const ids = new UuidSource();
const tables: SampledTables = recordTables;

let database: TestDatabase;
let pools: Readonly<Record<'api' | 'worker' | 'owner', pg.Pool>>;
let connections: ShopConnections;
let work: SqlUnitOfWork;
let samples: RecordSamples;
/** every table that holds rows of shops, and the column that names the shop */
let guarded: readonly { table: string; column: string }[];
let own: string;
let other: string;

/** A row in every table there is. */
async function fill(tx: ShopTransaction): Promise<void> {
  await tx.shops.add(sampleStamp.at);
  for (const store of Object.keys(tables)) await samples.record(tx, store);
  const { id: userId } = await samples.record(tx, 'users');
  await tx.apiKeys.add({
    id: ids.next(),
    userId,
    name: 'bench terminal',
    secretHash: 'c0ffee',
    roles: ['technician'],
    expiresAt: null,
    recordedAt: sampleStamp.at,
    recordedBy: sampleStamp.by,
  });
  const personal = { customerId: null, kind: 'complaintWords', content: { words: 'it hunts' } } as const;
  await tx.personal.add({ id: ids.next(), ...personal, recordedAt: sampleStamp.at }, sampleStamp.by);
  const { id: releaseId } = await samples.record(tx, 'releases');
  await fillPlatform(tx, releaseId);
  await tx.settledJobs.add([settledJob(ids.next())], 1);
  const learned = { subject: 'decision', version: '1', hash: 'c0de', document: {} } as const;
  await tx.learnedTables.add({ ...learned, learnedAt: sampleStamp.at });
}

/** A job as the projection of rates keeps it; vehicles to settle are marked by the records above. */
const settledJob = (jobId: string): SettledJobRow => ({
  jobId,
  vehicleId: jobId,
  customerId: null,
  releasedAt: sampleStamp.at,
  closesAt: sampleStamp.at,
  closedBy: 'days',
  isRepeat: false,
  comebackAt: null,
  anyComebackAt: null,
  firstSeenAt: null,
  seenAfterClosingAt: null,
  lastSeenAt: null,
  diagnosedBy: null,
  ageYears: null,
  mix: 'noSymptomCoded/noWork',
  fittedBy: [],
  symptoms: [],
  symptomFamilies: [],
  actions: [],
  components: [],
  partConditions: [],
  suppliers: [],
  countsAgainst: [],
  unattributed: false,
  comebacks: 0,
  cost: '0',
  costGaps: 0,
  repeats: [],
});

/** A stored answer, and an event that an endpoint was told of in vain. */
async function fillPlatform(tx: ShopTransaction, subjectId: string): Promise<void> {
  const { at } = sampleStamp;
  const answer = { keyHash: 'beef', fingerprint: 'cafe', status: 201, location: null, content: 'sealed' };
  await tx.storedAnswers.add({ ...answer, recordedAt: at, expiresAt: '2031-05-06T09:30:00.125Z' });
  const endpointId = ids.next();
  const endpoint = {
    url: 'https://hooks.example/',
    description: 'a',
    eventTypes: null,
    state: 'active',
  } as const;
  await tx.webhookEndpoints.add(endpointId, {}, endpoint, sampleStamp);
  const secret = { id: ids.next(), endpointId, sealed: 'sealed', recordedAt: at, recordedBy: sampleStamp.by };
  await tx.webhookSecrets.add(secret);
  await tx.announce({ type: 'endfloat.van.seen.v1', subjectId, at, payload: {} });
  const { items } = await tx.webhookDeliveries.list({ endpointId, limit: 1 });
  const attempt = { number: 1, startedAt: at, endedAt: at, outcome: 'refused', status: 500 } as const;
  await tx.webhookDeliveries.recordAttempt(items[0]!.id, attempt);
}

beforeAll(async () => {
  database = await createTestDatabase();
  const open = (url: string, size: number) => openDatabasePool({ url, size, waitMs: 20_000 });
  pools = {
    api: open(database.apiUrl, 2),
    worker: open(database.workerUrl, 2),
    owner: open(database.ownerUrl, 2),
  };
  connections = new ShopConnections(pools.api);
  work = new SqlUnitOfWork(connections, ids);
  type Fact = { column: string; nullable: boolean; leadsTo: string | null };
  samples = new RecordSamples(
    tables,
    columnFacts((await pools.owner.query<Fact>(columnFactsQuery)).rows),
    ids,
  );
  const named = await pools.owner.query<{ table: string; column: string }>(
    `SELECT table_name AS table, column_name AS column FROM information_schema.columns
     WHERE table_schema = 'public' AND (column_name = 'shop_id' OR (table_name = 'shop' AND column_name = 'id'))
     ORDER BY 1`,
  );
  guarded = named.rows;
  [own, other] = [ids.next(), ids.next()];
  for (const shopId of [own, other]) await work.run(shopId, fill);
});

afterAll(async () => {
  await connections.close();
  await Promise.all([pools.worker.end(), pools.owner.end()]);
  await database.drop();
});

/** Which shops' rows a table shows when no statement says whose are wanted. */
async function shopsSeen(client: pg.Pool | pg.PoolClient, table: string, column: string): Promise<string[]> {
  const { rows } = await client.query<{ shop: string }>(`SELECT DISTINCT ${column} AS shop FROM ${table}`);
  return rows.map(({ shop }) => shop);
}

describe('JOB rule 16: one shop never sees the rows of another', () => {
  it('has every table of the database among those that are tried', async () => {
    const { rows } = await pools.owner.query<{ table: string }>(
      `SELECT relname AS table FROM pg_class
       WHERE relnamespace = 'public'::regnamespace AND relkind IN ('r', 'p') AND relname <> '_prisma_migrations' ORDER BY 1`,
    );
    expect(guarded.map(({ table }) => table)).toEqual(rows.map(({ table }) => table));
    expect(guarded.length).toBe(2 * Object.keys(tables).length + 11);
  });

  it.each(['api', 'worker', 'owner'] as const)(
    'shows the %s the rows of the shop of the transaction, though no statement asks for a shop',
    async (role) => {
      const client = await pools[role].connect();
      try {
        await client.query('BEGIN');
        await client.query(`SELECT set_config('app.shop', $1, true)`, [own]);
        for (const { table, column } of guarded) {
          const seen = await shopsSeen(client, table, column);
          // The worker may list shops, in this one table, to know for whom there is work.
          const expected = role === 'worker' && table === 'shop' ? [own, other] : [own];
          expect([table, seen.sort()]).toEqual([table, expected.sort()]);
        }
      } finally {
        await client.query('ROLLBACK');
        client.release();
      }
    },
  );

  it.each(['api', 'worker', 'owner'] as const)(
    'shows the %s nothing outside a transaction of a shop',
    async (role) => {
      for (const { table, column } of guarded) {
        const expected = role === 'worker' && table === 'shop' ? 2 : 0;
        expect([table, (await shopsSeen(pools[role], table, column)).length]).toEqual([table, expected]);
      }
    },
  );

  it('lets the worker, and nobody else, list the shops', async () => {
    expect([...(await listShopIds(pools.worker))].sort()).toEqual([own, other].sort());
    expect(await listShopIds(pools.api)).toEqual([]);
  });

  it('takes no row for another shop than that of the transaction', async () => {
    await expect(
      connections.inTransaction(own, 'READ WRITE', ({ sql }) =>
        sql.query('INSERT INTO vehicle (shop_id, id, recorded_at, recorded_by) VALUES ($1, $2, now(), $2)', [
          other,
          ids.next(),
        ]),
      ),
    ).rejects.toMatchObject({ code: '42501' });
    const changed = await connections.inTransaction(own, 'READ WRITE', ({ sql }) =>
      sql.query(`UPDATE vehicle_revision SET replaced_at = now() WHERE shop_id = '${other}'`),
    );
    expect(changed.rowCount).toBe(0);
  });

  it('never leaks through a pool of one connection that two shops take in turn', async () => {
    const pool = openDatabasePool({ url: database.apiUrl, size: 1, waitMs: 60_000 });
    const narrow = new ShopConnections(pool);
    try {
      const seen = await Promise.all(
        Array.from({ length: 40 }, (_, at) => {
          const shopId = at % 2 === 0 ? own : other;
          return narrow.inTransaction(shopId, 'READ ONLY', async ({ sql, prisma }) => {
            const bySql = await shopsSeen(sql, 'vehicle', 'shop_id');
            const byPrisma = await prisma.outbox.findMany({ select: { shopId: true } });
            return { shopId, seen: [...bySql, ...byPrisma.map((row) => row.shopId)] };
          });
        }),
      );
      for (const { shopId, seen: shops } of seen) expect(shops).toEqual([shopId, shopId]);
      expect(await shopsSeen(pool, 'vehicle', 'shop_id')).toEqual([]);
      // A transaction that failed leaves no shop behind either.
      const fault = new Error('planted');
      await expect(narrow.inTransaction(own, 'READ WRITE', () => Promise.reject(fault))).rejects.toBe(fault);
      expect(await shopsSeen(pool, 'vehicle', 'shop_id')).toEqual([]);
    } finally {
      await narrow.close();
    }
  });
});

describe('JOB rule 1: the working roles', () => {
  const exceptions = [
    'api_key.expires_at',
    'api_key.last_used_at',
    'api_key.revoked_at',
    'api_key.revoked_by',
    'personal_record.content',
    'personal_record.erase_reason',
    'personal_record.erased_at',
    'personal_record.erased_by',
    'stored_answer.content',
    'stored_answer.erased_at',
    'webhook_delivery.attempts',
    'webhook_delivery.due_at',
    'webhook_delivery.settled_at',
    'webhook_delivery.state',
    'webhook_secret.ends_at',
  ];

  it.each(['endfloat_api', 'endfloat_worker'])(
    '%s may change no column but the mark of replacement, the revoking of a key, the erasing of personal data and answers, and the course of a delivery',
    async (role) => {
      const { rows } = await pools.owner.query<{ column: string }>(
        `SELECT c.table_name || '.' || c.column_name AS column FROM information_schema.columns c
         WHERE c.table_schema = 'public' AND has_column_privilege($1, quote_ident(c.table_name), c.column_name, 'UPDATE')`,
        [role],
      );
      const marks = Object.values(tables).map(({ name }) => `${name}_revision.replaced_at`);
      expect(rows.map(({ column }) => column).sort()).toEqual([...marks, ...exceptions].sort());
    },
  );

  it.each(['endfloat_api', 'endfloat_worker'])(
    '%s may delete from, empty or alter no table',
    async (role) => {
      const { rows } = await pools.owner.query<{ table: string; right: string }>(
        `SELECT relname AS table, r AS right FROM pg_class, unnest(ARRAY['DELETE', 'TRUNCATE', 'REFERENCES', 'TRIGGER']) AS r
       WHERE relnamespace = 'public'::regnamespace AND relkind IN ('r', 'p') AND has_table_privilege($1, oid, r)`,
        [role],
      );
      expect(rows).toEqual([]);
    },
  );

  const refused = (statement: string) =>
    expect(connections.inTransaction(own, 'READ WRITE', ({ sql }) => sql.query(statement))).rejects;

  it('are refused when they try', async () => {
    for (const { table } of guarded) await refused(`DELETE FROM ${table}`).toMatchObject({ code: '42501' });
    await refused(`UPDATE vehicle_revision SET document = '{}'`).toMatchObject({ code: '42501' });
    await refused(`UPDATE vehicle SET recorded_at = now()`).toMatchObject({ code: '42501' });
    await refused(`UPDATE outbox SET payload = '{}'`).toMatchObject({ code: '42501' });
  });

  it('mark a revision as replaced once and for good', async () => {
    await connections.inTransaction(own, 'READ WRITE', ({ sql }) =>
      sql.query('UPDATE calibration_revision SET replaced_at = now()'),
    );
    await refused('UPDATE calibration_revision SET replaced_at = now()').toMatchObject({ code: '23000' });
    await refused('UPDATE calibration_revision SET replaced_at = NULL').toMatchObject({ code: '23000' });
  });

  it('keep one current revision of a record at most', async () => {
    await refused(
      `INSERT INTO vehicle_revision (shop_id, id, revision, document, recorded_at, recorded_by)
       SELECT shop_id, id, revision + 1, document, recorded_at, recorded_by FROM vehicle_revision`,
    ).toMatchObject({ code: '23505', constraint: 'vehicle_revision_current' });
  });

  it('revoke a key once, and erase personal data once and never write it anew', async () => {
    const at = '2031-06-01T00:00:00.000Z';
    const [key] = await work.read(own, (tx) => tx.apiKeys.list());
    const by = sampleStamp.by;
    expect(await work.run(own, (tx) => tx.apiKeys.endAt(key!.id, at))).toBe(true);
    await refused('UPDATE api_key SET expires_at = NULL').toMatchObject({ code: '23000' });
    expect(await work.run(own, (tx) => tx.apiKeys.revoke(key!.id, at, by))).toBe(true);
    expect(await work.run(own, (tx) => tx.apiKeys.revoke(key!.id, at, by))).toBe(false);
    expect(await work.read(own, (tx) => tx.apiKeys.find(key!.id))).toEqual({
      ...key,
      expiresAt: at,
      revokedAt: at,
      revokedBy: by,
    });
    await refused('UPDATE api_key SET revoked_at = NULL').toMatchObject({ code: '23000' });

    const { id } = await work.run(own, async (tx) => {
      const record = {
        id: ids.next(),
        customerId: null,
        kind: 'consentName',
        content: { name: 'Wren Halloway' },
      } as const;
      await tx.personal.add({ ...record, recordedAt: at }, sampleStamp.by);
      return record;
    });
    expect(await work.run(own, (tx) => tx.personal.erase([id], sampleStamp.by, at, 'asked for'))).toBe(1);
    expect(await work.run(own, (tx) => tx.personal.erase([id], sampleStamp.by, at, 'asked for'))).toBe(0);
    expect(await work.read(own, (tx) => tx.personal.findMany([id]))).toMatchObject([
      { content: null, erasedAt: at },
    ]);
    await refused(`UPDATE personal_record SET content = '{}'`).toMatchObject({ code: '23000' });
  });
});
