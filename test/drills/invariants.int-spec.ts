import pg from 'pg';
import { createTestDatabase, testServer, type TestDatabase } from '../support/database.js';
import { findBreaches } from './invariants.js';

const one = '01900000-0000-7000-8000-000000000001';
const two = '01900000-0000-7000-8000-000000000002';
const other = '01900000-0000-7000-8000-000000000003';
const early = '2031-05-04T09:00:00Z';
const late = '2031-05-04T10:00:00Z';

const vehicle = (shop: string, id: string) =>
  `INSERT INTO vehicle VALUES ('${shop}', '${id}', '${early}', '${one}')`;
const revision = (id: string, number: number, recordedAt: string, replacedAt: string | null) =>
  `INSERT INTO vehicle_revision (shop_id, id, revision, document, recorded_at, recorded_by, replaced_at)
   VALUES ('${one}', '${id}', ${String(number)}, '{}', '${recordedAt}', '${one}', ${replacedAt === null ? 'NULL' : `'${replacedAt}'`})`;

describe('the invariants of the drills', () => {
  let database: TestDatabase;
  let url: string;
  let session: pg.Client;

  beforeAll(async () => {
    database = await createTestDatabase();
    const address = new URL(testServer().adminUrl);
    address.pathname = new URL(database.ownerUrl).pathname;
    url = address.href;
    session = new pg.Client({ connectionString: url });
    await session.connect();
    // Planted against the keys and triggers that keep such rows out.
    await session.query('SET session_replication_role = replica');
  });
  afterAll(async () => {
    await session.end();
    await database.drop();
  });
  afterEach(() =>
    session.query(
      'TRUNCATE vehicle, vehicle_revision, job, job_revision, complaint, comeback, outbox CASCADE',
    ),
  );

  const breachesAfter = async (...statements: string[]) => {
    for (const statement of statements) await session.query(statement);
    return [...new Set((await findBreaches(url)).map(({ invariant }) => invariant))];
  };

  it('hold for a record that was corrected once', async () => {
    const found = await breachesAfter(
      vehicle(one, two),
      revision(two, 1, early, late),
      revision(two, 2, late, null),
    );
    expect(found).toEqual([]);
  });

  it('name a record without a current revision', async () => {
    expect(await breachesAfter(vehicle(one, two))).toEqual(['vehicle: one current revision']);
  });

  it('name a gap, and a revision that begins before the one it replaces', async () => {
    const numbered =
      'vehicle: revisions numbered 1 to n, each replaced when the next was recorded, never before its own time';
    const gap = [vehicle(one, two), revision(two, 1, early, late), revision(two, 3, late, null)];
    expect(await breachesAfter(...gap)).toEqual([numbered]);
    const backwards = [vehicle(one, other), revision(other, 1, late, early), revision(other, 2, early, null)];
    expect(await breachesAfter('TRUNCATE vehicle, vehicle_revision CASCADE', ...backwards)).toEqual([
      numbered,
    ]);
  });

  it('name a row whose parent belongs to another shop', async () => {
    const found = await breachesAfter(
      vehicle(other, two),
      `INSERT INTO complaint VALUES ('${one}', '${two}', '${two}', '${early}', '${one}')`,
    );
    expect(found).toContain('complaint: vehicle_id is of the same shop');
  });

  it('name a comeback of a job that was not released, and an event about nothing', async () => {
    const found = await breachesAfter(
      `INSERT INTO comeback VALUES ('${one}', '${two}', '${two}', '${other}', '${early}', '${one}')`,
      `INSERT INTO outbox (shop_id, id, type, subject_id, payload, recorded_at)
       VALUES ('${one}', '${two}', 'endfloat.vehicle.recorded.v1', '${other}', '{}', '${early}')`,
    );
    expect(found).toEqual(
      expect.arrayContaining([
        'comeback: points to a released job of the vehicle of its complaint',
        'outbox: every event is about a committed record',
      ]),
    );
  });
});
