import { seededUniform } from '../oracles/statistics-survival/seeded-uniform.js';
import { openBench, type Bench } from './bench-shop.js';
import type { Reading } from '@endfloat/workshop';
import type { TestUser } from '../support/api.js';

const characteristic = 'shaft-radial-play-lower';
const vans = 1000;
const ownVans = 40;
const readingsEach = 8;

/** A thousand invented vans with eight inspections each; the first forty are one customer's. */
describe('outlooks of a thousand vans', () => {
  let bench: Bench;
  let fleetManager: TestUser;
  const vehicleIds: string[] = [];
  const partIds: string[] = [];

  beforeAll(async () => {
    bench = await openBench();
    const next = seededUniform(20_310_504);
    const customer = await bench.api.call('POST', '/v1/customers', {
      as: bench.shop.owner,
      body: {
        kind: 'fleetOperator',
        contact: { name: 'Brackwater Parcels' },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      },
    });
    fleetManager = await bench.shop.user(['fleetManager'], customer.body.id);
    for (let from = 0; from < vans; from += 100) await hundredVans(next, from, customer.body.id);
  }, 300_000);
  afterAll(() => bench.api.close());

  const vehicle = (row: number) => ({
    chassisNumber: null,
    numberSearch: null,
    plate: null,
    plateSearch: null,
    label: `Van ${String(row)}`,
    firstUsedOn: '1991-04-02',
    application: null,
    attributes: {},
    expectedKmPerYear: '12000',
    observedSpans: [],
    retiredOn: null,
  });
  const part = {
    componentType: 'throttle-housing',
    position: 'intake',
    condition: 'original' as const,
    fittedAt: null,
    fittedKm: null,
    removedAt: null,
    removedKm: null,
    serial: null,
    batch: null,
    supplier: null,
    partNumber: null,
    removalReason: null,
    replacesPartId: null,
    workLineId: null,
  };
  const reading = (fittedPartId: string, value: string, km: number, takenAt: string): Reading => ({
    checkId: characteristic,
    characteristic,
    trend: 'wear',
    fittedPartId,
    phase: 'asFound',
    position: 'intake',
    place: null,
    resultKind: 'number',
    shown: value,
    unit: 'mm',
    canonicalValue: value,
    canonicalUnit: 'mm',
    takenAt,
    distanceKm: String(km),
    instrumentId: bench.dialId,
    measuredBy: bench.technician.id,
    valueConfirmed: true,
    pair: null,
    answer: null,
    grade: null,
    conditions: {},
    note: null,
    warnings: [],
  });

  async function hundredVans(next: () => number, from: number, customerId: string): Promise<void> {
    const { api, shop, sheetId } = bench;
    const id = () => api.ids.next();
    const stamp = { at: bench.clock.now(), by: shop.owner.id };
    const rows = Array.from({ length: 100 }, (_, row) => ({
      row: from + row,
      vehicleId: id(),
      partId: id(),
      inspectionId: id(),
      start: 0.02 + 0.02 * next(),
      rate: 0.0004 + 0.001 * next(),
    }));
    vehicleIds.push(...rows.map(({ vehicleId }) => vehicleId));
    partIds.push(...rows.map(({ partId }) => partId));
    const visits = rows.flatMap((one) =>
      Array.from({ length: readingsEach }, (_, visit) => {
        const km = 10_000 + 12_000 * visit;
        const readAt = `20${String(22 + visit)}-05-04T08:00:00.000Z`;
        const play = one.start + one.rate * (km / 1000) + 0.02 * (next() - 0.5);
        return { ...one, km, readAt, value: Math.max(0, play).toFixed(2) };
      }),
    );
    await api.work.run(shop.id, async (tx) => {
      await tx.vehicles.addMany(
        rows.map(({ vehicleId, row }) => ({ id: vehicleId, identity: {}, content: vehicle(row) })),
        stamp,
      );
      const owned = rows.filter(({ row }) => row < ownVans);
      if (owned.length > 0)
        await tx.ownerships.addMany(
          owned.map(({ vehicleId }) => ({
            id: id(),
            identity: { vehicleId },
            content: { customerId, fromAt: '2030-01-01T00:00:00.000Z' },
          })),
          stamp,
        );
      await tx.fittedParts.addMany(
        rows.map(({ vehicleId, partId }) => ({ id: partId, identity: { vehicleId }, content: part })),
        stamp,
      );
      await tx.odometerEntries.addMany(
        visits.map(({ vehicleId, km, readAt }) => ({
          id: id(),
          identity: { vehicleId },
          content: {
            shown: String(km),
            unit: 'km' as const,
            readAt,
            distanceKm: String(km),
            reliable: true,
            readBy: null,
            operatingHours: null,
            warnings: [],
            note: null,
          },
        })),
        stamp,
      );
      await tx.inspections.addMany(
        visits.map(({ vehicleId, readAt }, index) => ({
          id: inspectionOf(index),
          identity: { vehicleId, jobId: null, checkSheetId: sheetId },
          content: { startedAt: readAt, technicianId: null, asFoundNotTaken: [], notDone: [], note: null },
        })),
        stamp,
      );
      await tx.readings.addMany(
        visits.map(({ partId, value, km, readAt }, index) => ({
          id: id(),
          identity: { inspectionId: inspectionOf(index) },
          content: reading(partId, value, km, readAt),
        })),
        stamp,
      );
    });
    inspections.length = 0;
  }
  const inspections: string[] = [];
  const inspectionOf = (index: number): string => (inspections[index] ??= bench.api.ids.next());

  const outlooks = (more: string, as: TestUser = bench.shop.owner) =>
    bench.api.call(
      'GET',
      `/v1/wear-outlooks?componentType=throttle-housing&characteristic=${characteristic}${more}`,
      { as },
    );
  const chanceOf = (item: { chance: { probability: number } }) => item.chance.probability;

  it('are sorted over the whole fleet, whatever page they stand on, and say how much is behind them', async () => {
    const seen: string[] = [];
    const chances: number[] = [];
    let cursor = '';
    do {
      const { status, body } = await outlooks(`&withinKm=40000&pageSize=200${cursor}`);
      expect(status).toBe(200);
      seen.push(...body.items.map(({ fittedPartId }: { fittedPartId: string }) => fittedPartId));
      chances.push(...body.items.map(chanceOf));
      expect(body.fleet).toMatchObject({ partsOfKind: vans, model: { kind: 'estimated' } });
      expect(body.items[0].trend).toMatchObject({ kind: 'estimated', borrowed: 'fleet', nowKm: 94_000 });
      cursor = body.nextCursor === null ? '' : `&cursor=${body.nextCursor}`;
    } while (cursor !== '');
    expect(new Set(seen)).toEqual(new Set(partIds));
    expect(seen).toHaveLength(vans);
    // Chances that differ by less than a millionth of a millionth are one: the nearer median comes first.
    const told = chances.map((each) => each.toFixed(12));
    expect([...told].sort((a, b) => Number(b) - Number(a))).toEqual(told);
    expect(chances[0]).toBeGreaterThan(0.5);
    expect(chances.at(-1)).toBeLessThan(0.01);
  });

  it('say of a van what is said of it alone, also before a day', async () => {
    const { body } = await outlooks('&until=2032-05-04&pageSize=3');
    for (const item of body.items) {
      const url = `/v1/fitted-parts/${item.fittedPartId}/wear?characteristic=${characteristic}&until=2032-05-04`;
      const alone = (await bench.api.call('GET', url, { as: bench.shop.owner })).body;
      const [series] = alone.characteristics[0].series;
      expect(item.chance.probability).toBeCloseTo(series.chance.probability, 12);
      expect(item.trend.distanceToLimit).toEqual(series.trend.distanceToLimit);
      expect(item.chance.yearlyDistance).toEqual({
        kmPerYear: 12_000,
        standardUncertainty: 2400,
        basis: 'stated',
      });
    }
  });

  it('JOB rule 16: are forty for the manager of forty vans', async () => {
    const { body } = await outlooks('&withinKm=30000&pageSize=200', fleetManager);
    const own = vehicleIds.slice(0, ownVans).sort();
    expect(body.items.map(({ vehicleId }: { vehicleId: string }) => vehicleId).sort()).toEqual(own);
    expect(body.fleet.partsOfKind).toBe(vans);
  });
});
