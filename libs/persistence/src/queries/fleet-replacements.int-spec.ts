import fc from 'fast-check';
import type pg from 'pg';
import type { ShopTransaction, VehicleHistory } from '@endfloat/workshop/ports';
import { createTestDatabase, type TestDatabase } from '../../../../test/support/database.js';
import { openDatabasePool } from '../connection/database-pool.js';
import { ShopConnections } from '../connection/shop-connection.js';
import { SqlUnitOfWork } from '../repositories/sql-unit-of-work.repository.js';
import { UuidSource } from '../system/uuid-source.js';
import { buildFleetReplacementsSql } from './fleet-replacements.query.js';

const ids = new UuidSource();
const by = ids.next();
const recorded = { at: '2031-01-01T00:00:00.000Z', by };
const day = 86_400_000;
const start = Date.parse('2024-01-01T00:00:00.000Z');
/** Instant and local day of a day counted from the start of the trial. */
const onDay = (days: number): string => new Date(start + days * day).toISOString();
const dateOf = (days: number): string => onDay(days).slice(0, 10);

let database: TestDatabase;
let pool: pg.Pool;
let connections: ShopConnections;
let work: SqlUnitOfWork;

beforeAll(async () => {
  database = await createTestDatabase();
  pool = openDatabasePool({ url: database.apiUrl, size: 2, waitMs: 20_000 });
  connections = new ShopConnections(pool);
  work = new SqlUnitOfWork(connections, ids);
});

afterAll(async () => {
  await connections.close();
  await database.drop();
});

interface Van {
  /** day of first use; null where nobody knows */
  readonly firstUsed: number | null;
  readonly spans: readonly { readonly from: number; readonly until: number | null }[];
  /** days on which a part was taken off, and of which kind it was */
  readonly removals: readonly { readonly on: number; readonly housing: boolean }[];
}

async function recordVan(tx: ShopTransaction, van: Van): Promise<string> {
  const id = ids.next();
  await tx.vehicles.add(
    id,
    {},
    {
      chassisNumber: null,
      numberSearch: null,
      plate: null,
      plateSearch: null,
      label: null,
      firstUsedOn: van.firstUsed === null ? null : dateOf(van.firstUsed),
      application: null,
      attributes: {},
      expectedKmPerYear: null,
      observedSpans: van.spans.map(({ from, until }) => ({
        from: onDay(from),
        until: until === null ? null : onDay(until),
      })),
      retiredOn: null,
    },
    recorded,
  );
  for (const { on, housing } of van.removals)
    await tx.fittedParts.add(ids.next(), { vehicleId: id }, removedPart(on, housing), recorded);
  return id;
}

const removedPart = (on: number, housing: boolean) => ({
  componentType: housing ? 'throttle-housing' : 'idle-switch',
  position: '1',
  condition: 'original' as const,
  fittedAt: null,
  fittedKm: null,
  removedAt: onDay(on),
  removedKm: null,
  serial: null,
  batch: null,
  supplier: null,
  partNumber: null,
  removalReason: null,
  replacesPartId: null,
  workLineId: null,
});

/** The same question, answered step by step. */
function naively(vans: readonly (Van & { id: string })[], until: number): VehicleHistory[] {
  return vans
    .flatMap(({ id, firstUsed, spans, removals }) => {
      if (firstUsed === null) return [];
      const seen = spans
        .map((span) => ({
          from: Math.max(0, span.from - firstUsed),
          until: Math.min(span.until ?? until, until) - firstUsed,
        }))
        .filter((span) => span.until >= span.from);
      const ages = removals
        .filter(({ on, housing }) => housing && on <= until)
        .map(({ on }) => on - firstUsed);
      return seen.length === 0 ? [] : [{ vehicleId: id, spans: seen, eventAges: ages.sort((a, b) => a - b) }];
    })
    .sort((a, b) => (a.vehicleId < b.vehicleId ? -1 : 1));
}

const ask = (shopId: string, until: number, more: { asOf?: string; customerId?: string } = {}) =>
  work.read(shopId, (tx) =>
    tx.fleetHistory.replacements({ componentType: 'throttle-housing', until: onDay(until), ...more }),
  );

