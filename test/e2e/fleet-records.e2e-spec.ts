import { valveSeatFleet, valveSeatRecurrence } from '@endfloat/reliability';
import { StandingClock, startTestApi, type Reply, type TestApi, type TestShop } from '../support/api.js';

const day = 86_400_000;
const firstUsedOn = '2001-01-01';
const atAge = (days: number): string =>
  new Date(Date.parse(`${firstUsedOn}T00:00:00Z`) + days * day).toISOString();

/** Recurrences and lives told from what a shop records itself, a vehicle and a part at a time. */
describe('a fleet in the records of the shop', () => {
  let api: TestApi;
  let shop: TestShop;
  let customerId: string;

  const must = async (reply: Promise<Reply>): Promise<Reply['body']> => {
    const { status, body } = await reply;
    expect([status, status < 300 ? '' : body]).toEqual([201, '']);
    return body;
  };
  const post = (url: string, body: object) => must(api.call('POST', url, { as: shop.owner, body }));
  const get = async (url: string, as = shop.owner): Promise<Reply['body']> => {
    const { status, body } = await api.call('GET', url, { as });
    expect([status, status === 200 ? '' : body]).toEqual([200, '']);
    return body;
  };
  const csv = async (url: string): Promise<string[]> => {
    const { status, body } = await api.call('GET', url, { as: shop.owner, headers: { accept: 'text/csv' } });
    expect(status).toBe(200);
    return (body as string).trimEnd().split('\r\n');
  };
  const customer = async (name: string): Promise<string> => {
    const contact = { name };
    const made = await post('/v1/customers', {
      kind: 'fleetOperator',
      contact,
      downtimeCostPerDay: null,
      planningDistanceKm: null,
    });
    return made.id;
  };
  const newVan = async (owner: string, more: object = {}): Promise<string> => {
    const made = await post('/v1/vehicles', {
      chassisNumber: null,
      plate: null,
      label: 'a van',
      firstUsedOn,
      application: null,
      attributes: {},
      expectedKmPerYear: null,
      observedSpans: [{ from: atAge(0), until: null }],
      retiredOn: null,
      customerId: owner,
      ownedFrom: atAge(0),
      ...more,
    });
    return made.id;
  };
  const fit = (vehicleId: string, fitted: number | null, removed: number | null, more: object = {}) =>
    post('/v1/fitted-parts', {
      vehicleId,
      componentType: 'pump',
      position: 'intake',
      condition: fitted === null ? 'original' : 'new',
      fittedAt: fitted === null ? null : atAge(fitted),
      fittedKm: null,
      removedAt: removed === null ? null : atAge(removed),
      removedKm: null,
      serial: null,
      batch: null,
      supplier: null,
      partNumber: null,
      removalReason: removed === null ? null : 'worn',
      ...more,
    });

  beforeAll(async () => {
    api = await startTestApi({ clock: new StandingClock(atAge(1000)) });
    shop = await api.openShop();
    customerId = await customer('Pellow Haulage');
  });
  afterAll(() => api.close());

  it('the valve-seat fleet, recorded one engine and one part at a time, is the published one: 1.1185 at day 621', async () => {
    const record = async ({ spans, eventAges }: (typeof valveSeatFleet)[number]): Promise<void> => {
      const until = spans[0]?.until ?? 0;
      const van = await newVan(customerId, { observedSpans: [{ from: atAge(0), until: atAge(until) }] });
      const ends = [...eventAges].sort((a, b) => a - b);
      for (const [place, fitted] of [null, ...ends].entries())
        await fit(van, fitted, ends[place] ?? null, { componentType: 'valve-seat', position: 'engine' });
    };
    for (let from = 0; from < valveSeatFleet.length; from += 6)
      await Promise.all(valveSeatFleet.slice(from, from + 6).map(record));
    const url = `/v1/fleet-recurrences?componentType=valve-seat&customerId=${customerId}`;
    const { recurrence, trend, of } = await get(url);
    expect([of, recurrence.kind, recurrence.vehicles, recurrence.events]).toEqual([
      'replacements',
      'estimated',
      41,
      48,
    ]);
    const at = (age: number) => recurrence.points.find(({ ageDays }: { ageDays: number }) => ageDays === age);
    expect([at(621).mean.toFixed(8), at(621).standardError.toFixed(8)]).toEqual(['1.11854221', '0.20750288']);
    expect([at(653).mean.toFixed(8), at(653).logLimits.lower.toFixed(6)]).toEqual(['1.54268751', '1.038286']);
    // More seats come off as engines age: the published curve turns up.
    expect(trend.laplace.statistic).toBeGreaterThan(1.96);
    expect(trend.powerLaw.shapeLower).toBeGreaterThan(1);

    const lines = await csv(url);
    expect(lines[0]).toBe(
      'ageDays,atRisk,events,meanPerVehicle,standardError,plainLower,plainUpper,logLower,logUpper',
    );
    expect(lines).toHaveLength(1 + valveSeatRecurrence.length);
  });

  it('lives of the same seats: 48 ended, 41 last still, two on one day among them', async () => {
    const lives = await get(`/v1/component-lives?componentType=valve-seat&customerId=${customerId}`);
    expect(lives.counts).toMatchObject({ parts: 89, exact: 48, lastingStill: 41, leftOut: [] });
    expect(lives.curve.method).toBe('kaplanMeier');
    expect([lives.weibull.kind, lives.lognormal.kind, lives.scale]).toEqual([
      'estimated',
      'estimated',
      'days',
    ]);
    const [b10, b50] = lives.weibull.bLives;
    expect([b10.share, b50.share]).toEqual([0.1, 0.5]);
    expect(b10.lower).toBeLessThan(b10.estimate);
    expect(b10.estimate).toBeLessThan(b50.estimate);
    expect((await csv(`/v1/component-lives?componentType=valve-seat`))[0]).toBe(
      'age,fromAge,atRisk,surviving,standardError,lower,upper',
    );
  });

  it('by hand: a van sold at age 400 counts for each owner while they owned it, and its replacement for the second', async () => {
    const [heron, moss] = [await customer('Heron Parcels'), await customer('Moss Laundry')];
    const van = await newVan(heron);
    await post(`/v1/vehicles/${van}/ownerships`, { customerId: moss, fromAt: atAge(400) });
    await fit(van, null, 600);
    await fit(van, 600, null);
    const of = async (owner: string) =>
      (await get(`/v1/fleet-recurrences?componentType=pump&customerId=${owner}`)).recurrence;
    expect(await of(heron)).toMatchObject({ kind: 'noEvents', vehicles: 1, observedDays: 400 });
    expect(await of(moss)).toMatchObject({ kind: 'estimated', observedDays: 600, events: 1 });
    const [step] = (await of(moss)).points;
    expect([step.ageDays, step.atRisk, step.mean, step.standardError]).toEqual([600, 1, 1, null]);

    const lives = await get(`/v1/component-lives?componentType=pump&customerId=${moss}`);
    // The first pump, original on a van that Moss got at age 400: nobody of theirs saw it fitted.
    expect(lives.counts).toMatchObject({
      parts: 1,
      lastingStill: 1,
      leftOut: [{ why: 'fittedUnknown', parts: 1 }],
    });
    expect(lives.weibull).toEqual({
      kind: 'insufficientData',
      of: 'lives that ended',
      needed: 2,
      got: 0,
    });
    const manager = await shop.user(['fleetManager'], moss);
    expect((await get('/v1/fleet-recurrences?componentType=pump', manager)).recurrence.events).toBe(1);
    const foreign = await api.call('GET', `/v1/component-lives?componentType=pump&customerId=${heron}`, {
      as: manager,
    });
    expect(foreign.status).toBe(404);
  });

  it('by hand: of four pumps by two makers, all of one lasted 100 days and of the other 300', async () => {
    const owner = await customer('Teasel Bakery');
    for (const [supplier, life] of [
      ['Birchmoor Castings', 100],
      ['Birchmoor Castings', 120],
      ['Cobnut Engineering', 300],
      ['Cobnut Engineering', 330],
    ] as const) {
      const van = await newVan(owner);
      await fit(van, 10, 10 + life, { componentType: 'filter', supplier });
      await fit(van, 10 + life, null, { componentType: 'filter', supplier: 'Tansy Metals' });
    }
    const found = await get(
      '/v1/component-life-comparisons?componentType=filter&by=supplier&first=Birchmoor%20Castings&second=Cobnut%20Engineering',
    );
    expect([found.first.counts.exact, found.second.counts.exact]).toEqual([2, 2]);
    // At 100 four at risk, two of the first: expected 1/2; at 120 one of three: 1/3; then none: 5/6 expected, 2 seen.
    expect(found.logRank.expectedFirst).toBeCloseTo(5 / 6, 12);
    expect(found.logRank.observedFirst).toBe(2);
    // Variance 2 x 2/16 + 1 x 2/9 = 17/36, so chi-square (7/6)^2 x 36/17 = 49/17.
    expect(found.logRank.chiSquare).toBeCloseTo(49 / 17, 10);
    expect(found.likelihoodRatio.scaleRatio).toBeLessThan(0.5);

    const same = '/v1/component-life-comparisons?componentType=filter&by=supplier&first=a&second=a';
    const refused = await api.call('GET', same, { as: shop.owner });
    expect([refused.status, refused.body.errors[0].pointer]).toEqual([400, '/second']);
    const unknown = same.replace('by=supplier', 'by=condition').replace('second=a', 'second=shiny');
    expect((await api.call('GET', unknown, { as: shop.owner })).status).toBe(400);
  });

  it('by hand: two fleets with four and no replacements on two vans each stand 2 apart, standard error 0.7071', async () => {
    const [busy, calm] = [await customer('Sorrel Dairy'), await customer('Yarrow Glass')];
    const chains: [string, (number | null)[]][] = [
      [busy, [null, 20, null]],
      [busy, [null, 40, 60, 80, null]],
      [calm, [null, null]],
      [calm, [null, null]],
    ];
    for (const [owner, chain] of chains) {
      const van = await newVan(owner, { observedSpans: [{ from: atAge(0), until: atAge(100) }] });
      for (let place = 0; place + 1 < chain.length; place += 1)
        await fit(van, chain[place] ?? null, chain[place + 1] ?? null, { componentType: 'belt' });
    }
    const url = `/v1/fleet-comparisons?componentType=belt&by=customer&first=${busy}&second=${calm}`;
    const found = await get(url);
    expect([found.first, found.second]).toEqual([
      { vehicles: 2, events: 4 },
      { vehicles: 2, events: 0 },
    ]);
    expect(found.comparison.difference).toBe(2);
    expect(found.comparison.standardError).toBeCloseTo(Math.SQRT1_2, 12);
    expect(found.comparison.pValue).toBeCloseTo(0.00468, 5);
    const bad = await api.call('GET', url.replace(busy, 'nobody'), { as: shop.owner });
    expect([bad.status, bad.body.errors[0].pointer]).toEqual([400, '/first']);
  });

  it('complaints recur by kind of part and by symptom; a van without first use and odd stretches are named', async () => {
    const owner = await customer('Comfrey Couriers');
    const overlapping = [
      { from: atAge(-50), until: atAge(200) },
      { from: atAge(100), until: null },
    ];
    const van = await newVan(owner, { observedSpans: overlapping });
    await newVan(owner, { firstUsedOn: null });
    const complain = (age: number, symptom: string, components: string[] = []) =>
      post('/v1/complaints', {
        vehicleId: van,
        jobId: null,
        receivedAt: atAge(age),
        words: 'as before',
        symptoms: { [symptom]: 'present' },
        conditions: {},
        troubleCodes: [],
        reproduced: null,
        stopScrewMovedByOthers: null,
        reportedByDriver: false,
        components,
        beganAfterRepair: false,
        distanceKm: null,
      });
    await complain(300, 'idle-rises-with-ac', ['throttle-housing']);
    await complain(500, 'stalls-cold');
    const of = async (query: string) =>
      get(`/v1/fleet-recurrences?of=complaints&customerId=${owner}${query}`);
    const all = await of('');
    expect([all.recurrence.events, all.withoutFirstUse]).toEqual([2, 1]);
    expect(all.recurrence.observedDays).toBe(1000);
    expect(all.oddities).toEqual([
      { code: 'spansOverlap', vehicleIds: [van] },
      { code: 'spanBeforeFirstUse', vehicleIds: [van] },
    ]);
    expect(
      (await of('&componentType=throttle-housing')).recurrence.points.map(
        (p: { ageDays: number }) => p.ageDays,
      ),
    ).toEqual([300]);
    expect(
      (await of('&symptom=stalls-cold')).recurrence.points.map((p: { ageDays: number }) => p.ageDays),
    ).toEqual([500]);
    expect((await of('&symptom=stalls-cold')).recurrence.kind).toBe('estimated');
    expect((await get(`/v1/fleet-recurrences?of=comebacks&customerId=${owner}`)).recurrence.kind).toBe(
      'noEvents',
    );
    for (const [query, pointer] of [
      ['?of=replacements', '/componentType'],
      ['?of=complaints&symptom=grows-wings', '/symptom'],
      ['?componentType=pump&symptom=stalls-cold', '/symptom'],
    ] as const) {
      const refused = await api.call('GET', `/v1/fleet-recurrences${query}`, { as: shop.owner });
      expect([refused.status, refused.body.errors[0].pointer]).toEqual([400, pointer]);
    }
  });
});
