import fc from 'fast-check';
import type pg from 'pg';
import {
  costDimensions,
  jobOutcomeFilters,
  rateDimensions,
  type RateQuestion,
  type SettledJobReads,
  type SettledJobRow,
} from '@endfloat/workshop/ports';
import { RowsInMemory } from '@endfloat/workshop';
import { createTestDatabase, type TestDatabase } from '../../../../test/support/database.js';
import { openDatabasePool } from '../connection/database-pool.js';
import { ShopConnections } from '../connection/shop-connection.js';
import { SqlUnitOfWork } from '../repositories/sql-unit-of-work.repository.js';
import { UuidSource } from '../system/uuid-source.js';
import { buildMixTallySql, buildRateTallySql } from './comeback-rates.query.js';
import { buildSettledJobListSql } from './comeback-courses.query.js';

const ids = new UuidSource();
const recorded = { at: '2031-01-01T00:00:00.000Z', by: ids.next() };
const day = 86_400_000;
const start = Date.parse('2030-11-20T22:00:00.000Z');
const onDay = (days: number): string => new Date(start + days * day).toISOString();

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

const people = [ids.next(), ids.next(), ids.next()];
const customers = [ids.next(), ids.next()];
const vehicles = [ids.next(), ids.next(), ids.next()];

const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });
const days = fc.double({ min: 0.01, max: 200, noNaN: true });
const some = <T extends string>(...values: readonly T[]) => fc.subarray([...values]);
const amount = fc.integer({ min: 0, max: 99_999 }).map((cents) => (cents / 100).toFixed(2));

const repeat = fc.record({
  complaintId: fc.constant(null).map(() => ids.next()),
  received: fc.double({ min: 0, max: 300, noNaN: true }),
  attribution: fc.constantFrom(null, 'workmanship' as const, 'wrongRootCause' as const),
  labour: amount,
  parts: amount,
  handling: amount,
  gaps: fc.integer({ min: 0, max: 2 }),
});

/** Rows as a settling could leave them; times need not tell a story for the two to agree. */
const row: fc.Arbitrary<SettledJobRow> = fc
  .record({
    released: fc.double({ min: 0, max: 250, noNaN: true }),
    closes: days,
    comeback: maybe(days),
    anyComeback: maybe(days),
    firstSeen: maybe(days),
    afterClosing: maybe(days),
    lastSeen: days,
    isRepeat: fc.boolean(),
    vehicleId: fc.constantFrom(...vehicles),
    customerId: maybe(fc.constantFrom(...customers)),
    diagnosedBy: maybe(fc.constantFrom(...people)),
    ageYears: maybe(fc.integer({ min: 0, max: 40 })),
    mix: fc.constantFrom('idle-speed/throttle-housing', 'noSymptomCoded/noWork', 'stalling/idle-switch'),
    fittedBy: some(...people),
    symptoms: some('idle-rises-with-ac', 'stalls-cold'),
    symptomFamilies: some('idle-speed', 'stalling'),
    actions: some('clean', 'replace'),
    components: some('throttle-housing', 'idle-switch'),
    partConditions: some('new', 'used'),
    suppliers: some('Ambry Parts', "O'Malley & Fenn", '=sum(1)'),
    countsAgainst: some('diagnosis' as const, 'fitting' as const, 'nobody' as const),
    unattributed: fc.boolean(),
    repeats: fc.array(repeat, { maxLength: 3 }),
  })
  .map((given) => {
    const after = (offset: number | null): string | null =>
      offset === null ? null : onDay(given.released + offset);
    const { repeats, released, closes, comeback, anyComeback, firstSeen, afterClosing, lastSeen, ...same } =
      given;
    return {
      ...same,
      jobId: ids.next(),
      releasedAt: onDay(released),
      closesAt: onDay(released + closes),
      closedBy: 'days' as const,
      comebackAt: after(comeback),
      anyComebackAt: after(anyComeback),
      firstSeenAt: after(firstSeen),
      seenAfterClosingAt: after(afterClosing),
      lastSeenAt: firstSeen === null ? null : after(Math.max(firstSeen, lastSeen)),
      comebacks: repeats.length,
      cost: (repeats.length * 12.5).toString(),
      costGaps: repeats.length,
      repeats: repeats.map(({ received, ...one }) => ({
        ...one,
        comebackId: one.complaintId,
        repeatJobId: null,
        receivedAt: onDay(released + received),
        total: '10.10',
      })),
    };
  });

const question: fc.Arbitrary<RateQuestion> = fc.record(
  {
    at: fc.double({ min: 0, max: 400, noNaN: true }).map(onDay),
    timeZone: fc.constantFrom('Europe/Lisbon', 'Pacific/Auckland'),
    from: fc.double({ min: 0, max: 200, noNaN: true }).map(onDay),
    until: fc.double({ min: 100, max: 260, noNaN: true }).map(onDay),
    customerId: fc.constantFrom(...customers),
    vehicleIds: fc.subarray(vehicles),
    symptom: fc.constant('stalls-cold'),
    component: fc.constant('idle-switch'),
    action: fc.constant('replace'),
    against: fc.constantFrom('diagnosis' as const, 'fitting' as const),
    group: fc.oneof(
      fc.record({ by: fc.constantFrom(...rateDimensions), value: fc.constant(null) }),
      fc.constantFrom(
        { by: 'month' as const, value: '2030-12' },
        { by: 'quarter' as const, value: '2031-Q1' },
        { by: 'supplier' as const, value: "O'Malley & Fenn" },
        { by: 'fittedBy' as const, value: people[0]! },
        { by: 'fleet' as const, value: customers[0]! },
        { by: 'vehicleAge' as const, value: '5' },
      ),
    ),
  },
  { requiredKeys: ['at', 'timeZone'] },
);

