import type pg from 'pg';
import { createTestDatabase, type TestDatabase } from '../../../../test/support/database.js';
import { SqlUnitOfWork } from '../repositories/sql-unit-of-work.repository.js';
import { UuidSource } from '../system/uuid-source.js';
import { openDatabasePool } from './database-pool.js';
import { ShopConnections, sqlState, type ShopConnection } from './shop-connection.js';
import { sqlReadiness } from './sql-readiness.js';

const ids = new UuidSource();
const at = '2031-05-04T09:30:00.000Z';

let database: TestDatabase;
let pool: pg.Pool;
let connections: ShopConnections;
let work: SqlUnitOfWork;
let shopId: string;

beforeAll(async () => {
  database = await createTestDatabase();
  pool = openDatabasePool({ url: database.apiUrl, size: 4, waitMs: 20_000 });
  connections = new ShopConnections(pool);
  work = new SqlUnitOfWork(connections, ids);
});

afterAll(async () => {
  await connections.close();
  await database.drop();
});

beforeEach(async () => {
  shopId = ids.next();
  await work.run(shopId, (tx) => tx.shops.add(at));
});

const vehicle = {
  chassisNumber: null,
  numberSearch: 'ZZZTEST7',
  plate: null,
  plateSearch: null,
  label: 'Van 14',
  firstUsedOn: null,
  application: null,
  attributes: {},
  expectedKmPerYear: null,
  observedSpans: [],
  retiredOn: null,
};
const stamp = (by: string) => ({ at, by });

/** Waits until all of `count` have arrived; later visits pass. */
function meetingOf(count: number): () => Promise<void> {
  let arrived = 0;
  let open = (): void => undefined;
  const all = new Promise<void>((resolve) => (open = resolve));
  return () => {
    arrived += 1;
    if (arrived === count) open();
    return all;
  };
}

describe('a transaction of a shop', () => {
  it('has one connection for SQL, Prisma and the outbox: each sees what the others wrote', async () => {
    await connections.inTransaction(shopId, 'READ WRITE', async ({ sql, prisma }) => {
      const backend = 'SELECT pg_backend_pid() AS pid, txid_current()::text AS transaction';
      const bySql = (await sql.query<{ pid: number; transaction: string }>(backend)).rows[0];
      const [byPrisma] = await prisma.$queryRaw<{ pid: number; transaction: string }[]>`
        SELECT pg_backend_pid() AS pid, txid_current()::text AS transaction`;
      expect(byPrisma).toEqual(bySql);
    });
  });

  it('leaves nothing behind when it fails, whichever way its parts were written', async () => {
    const id = ids.next();
    const fault = new Error('planted');
    const failing = work.run(shopId, async (tx) => {
      expect(await tx.vehicles.add(id, {}, vehicle, stamp(id))).toBe('added');
      const personal = {
        id,
        customerId: null,
        kind: 'customerContact',
        content: { name: 'Wren' },
        recordedAt: at,
      } as const;
      await tx.personal.add(personal, id);
      await tx.announce({ type: 'endfloat.vehicle.recorded.v1', subjectId: id, at, payload: {} });
      expect(await tx.vehicles.find(id)).toBeDefined();
      expect(await tx.personal.findMany([id])).toHaveLength(1);
      throw fault;
    });
    await expect(failing).rejects.toBe(fault);

    const left = await connections.inTransaction(shopId, 'READ ONLY', async ({ sql, prisma }) => ({
      vehicles: (await sql.query('SELECT FROM vehicle')).rowCount,
      revisions: (await sql.query('SELECT FROM vehicle_revision')).rowCount,
      personal: await prisma.personalRecord.count({ where: { shopId } }),
      outbox: await prisma.outbox.count({ where: { shopId } }),
    }));
    expect(left).toEqual({ vehicles: 0, revisions: 0, personal: 0, outbox: 0 });
  });

  it('keeps all of it when it succeeds', async () => {
    const id = ids.next();
    await work.run(shopId, async (tx) => {
      await tx.vehicles.add(id, {}, vehicle, stamp(id));
      await tx.announce({
        type: 'endfloat.vehicle.recorded.v1',
        subjectId: id,
        at,
        payload: { label: 'Van 14' },
      });
    });
    const found = await connections.inTransaction(
      shopId,
      'READ ONLY',
      async ({ prisma }) => await prisma.outbox.findMany({ where: { shopId } }),
    );
    expect(found).toMatchObject([
      { subjectId: id, type: 'endfloat.vehicle.recorded.v1', payload: { label: 'Van 14' } },
    ]);
    expect(await work.read(shopId, (tx) => tx.vehicles.find(id))).toMatchObject({ content: vehicle });
  });

  it('writes nothing when it was opened to read', async () => {
    const id = ids.next();
    const writing = work.read(shopId, (tx) => tx.vehicles.add(id, {}, vehicle, stamp(id)));
    await expect(writing).rejects.toMatchObject({ code: '25006' });
  });

  it('is opened for a shop named by a lower-case UUID and for nothing else', async () => {
    for (const name of ['', shopId.toUpperCase(), `${shopId}'; DROP TABLE shop; --`])
      await expect(work.read(name, () => Promise.resolve())).rejects.toThrow(RangeError);
  });

  it('is the only way to the database: Prisma outside of it is refused, also afterwards', async () => {
    const kept = await connections.inTransaction(shopId, 'READ ONLY', ({ prisma }) =>
      Promise.resolve({ prisma }),
    );
    await expect(kept.prisma.shop.findMany()).rejects.toThrow(/through a transaction of a shop only/);
  });

  it('answers with what Prisma promised, also when nobody awaited it inside', async () => {
    const promised = connections.inTransaction(shopId, 'READ ONLY', ({ prisma }) => prisma.shop.findMany());
    expect(await promised).toMatchObject([{ id: shopId }]);
  });

  it('cannot open another one through Prisma', async () => {
    const nested = connections.inTransaction(shopId, 'READ WRITE', async ({ prisma }) => {
      await prisma.$transaction([prisma.shop.findMany(), prisma.shop.findMany()]);
    });
    await expect(nested).rejects.toThrow(/opened by the unit of work, not by Prisma/);
  });

  it('keeps to its own connection while many run at once', async () => {
    const shops = [shopId, ids.next(), ids.next()];
    for (const each of shops.slice(1)) await work.run(each, (tx) => tx.shops.add(at));
    const seen = await Promise.all(
      Array.from({ length: 30 }, (_, turn) => {
        const shop = shops[turn % shops.length]!;
        return connections.inTransaction(shop, 'READ ONLY', async ({ prisma }) => {
          const first = await prisma.shop.findMany();
          const second = await prisma.shop.findMany();
          return { shop, seen: [...first, ...second].map(({ id }) => id) };
        });
      }),
    );
    for (const { shop, seen: found } of seen) expect(found).toEqual([shop, shop]);
  });
});

