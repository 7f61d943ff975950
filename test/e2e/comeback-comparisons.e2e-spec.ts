import { StandingClock, startTestApi, type Reply, type TestApi, type TestShop } from '../support/api.js';
import { Timeline, type TimelineJob } from './comeback-timeline.js';

const day = 86_400_000;
const start = Date.parse('2026-01-05T08:00:00.000Z');
const onDay = (days: number): string => new Date(start + days * day).toISOString();

let api: TestApi;
let clock: StandingClock;

beforeAll(async () => {
  clock = new StandingClock(onDay(900));
  api = await startTestApi({ clock });
});

afterAll(() => api.close());

const get = async (shop: TestShop, url: string, headers?: Record<string, string>) =>
  api.call('GET', url, { as: shop.owner, headers });

/** Jobs on vans of their own, the first `events` of which come back on day 10; all vans are seen on day 200. */
async function group(
  line: Timeline,
  job: Omit<TimelineJob, 'vehicleId' | 'releasedAt'>,
  count: number,
  events: number,
  van: string,
): Promise<void> {
  const all = Array.from({ length: count }, (_, at) => ({
    ...job,
    vehicleId: van,
    releasedAt: onDay(at / 1000),
  }));
  const ids: string[] = [];
  for (let from = 0; from < count; from += 60) ids.push(...(await line.jobs(all.slice(from, from + 60))));
  await line.comebacks(
    ids.slice(0, events).map((id) => ({
      vehicleId: van,
      receivedAt: onDay(10),
      of: [id],
      attribution: 'wrongRootCause' as const,
    })),
  );
}

