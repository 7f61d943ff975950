import { mannKendall, theilSenSlope, type Point } from '@endfloat/statistics';
import { millimetres, openBench, type Bench } from './bench-shop.js';
import type { TestUser } from '../support/api.js';

const characteristic = 'shaft-radial-play-lower';
const oneYear = 365 * 24 * 60 * 60 * 1000;

/** Invented vans: play at the first visit in mm, and wear in mm per 1000 km. */
const fleet = [
  { play: 0.03, rate: 0.0008 },
  { play: 0.04, rate: 0.001 },
  { play: 0.02, rate: 0.0012 },
  { play: 0.03, rate: 0.0009 },
  { play: 0.05, rate: 0.0014 },
  { play: 0.04, rate: 0.0011 },
  { play: 0.03, rate: 0.0016 },
] as const;
const kmOfVisits = [1000, 31_000, 61_000, 91_000] as const;

describe('wear', () => {
  let bench: Bench;
  let fleetManager: TestUser;
  let customerId: string;
  let secondDialId: string;
  const vans: string[] = [];
  const parts: string[] = [];
  let unread: { vehicleId: string; partId: string };

  const get = (url: string, as: TestUser = bench.shop.owner) => bench.api.call('GET', url, { as });
  const post = (url: string, body: object) => bench.api.call('POST', url, { as: bench.shop.owner, body });
  const wearOf = async (partId: string, more = '') => {
    const { body } = await get(`/v1/fitted-parts/${partId}/wear?characteristic=${characteristic}${more}`);
    return body.characteristics[0];
  };

  const fit = async (
    vehicleId: string,
    fittedKm: string | null,
    fittedAt: string | null,
    componentType = 'throttle-housing',
  ) => {
    const made = await post('/v1/fitted-parts', {
      vehicleId,
      componentType,
      position: 'intake',
      condition: fittedAt === null ? 'original' : 'used',
      fittedAt,
      fittedKm,
      removedAt: null,
      removedKm: null,
      serial: null,
      batch: null,
      supplier: null,
      partNumber: null,
      removalReason: null,
    });
    expect(made.status).toBe(201);
    return made.body.id as string;
  };

  const visit = async (
    vehicleId: string,
    km: number,
    values: readonly string[],
    more: { instrumentId?: string | null; phase?: string } = {},
  ) => {
    const at = bench.clock.now();
    await post(`/v1/vehicles/${vehicleId}/odometer-entries`, { shown: String(km), unit: 'km', readAt: at });
    const inspectionId = await bench.inspection(vehicleId, null, { startedAt: at });
    for (const value of values) {
      const { status, body } = await bench.read(inspectionId, characteristic, millimetres(value), {
        instrumentId: bench.dialId,
        ...more,
      });
      if (status !== 201) throw new Error(JSON.stringify(body));
    }
  };

  beforeAll(async () => {
    bench = await openBench();
    const other = await post('/v1/customers', {
      kind: 'fleetOperator',
      contact: { name: 'Brackwater Parcels' },
      downtimeCostPerDay: null,
      planningDistanceKm: null,
    });
    expect(other.status).toBe(201);
    customerId = other.body.id;
    fleetManager = await bench.shop.user(['fleetManager'], customerId);
    const dial = await post('/v1/instruments', {
      kind: 'dialIndicator',
      name: 'dial 4',
      serial: null,
      retiredOn: null,
      errorModel: { kind: 'maximumPermissibleError', limit: { value: '0.03', unit: 'mm' } },
      resolution: { value: '0.01', unit: 'mm' },
    });
    secondDialId = dial.body.id;
    for (const [row] of fleet.entries()) {
      const vehicleId = await bench.van({}, row < 2 ? customerId : undefined);
      vans.push(vehicleId);
      parts.push(await fit(vehicleId, null, null));
    }
    for (const km of kmOfVisits) {
      for (const [row, { play, rate }] of fleet.entries()) {
        const level = play + rate * (km / 1000);
        await visit(
          vans[row]!,
          km,
          [-0.01, 0, 0.01].map((error) => (level + error).toFixed(2)),
        );
      }
      bench.clock.moveOn(oneYear);
    }
    const vehicleId = await bench.van();
    unread = { vehicleId, partId: await fit(vehicleId, null, null) };
  }, 120_000);
  afterAll(() => bench.api.close());

  describe('of one fitted part', () => {
    it('is told with its limit, its interval and the strength the fleet lends', async () => {
      const wear = await wearOf(parts[4]!);
      expect(wear.fleet).toMatchObject({
        partsOfKind: 8,
        partsLookedAt: 8,
        partsWithPoints: 7,
        model: { kind: 'estimated', points: 28 },
      });
      const [series] = wear.series;
      expect(series).toMatchObject({
        characteristic,
        unit: 'mm',
        direction: 'rising',
        readings: 12,
        limit: { value: 0.2, unit: 'mm', origin: 'judgement' },
        trend: { kind: 'estimated', borrowed: 'fleet', nowKm: 91_000 },
      });
      // 0.05 mm at 1.4 um per 1000 km: 0.177 mm at 91,000 km, and 0.023 mm more is worn in about 16,000 km.
      expect(Math.abs(series.trend.level.value - 0.177)).toBeLessThan(
        2 * series.trend.level.standardUncertainty,
      );
      const { lower, median, upper, level } = series.trend.distanceToLimit;
      expect(level).toBe(0.9);
      expect(lower).toBeLessThan(16_000);
      expect(upper).toBeGreaterThan(16_000);
      expect(lower).toBeLessThan(median);
      expect(median).toBeLessThan(upper);
    });

    it('shows beside it what a person can check by hand from the points', async () => {
      const [series] = (await wearOf(parts[2]!)).series;
      const points = series.points.map(({ km, value }: { km: number; value: number }): Point => [km, value]);
      const sen = theilSenSlope(points, 0.9);
      const test = mannKendall(points);
      expect(series.trend.handChecks.theilSen).toMatchObject({
        slope: sen.kind === 'estimated' && sen.slope,
      });
      expect(series.trend.handChecks.mannKendall).toMatchObject({
        score: test.kind === 'estimated' && test.score,
      });
      expect(series.trend.handChecks.leastSquares.slope).toBeCloseTo(0.0012 / 1000, 7);
    });

    it('gives a chance that grows with the distance asked about', async () => {
      const chances = [];
      for (const km of [0, 10_000, 30_000, 100_000]) {
        const [series] = (await wearOf(parts[4]!, `&withinKm=${km}`)).series;
        expect(series.chance).toMatchObject({ kind: 'estimated', withinKm: km, until: null });
        chances.push(series.chance.probability);
      }
      expect([...chances].sort((a, b) => a - b)).toEqual(chances);
      expect(chances[3]).toBeGreaterThan(0.95);
    });

    it('turns a day into a distance by what the odometer shows, and says so', async () => {
      const [series] = (await wearOf(parts[4]!, '&until=2036-05-04')).series;
      expect(series.chance.yearlyDistance.basis).toBe('odometer');
      // 90,000 km in three visits a year apart each.
      expect(series.chance.yearlyDistance.kmPerYear).toBeCloseTo((90_000 / (3 * 365)) * 365.25, 6);
      const [passed] = [await get(`/v1/fitted-parts/${parts[4]!}/wear?until=2031-05-04`)];
      expect([passed.status, passed.body.errors[0].rule]).toEqual([400, 'order']);
    });

    it('says which points were read with an instrument whose calibration had run out by then, as known at the moment', async () => {
      // The dial was calibrated until January 2032; the van was here in May of 2031 to 2034.
      const overdue = (series: { points: { isInstrumentOverdue: boolean }[] }) =>
        series.points.map(({ isInstrumentOverdue }) => isInstrumentOverdue);
      const [series] = (await wearOf(parts[0]!)).series;
      expect(overdue(series)).toEqual([false, true, true, true]);
      const beforeLate = bench.clock.now();
      bench.clock.moveOn(1000);
      const late = await post(`/v1/instruments/${bench.dialId}/calibrations`, {
        calibratedOn: '2033-01-20',
        dueOn: '2034-01-20',
        passed: true,
        certificate: 'found in a drawer',
        note: null,
      });
      expect(late.status).toBe(201);
      expect(overdue((await wearOf(parts[0]!)).series[0])).toEqual([false, true, false, true]);
      expect(overdue((await wearOf(parts[0]!, `&asOf=${beforeLate}`)).series[0])).toEqual([
        false,
        true,
        true,
        true,
      ]);
    });

    it('answers "insufficient data" where there is no reading at all', async () => {
      const wear = await wearOf(unread.partId, '&withinKm=9000');
      expect(wear.fleet).toBeNull();
      const [series] = wear.series;
      expect(series).toMatchObject({
        readings: 0,
        points: [],
        trend: { kind: 'insufficientData', of: 'points', needed: 1, got: 0 },
        chance: { kind: 'noTrend' },
      });
    });

    it('of a kind the shop has told nothing about has no characteristics, and refuses nothing of its vehicle', async () => {
      const vehicleId = await bench.van();
      const pump = await fit(vehicleId, null, null, 'coolant-pump');
      const alone = await get(`/v1/fitted-parts/${pump}/wear`);
      expect([alone.status, alone.body.characteristics]).toEqual([200, []]);
      const all = await get(`/v1/vehicles/${vehicleId}/wear`);
      expect([all.status, all.body.parts.length]).toEqual([200, 1]);
    });

    it('is told as it was known at an earlier moment', async () => {
      const [series] = (await wearOf(parts[4]!, '&asOf=2032-06-01T00:00:00Z')).series;
      expect(series.points).toHaveLength(2);
    });

    it('refuses a characteristic that is none, and a part that is not there', async () => {
      const wrong = await get(`/v1/fitted-parts/${parts[0]!}/wear?characteristic=idle-speed`);
      expect([wrong.status, wrong.body.errors[0].rule]).toEqual([400, 'reference']);
      const both = await get(`/v1/fitted-parts/${parts[0]!}/wear?withinKm=5&until=2040-01-01`);
      expect(both.status).toBe(400);
      expect((await get(`/v1/fitted-parts/${bench.api.ids.next()}/wear`)).status).toBe(404);
    });
  });

  describe('JOB rule 4: as-found readings of one fitted part only', () => {
    it('keeps as-left readings and readings without an instrument out, each with its reason', async () => {
      const vehicleId = await bench.van();
      const partId = await fit(vehicleId, null, null);
      await visit(vehicleId, 40_000, ['0.08', '0.09']);
      await visit(vehicleId, 40_000, ['0.02'], { phase: 'asLeft' });
      await visit(vehicleId, 40_001, ['0.19'], { instrumentId: null });
      const [series] = (await wearOf(partId)).series;
      expect(series.readings).toBe(2);
      expect(series.points).toHaveLength(1);
      expect(series.points[0].value).toBeCloseTo(0.085, 12);
      expect(series.leftOut.map(({ reason }: { reason: string }) => reason).sort()).toEqual([
        'asLeft',
        'instrumentUnknown',
      ]);
    });

    it('begins a new trend with a new part, and counts its distance from its fitting', async () => {
      const vehicleId = await bench.van();
      const old = await fit(vehicleId, null, null);
      await visit(vehicleId, 50_000, ['0.18']);
      const { body } = await get(`/v1/fitted-parts/${old}`);
      const { version } = body;
      const content = Object.fromEntries(
        [
          'componentType',
          'position',
          'condition',
          'fittedAt',
          'fittedKm',
          'serial',
          'batch',
          'supplier',
          'partNumber',
        ].map((name) => [name, body[name]]),
      );
      const removedAt = bench.clock.now();
      const corrected = await bench.api.call('POST', `/v1/fitted-parts/${old}/corrections`, {
        as: bench.shop.owner,
        ifMatch: `"${version}"`,
        body: {
          ...content,
          removedAt,
          removedKm: '50000',
          removalReason: 'worn',
          reason: 'housing was replaced',
        },
      });
      expect(corrected.status).toBe(201);
      bench.clock.moveOn(1000);
      const next = await fit(vehicleId, '50000', removedAt);
      bench.clock.moveOn(oneYear);
      await visit(vehicleId, 62_000, ['0.04']);
      const [fresh] = (await wearOf(next)).series;
      expect(fresh.points).toMatchObject([{ km: 12_000, value: 0.04 }]);
      const [ended] = (await wearOf(old)).series;
      expect(ended.points).toMatchObject([{ km: 50_000, value: 0.18 }]);
      expect(ended.trend.nowKm).toBe(50_000);
      const { body: vehicle } = await get(`/v1/vehicles/${vehicleId}/wear?characteristic=${characteristic}`);
      expect(vehicle.parts.map(({ fittedPartId }: { fittedPartId: string }) => fittedPartId)).toEqual([next]);
    });

    it('does not take the bias of another instrument for wear', async () => {
      const vehicleId = await bench.van();
      const partId = await fit(vehicleId, null, null);
      await visit(vehicleId, 30_000, ['0.06', '0.06', '0.06']);
      bench.clock.moveOn(oneYear);
      await visit(vehicleId, 60_000, ['0.12', '0.12', '0.12'], { instrumentId: secondDialId });
      const [series] = (await wearOf(partId)).series;
      const { instruments } = series.trend;
      expect(instruments).toHaveLength(2);
      // The second dial may be 0.03 mm off and the fleet wears about 0.03 mm on this way: part of the rise is its bias.
      const second = instruments.find((each: { instrumentId: string }) => each.instrumentId === secondDialId);
      expect(second.bias).toBeGreaterThan(0);
      expect(second.standardUncertainty).toBeGreaterThan(0);
      expect(series.trend.level.value).toBeLessThan(0.12);
      expect(
        series.points.map(({ isOtherInstrument }: { isOtherInstrument: boolean }) => isOtherInstrument),
      ).toEqual([false, true]);
    });
  });

  describe('of one vehicle', () => {
    it('shows every characteristic that wears of every part that is fitted', async () => {
      const { body } = await get(`/v1/vehicles/${vans[0]!}/wear`);
      const names = body.parts[0].characteristics.map(
        (each: { characteristic: string }) => each.characteristic,
      );
      expect(names).toEqual(
        expect.arrayContaining(['shaft-radial-play-lower', 'shaft-radial-play-upper', 'shaft-axial-play']),
      );
    });

    it('says where no limit may be judged by', async () => {
      const { body } = await get(`/v1/vehicles/${vans[0]!}/wear?characteristic=shaft-axial-play`);
      const [series] = body.parts[0].characteristics[0].series;
      expect(['noWearLimit', 'insufficientData']).toContain(series.trend.kind);
    });
  });

  describe('outlooks of the fleet', () => {
    const outlooks = (more = '', as = bench.shop.owner) =>
      get(`/v1/wear-outlooks?componentType=throttle-housing&characteristic=${characteristic}${more}`, as);

    it('put the van that is likeliest to reach its limit first, and those without an answer last', async () => {
      const { status, body } = await outlooks('&withinKm=20000');
      expect(status).toBe(200);
      const chances = body.items.map(
        (item: { chance: { probability?: number } }) => item.chance.probability ?? -1,
      );
      expect([...chances].sort((a, b) => b - a)).toEqual(chances);
      const order = body.items.map(({ vehicleId }: { vehicleId: string }) => vehicleId);
      // 0.05 mm and 1.4 um per 1000 km, and 0.03 mm and 1.6 um: both near 0.18 mm; the slowest has 0.10 mm.
      expect(order.indexOf(vans[4]!)).toBeLessThan(order.indexOf(vans[5]!));
      expect(order.indexOf(vans[5]!)).toBeLessThan(order.indexOf(vans[0]!));
      expect(order.at(-1)).toBe(unread.vehicleId);
      expect(body.items.at(-1).trend.kind).toBe('insufficientData');
      expect(body.items[0].trend.distanceToLimit.level).toBe(0.9);
      expect(body.fleet.model.kind).toBe('estimated');
    });

    it('agree with what is told of each part alone', async () => {
      const { body } = await outlooks('&withinKm=20000');
      const [first] = body.items;
      const [series] = (await wearOf(first.fittedPartId, '&withinKm=20000')).series;
      expect(first.chance.probability).toBeCloseTo(series.chance.probability, 12);
    });

    it('page without a van twice or left out', async () => {
      const { body: whole } = await outlooks('&withinKm=20000&pageSize=200');
      const seen: string[] = [];
      let cursor = '';
      do {
        const { body } = await outlooks(`&withinKm=20000&pageSize=3${cursor}`);
        seen.push(...body.items.map(({ fittedPartId }: { fittedPartId: string }) => fittedPartId));
        cursor = body.nextCursor === null ? '' : `&cursor=${body.nextCursor}`;
      } while (cursor !== '');
      expect(seen).toEqual(whole.items.map(({ fittedPartId }: { fittedPartId: string }) => fittedPartId));
    });

    it('need to know how far ahead', async () => {
      const answer = await outlooks();
      expect([answer.status, answer.body.errors[0].rule]).toEqual([400, 'required']);
      expect((await outlooks('&withinKm=9&until=2050-01-01')).status).toBe(400);
      expect(
        (await get(`/v1/wear-outlooks?componentType=no-such-part&characteristic=x&withinKm=9`)).status,
      ).toBe(400);
    });

    it('JOB rule 16: show a fleet manager the own vans only, borrowing from the whole shop', async () => {
      const { body } = await outlooks('&withinKm=20000', fleetManager);
      expect(body.items.map(({ vehicleId }: { vehicleId: string }) => vehicleId).sort()).toEqual(
        [vans[0], vans[1]].sort(),
      );
      expect(body.fleet.partsWithPoints).toBeGreaterThanOrEqual(7);
      expect((await get(`/v1/fitted-parts/${parts[5]!}/wear`, fleetManager)).status).toBe(404);
      expect((await get(`/v1/vehicles/${vans[5]!}/wear`, fleetManager)).status).toBe(404);
      expect((await get(`/v1/vehicles/${vans[0]!}/wear`, fleetManager)).status).toBe(200);
    });
  });

  it('JOB rule 14: every series names its unit, its method, its readings and the level of its interval', async () => {
    const { body } = await get(
      `/v1/wear-outlooks?componentType=throttle-housing&characteristic=${characteristic}&withinKm=20000`,
    );
    for (const item of body.items) {
      expect(item.unit).toBe('mm');
      expect(item.method.source.length).toBeGreaterThan(10);
      expect(Number.isInteger(item.readings)).toBe(true);
      if (item.trend.kind === 'estimated') expect(item.trend.distanceToLimit.level).toBe(0.9);
    }
    expect(JSON.stringify(body)).not.toMatch(/NaN|Infinity/);
  });

  it('API row 1: the part of another shop is answered like one that does not exist', async () => {
    const stranger = await bench.api.openShop();
    const foreign = await get(`/v1/fitted-parts/${parts[0]!}/wear`, stranger.owner);
    const unknown = await get(`/v1/fitted-parts/${bench.api.ids.next()}/wear`, stranger.owner);
    expect([foreign.status, foreign.body.detail]).toEqual([404, unknown.body.detail]);
  });
});