describe('a transaction that others get in the way of', () => {
  const serializationFailure = () => Object.assign(new Error('planted'), { code: '40001' });

  it('is run again as a whole, three times at most', async () => {
    let runs = 0;
    const answer = await connections.inTransaction(shopId, 'READ WRITE', () => {
      runs += 1;
      return runs < 3 ? Promise.reject(serializationFailure()) : Promise.resolve(runs);
    });
    expect(answer).toBe(3);

    runs = 0;
    const failing = connections.inTransaction(shopId, 'READ WRITE', () => {
      runs += 1;
      return Promise.reject(serializationFailure());
    });
    await expect(failing).rejects.toMatchObject({ code: '40001' });
    expect(runs).toBe(3);
  });

  it('is run again also when Prisma is told so', async () => {
    let runs = 0;
    await connections.inTransaction(shopId, 'READ WRITE', async ({ prisma }) => {
      runs += 1;
      if (runs === 1)
        await prisma.$queryRaw`DO $$ BEGIN RAISE EXCEPTION 'planted' USING ERRCODE = '40P01'; END $$`;
    });
    expect(runs).toBe(2);
  });

  it('is not run again for any other fault', async () => {
    let runs = 0;
    const failing = connections.inTransaction(shopId, 'READ WRITE', ({ sql }) => {
      runs += 1;
      return sql.query('SELECT 1 / 0');
    });
    await expect(failing).rejects.toMatchObject({ code: '22012' });
    expect(runs).toBe(1);
  });

  it('is run again after a real deadlock, through SQL and through Prisma, and both end well', async () => {
    const [first, second] = [ids.next(), ids.next()];
    await work.run(shopId, async (tx) => {
      for (const id of [first, second]) await tx.vehicles.add(id, {}, vehicle, stamp(id));
    });
    const bothHoldOne = meetingOf(2);
    let runs = 0;
    const lockBoth = (one: string, two: string, way: 'sql' | 'prisma') =>
      connections.inTransaction(shopId, 'READ WRITE', async (connection) => {
        runs += 1;
        await lock(connection, one, way);
        await bothHoldOne();
        await lock(connection, two, way);
        return way;
      });
    const ended = await Promise.all([lockBoth(first, second, 'sql'), lockBoth(second, first, 'prisma')]);
    expect(ended).toEqual(['sql', 'prisma']);
    expect(runs).toBe(3);
  });

  async function lock({ sql, prisma }: ShopConnection, id: string, way: 'sql' | 'prisma'): Promise<void> {
    if (way === 'sql') await sql.query('SELECT FROM vehicle_revision WHERE id = $1 FOR UPDATE', [id]);
    else await prisma.$queryRaw`SELECT 1 FROM vehicle_revision WHERE id = ${id}::uuid FOR UPDATE`;
  }

  it('fails alone when its connection breaks; the next one is served', async () => {
    const broken = connections.inTransaction(shopId, 'READ WRITE', async ({ sql }) => {
      const pid = (await sql.query<{ pid: number }>('SELECT pg_backend_pid() AS pid')).rows[0]!.pid;
      await pool.query('SELECT pg_terminate_backend($1)', [pid]);
      await sql.query('SELECT pg_sleep(5)');
    });
    await expect(broken).rejects.toThrow();
    expect(await work.read(shopId, (tx) => tx.shops.exists())).toBe(true);
  });
});

