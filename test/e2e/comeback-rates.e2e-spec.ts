import {
  StandingClock,
  startTestApi,
  type Reply,
  type TestApi,
  type TestShop,
  type TestUser,
} from '../support/api.js';
import { Timeline } from './comeback-timeline.js';

const day = 86_400_000;
const start = Date.parse('2026-01-05T08:00:00.000Z');
const onDay = (days: number): string => new Date(start + days * day).toISOString();
/** A year later: every window of the timelines has closed by its days. */
const now = onDay(400);

let api: TestApi;
let clock: StandingClock;

beforeAll(async () => {
  clock = new StandingClock(now);
  api = await startTestApi({ clock });
});

afterAll(() => api.close());

interface Told {
  readonly shop: TestShop;
  readonly line: Timeline;
  readonly get: (url: string, as?: TestUser) => Promise<Reply>;
}

async function tell(minimum = 20): Promise<Told> {
  clock.moveTo(now);
  const shop = await api.openShop({ rankingMinimumJobs: minimum });
  const get = async (url: string, as: TestUser = shop.owner): Promise<Reply> => api.call('GET', url, { as });
  return { shop, line: new Timeline(api, shop), get };
}

/** The one group of all jobs. */
async function whole({ get }: Told, query = '') {
  const { status, body } = await get(`/v1/comeback-rates${query}`);
  expect(status).toBe(200);
  return body.groups[0];
}

const group = (body: { groups: { value: string | null }[] }, value: string | null): Reply['body'] =>
  body.groups.find((each) => each.value === value);

