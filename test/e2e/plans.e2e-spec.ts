import {
  StandingClock,
  startTestApi,
  type Reply,
  type TestApi,
  type TestShop,
  type TestUser,
} from '../support/api.js';

const eur = (amount: string) => ({ amount, currency: 'EUR' });
const anyItem = {
  name: 'renew the fuel filter',
  componentType: 'fuel-filter',
  actions: ['replace'],
  everyDays: 365,
  everyKm: '15000',
  vehicleId: null,
  application: null,
  inUse: true,
};

/** The service plan, what is due by it, which vans need attention, what they cost, and whether to keep one. */
describe('planning for a fleet', () => {
  let api: TestApi;
  let shop: TestShop;
  let desk: TestUser;
  let manager: TestUser;
  let customerId: string;

  const must = async (reply: Promise<Reply>): Promise<Reply['body']> => {
    const { status, body } = await reply;
    expect([status, status < 300 ? '' : body]).toEqual([201, '']);
    return body;
  };
  const post = (url: string, body: object, as: TestUser = desk, ifMatch?: string) =>
    api.call('POST', url, { as, body, ifMatch });
  const get = async (url: string, as: TestUser = desk): Promise<Reply['body']> => {
    const { status, body } = await api.call('GET', url, { as });
    expect([status, status === 200 ? '' : body]).toEqual([200, '']);
    return body;
  };
  const customer = async (name: string, downtimeCostPerDay: string | null): Promise<string> =>
    (
      await must(
        post('/v1/customers', {
          kind: 'fleetOperator',
          contact: { name },
          downtimeCostPerDay,
          planningDistanceKm: null,
        }),
      )
    ).id;
  const newVan = async (label: string, more: object = {}): Promise<string> =>
    (
      await must(
        post('/v1/vehicles', {
          chassisNumber: null,
          plate: null,
          label,
          firstUsedOn: '1992-06-01',
          application: null,
          attributes: {},
          expectedKmPerYear: null,
          observedSpans: [],
          retiredOn: null,
          customerId,
          ownedFrom: '2020-01-01T00:00:00Z',
          ...more,
        }),
      )
    ).id;
  const read = (vehicleId: string, shown: string, readAt: string) =>
    must(post(`/v1/vehicles/${vehicleId}/odometer-entries`, { shown, unit: 'km', readAt }));
  const serve = (vehicleId: string, planItemId: string, doneAt: string, distanceKm: string | null = null) =>
    post('/v1/service-records', { vehicleId, planItemId, doneAt, distanceKm, note: null });
  const due = async (query: string, as?: TestUser) => get(`/v1/due-services${query}`, as);

  beforeAll(async () => {
    api = await startTestApi({ clock: new StandingClock('2026-06-01T00:00:00Z') });
    shop = await api.openShop();
    desk = await shop.user(['desk', 'technician', 'owner']);
    customerId = await customer('Pellow Haulage', '100.00');
    manager = await shop.user(['fleetManager'], await customer('Brindle Parcels', null));
  });
  afterAll(() => api.close());

  describe('the service plan', () => {
    let item: Reply['body'];
    let van: string;

    it('keeps an item, its corrections and every revision; sent again it is the same one', async () => {
      const id = api.ids.next();
      item = await must(post('/v1/service-plan-items', { ...anyItem, id }));
      expect(await post('/v1/service-plan-items', { ...anyItem, id })).toMatchObject({
        status: 200,
        body: { id },
      });
      expect((await post('/v1/service-plan-items', { ...anyItem, id, everyDays: 30 })).status).toBe(409);
      const change = { ...anyItem, everyKm: '20000', reason: 'cleaner fuel these days' };
      const url = `/v1/service-plan-items/${id}/corrections`;
      expect((await post(url, change)).status).toBe(428);
      expect(await must(post(url, change, desk, '"1"'))).toMatchObject({ version: 2, everyKm: '20000' });
      expect((await post(url, change, desk, '"1"')).status).toBe(412);
      const revisions = await get(`/v1/service-plan-items/${id}/revisions`);
      expect(revisions.items.map(({ everyKm }: { everyKm: string }) => everyKm)).toEqual(['15000', '20000']);
      expect((await get('/v1/service-plan-items?componentType=fuel-filter')).items).toHaveLength(1);
    });

    it.each([
      [{ everyDays: null, everyKm: null }, '/everyDays'],
      [{ everyKm: '0' }, '/everyKm'],
      [{ componentType: null }, '/actions'],
      [{ vehicleId: '0193f2c0-0000-7000-8000-000000000009' }, '/vehicleId'],
      [{ vehicleId: '0193f2c0-0000-7000-8000-000000000009', application: 'A' }, '/application'],
    ])('refuses %j and says where', async (change, pointer) => {
      const { status, body } = await post('/v1/service-plan-items', { ...anyItem, ...change });
      expect([status, body.errors[0].pointer]).toEqual([422, pointer]);
    });

    it('by hand: done on 1 March at 50,000 km, 54,600 km on 1 June: by distance at 70,000 km, by date in 273 days', async () => {
      van = await newVan('Van 1');
      await read(van, '50000', '2026-03-01T00:00:00Z');
      await read(van, '54600', '2026-06-01T00:00:00Z');
      await must(serve(van, item.id, '2026-03-01T00:00:00Z'));
      const { items, counts, vehicles } = await due(`?vehicleId=${van}`);
      // 4,600 km in 92 days are 50 km a day; 15,400 km are left, which are 308 days: the date comes first.
      expect(items).toMatchObject([
        {
          label: 'Van 1',
          standing: 'later',
          basis: 'lastDone',
          lastDoneKm: 50_000,
          dueOn: '2027-03-01',
          dueKm: 70_000,
          daysLeft: 273,
          kmLeft: 15_400,
          expectedOn: '2027-03-01',
          reachedFirst: 'date',
        },
      ]);
      expect([counts, vehicles]).toEqual([{ overdue: 0, dueSoon: 0, later: 1, unknown: 0 }, 1]);
      expect((await due(`?vehicleId=${van}&withinDays=273`)).items[0].standing).toBe('dueSoon');
      expect((await due(`?vehicleId=${van}&standing=overdue,dueSoon`)).items).toEqual([]);
    });

    it('a part newly fitted counts as done, and what was done elsewhere is corrected by a new revision', async () => {
      const other = await newVan('Van 2');
      expect((await due(`?vehicleId=${other}`)).items).toMatchObject([
        {
          standing: 'overdue',
          basis: 'firstUse',
          dueOn: '1993-06-01',
          isDistanceUnknown: true,
          dueKm: 20_000,
        },
      ]);
      const service = await must(serve(other, item.id, '2025-06-01T00:00:00Z', '80000'));
      expect((await due(`?vehicleId=${other}`)).items[0]).toMatchObject({
        standing: 'overdue',
        dueOn: '2026-06-01',
      });
      const corrected = {
        doneAt: '2025-06-30T00:00:00Z',
        distanceKm: '80000',
        note: null,
        reason: 'read the invoice',
      };
      await must(post(`/v1/service-records/${service.id}/corrections`, corrected, desk, '"1"'));
      expect((await due(`?vehicleId=${other}`)).items[0]).toMatchObject({
        standing: 'dueSoon',
        dueOn: '2026-06-30',
      });
      expect((await get(`/v1/service-records/${service.id}/revisions`)).items).toHaveLength(2);
      await must(
        post('/v1/fitted-parts', {
          vehicleId: other,
          componentType: 'fuel-filter',
          position: 'engine',
          condition: 'new',
          fittedAt: '2026-05-01T00:00:00Z',
          fittedKm: '91000',
          removedAt: null,
          removedKm: null,
          serial: null,
          batch: null,
          supplier: null,
          partNumber: null,
          removalReason: null,
        }),
      );
      expect((await due(`?vehicleId=${other}`)).items[0]).toMatchObject({
        standing: 'later',
        dueOn: '2027-05-01',
        lastDoneKm: 91_000,
      });
      const future = await serve(other, item.id, '2026-07-01T00:00:00Z');
      expect([future.status, future.body.errors[0].pointer]).toEqual([422, '/doneAt']);
    });

    it('the longest overdue stands first; pages, CSV and as-of agree; what is out of use or retired is not due', async () => {
      const old = await newVan('=Van 3', { firstUsedOn: '1980-01-01' });
      await newVan('Van 4', { retiredOn: '2026-01-01' });
      await newVan('Van 5', { firstUsedOn: null });
      const all = await due('');
      expect(all.items.map(({ label }: { label: string }) => label)).toEqual([
        '=Van 3',
        'Van 1',
        'Van 2',
        'Van 5',
      ]);
      expect(all.counts).toEqual({ overdue: 1, dueSoon: 0, later: 2, unknown: 1 });
      const labels: string[] = [];
      for (let url: string | null = '/v1/due-services?pageSize=1'; url !== null;) {
        const page: Reply['body'] = await get(url);
        labels.push(...page.items.map(({ label }: { label: string }) => label));
        url = page.nextCursor === null ? null : `/v1/due-services?pageSize=1&cursor=${page.nextCursor}`;
      }
      expect(labels).toEqual(['=Van 3', 'Van 1', 'Van 2', 'Van 5']);
      const file = await api.call('GET', '/v1/due-services', { as: desk, headers: { accept: 'text/csv' } });
      const lines = (file.body as string).trimEnd().split('\r\n');
      expect([lines.length, lines[1]?.startsWith(`${old},'=Van 3,`)]).toEqual([5, true]);
      const elsewhere = await due('', manager);
      expect([elsewhere.items, elsewhere.vehicles]).toEqual([[], 0]);
      expect((await api.call('GET', `/v1/due-services?vehicleId=${van}`, { as: manager })).status).toBe(404);
      await must(
        post(
          `/v1/service-plan-items/${item.id}/corrections`,
          { ...anyItem, inUse: false, reason: 'no longer done' },
          desk,
          '"2"',
        ),
      );
      expect((await due('')).items).toEqual([]);
      await must(
        post(
          `/v1/service-plan-items/${item.id}/corrections`,
          { ...anyItem, reason: 'done again' },
          desk,
          '"3"',
        ),
      );
    });

    it('vans are put in order of what is coming: a repeated complaint stands behind an overdue service, nothing comes last', async () => {
      const grumbling = await newVan('Van 6', { expectedKmPerYear: '12000' });
      await must(serve(grumbling, item.id, '2026-05-20T00:00:00Z'));
      for (const receivedAt of ['2026-02-01T00:00:00Z', '2026-05-01T00:00:00Z'])
        await must(
          post('/v1/complaints', {
            vehicleId: grumbling,
            jobId: null,
            receivedAt,
            words: 'again',
            symptoms: { 'stalls-cold': 'present' },
            conditions: {},
            troubleCodes: [],
            reproduced: null,
            stopScrewMovedByOthers: null,
            reportedByDriver: true,
            components: [],
            beganAfterRepair: false,
            distanceKm: null,
          }),
        );
      const { items, lookBackDays } = await get('/v1/vehicle-outlooks');
      expect(lookBackDays).toBe(365);
      const told = items.map(
        ({ label, reasons }: { label: string; reasons: { reason: string; count: number }[] }) => [
          label,
          reasons.map(({ reason, count }) => `${reason} ${String(count)}`).join(', '),
        ],
      );
      expect(told.slice(0, 2)).toEqual([
        ['=Van 3', 'overdueService 1'],
        ['Van 6', 'repeatedComplaint 1'],
      ]);
      expect(told.at(-1)).toEqual(['Van 5', '']);
      expect((await get('/v1/vehicle-outlooks', manager)).items).toEqual([]);
    });
  });

  describe('costs', () => {
    let van: string;

    /** One visit: opened 1 March, waits for a part 2 to 7 March, released 10 March; 90 minutes and a part at 120.00. */
    const visit = async (): Promise<void> => {
      const tx = { at: '2026-03-10T00:00:00.000Z', by: desk.id };
      const [jobId, lineId] = [api.ids.next(), api.ids.next()];
      await api.work.run(shop.id, async (stores) => {
        const job = {
          openedAt: '2026-03-01T00:00:00.000Z',
          assignedTo: null,
          diagnosedBy: null,
          causeId: null,
          note: null,
        };
        await stores.jobs.add(jobId, { vehicleId: van }, job, tx);
        for (const [kind, happenedAt] of [
          ['waitingForPart', '2026-03-02T00:00:00.000Z'],
          ['resumed', '2026-03-07T00:00:00.000Z'],
          ['workFinished', '2026-03-09T00:00:00.000Z'],
        ] as const)
          await stores.jobEvents.add(api.ids.next(), { jobId }, { kind, happenedAt, note: null }, tx);
        const line = {
          action: 'replace',
          componentType: 'fuel-filter',
          position: 'engine',
          fittedPartId: null,
          state: 'done',
          technicianId: desk.id,
          doneAt: '2026-03-08T00:00:00.000Z',
          minutes: 90,
          description: null,
          from: null,
          to: null,
          protectedPurpose: null,
          protectedReason: null,
          part: {
            condition: 'new',
            supplier: null,
            partNumber: null,
            serial: null,
            batch: null,
            price: eur('120.00'),
          },
        } as const;
        await stores.workLines.add(lineId, { jobId }, line, tx);
        await stores.workLines.add(
          api.ids.next(),
          { jobId },
          { ...line, minutes: null, part: { ...line.part, price: { amount: '9.50', currency: 'GBP' } } },
          tx,
        );
        const release = {
          releasedAt: '2026-03-10T00:00:00.000Z',
          windowDays: 90,
          windowKm: '5000',
          distanceKm: null,
          releasedBy: desk.id,
          statement: 'may leave',
        };
        await stores.releases.add(api.ids.next(), { jobId }, release, tx);
      });
    };

    beforeAll(async () => {
      van = await newVan('Van 7');
      await read(van, '10000', '2026-01-01T00:00:00Z');
      await read(van, '20000', '2026-04-11T00:00:00Z');
      await visit();
    });

    it('by hand: 1.5 h at 80.00, a part at 120.00 and 9 days at 100.00 are 1140.00; over 7,500 km that is 0.152 a km', async () => {
      // Asked from 26 January: between the readings lie 100 days and 10,000 km, 100 a day; 75 days of them are asked about.
      const query = '?from=2026-01-26T00:00:00Z&until=2026-06-01T00:00:00Z';
      const costs = await get(`/v1/vehicles/${van}/costs${query}`);
      expect(costs).toMatchObject({
        labour: eur('120.00'),
        parts: eur('120.00'),
        downtimeCost: eur('900.00'),
        total: eur('1140.00'),
        hours: 1.5,
        lines: 2,
        linesWithoutMinutes: 1,
        otherCurrencies: [{ amount: '9.50', currency: 'GBP' }],
        downtime: { days: 9, visits: 1, inWork: 3, waitingForPart: 5, waitingForRelease: 1 },
      });
      expect(costs.perKm.km).toBeCloseTo(7500, 6);
      expect(costs.perKm.amountPerKm).toBeCloseTo(0.152, 9);
      const fleet = await get(`/v1/fleet-costs${query}`);
      expect([fleet.items[0].vehicle.label, fleet.together.total]).toEqual(['Van 7', eur('1140.00')]);
      expect(fleet.vehiclesWithDistance).toBe(2);
      const file = await api.call('GET', `/v1/fleet-costs${query}`, {
        as: desk,
        headers: { accept: 'text/csv' },
      });
      expect((file.body as string).split('\r\n')[1]).toContain(
        ',EUR,120.00,120.00,900.00,1140.00,1.5,2,9,3,0,5,0,1,',
      );
    });

    it('says that the distance is not known, refuses a time turned round, and tells nobody else', async () => {
      const calm = await newVan('Van 8');
      const costs = await get(`/v1/vehicles/${calm}/costs`);
      expect([costs.total, costs.perKm.kind, costs.perKm.needed]).toEqual([
        eur('0.00'),
        'insufficientData',
        2,
      ]);
      const turned = `/v1/vehicles/${van}/costs?from=2026-02-01T00:00:00Z&until=2026-01-01T00:00:00Z`;
      expect((await api.call('GET', turned, { as: desk })).body.errors[0].pointer).toBe('/from');
      expect((await api.call('GET', `/v1/vehicles/${van}/costs`, { as: manager })).status).toBe(404);
      expect((await get('/v1/fleet-costs', manager)).vehicles).toBe(0);
    });

    /** A truck of 6,000: cheapest to replace after 5 years at 2,700 a year, in the textbooks for a fleet owner. */
    const truck = {
      price: eur('6000'),
      years: [
        ['1000', '3000'],
        ['1200', '1500'],
        ['1400', '750'],
        ['1800', '375'],
        ['2300', '200'],
        ['2800', '200'],
        ['3400', '200'],
        ['4000', '200'],
      ].map(([running, resale]) => ({ running, resale })),
    };
    const ask = (change: object, as = desk) =>
      post(
        `/v1/vehicles/${van}/keeping-previews`,
        {
          resaleNow: eur('1000.00'),
          resaleFallPerYear: '0.5',
          furtherYears: 2,
          expectedRunning: null,
          challenger: truck,
          discountRate: null,
          ...change,
        },
        as,
      );
    const stated = (...years: string[]) => ({ expectedRunning: years.map((running) => ({ running })) });

    it('the published truck costs 2,700 a year over 5 years; a van that costs 1,900 and then 2,600 is kept for both', async () => {
      // Value 1000, 500, 250: the first year costs 1900 + 500 = 2400, the second 2600 + 250 = 2850 > 2700.
      const { status, body } = await ask(stated('1900', '2600'));
      expect(status).toBe(200);
      expect(body.outcome).toMatchObject({
        kind: 'decided',
        basis: 'stated',
        decision: 'keep',
        keepYears: 1,
        challengerYears: 5,
        isChallengerOpen: false,
        isSettled: false,
      });
      expect(body.outcome.challengerCost).toBeCloseTo(2700, 9);
      expect(body.outcome.costs.map(({ marginalCost }: { marginalCost: number }) => marginalCost)).toEqual([
        2400, 2850,
      ]);
      expect((await ask(stated('3000', '3000'))).body.outcome.decision).toBe('replaceNow');
      expect((await ask(stated('100', '100'))).body.outcome.decision).toBe('keepThroughout');
    });

    it('without three full years of its own it says how many are needed; what cannot be is refused', async () => {
      expect((await ask({})).body.outcome).toEqual({
        kind: 'insufficientData',
        of: 'full calendar years of this vehicle with the shop',
        needed: 3,
        got: 0,
      });
      const refused = async (change: object) => {
        const { status, body } = await ask(change);
        return [status, body.errors[0].pointer];
      };
      expect(await refused(stated('1900'))).toEqual([422, '/expectedRunning']);
      expect(await refused({ resaleFallPerYear: '1.5' })).toEqual([422, '/resaleFallPerYear']);
      expect(await refused({ resaleNow: { amount: '5', currency: 'GBP' } })).toEqual([
        422,
        '/resaleNow/currency',
      ]);
      expect((await ask({}, manager)).status).toBe(404);
    });
  });
});
