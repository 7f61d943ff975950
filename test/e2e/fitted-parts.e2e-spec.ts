import {
  StandingClock,
  startTestApi,
  type Reply,
  type TestApi,
  type TestShop,
  type TestUser,
} from '../support/api.js';

const fitted = {
  componentType: 'throttle-housing',
  position: 'intake',
  condition: 'remanufactured',
  fittedAt: '2025-06-01T10:00:00Z',
  fittedKm: '120000',
  removedAt: null,
  removedKm: null,
  serial: null,
  batch: null,
  supplier: 'Birchmoor Castings',
  partNumber: null,
  removalReason: null,
};

describe('fitted parts', () => {
  let api: TestApi;
  let clock: StandingClock;
  let shop: TestShop;
  let technician: TestUser;
  let customerId: string;

  beforeAll(async () => {
    clock = new StandingClock('2026-03-02T09:00:00.000Z');
    api = await startTestApi({ clock });
    shop = await api.openShop();
    technician = await shop.user(['technician']);
    customerId = await newCustomer('Ottoline Farrow');
  });
  afterAll(() => api.close());

  const post = (url: string, body: object, as = technician, ifMatch?: string): Promise<Reply> =>
    api.call('POST', url, { as, body, ifMatch });
  const list = (query: string, as = technician): Promise<Reply> =>
    api.call('GET', `/v1/fitted-parts?${query}`, { as });
  const idsIn = ({ body }: Reply): string[] => body.items.map(({ id }: { id: string }) => id);
  async function newCustomer(name: string): Promise<string> {
    const made = await post(
      '/v1/customers',
      { kind: 'fleetOperator', contact: { name }, downtimeCostPerDay: null, planningDistanceKm: null },
      shop.owner,
    );
    return made.body.id;
  }
  const newVan = async (owner = customerId): Promise<string> => {
    const made = await post('/v1/vehicles', {
      chassisNumber: null,
      plate: null,
      label: 'Van 14',
      firstUsedOn: null,
      application: null,
      attributes: {},
      expectedKmPerYear: null,
      observedSpans: [],
      retiredOn: null,
      customerId: owner,
      ownedFrom: '2020-01-01T00:00:00Z',
    });
    return made.body.id;
  };
  const fit = (vehicleId: string, more: object = {}): Promise<Reply> =>
    post('/v1/fitted-parts', { ...fitted, vehicleId, ...more });
  const mustFit = async (vehicleId: string, more: object = {}): Promise<string> => {
    const made = await fit(vehicleId, more);
    expect([made.status, made.status < 300 ? '' : made.body]).toEqual([201, '']);
    return made.body.id;
  };
  const correct = (id: string, more: object, ifMatch?: string): Promise<Reply> =>
    post(
      `/v1/fitted-parts/${id}/corrections`,
      { ...fitted, reason: 'read the label', ...more },
      technician,
      ifMatch,
    );

  it('are recorded, shown, and recorded once when sent again', async () => {
    const vehicleId = await newVan();
    const id = api.ids.next();
    const made = await fit(vehicleId, { id });
    expect(made).toMatchObject({
      status: 201,
      body: {
        id,
        vehicleId,
        condition: 'remanufactured',
        replacesPartId: null,
        workLineId: null,
        version: 1,
      },
    });
    expect(made.headers['location']).toBe(`/v1/fitted-parts/${id}`);
    expect((await fit(vehicleId, { id })).status).toBe(200);
    expect((await fit(vehicleId, { id, serial: 'S 9' })).status).toBe(409);
    const shown = await api.call('GET', `/v1/fitted-parts/${id}`, { as: technician });
    expect(shown.body).toEqual(made.body);
  });

  it('refuses two parts at one place at one time, and takes one at another place or after the first was removed', async () => {
    const vehicleId = await newVan();
    const first = await mustFit(vehicleId);
    const second = await fit(vehicleId, { fittedAt: '2025-09-01T10:00:00Z' });
    expect([second.status, second.body.code, second.body.errors[0]]).toEqual([
      409,
      'part.alreadyFitted',
      { pointer: '/fittedAt', rule: 'onePartAPlace', detail: `part ${first}` },
    ]);
    const before = await fit(vehicleId, { fittedAt: null, condition: 'original' });
    expect(before.status).toBe(409);
    await mustFit(vehicleId, { fittedAt: null, condition: 'original', removedAt: fitted.fittedAt });
    await mustFit(vehicleId, { componentType: 'tyre', position: 'front-left' });
    await mustFit(vehicleId, { componentType: 'tyre', position: 'front-right' });
    const removed = await correct(
      first,
      { removedAt: '2025-09-01T10:00:00Z', removedKm: '126000', removalReason: 'shaft worn' },
      '"1"',
    );
    expect(removed.status).toBe(201);
    await mustFit(vehicleId, { fittedAt: '2025-09-01T10:00:00Z' });
  });

  it('of two who fit a part at one place at once one is refused', async () => {
    const vehicleId = await newVan();
    const answers = await Promise.all([1, 2, 3, 4].map((at) => fit(vehicleId, { serial: `S ${at}` })));
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 409, 409, 409]);
  });

  it('takes a part whose life was zero, twice on one day', async () => {
    const vehicleId = await newVan();
    const noon = '2025-06-01T12:00:00Z';
    await mustFit(vehicleId, { removedAt: noon });
    const short = await mustFit(vehicleId, {
      fittedAt: noon,
      removedAt: noon,
      fittedKm: '120000',
      removedKm: '120000',
    });
    const shown = await api.call('GET', `/v1/fitted-parts/${short}`, { as: technician });
    expect(shown.body.fittedAt).toBe(shown.body.removedAt);
    await mustFit(vehicleId, { fittedAt: noon });
    expect((await list(`vehicleId=${vehicleId}`)).body.items).toHaveLength(3);
  });

  it('refuses a removal before the fitting, and work that has not happened yet', async () => {
    const vehicleId = await newVan();
    const order = await fit(vehicleId, { removedAt: '2025-05-31T10:00:00Z' });
    expect([order.status, order.body.errors[0].pointer]).toEqual([422, '/removedAt']);
    const tomorrow = await fit(vehicleId, { fittedAt: '2026-03-03T09:00:00Z' });
    expect([tomorrow.status, tomorrow.body.errors[0].pointer]).toEqual([422, '/fittedAt']);
    const ahead = await fit(vehicleId, { fittedAt: '2026-03-02T09:04:00Z' });
    expect(ahead.status).toBe(201);
  });

  it('answers which vehicles got a batch', async () => {
    const vans = [await newVan(), await newVan(), await newVan()] as const;
    await mustFit(vans[0], { batch: 'BX-71' });
    await mustFit(vans[1], { batch: 'BX-72' });
    await mustFit(vans[2], { batch: 'BX-71', removedAt: '2025-09-01T10:00:00Z' });
    const found = await list('batch=BX-71');
    const vehicles = found.body.items.map(({ vehicleId }: { vehicleId: string }) => vehicleId);
    expect(new Set(vehicles)).toEqual(new Set([vans[0], vans[2]]));
    expect((await list('batch=BX-7')).body.items).toEqual([]);
    const first = await list('batch=BX-71&pageSize=1');
    const second = await list(`batch=BX-71&pageSize=1&cursor=${first.body.nextCursor}`);
    expect([...idsIn(first), ...idsIn(second)]).toEqual(idsIn(found));
    expect(second.body.nextCursor).toBeNull();
  });

  it('JOB rule 1: which vehicles got a batch is answered as it was known on a day, too', async () => {
    const id = await mustFit(await newVan(), { batch: 'CY-10' });
    const then = clock.now();
    clock.moveOn(60_000);
    expect((await correct(id, { batch: 'CY-11' })).status).toBe(428);
    expect((await correct(id, { batch: 'CY-11' }, '"3"')).status).toBe(412);
    expect((await correct(id, { batch: 'CY-11' }, '"1"')).body).toMatchObject({ batch: 'CY-11', version: 2 });
    expect(idsIn(await list('batch=CY-10'))).toEqual([]);
    expect(idsIn(await list(`batch=CY-10&asOf=${then}`))).toEqual([id]);
    expect(idsIn(await list('batch=CY-11'))).toEqual([id]);
    const shown = await api.call('GET', `/v1/fitted-parts/${id}?asOf=${then}`, { as: technician });
    expect(shown.body).toMatchObject({ batch: 'CY-10', version: 1, replacedAt: clock.now() });
  });

  it('a correction does not put two parts at one place either', async () => {
    const vehicleId = await newVan();
    const first = await mustFit(vehicleId, { removedAt: '2025-09-01T10:00:00Z' });
    await mustFit(vehicleId, { fittedAt: '2025-09-01T10:00:00Z' });
    const refused = await correct(first, { removedAt: null }, '"1"');
    expect([refused.status, refused.body.code]).toEqual([409, 'part.alreadyFitted']);
  });

  it('API row 2: a vehicle of another shop, or of nobody, is an unknown reference', async () => {
    const other = await api.openShop();
    const vehicleId = await newVan();
    for (const [id, as] of [
      [vehicleId, other.owner],
      [api.ids.next(), technician],
    ] as const) {
      const refused = await post('/v1/fitted-parts', { ...fitted, vehicleId: id }, as);
      expect([refused.status, refused.body.errors[0].pointer]).toEqual([422, '/vehicleId']);
    }
  });

  it('JOB rule 16: a fleet manager finds the batch on their own vans only', async () => {
    const fleet = await newCustomer('Brindle Parcels');
    const manager = await shop.user(['fleetManager'], fleet);
    const own = await mustFit(await newVan(fleet), { batch: 'DZ-1' });
    const foreignVan = await newVan();
    const foreign = await mustFit(foreignVan, { batch: 'DZ-1' });
    expect(idsIn(await list('batch=DZ-1', manager))).toEqual([own]);
    expect((await list(`vehicleId=${foreignVan}`, manager)).status).toBe(404);
    expect((await api.call('GET', `/v1/fitted-parts/${foreign}`, { as: manager })).status).toBe(404);
    expect((await api.call('GET', `/v1/fitted-parts/${own}`, { as: manager })).status).toBe(200);
  });

  it.each(['fleetManager', 'auditor', 'developer'] as const)(
    'API row 7: %s records no part',
    async (role) => {
      const as = await shop.user([role], role === 'fleetManager' ? customerId : undefined);
      const refused = await post('/v1/fitted-parts', { ...fitted, vehicleId: await newVan() }, as);
      expect([refused.status, refused.body.type]).toEqual([403, '/problems/insufficient-scope']);
    },
  );
});