describe('comeback rates on hand-written timelines', () => {
  it('JOB rule 10: a window still running is pending, an elapsed one counts, and a van never seen again is no success', async () => {
    const told = await tell();
    const { line } = told;
    const [held, gone, running] = [await line.van(), await line.van(), await line.van()];
    await line.jobs([
      { vehicleId: held, releasedAt: onDay(0) },
      { vehicleId: gone, releasedAt: onDay(0) },
      { vehicleId: running, releasedAt: onDay(350) },
    ]);
    await line.seen([
      { vehicleId: held, at: onDay(120) },
      { vehicleId: running, at: onDay(360) },
    ]);
    expect(await whole(told)).toMatchObject({
      rate: { kind: 'estimated', value: 0, events: 0, atRisk: 1 },
      pending: 1,
      notSeenSince: 1,
    });
    // Looked at on day 100, the van seen on day 120 is known now to have come by later, but had not been seen by then.
    expect(await whole(told, `?at=${onDay(100)}`)).toMatchObject({
      rate: { kind: 'insufficientData', needed: 1, events: 0, atRisk: 0 },
      pending: 0,
      notSeenSince: 2,
    });
  });

  it.each([
    ['a minute before the window of 90 days closes', 90 * day - 60_000, 1],
    ['at the minute it closes', 90 * day, 0],
    ['a minute after it closed', 90 * day + 60_000, 0],
  ])('a complaint %s counts as it should', async (_, after, events) => {
    const told = await tell();
    const vehicleId = await told.line.van();
    const jobId = await told.line.job({ vehicleId, releasedAt: onDay(0) });
    await told.line.comeback({ vehicleId, receivedAt: new Date(start + after).toISOString(), of: [jobId] });
    expect(await whole(told)).toMatchObject({ rate: { events, atRisk: 1 } });
  });

  it.each([
    ['4999.9', 1],
    ['5000', 0],
    ['5000.1', 0],
  ])('a complaint %s km after the release counts as it should', async (km, events) => {
    const told = await tell();
    const vehicleId = await told.line.van();
    const jobId = await told.line.job({ vehicleId, releasedAt: onDay(0), releasedKm: '80000' });
    const at = String(80_000 + Number(km));
    await told.line.comeback({ vehicleId, receivedAt: onDay(40), km: at, of: [jobId] });
    expect(await whole(told)).toMatchObject({ rate: { events, atRisk: 1 } });
  });

  it('JOB rule 11: a reading that goes back makes the window run by days, a settled rollover or new cluster does not', async () => {
    const told = await tell();
    const [wrong, rolled] = [await told.line.van(), await told.line.van()];
    const [ofWrong, ofRolled] = await told.line.jobs([
      { vehicleId: wrong, releasedAt: onDay(0), releasedKm: '97000' },
      { vehicleId: rolled, releasedAt: onDay(0), releasedKm: '97000' },
    ]);
    // Five digits: 99999 becomes 00000. Unsettled, 4,100 is below 97,000; the segment after the rollover makes it 104,100.
    await told.line.seen([
      { vehicleId: wrong, at: onDay(30), km: '104100' },
      { vehicleId: wrong, at: onDay(31), km: '4100' },
      { vehicleId: rolled, at: onDay(30), km: '104100' },
    ]);
    await told.line.comebacks([
      { vehicleId: wrong, receivedAt: onDay(60), of: [ofWrong!] },
      { vehicleId: rolled, receivedAt: onDay(60), of: [ofRolled!] },
    ]);
    const { body } = await told.get('/v1/comeback-jobs');
    const jobOf = (id: string) => body.items.find(({ jobId }: { jobId: string }) => jobId === id);
    expect(jobOf(ofWrong!)).toMatchObject({ outcome: 'comeback', closedBy: 'days' });
    expect(jobOf(ofRolled!)).toMatchObject({
      outcome: 'noComeback',
      closedBy: 'distance',
      closesAt: onDay(30),
    });
  });

  it('a rollover of five digits and a new cluster, entered as such over HTTP, keep the distance of the window', async () => {
    const told = await tell();
    const { shop } = told;
    const post = async (url: string, body: object): Promise<Reply> => {
      const reply = await api.call('POST', url, { as: shop.owner, body });
      expect([url, reply.status, reply.status < 300 ? '' : reply.body]).toEqual([url, 201, '']);
      return reply;
    };
    const vehicleId = await told.line.van();
    const entry = (shown: string, readAt: string) =>
      post(`/v1/vehicles/${vehicleId}/odometer-entries`, {
        shown,
        unit: 'km',
        readAt,
        readBy: null,
        note: null,
      });
    await entry('99000', onDay(0));
    const jobId = await told.line.job({ vehicleId, releasedAt: onDay(1), releasedKm: '99000' });
    await post(`/v1/vehicles/${vehicleId}/odometer-segments`, {
      startedAt: onDay(10),
      cause: 'rollover',
      unit: 'km',
      shown: '00000',
      distanceKm: '100000',
      digits: 5,
      note: null,
    });
    await entry('03999', onDay(20));
    const first = (await told.get('/v1/comeback-jobs')).body.items[0];
    expect(first).toMatchObject({ jobId, closedBy: 'days' });
    await entry('04000', onDay(21));
    // 99,000 + 5,000 = 104,000: reached on day 21, exactly.
    const second = (await told.get('/v1/comeback-jobs')).body.items[0];
    expect(second).toMatchObject({ jobId, closedBy: 'distance', closesAt: onDay(21) });
  });

  it('a comeback of a comeback belongs to the first job, with all it cost; the repeats are no jobs of their own', async () => {
    const told = await tell();
    const { line, get } = told;
    const vehicleId = await line.van();
    const technician = await told.shop.user(['technician']);
    const first = await line.job({
      vehicleId,
      releasedAt: onDay(0),
      diagnosedBy: told.shop.owner.id,
      symptoms: ['stalls-cold'],
    });
    const again = await line.comeback({
      vehicleId,
      receivedAt: onDay(20),
      of: [first],
      attribution: 'wrongRootCause',
    });
    const repeat = await line.job({
      vehicleId,
      releasedAt: onDay(21),
      diagnosedBy: technician.id,
      complaintIds: [again],
      lines: [{ minutes: 90 }],
    });
    const third = await line.comeback({
      vehicleId,
      receivedAt: onDay(100),
      of: [repeat],
      attribution: 'workmanship',
    });
    await line.job({
      vehicleId,
      releasedAt: onDay(101),
      complaintIds: [third],
      lines: [
        {
          minutes: 30,
          action: 'replace',
          part: {
            condition: 'new',
            supplier: 'Ambry Parts',
            partNumber: null,
            serial: null,
            batch: null,
            price: { amount: '120.50', currency: 'EUR' },
          },
        },
        { minutes: null },
      ],
    });
    // Labour 80.00 an hour: 1.5 h and 0.5 h are 160.00; one part 120.50; handling twice 250.00. One line has no minutes.
    expect(await whole(told)).toMatchObject({
      rate: { events: 1, atRisk: 1 },
      comebacks: 2,
      cost: { amount: '780.50', currency: 'EUR' },
      costGaps: 1,
    });
    const byPerson = (await get('/v1/comeback-rates?by=diagnosedBy')).body;
    expect(byPerson.against).toBe('diagnosis');
    expect(byPerson.groups.map(({ value }: { value: string }) => value)).toEqual([told.shop.owner.id]);
    const costs = (await get('/v1/comeback-costs')).body;
    expect(costs.rows).toMatchObject([
      {
        value: 'workmanship',
        comebacks: 1,
        labour: { amount: '40.00' },
        parts: { amount: '120.50' },
        gaps: 1,
      },
      { value: 'wrongRootCause', comebacks: 1, total: { amount: '370.00' } },
    ]);
    expect(costs.total).toMatchObject({ comebacks: 2, total: { amount: '780.50' } });
    const quarter = `from=${onDay(90)}&until=${onDay(180)}`;
    expect((await get(`/v1/comeback-costs?by=quarter&${quarter}`)).body.rows).toMatchObject([
      { value: '2026-Q2', comebacks: 1, total: { amount: '410.50' } },
    ]);
  });

  it('two complaints at once share the repeat, and a complaint of two jobs is shared between them', async () => {
    const told = await tell();
    const { line } = told;
    const vehicleId = await line.van();
    const [one, two] = await line.jobs([
      { vehicleId, releasedAt: onDay(0) },
      { vehicleId, releasedAt: onDay(5) },
    ]);
    const [a, b] = await line.comebacks([
      { vehicleId, receivedAt: onDay(20), of: [one!] },
      { vehicleId, receivedAt: onDay(20), of: [one!, two!] },
    ]);
    await line.job({ vehicleId, releasedAt: onDay(22), complaintIds: [a!, b!], lines: [{ minutes: 60 }] });
    const { items } = (await told.get('/v1/comeback-jobs')).body;
    const cost = Object.fromEntries(
      items.map(({ jobId, cost: { amount } }: { jobId: string; cost: { amount: string } }) => [
        jobId,
        amount,
      ]),
    );
    // 80.00 labour and 250.00 handling, halved between the complaints: 165.00 each; the second one halved again: 82.50.
    expect(cost).toEqual({ [one!]: '247.50', [two!]: '82.50' });
    expect(await whole(told)).toMatchObject({ rate: { events: 2, atRisk: 2 }, cost: { amount: '330.00' } });
  });

  it('a van that was sold keeps its window; the job counts for who owned it when it was released', async () => {
    const told = await tell();
    const { line, get, shop } = told;
    const [seller, buyer] = [await line.customer('fleetOperator'), await line.customer()];
    const vehicleId = await line.van('2001-06-01', { customerId: seller, fromAt: onDay(-900) });
    const jobId = await line.job({ vehicleId, releasedAt: onDay(0) });
    await line.owner(vehicleId, buyer, onDay(10));
    await line.comeback({ vehicleId, receivedAt: onDay(30), of: [jobId] });
    const byCustomer = (await get('/v1/comeback-rates?by=customer')).body;
    expect(byCustomer.groups).toMatchObject([{ value: seller, rate: { events: 1, atRisk: 1 } }]);
    expect((await get('/v1/comeback-rates?by=fleet')).body.groups).toMatchObject([{ value: seller }]);
    expect((await get('/v1/comeback-rates?by=vehicleAge')).body.groups).toMatchObject([
      { value: '20', label: '20 to 24 years', rate: { events: 1 } },
    ]);
    // JOB rule 16: the seller's people no longer see the van, the buyer's do, and neither is told what it cost.
    const [before, after] = [
      await shop.user(['fleetManager'], seller),
      await shop.user(['fleetManager'], buyer),
    ];
    expect((await get('/v1/comeback-rates', before)).body.groups[0].rate.atRisk).toBe(0);
    const seen = (await get('/v1/comeback-rates', after)).body.groups[0];
    expect([seen.rate.atRisk, seen.cost]).toEqual([1, null]);
    expect((await get('/v1/comeback-rates?by=customer', after)).status).toBe(403);
  });

  it('every rate opens to the jobs behind it, as many as it counts', async () => {
    const told = await tell();
    const { line, get } = told;
    const vans = await Promise.all([1, 2, 3, 4].map(() => line.van()));
    const ids = await line.jobs(
      vans.map((vehicleId, at) => ({
        vehicleId,
        releasedAt: onDay(at),
        symptoms: at < 3 ? ['stalls-cold', 'idle-rises-with-ac'] : [],
      })),
    );
    await line.comeback({ vehicleId: vans[0]!, receivedAt: onDay(20), of: [ids[0]!] });
    await line.seen(vans.map((vehicleId) => ({ vehicleId, at: onDay(200) })));
    const { body } = await get(`/v1/comeback-rates?by=symptom&from=${onDay(0)}`);
    expect(group(body, 'stalls-cold')).toMatchObject({ rate: { events: 1, atRisk: 3 } });
    expect(group(body, null)).toMatchObject({ rate: { events: 0, atRisk: 1 } });
    for (const each of body.groups) {
      const listed = (await get(each.jobs)).body.items;
      expect(listed).toHaveLength(each.rate.atRisk);
      expect((await get(`${each.jobs}&outcome=comeback`)).body.items).toHaveLength(each.rate.events);
    }
    const page = (await get(`${group(body, 'stalls-cold').jobs}&pageSize=2`)).body;
    const next = (await get(`${group(body, 'stalls-cold').jobs}&pageSize=2&cursor=${page.nextCursor}`)).body;
    expect([...page.items, ...next.items].map(({ jobId }) => jobId)).toEqual(ids.slice(0, 3).reverse());
  });

  it('dropping what was settled and settling again changes no answer', async () => {
    const told = await tell();
    const { line, get, shop } = told;
    const vehicleId = await line.van();
    const first = await line.job({ vehicleId, releasedAt: onDay(0), symptoms: ['stalls-cold'] });
    await line.comeback({ vehicleId, receivedAt: onDay(20), of: [first] });
    const urls = [
      '/v1/comeback-rates?by=symptom',
      '/v1/comeback-jobs',
      '/v1/comeback-curves',
      '/v1/comeback-costs',
    ];
    const ask = () => Promise.all(urls.map(async (url) => (await get(url)).body));
    const before = await ask();
    await api.work.run(shop.id, (tx) => tx.settledJobs.markAll());
    expect(await ask()).toEqual(before);
    // As of now, worked out from the records themselves, it is the same as from the projection.
    for (const url of urls) {
      const { body } = await get(`${url}${url.includes('?') ? '&' : '?'}asOf=${now}`);
      const plain = (await get(url)).body;
      // The moment itself stands in the answer and in the links; the rest is equal.
      const ofMoment = (answer: object): string =>
        JSON.stringify(answer).replaceAll(/"asOf":[^,]+,|&asOf=[^&"]+/g, '');
      expect(ofMoment(body)).toBe(ofMoment(plain));
    }
  });

  it('JOB rule 1: as of an earlier moment a rate is what was known then', async () => {
    const told = await tell();
    const { line, get } = told;
    const vehicleId = await line.van();
    const jobId = await line.job({ vehicleId, releasedAt: onDay(0) });
    await line.seen([{ vehicleId, at: onDay(200) }]);
    clock.moveTo(onDay(401));
    await line.comeback({ vehicleId, receivedAt: onDay(30), of: [jobId] });
    clock.moveTo(onDay(402));
    expect(await whole(told)).toMatchObject({ rate: { events: 1, atRisk: 1 } });
    expect(await whole(told, `?asOf=${now}`)).toMatchObject({ rate: { events: 0, atRisk: 1 } });
    expect((await get(`/v1/comeback-rates?at=${onDay(500)}`)).status).toBe(400);
    expect((await get(`/v1/comeback-rates?from=${onDay(9)}&until=${onDay(8)}`)).status).toBe(400);
  });
});