/** Every read there is, asked the same. */
async function everything(reads: SettledJobReads, asked: RateQuestion) {
  const found: Record<string, unknown> = {};
  for (const by of rateDimensions) {
    found[by] = await reads.tally(asked, by);
    found[`mix of ${by}`] = sorted(await reads.tallyByMix(asked, by));
  }
  for (const by of costDimensions) found[`costs by ${by}`] = await reads.costs(asked, by);
  found['total'] = await reads.total(asked);
  found['ages'] = await reads.ages(asked);
  found['places'] = await reads.eventPlaces(asked, 4);
  found['times'] = await reads.comebackTimes(asked, 4);
  for (const outcome of [undefined, ...jobOutcomeFilters]) {
    const first = await reads.list(asked, { outcome, limit: 2 });
    const second = await reads.list(asked, { outcome, limit: 3, after: first.next });
    found[`list of ${outcome ?? 'all'}`] = [first, second].map((page) => ({
      ids: page.items.map(({ jobId }) => jobId),
      next: page.next,
    }));
  }
  return found;
}

const sorted = (rows: readonly object[]): string[] => rows.map((each) => JSON.stringify(each)).sort();

describe('rates over settled jobs', () => {
  it('are, in every read, what a count step by step over the same rows says', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(row, { maxLength: 14 }),
        fc.array(question, { minLength: 2, maxLength: 2 }),
        async (rows, asked) => {
          const shopId = ids.next();
          await work.run(shopId, async (tx) => {
            const plain = { personalRecordId: null, downtimeCostPerDay: null, planningDistanceKm: null };
            await tx.customers.add(customers[0]!, {}, { kind: 'fleetOperator', ...plain }, recorded);
            await tx.customers.add(customers[1]!, {}, { kind: 'person', ...plain }, recorded);
            await tx.settledJobs.add(rows, 1);
          });
          const twin = new RowsInMemory(rows, new Set([customers[0]!]));
          for (const each of asked) {
            const found = await work.read(shopId, (tx) => everything(tx.settledJobs, each));
            expect(found).toEqual(await everything(twin, each));
          }
        },
      ),
      { numRuns: 20, seed: 20311125 },
    );
  }, 120_000);

  it('come back from the projection as they were put in', async () => {
    const shopId = ids.next();
    const rows = fc.sample(row, { numRuns: 5, seed: 3 });
    await work.run(shopId, (tx) => tx.settledJobs.add(rows, 1));
    const { items } = await work.read(shopId, (tx) =>
      tx.settledJobs.list({ at: onDay(999), timeZone: 'UTC' }, { limit: 10 }),
    );
    const byId = (a: SettledJobRow, b: SettledJobRow): number => (a.jobId < b.jobId ? -1 : 1);
    expect([...items].sort(byId)).toEqual(rows.filter(({ isRepeat }) => !isRepeat).sort(byId));
  });

  it('read one shop in one pass, and a page of jobs by index, where other shops are large', async () => {
    const [large, small] = [ids.next(), ids.next()];
    for (const [shopId, count] of [
      [large, 20_000],
      [small, 50],
    ] as const)
      await connections.inTransaction(shopId, 'READ WRITE', ({ sql }) =>
        sql.query(
          `INSERT INTO settled_job SELECT $1::uuid, md5($1::uuid::text || n)::uuid, 1, md5('van' || n)::uuid, NULL,
             timestamptz '2030-01-01Z' + n * interval '1 hour', timestamptz '2030-04-01Z' + n * interval '1 hour', 'days', false,
             NULL, NULL, NULL, NULL, NULL, NULL, 3, 'a/b', '{}', ARRAY['stalls-cold'], '{}', '{}', '{}', '{}', '{}', '{}',
             false, 0, 0, 0, '[]' FROM generate_series(1, $2::int) AS n`,
          [shopId, count],
        ),
      );
    const owner = openDatabasePool({ url: database.ownerUrl, size: 1, waitMs: 20_000 });
    await owner.query('ANALYZE settled_job');
    await owner.end();
    const planOf = async (shopId: string, statement: { text: string; values: readonly unknown[] }) => {
      const { rows } = await connections.inTransaction(shopId, 'READ ONLY', ({ sql }) =>
        sql.query<{ 'QUERY PLAN': string }>(`EXPLAIN ${statement.text}`, [...statement.values]),
      );
      return rows.map((each) => each['QUERY PLAN']).join('\n');
    };
    const asked = { at: '2031-01-01T00:00:00Z', timeZone: 'UTC' };
    const whole = await planOf(large, buildRateTallySql(large, asked, 'symptom'));
    expect(whole.match(/Scan (?:using \S+ )?on settled_job/g)).toHaveLength(1);
    expect(await planOf(small, buildMixTallySql(small, asked, 'component'))).not.toMatch(
      /Seq Scan on settled_job/,
    );
    const page = await planOf(large, buildSettledJobListSql(large, asked, { limit: 50 }));
    expect(page).toMatch(/Index Scan Backward/);
    expect(page).not.toMatch(/Sort/);
  });
});