describe('replacements over a fleet', () => {
  it('are the ages at removal and the spans of observation, cut off where the question ends', async () => {
    const shopId = ids.next();
    const van: Van = {
      firstUsed: 10,
      spans: [
        { from: 0, until: 110 },
        { from: 210, until: null },
      ],
      removals: [
        { on: 60, housing: true },
        { on: 70, housing: false },
        { on: 260, housing: true },
        { on: 400, housing: true },
      ],
    };
    const id = await work.run(shopId, (tx) => recordVan(tx, van));
    // First used on day 10, so the first span begins before the van did: it counts from age 0 to 100.
    expect(await ask(shopId, 310)).toEqual([
      {
        vehicleId: id,
        spans: [
          { from: 0, until: 100 },
          { from: 200, until: 300 },
        ],
        eventAges: [50, 250],
      },
    ]);
    expect(await ask(shopId, 150)).toMatchObject([{ spans: [{ from: 0, until: 100 }], eventAges: [50] }]);
  });

  it('agree with a count step by step on random fleets', async () => {
    const days = fc.integer({ min: 0, max: 800 });
    const van = fc.record<Van>({
      firstUsed: fc.option(fc.integer({ min: 0, max: 300 })),
      spans: fc.array(
        fc
          .record({ from: days, length: fc.option(fc.integer({ min: 0, max: 400 })) })
          .map(({ from, length }) => ({
            from,
            until: length === null ? null : from + length,
          })),
        { maxLength: 3 },
      ),
      removals: fc.array(fc.record({ on: days, housing: fc.boolean() }), { maxLength: 4 }),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(van, { maxLength: 8 }), days, async (vans, until) => {
        const shopId = ids.next();
        const known = await work.run(shopId, async (tx) => {
          const made: (Van & { id: string })[] = [];
          for (const each of vans) made.push({ ...each, id: await recordVan(tx, each) });
          return made;
        });
        expect(await ask(shopId, until)).toEqual(naively(known, until));
      }),
      { numRuns: 40, seed: 20310504 },
    );
  });

  it('are those known at a moment, corrections of later days left out', async () => {
    const shopId = ids.next();
    const van: Van = {
      firstUsed: 0,
      spans: [{ from: 0, until: null }],
      removals: [{ on: 50, housing: true }],
    };
    const id = await work.run(shopId, (tx) => recordVan(tx, van));
    const corrected = { at: '2031-03-01T00:00:00.000Z', by, reason: 'the date was that of the invoice' };
    await work.run(shopId, async (tx) => {
      const [part] = await tx.fittedParts.all({ vehicleId: id });
      await tx.fittedParts.correct(part!.id, 1, { ...part!.content, removedAt: onDay(40) }, corrected);
    });
    expect(await ask(shopId, 100)).toMatchObject([{ eventAges: [40] }]);
    expect(await ask(shopId, 100, { asOf: '2031-02-01T00:00:00.000Z' })).toMatchObject([{ eventAges: [50] }]);
    expect(await ask(shopId, 100, { asOf: '2030-12-31T00:00:00.000Z' })).toEqual([]);
  });

  it('are of the vehicles that a customer owned at the end of the observation', async () => {
    const [shopId, before, after] = [ids.next(), ids.next(), ids.next()];
    const van: Van = { firstUsed: 0, spans: [{ from: 0, until: null }], removals: [] };
    await work.run(shopId, async (tx) => {
      for (const customer of [before, after]) {
        const plain = {
          kind: 'person',
          personalRecordId: null,
          downtimeCostPerDay: null,
          planningDistanceKm: null,
        } as const;
        await tx.customers.add(customer, {}, plain, recorded);
      }
      const vehicleId = await recordVan(tx, van);
      await tx.ownerships.add(ids.next(), { vehicleId }, { customerId: before, fromAt: onDay(0) }, recorded);
      await tx.ownerships.add(ids.next(), { vehicleId }, { customerId: after, fromAt: onDay(100) }, recorded);
    });
    const found = async (until: number, customerId: string) =>
      (await ask(shopId, until, { customerId })).length;
    expect([await found(99, before), await found(99, after)]).toEqual([1, 0]);
    expect([await found(101, before), await found(101, after)]).toEqual([0, 1]);
  });

  it('are found by index where the shop is large', async () => {
    const shopId = ids.next();
    await connections.inTransaction(shopId, 'READ WRITE', async ({ sql }) => {
      await sql.query(
        `INSERT INTO vehicle (shop_id, id, recorded_at, recorded_by)
         SELECT $1, md5('van' || n)::uuid, $2, $3 FROM generate_series(1, 2000) AS n`,
        [shopId, recorded.at, by],
      );
      await sql.query(
        `INSERT INTO vehicle_revision (shop_id, id, revision, document, recorded_at, recorded_by)
         SELECT shop_id, id, 1, '{"firstUsedOn": "2024-01-01", "observedSpans": []}', recorded_at, recorded_by FROM vehicle`,
      );
      await sql.query(
        `INSERT INTO fitted_part (shop_id, id, vehicle_id, recorded_at, recorded_by)
         SELECT shop_id, md5(id::text || n)::uuid, id, recorded_at, recorded_by FROM vehicle, generate_series(1, 20) AS n`,
      );
      await sql.query(
        `INSERT INTO fitted_part_revision (shop_id, id, revision, component_type, position, condition, document, recorded_at, recorded_by)
         SELECT shop_id, id, 1, 'kind-' || (hashtext(id::text) % 40), '1', 'original', '{}', recorded_at, recorded_by FROM fitted_part`,
      );
    });
    const owner = openDatabasePool({ url: database.ownerUrl, size: 1, waitMs: 20_000 });
    await owner.query('ANALYZE fitted_part_revision, fitted_part, vehicle, vehicle_revision');
    await owner.end();

    const { text, values } = buildFleetReplacementsSql(shopId, {
      componentType: 'kind-7',
      until: onDay(900),
    });
    const plan = await connections.inTransaction(shopId, 'READ ONLY', async ({ sql }) => {
      const { rows } = await sql.query<{ 'QUERY PLAN': string }>(`EXPLAIN ${text}`, values);
      return rows.map((row) => row['QUERY PLAN']).join('\n');
    });
    expect(plan).not.toMatch(/Seq Scan on fitted_part_revision/);
  });
});
