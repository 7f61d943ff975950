import {
  StandingClock,
  startTestApi,
  type Reply,
  type TestApi,
  type TestShop,
  type TestUser,
} from '../support/api.js';

const day = 86_400_000;
const start = Date.parse('2026-01-10T09:00:00Z');
const at = (days: number): string => new Date(start + days * day).toISOString();

interface Warning {
  readonly code: string;
  readonly detail: string;
  readonly proposals: readonly { readonly proposal: string; readonly values: Record<string, unknown> }[];
}

describe('the odometer over HTTP', () => {
  let api: TestApi;
  let clock: StandingClock;
  let shop: TestShop;
  let technician: TestUser;
  let customerId: string;

  beforeAll(async () => {
    clock = new StandingClock(at(400));
    api = await startTestApi({ clock });
    shop = await api.openShop();
    technician = await shop.user(['technician']);
    const customer = await api.call('POST', '/v1/customers', {
      as: shop.owner,
      body: {
        kind: 'person',
        contact: { name: 'Ottoline Farrow' },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      },
    });
    customerId = customer.body.id;
  });
  afterAll(() => api.close());

  const post = (url: string, body: object, as: TestUser = technician, ifMatch?: string): Promise<Reply> =>
    api.call('POST', url, { as, body, ifMatch });
  const newVan = async (more: object = {}): Promise<string> => {
    const made = await post(
      '/v1/vehicles',
      {
        chassisNumber: null,
        plate: null,
        label: 'Van 14',
        firstUsedOn: '1991-04-02',
        application: null,
        attributes: {},
        expectedKmPerYear: null,
        observedSpans: [],
        retiredOn: null,
        customerId,
        ownedFrom: '2020-01-01T00:00:00Z',
        ...more,
      },
      shop.owner,
    );
    expect(made.status).toBe(201);
    return made.body.id;
  };
  const enter = async (vehicleId: string, shown: string, days: number, more: object = {}): Promise<Reply> => {
    const body = { shown, unit: 'km', readAt: at(days), ...more };
    const made = await post(`/v1/vehicles/${vehicleId}/odometer-entries`, body);
    expect([made.status, made.status < 300 ? '' : made.body]).toEqual([201, '']);
    return made;
  };
  const entry = (id: string, query = ''): Promise<Reply> =>
    api.call('GET', `/v1/odometer-entries/${id}${query}`, { as: technician });
  const correct = (made: Reply, change: object, version = 1): Promise<Reply> => {
    const { shown, unit, readAt, readBy, note } = made.body;
    const body = { shown, unit, readAt, readBy, note, reason: 'looked at it again', ...change };
    return post(`/v1/odometer-entries/${made.body.id}/corrections`, body, technician, `"${version}"`);
  };
  const codes = ({ body }: Reply): string[] => body.warnings.map(({ code }: Warning) => code);
  const warning = ({ body }: Reply, code: string): Warning =>
    body.warnings.find((each: Warning) => each.code === code);
  const begin = (vehicleId: string, body: object): Promise<Reply> =>
    post(`/v1/vehicles/${vehicleId}/odometer-segments`, body);
  const kilometres = (reply: Reply): number => Number(reply.body.distanceKm);

  it('takes the first entry at its word and goes on from it', async () => {
    const van = await newVan();
    const first = await enter(van, '184200', 0);
    expect(first.body).toMatchObject({ reliable: true, warnings: [], operatingHours: null });
    expect(kilometres(first)).toBe(184_200);
    expect(first.headers.location).toBe(`/v1/odometer-entries/${first.body.id}`);
    expect(kilometres(await enter(van, '186000.5', 40))).toBe(186_000.5);
    const segments = await api.call('GET', `/v1/vehicles/${van}/odometer-segments`, { as: technician });
    expect(segments.body.items).toMatchObject([{ cause: 'firstSeen', unit: 'km', factor: '1' }]);
  });

  it('API row 31: a five-digit display that rolled over is accepted with a warning that names it and proposes the segment', async () => {
    const van = await newVan();
    await enter(van, '91000', 0);
    await enter(van, '97500', 180);
    const rolled = await enter(van, '04200', 364);
    expect(rolled.body.reliable).toBe(false);
    expect(codes(rolled)).toEqual(['rolloverLikely']);
    const { detail, proposals } = warning(rolled, 'rolloverLikely');
    expect(detail).toContain('it adds 100000 km');
    expect(proposals).toMatchObject([
      { proposal: 'segment', values: { cause: 'rollover', startedAt: at(364), digits: 5 } },
    ]);
    clock.moveOn(60_000);
    const begun = await begin(van, proposals[0]!.values);
    expect(begun.status).toBe(201);
    expect(Number(begun.body.offsetKm)).toBe(100_000);
    const settled = await entry(rolled.body.id);
    expect(settled.body).toMatchObject({ reliable: true, warnings: [], version: 2 });
    expect(kilometres(settled)).toBe(104_200);
    const before = await entry(rolled.body.id, `?asOf=${rolled.body.recordedAt}`);
    expect(before.body).toMatchObject({ reliable: false, version: 1 });
    expect(codes(before)).toEqual(['rolloverLikely']);
  });

  it('begins a segment once, however often it is sent', async () => {
    const van = await newVan();
    await enter(van, '99000', 0);
    await enter(van, '00300', 30);
    const body = {
      id: api.ids.next(),
      cause: 'rollover',
      startedAt: at(30),
      shown: '00300',
      unit: 'km',
      digits: 5,
      distanceKm: null,
      note: null,
    };
    const [first, again] = [await begin(van, body), await begin(van, body)];
    expect([first.status, again.status]).toEqual([201, 200]);
    expect(again.body).toEqual(first.body);
    const other = await begin(van, { ...body, note: 'other' });
    expect(other.status).toBe(409);
    const list = await api.call('GET', `/v1/vehicles/${van}/odometer-entries`, { as: technician });
    expect(list.body.items.map(({ version }: { version: number }) => version)).toEqual([2, 1]);
    const alone = await begin(await newVan(), { ...body, id: api.ids.next() });
    expect([alone.status, alone.body.errors[0].pointer]).toEqual([422, '/shown']);
  });

  it('API row 31: another display begins a segment that goes on from the distance known before', async () => {
    const van = await newVan();
    await enter(van, '152000', 0);
    const odd = await enter(van, '000120', 40);
    expect(odd.body.reliable).toBe(false);
    expect(codes(odd)).toEqual(['lowerThanLast']);
    const { proposals } = warning(odd, 'lowerThanLast');
    expect(proposals).toMatchObject([{ proposal: 'segment', values: { cause: 'displayReplaced' } }]);
    expect((await begin(van, { ...proposals[0]!.values, note: 'another display' })).status).toBe(201);
    const settled = await entry(odd.body.id);
    expect(settled.body).toMatchObject({ reliable: true, warnings: [] });
    expect(kilometres(settled)).toBe(152_000);
    expect(kilometres(await enter(van, '000620', 90))).toBe(152_500);
  });

  it('goes on from a stated distance where the display is replaced, e.g. from the notice on the door frame', async () => {
    const van = await newVan();
    await enter(van, '152000', 0);
    const begun = await begin(van, {
      cause: 'displayReplaced',
      startedAt: at(50),
      shown: '0',
      unit: 'km',
      digits: 6,
      distanceKm: '153800',
      note: 'notice on the door frame',
    });
    expect(begun.status).toBe(201);
    expect(kilometres(await enter(van, '200', 60))).toBe(154_000);
  });

  it('counts miles by the exact international mile, and says so where the unit differs from that of the display', async () => {
    const van = await newVan();
    const first = await enter(van, '100000', 0, { unit: '[mi_i]' });
    expect(first.body.distanceKm).toMatch(/^160934\.40*$/);
    expect((await enter(van, '100001.5', 1, { unit: '[mi_i]' })).body.distanceKm).toBe('160936.814016');
    const other = await enter(van, '161500', 30);
    expect(codes(other)).toEqual(['unitDiffersFromSegment']);
    expect(other.body.reliable).toBe(true);
    expect(kilometres(other)).toBe(161_500);
  });

  it('API row 31: kilometres typed as miles are told as such, with the unit proposed', async () => {
    const van = await newVan({ expectedKmPerYear: '20000' });
    await enter(van, '100000', 0);
    const mixed = await enter(van, '103000', 55, { unit: '[mi_i]' });
    expect(mixed.body.reliable).toBe(false);
    const { proposals } = warning(mixed, 'unitMixedUp');
    expect(proposals).toEqual([{ proposal: 'unit', values: { unit: 'km' } }]);
    const right = await correct(mixed, proposals[0]!.values);
    expect(right.body).toMatchObject({ reliable: true, warnings: [], version: 2 });
  });

  it('keeps hours apart from kilometres', async () => {
    const van = await newVan();
    await enter(van, '120000', 0);
    const hours = await enter(van, '4300.5', 0, { unit: 'h' });
    expect(hours.body).toMatchObject({ distanceKm: null, reliable: true });
    expect(Number(hours.body.operatingHours)).toBe(4300.5);
    expect(kilometres(await enter(van, '121000', 20))).toBe(121_000);
  });

  it('API row 31: an entry lower than the last is not relied on until a person has settled it, and distances never run backwards', async () => {
    const van = await newVan();
    await enter(van, '73000', 0);
    const low = await enter(van, '60000', 30);
    expect([low.body.reliable, codes(low)]).toEqual([false, ['lowerThanLast']]);
    // The next one is measured against what can be relied on.
    expect((await enter(van, '74000', 40)).body).toMatchObject({ reliable: true, warnings: [] });
    const stale = await correct(low, { shown: '73500' }, 7);
    expect(stale.status).toBe(412);
    const settled = await correct(low, { shown: '73500', reason: 'digits read wrongly' });
    expect(settled.body).toMatchObject({
      reliable: true,
      warnings: [],
      version: 2,
      reason: 'digits read wrongly',
    });
    expect((await entry(low.body.id, `?asOf=${at(399)}`)).status).toBe(404);
    const list = await api.call('GET', `/v1/vehicles/${van}/odometer-entries`, { as: technician });
    expect(list.body.items.map(({ shown }: { shown: string }) => shown)).toEqual(['74000', '73500', '73000']);
    expect(list.body.items.every(({ reliable }: { reliable: boolean }) => reliable)).toBe(true);
  });

  it("lets a person's word on an entry stand, with the warning beside it, whatever comes in later", async () => {
    const van = await newVan();
    await enter(van, '50000', 0);
    const fast = await enter(van, '63000', 10);
    expect([fast.body.reliable, codes(fast)]).toEqual([false, ['fasterThanPlausible']]);
    const settled = await correct(fast, { reliable: true, reason: 'driven day and night by two drivers' });
    expect(settled.body.reliable).toBe(true);
    expect(codes(settled)).toEqual(['fasterThanPlausible']);
    await enter(van, '50300', 1);
    const after = await entry(fast.body.id);
    expect(after.body.reliable).toBe(true);
  });

  it('puts an entry that comes in later into its place by date, and looks at the one after it again', async () => {
    const van = await newVan();
    const first = await enter(van, '50000', 0);
    // 1,500 km in 1.2 days: more than 1,000 a day.
    const fast = await enter(van, '51500', 1.2);
    expect([fast.body.reliable, codes(fast)]).toEqual([false, ['fasterThanPlausible']]);
    // 900 km in the first day and 600 in the next are plausible.
    expect((await enter(van, '50900', 0.6)).body.reliable).toBe(true);
    expect((await entry(fast.body.id)).body).toMatchObject({
      reliable: true,
      warnings: [],
      version: 2,
      reason: 'an entry with an earlier date came in',
    });
    const earliest = await enter(van, '49000', -30);
    expect([earliest.body.reliable, codes(earliest)]).toEqual([true, ['backFilled']]);
    expect((await entry(first.body.id)).body).toMatchObject({ version: 1, warnings: [] });
    const list = await api.call('GET', `/v1/vehicles/${van}/odometer-entries`, { as: technician });
    expect(list.body.items.map(({ shown }: { shown: string }) => shown)).toEqual([
      '51500',
      '50900',
      '50000',
      '49000',
    ]);
  });

  it('relies again on what an earlier typing error had made look odd, once the error is corrected', async () => {
    const van = await newVan();
    await enter(van, '73000', 0);
    const typo = await enter(van, '87900', 60);
    expect(typo.body.reliable).toBe(true);
    const next = await enter(van, '79100', 70);
    expect([next.body.reliable, codes(next)]).toEqual([false, ['lowerThanLast']]);
    expect((await correct(typo, { shown: '78900', reason: 'digits swapped' })).body.reliable).toBe(true);
    expect((await entry(next.body.id)).body).toMatchObject({
      reliable: true,
      warnings: [],
      version: 2,
      reason: 'an entry with an earlier date was corrected',
    });
  });

  it('marks an entry above the one that follows by date, and leaves that one alone', async () => {
    const van = await newVan();
    await enter(van, '40000', 0);
    const next = await enter(van, '42000', 60);
    const high = await enter(van, '45000', 30);
    expect(high.body.reliable).toBe(false);
    expect(codes(high)).toEqual(['backFilled', 'higherThanNext']);
    expect((await entry(next.body.id)).body).toMatchObject({ reliable: true, version: 1 });
  });

  it('API row 30: five minutes ahead are tolerated, tomorrow is refused', async () => {
    const van = await newVan();
    const url = `/v1/vehicles/${van}/odometer-entries`;
    const soon = new Date(Date.parse(clock.now()) + 4 * 60_000).toISOString();
    expect((await post(url, { shown: '1000', unit: 'km', readAt: soon })).status).toBe(201);
    const refused = await post(url, { shown: '1000', unit: 'km', readAt: at(401) });
    expect([refused.status, refused.body.errors[0].pointer]).toEqual([422, '/readAt']);
    const segment = await begin(van, {
      cause: 'rollover',
      startedAt: at(401),
      shown: '0',
      unit: 'km',
      digits: 5,
      distanceKm: null,
      note: null,
    });
    expect([segment.status, segment.body.errors[0].pointer]).toEqual([422, '/startedAt']);
  });

  it('API row 26: an entry without a unit, or in a unit of something else, is refused', async () => {
    const url = `/v1/vehicles/${await newVan()}/odometer-entries`;
    for (const body of [
      { shown: '1000', readAt: at(0) },
      { shown: '1000', unit: 'mm', readAt: at(0) },
    ]) {
      const answer = await post(url, body);
      expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, '/unit']);
    }
  });

  it('API row 32: the same entry sent again is the first one, even after it was looked at again; other content is refused', async () => {
    const van = await newVan();
    const url = `/v1/vehicles/${van}/odometer-entries`;
    await enter(van, '98000', 0);
    const body = { id: api.ids.next(), shown: '00500', unit: 'km', readAt: at(60) };
    expect((await post(url, body)).status).toBe(201);
    await begin(van, {
      cause: 'rollover',
      startedAt: at(60),
      shown: '00500',
      unit: 'km',
      digits: 5,
      distanceKm: null,
      note: null,
    });
    const again = await post(url, body);
    expect([again.status, again.body.version, again.body.reliable]).toEqual([200, 2, true]);
    expect((await post(url, { ...body, shown: '00501' })).status).toBe(409);
  });

  it('JOB rule 11: an odd odometer warns and refuses no job', async () => {
    const van = await newVan();
    await enter(van, '73000', 0);
    const complaint = await post('/v1/complaints', {
      vehicleId: van,
      jobId: null,
      receivedAt: at(30),
      words: null,
      symptoms: { 'stalls-cold': 'present' },
      conditions: {},
      troubleCodes: [],
      reproduced: null,
      stopScrewMovedByOthers: null,
      reportedByDriver: true,
      components: [],
      beganAfterRepair: false,
      distanceKm: null,
    });
    const job = await post('/v1/jobs', {
      vehicleId: van,
      complaintIds: [complaint.body.id],
      odometer: { shown: '12', unit: 'km', readAt: at(30) },
      openedAt: at(30),
      assignedTo: null,
      diagnosedBy: null,
      causeId: null,
      note: null,
    });
    expect(job.status).toBe(201);
    const list = await api.call('GET', `/v1/vehicles/${van}/odometer-entries`, { as: technician });
    expect(list.body.items[0]).toMatchObject({ shown: '12', reliable: false });
  });

  it('JOB rule 16: a fleet manager enters and sees the odometer of their own van only', async () => {
    const fleet = await api.call('POST', '/v1/customers', {
      as: shop.owner,
      body: {
        kind: 'fleetOperator',
        contact: { name: 'Brindle Parcels' },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      },
    });
    const manager = await shop.user(['fleetManager'], fleet.body.id);
    const own = await newVan({ customerId: fleet.body.id });
    const foreign = await newVan();
    const made = await enter(foreign, '5000', 0);
    const body = { shown: '7000', unit: 'km', readAt: at(0) };
    expect((await post(`/v1/vehicles/${own}/odometer-entries`, body, manager)).status).toBe(201);
    expect((await post(`/v1/vehicles/${foreign}/odometer-entries`, body, manager)).status).toBe(404);
    for (const url of [
      `/v1/vehicles/${foreign}/odometer-entries`,
      `/v1/vehicles/${foreign}/odometer-segments`,
      `/v1/odometer-entries/${made.body.id}`,
    ])
      expect((await api.call('GET', url, { as: manager })).status).toBe(404);
  });

  it('two who enter the first entry of one van at once begin one segment', async () => {
    const van = await newVan();
    const url = `/v1/vehicles/${van}/odometer-entries`;
    const bodies = ['5000', '5001', '5002', '5003'].map((shown) => ({ shown, unit: 'km', readAt: at(0) }));
    const answers = await Promise.all(bodies.map((body) => post(url, body)));
    expect(answers.map(({ status }) => status)).toEqual([201, 201, 201, 201]);
    const segments = await api.call('GET', `/v1/vehicles/${van}/odometer-segments`, { as: technician });
    expect(segments.body.items).toHaveLength(1);
  });
});
