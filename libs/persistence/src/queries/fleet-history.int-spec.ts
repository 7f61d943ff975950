import fc from 'fast-check';
import type pg from 'pg';
import type { FittedPart, ShopTransaction, Verdict, WorkLine } from '@endfloat/workshop/ports';
import { createTestDatabase, type TestDatabase } from '../../../../test/support/database.js';
import { openDatabasePool } from '../connection/database-pool.js';
import { ShopConnections } from '../connection/shop-connection.js';
import { SqlUnitOfWork } from '../repositories/sql-unit-of-work.repository.js';
import { UuidSource } from '../system/uuid-source.js';
import { buildFleetEventsSql } from './fleet-events.sql.js';

const ids = new UuidSource();
const by = ids.next();
const recorded = { at: '2031-01-01T00:00:00.000Z', by };
const start = Date.parse('2024-01-01T00:00:00.000Z');
const onDay = (days: number): string => new Date(start + days * 86_400_000).toISOString();

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

async function recordVan(tx: ShopTransaction): Promise<string> {
  const id = ids.next();
  const van = {
    chassisNumber: null,
    numberSearch: null,
    plate: null,
    plateSearch: null,
    label: 'a van',
    firstUsedOn: '2024-01-01',
    application: null,
    attributes: {},
    expectedKmPerYear: null,
    observedSpans: [{ from: onDay(0), until: null }],
    retiredOn: null,
  };
  await tx.vehicles.add(id, {}, van, recorded);
  return id;
}

const partOf = (componentType: string, removedOn: number | null): FittedPart => ({
  componentType,
  position: 'intake',
  condition: 'original',
  fittedAt: null,
  fittedKm: null,
  removedAt: removedOn === null ? null : onDay(removedOn),
  removedKm: null,
  serial: null,
  batch: null,
  supplier: 'Birchmoor Castings',
  partNumber: null,
  removalReason: null,
  replacesPartId: null,
  workLineId: null,
});

const lineOf = (action: WorkLine['action'], doneOn: number | null, minutes: number | null): WorkLine => ({
  action,
  componentType: 'throttle-housing',
  position: 'intake',
  fittedPartId: null,
  state: doneOn === null ? 'planned' : 'done',
  technicianId: null,
  doneAt: doneOn === null ? null : onDay(doneOn),
  minutes,
  description: null,
  from: null,
  to: null,
  protectedPurpose: null,
  protectedReason: null,
  part: null,
});

async function openJob(tx: ShopTransaction, vehicleId: string, on: number): Promise<string> {
  const id = ids.next();
  const job = { openedAt: onDay(on), assignedTo: null, diagnosedBy: null, causeId: null, note: null };
  await tx.jobs.add(id, { vehicleId }, job, recorded);
  return id;
}

const removals = (shopId: string, until: number, asOf?: string) =>
  work.read(shopId, (tx) =>
    tx.fleetHistory.events({
      of: 'replacements',
      componentType: 'throttle-housing',
      until: onDay(until),
      asOf,
    }),
  );