describe('the state that an error of the database carries', () => {
  it('is read from errors of pg and of Prisma alike', async () => {
    const bySql = connections.inTransaction(shopId, 'READ WRITE', ({ sql }) => sql.query('SELECT 1 / 0'));
    const byPrisma = connections.inTransaction(
      shopId,
      'READ WRITE',
      ({ prisma }) => prisma.$queryRaw`SELECT 1 / 0 AS nothing`,
    );
    const errors = await Promise.all([bySql, byPrisma].map((each) => each.catch((error: unknown) => error)));
    expect(errors.map(sqlState)).toEqual(['22012', '22012']);
    expect([undefined, null, 'x', new Error('x'), { code: 'ECONNREFUSED' }].map(sqlState)).toEqual(
      Array.from({ length: 5 }),
    );
  });
});

describe('values as they come from the database', () => {
  it('keep decimals exact without padding, instants in UTC, dates as dates', async () => {
    const { rows } = await connections.inTransaction(shopId, 'READ ONLY', ({ sql }) =>
      sql.query(`SELECT '0.330200000'::numeric AS trimmed, '12.000'::numeric AS whole, '100'::numeric AS hundred,
        '-0.000000001'::numeric AS smallest, '123456789012345.123456789'::numeric AS longest, '0.000'::numeric AS nothing,
        '2031-05-04T11:30:00.5+02'::timestamptz AS instant, '2031-05-04'::date AS day, 7::int8 AS position`),
    );
    expect(rows).toEqual([
      {
        trimmed: '0.3302',
        whole: '12',
        hundred: '100',
        smallest: '-0.000000001',
        longest: '123456789012345.123456789',
        nothing: '0',
        instant: '2031-05-04T09:30:00.500Z',
        day: '2031-05-04',
        position: 7,
      },
    ]);
  });
});

describe('readiness', () => {
  const probe = async (url: string, size = 1): Promise<string | undefined> => {
    const probed = openDatabasePool({ url, size, waitMs: 5000 });
    try {
      return await sqlReadiness(probed);
    } finally {
      await probed.end();
    }
  };

  it('is given on a migrated database', async () => {
    expect(await probe(database.apiUrl)).toBeUndefined();
  });

  it('says that the migrations are missing, or that the server cannot be reached', async () => {
    const empty = await createTestDatabase('empty');
    try {
      expect(await probe(empty.apiUrl)).toBe('database is not migrated');
    } finally {
      await empty.drop();
    }
    const nowhere = new URL(database.apiUrl);
    nowhere.port = '1';
    expect(await probe(nowhere.href)).toBe('database cannot be reached');
  });

  it('says that the database does not answer while all connections are busy', async () => {
    const narrow = openDatabasePool({ url: database.apiUrl, size: 1, waitMs: 20_000 });
    const busy = await narrow.connect();
    expect(await sqlReadiness(narrow)).toBe('database does not answer');
    busy.release();
    await narrow.end();
  });
});