describe('comeback comparisons, curves and charts', () => {
  it('do not fall into the trap of a different mix: two technicians of one true rate, one with the harder jobs', async () => {
    const shop = await api.openShop();
    const line = new Timeline(api, shop);
    const [easy, hard] = [await shop.user(['technician']), await shop.user(['technician'])];
    const van = await line.van();
    const brakes = { symptoms: ['stalls-cold'], lines: [{ componentType: 'idle-switch' }] };
    const idle = { symptoms: ['idle-rises-with-ac'], lines: [{ componentType: 'throttle-housing' }] };
    await group(line, { ...brakes, diagnosedBy: easy.id }, 90, 3, van);
    await group(line, { ...idle, diagnosedBy: easy.id }, 10, 2, van);
    await group(line, { ...brakes, diagnosedBy: hard.id }, 30, 1, van);
    await group(line, { ...idle, diagnosedBy: hard.id }, 70, 14, van);
    await line.seen([{ vehicleId: van, at: onDay(200) }]);
    const { body } = await get(shop, '/v1/comeback-comparisons?by=diagnosedBy');
    const of = (id: string) => body.groups.find(({ value }: { value: string }) => value === id);
    // By hand: 4 of 120 and 16 of 80 come back in the two kinds of job. 5 and 15 of 100, and 5 and 15 expected.
    expect(of(easy.id)).toMatchObject({ rate: { events: 5, atRisk: 100 }, label: 'Invented technician' });
    expect(of(easy.id).expected).toBeCloseTo((90 * 4) / 120 + (10 * 16) / 80, 12);
    expect(of(hard.id).expected).toBeCloseTo((30 * 4) / 120 + (70 * 16) / 80, 12);
    for (const { id } of [easy, hard])
      expect(of(id).result).toMatchObject({
        kind: 'compared',
        finding: 'inside',
        ratio: { finding: 'withinChance' },
      });
    expect(body).toMatchObject({ strata: 2, minimumJobs: 20, overall: { events: 20, atRisk: 200 } });
    // People are compared for the owner alone.
    for (const role of ['desk', 'technician', 'auditor'] as const) {
      const as = await shop.user([role]);
      for (const url of ['/v1/comeback-comparisons?by=fittedBy', '/v1/comeback-rates?by=diagnosedBy'])
        expect((await api.call('GET', url, { as })).status).toBe(403);
    }
  });

  it('counts for a person only what is attributed to that side; what is not attributed yet is in neither number', async () => {
    const shop = await api.openShop();
    const line = new Timeline(api, shop);
    const van = await line.van();
    const [a, b, c] = await line.jobs(
      [0, 1, 2, 3].map((at) => ({ vehicleId: van, releasedAt: onDay(at), diagnosedBy: shop.owner.id })),
    );
    await line.comebacks([
      { vehicleId: van, receivedAt: onDay(20), of: [a!], attribution: 'noRootCauseFound' },
      { vehicleId: van, receivedAt: onDay(21), of: [b!], attribution: 'partDefective' },
      { vehicleId: van, receivedAt: onDay(22), of: [c!] },
    ]);
    await line.seen([{ vehicleId: van, at: onDay(200) }]);
    const by = async (query: string) => (await get(shop, `/v1/comeback-rates?by=${query}`)).body.groups[0];
    expect(await by('diagnosedBy')).toMatchObject({ rate: { events: 1, atRisk: 3 }, notAttributed: 1 });
    expect(await by('diagnosedBy&against=anybody')).toMatchObject({ rate: { events: 3, atRisk: 4 } });
    expect(await by('supplier&against=supplier')).toMatchObject({ rate: { events: 1, atRisk: 3 } });
  });

  it('gives intervals and funnel limits as published: Newcombe (1998a), Spiegelhalter (2005)', async () => {
    const shop = await api.openShop({ rankingMinimumJobs: 11 });
    const line = new Timeline(api, shop);
    const van = await line.van();
    const supplied = (supplier: string): Omit<TimelineJob, 'vehicleId' | 'releasedAt'> => ({
      lines: [
        {
          action: 'replace',
          part: { condition: 'new', supplier, partNumber: null, serial: null, batch: null, price: null },
        },
      ],
    });
    // 81 of 263, 15 of 148, 0 of 20; and 10, 25, 50, 100, 250 jobs within 500 of which 40 come back: 8 %.
    for (const [name, count, events] of [
      ['Ambry', 263, 81],
      ['Birch', 148, 15],
      ['=Cole', 20, 0],
    ] as const)
      await group(line, supplied(name), count, events, van);
    await line.seen([{ vehicleId: van, at: onDay(200) }]);
    const { body } = await get(shop, '/v1/comeback-rates?by=supplier');
    const limits = body.groups.map(({ rate }: { rate: { interval: { low: number; high: number } } }) =>
      [rate.interval.low, rate.interval.high].map((limit) => limit.toFixed(4)),
    );
    // Sorted by name: "=Cole", Ambry, Birch.
    expect(limits).toEqual([
      ['0.0000', '0.1611'],
      ['0.2553', '0.3662'],
      ['0.0624', '0.1605'],
    ]);
    const csv = await get(shop, '/v1/comeback-rates?by=supplier', { accept: 'text/csv' });
    expect(csv.headers['content-type']).toContain('text/csv');
    expect(String(csv.body).split('\r\n')[1]).toMatch(/^'=Cole,,0,20,0,0,0\.161/);

    const funnel = await api.openShop({ rankingMinimumJobs: 11 });
    const other = new Timeline(api, funnel);
    const bus = await other.van();
    for (const count of [10, 25, 50, 100, 250])
      await group(other, supplied(`n${String(count)}`), count, 0, bus);
    await group(other, supplied('rest'), 65, 40, bus);
    await other.seen([{ vehicleId: bus, at: onDay(200) }]);
    const compared = (await get(funnel, '/v1/comeback-comparisons?by=supplier')).body;
    const of = (name: string) =>
      compared.groups.find(({ value }: { value: string }) => value === name).result;
    expect(of('n10')).toEqual({ kind: 'belowMinimum', needed: 11, got: 10 });
    const upper = (name: string) => of(name).funnel.map((band: { upper: number }) => band.upper.toFixed(6));
    expect(upper('n25')).toEqual(['0.184527', '0.271516']);
    expect(upper('n100')).toEqual(['0.132166', '0.169532']);
    expect(of('n250')).toMatchObject({ finding: 'belowOuter' });
    expect(of('rest')).toMatchObject({ finding: 'aboveOuter' });
  }, 60_000);

  it('draws the curve of the NIST/SEMATECH e-Handbook 8.4.1.3 (hours taken for days) and charts what is asked for', async () => {
    const shop = await api.openShop();
    const line = new Timeline(api, shop);
    const failures = [54, 187, 216, 240, 244, 335, 361, 373, 375, 386];
    const vans: string[] = [];
    for (let at = 0; at < 20; at += 1) vans.push(await line.van());
    const ids = await line.jobs(vans.map((vehicleId) => ({ vehicleId, releasedAt: onDay(0) })));
    await line.comebacks(
      failures.map((at, index) => ({ vehicleId: vans[index]!, receivedAt: onDay(at), of: [ids[index]!] })),
    );
    await line.seen(vans.slice(10).map((vehicleId) => ({ vehicleId, at: onDay(500) })));
    const { curve } = (await get(shop, '/v1/comeback-curves')).body;
    expect(curve).toMatchObject({ kind: 'estimated', jobs: 20, comebacks: 10, lastDay: 500 });
    const last = curve.points.at(-1);
    expect(last).toMatchObject({ days: 386, atRisk: 11 });
    expect(last.notComeBack).toBeCloseTo(0.5, 12);
    expect([last.standardError, last.lower, last.upper].map((value) => value.toFixed(6))).toEqual([
      '0.111803',
      '0.271328',
      '0.691892',
    ]);
    // One comeback inside 90 days among 20 jobs: rare, so the g chart; one gap alone has no baseline to differ from.
    const chart = (await get(shop, '/v1/comeback-charts')).body;
    expect(chart).toMatchObject({ chart: 'eventsBetween', choice: 'eventsAreRare' });
    const asked = (await get(shop, '/v1/comeback-charts?chart=proportion&period=year')).body;
    expect(asked.result).toMatchObject({
      kind: 'estimated',
      unit: 'share',
      places: [{ label: '2026', jobs: 20, events: 1 }],
    });
  }, 60_000);
});

describe('comebacks as they are said and settled', () => {
  const complaintOf = (vehicleId: string, receivedAt: string) => ({
    vehicleId,
    jobId: null,
    receivedAt,
    words: null,
    symptoms: { 'stalls-cold': 'present' },
    conditions: {},
    troubleCodes: [],
    reproduced: null,
    stopScrewMovedByOthers: null,
    reportedByDriver: false,
    components: [],
    beganAfterRepair: false,
    distanceKm: null,
  });

  it('a proposal says how likely it is from what the shop said of proposals like it, and a second link is refused for its reason', async () => {
    const shop = await api.openShop();
    const line = new Timeline(api, shop);
    const as = shop.owner;
    const take = async (): Promise<Reply['body']> => {
      const vehicleId = await line.van();
      await line.job({ vehicleId, releasedAt: onDay(800), symptoms: ['stalls-cold'] });
      const reply = await api.call('POST', '/v1/complaints', {
        as,
        body: complaintOf(vehicleId, onDay(820)),
      });
      expect(reply.status).toBe(201);
      return reply.body.comebacks[0];
    };
    const settle = async (comeback: { readonly id: string }, state: string) => {
      const body = { state, attribution: null, note: null, reason: 'looked at on the road' };
      const url = `/v1/comebacks/${comeback.id}/corrections`;
      const reply = await api.call('POST', url, { as, body, ifMatch: '"1"' });
      expect(reply.status).toBe(201);
    };
    const first = await take();
    // Same symptom inside the window: likeness 0.6, worth ten settled proposals.
    expect(first.probability).toMatchObject({
      value: 0.6,
      priorMean: 0.6,
      priorWeight: 10,
      confirmed: 0,
      refused: 0,
    });
    await settle(first, 'confirmed');
    const second = await take();
    await settle(second, 'refused');
    const third = await take();
    // (6 + 1) / (10 + 2)
    expect(third.probability.value).toBeCloseTo(7 / 12, 5);
    expect(third.probability).toMatchObject({ confirmed: 1, refused: 1 });

    const { id, complaintId, jobId } = third;
    const again = await api.call('POST', '/v1/comebacks', { as, body: { complaintId, jobId, note: null } });
    expect(again).toMatchObject({ status: 409, body: { code: 'record.wrongState' } });
    expect(again.body.detail).toContain(`linked already, by comeback ${id}`);

    const shown = await api.call('GET', `/v1/comebacks/${first.id}`, { as });
    expect(shown.body).toMatchObject({
      state: 'confirmed',
      originalJobIds: [first.jobId],
      repeatJobId: null,
      cost: { handling: { amount: '250.00', currency: 'EUR' }, total: { amount: '250.00' } },
    });
    const revisions = await api.call('GET', `/v1/comebacks/${first.id}/revisions`, { as });
    expect(revisions.body.items.map(({ state }: { state: string }) => state)).toEqual([
      'proposed',
      'confirmed',
    ]);
    // The cost of a comeback is an amount: the currency stays.
    const { headers } = await api.call('GET', '/v1/settings', { as });
    const patch = await api.call('PATCH', '/v1/settings', {
      as,
      body: { currency: 'USD' },
      ifMatch: String(headers['etag']),
    });
    expect(patch).toMatchObject({ status: 409, body: { code: 'record.wrongState' } });
    expect(patch.body.detail).toContain('Amounts in EUR are recorded');
  });
});