describe('what is told of a fleet', () => {
  it('removals, last work and years of work agree with a count step by step on random fleets', async () => {
    const van = fc.record({
      removals: fc.array(fc.record({ on: fc.nat(800), isHousing: fc.boolean() }), { maxLength: 4 }),
      lines: fc.array(
        fc.record({
          action: fc.constantFrom('clean', 'replace', 'adjustSwitch'),
          on: fc.option(fc.nat(800)),
          minutes: fc.option(fc.nat(200)),
        }),
        { maxLength: 6 },
      ),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(van, { maxLength: 5 }), fc.nat(800), async (vans, until) => {
        const shopId = ids.next();
        const known = await work.run(shopId, async (tx) => {
          const made: ((typeof vans)[number] & { readonly id: string })[] = [];
          for (const each of vans) {
            const id = await recordVan(tx);
            for (const { on, isHousing } of each.removals)
              await tx.fittedParts.add(
                ids.next(),
                { vehicleId: id },
                partOf(isHousing ? 'throttle-housing' : 'pump', on),
                recorded,
              );
            const jobId = await openJob(tx, id, 0);
            for (const { action, on, minutes } of each.lines)
              await tx.workLines.add(ids.next(), { jobId }, lineOf(action, on, minutes), recorded);
            made.push({ ...each, id });
          }
          return made;
        });
        const events = await removals(shopId, until);
        const naiveEvents = known.flatMap(({ id, removals: own }) =>
          own.filter(({ on, isHousing }) => isHousing && on <= until).map(({ on }) => `${id} ${onDay(on)}`),
        );
        expect(events.map(({ vehicleId, at }) => `${vehicleId} ${at}`).sort()).toEqual(naiveEvents.sort());

        const [last, years] = await work.read(shopId, async (tx) => [
          await tx.fleetHistory.lastDone({}),
          await tx.fleetHistory.yearsOfWork({ from: onDay(-1), until: onDay(until) }),
        ]);
        const naiveLast = known.flatMap(({ id, lines }) =>
          (['clean', 'replace', 'adjustSwitch'] as const).flatMap((action) => {
            const days = lines.flatMap((line) =>
              line.action === action && line.on !== null ? [line.on] : [],
            );
            return days.length === 0 ? [] : [`${id} ${action} ${onDay(Math.max(...days))}`];
          }),
        );
        expect(last.map((each) => `${each.vehicleId} ${String(each.action)} ${each.doneAt}`).sort()).toEqual(
          naiveLast.sort(),
        );
        const minutesOf = (id: string): number =>
          years.filter(({ vehicleId }) => vehicleId === id).reduce((sum, { minutes }) => sum + minutes, 0);
        for (const { id, lines } of known)
          expect(minutesOf(id)).toBe(
            lines.reduce(
              (sum, { on, minutes }) => sum + (on !== null && on <= until ? (minutes ?? 0) : 0),
              0,
            ),
          );
      }),
      { numRuns: 20, seed: 20310504 },
    );
  });

  it('are those known at a moment, corrections of later days left out', async () => {
    const shopId = ids.next();
    await work.run(shopId, async (tx) => {
      const vehicleId = await recordVan(tx);
      await tx.fittedParts.add(ids.next(), { vehicleId }, partOf('throttle-housing', 50), recorded);
    });
    await work.run(shopId, async (tx) => {
      const [part] = await tx.fittedParts.all({});
      const corrected = { at: '2031-03-01T00:00:00.000Z', by, reason: 'the date was that of the invoice' };
      await tx.fittedParts.correct(part!.id, 1, { ...part!.content, removedAt: onDay(40) }, corrected);
    });
    const days = async (asOf?: string) => (await removals(shopId, 100, asOf)).map(({ at }) => at);
    expect(await days()).toEqual([onDay(40)]);
    expect(await days('2031-02-01T00:00:00.000Z')).toEqual([onDay(50)]);
    expect(await days('2030-12-31T00:00:00.000Z')).toEqual([]);
  });

  it('inspections of a part are worn by a verdict outside, neither by an advisory nor by a provisional one', async () => {
    const shopId = ids.next();
    const found = await work.run(shopId, async (tx) => {
      const vehicleId = await recordVan(tx);
      const partId = ids.next();
      await tx.fittedParts.add(partId, { vehicleId }, partOf('throttle-housing', null), recorded);
      const sheetId = ids.next();
      await tx.checkSheets.add(
        sheetId,
        { code: 'a-sheet', sheetVersion: 1 },
        { definition: {} } as never,
        recorded,
      );
      const inspect = async (on: number, ...verdicts: Partial<Verdict>[]): Promise<void> => {
        const inspectionId = ids.next();
        const identity = { vehicleId, jobId: null, checkSheetId: sheetId };
        const inspection = {
          startedAt: onDay(on),
          technicianId: null,
          asFoundNotTaken: [],
          notDone: [],
          note: null,
        };
        await tx.inspections.add(inspectionId, identity, inspection, recorded);
        await tx.readings.add(ids.next(), { inspectionId }, readingOf(partId, onDay(on)), recorded);
        for (const [place, verdict] of verdicts.entries())
          await tx.verdicts.add(
            ids.next(),
            { inspectionId, checkId: 'play', phase: 'asFound', limitId: `limit-${String(place)}` },
            { ...goodVerdict, ...verdict },
            recorded,
          );
      };
      await inspect(10, {});
      await inspect(20, {}, { outcome: 'outside', severity: 'advisory' });
      await inspect(30, {}, { outcome: 'outside', provisional: true });
      await inspect(40, { outcome: 'outside', severity: 'major' }, {});
      await inspect(50, { outcome: 'undecided' });
      const question = { componentType: 'throttle-housing', until: onDay(100) };
      return {
        parts: await tx.fleetHistory.parts(question),
        open: await tx.fleetHistory.openMatters({ since: onDay(0), until: onDay(100) }),
        before: await tx.fleetHistory.openMatters({ since: onDay(0), until: onDay(35) }),
      };
    });
    expect(found.parts[0]?.inspections).toEqual([
      { at: onDay(10), isWorn: false },
      { at: onDay(20), isWorn: false },
      { at: onDay(30), isWorn: false },
      { at: onDay(40), isWorn: true },
    ]);
    // By the latest verdict of each limit: the first is outside since day 40, the second inside again.
    expect(found.open).toMatchObject([{ majorFindings: 1, otherFindings: 0, dangerousFindings: 0 }]);
    expect(found.before).toMatchObject([{ majorFindings: 1 }]);
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
        `INSERT INTO fitted_part (shop_id, id, vehicle_id, recorded_at, recorded_by)
         SELECT shop_id, md5(id::text || n)::uuid, id, recorded_at, recorded_by FROM vehicle, generate_series(1, 20) AS n
         WHERE shop_id = $1`,
        [shopId],
      );
      await sql.query(
        `INSERT INTO fitted_part_revision (shop_id, id, revision, component_type, position, condition, document, recorded_at, recorded_by)
         SELECT shop_id, id, 1, 'kind-' || (hashtext(id::text) % 40), '1', 'original', '{}', recorded_at, recorded_by FROM fitted_part
         WHERE shop_id = $1`,
        [shopId],
      );
    });
    const owner = openDatabasePool({ url: database.ownerUrl, size: 1, waitMs: 20_000 });
    await owner.query('ANALYZE fitted_part_revision, fitted_part, vehicle');
    await owner.end();
    const { text, values } = buildFleetEventsSql(shopId, {
      of: 'replacements',
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

const goodVerdict: Verdict = {
  outcome: 'inside',
  probabilityInside: null,
  provisional: false,
  severity: 'major',
  readingIds: [],
  overdueInstrumentIds: [],
  detail: {} as never,
};

const readingOf = (fittedPartId: string, takenAt: string) => ({
  checkId: 'play',
  characteristic: null,
  trend: 'wear' as const,
  fittedPartId,
  phase: 'asFound' as const,
  position: 'intake',
  place: null,
  resultKind: 'number' as const,
  shown: '0.1',
  unit: 'mm',
  canonicalValue: '0.1',
  canonicalUnit: 'mm',
  takenAt,
  distanceKm: null,
  instrumentId: null,
  measuredBy: by,
  valueConfirmed: true,
  pair: null,
  answer: null,
  grade: null,
  conditions: {},
  note: null,
  warnings: [],
});
