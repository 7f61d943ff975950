import { startTestApi, type TestApi, type TestShop } from '../support/api.js';

const remanufactured = {
  componentType: 'throttle-housing',
  condition: 'remanufactured',
  supplier: 'Birchmoor Castings',
  partNumber: 'BC-114 R',
  price: { amount: '310.00', currency: 'EUR' },
  coreDeposit: { amount: '80.00', currency: 'EUR' },
  promisedLeadDays: 3,
  warrantyMonths: 12,
  validUntil: null,
};

describe('offers', () => {
  let api: TestApi;
  let shop: TestShop;

  beforeAll(async () => {
    api = await startTestApi();
    shop = await api.openShop();
  });
  afterAll(() => api.close());

  const make = (change: object = {}) =>
    api.call('POST', '/v1/offers', { as: shop.owner, body: { ...remanufactured, ...change } });

  it('records an offer, shows it, and lists it by kind of part and by supplier', async () => {
    const made = await make();
    expect(made.status).toBe(201);
    expect(made.headers.location).toBe(`/v1/offers/${made.body.id}`);
    const shown = await api.call('GET', `/v1/offers/${made.body.id}`, { as: shop.owner });
    expect(shown.body).toMatchObject({ ...remanufactured, version: 1 });
    await make({ componentType: 'battery', supplier: 'Fenwick Cells', coreDeposit: null });
    const ofKind = await api.call('GET', '/v1/offers?componentType=battery', { as: shop.owner });
    expect(ofKind.body.items.map((item: { supplier: string }) => item.supplier)).toEqual(['Fenwick Cells']);
    const ofSupplier = await api.call('GET', '/v1/offers?supplier=Birchmoor%20Castings', { as: shop.owner });
    expect(ofSupplier.body.items.map((item: { id: string }) => item.id)).toEqual([made.body.id]);
  });

  it('answers the same offer sent again with the first one, and other content under its id with 409', async () => {
    const id = api.ids.next();
    expect((await make({ id })).status).toBe(201);
    expect((await make({ id })).status).toBe(200);
    expect((await make({ id, promisedLeadDays: 4 })).status).toBe(409);
  });

  it('JOB rule 1: a corrected price keeps the earlier one, readable as of its time', async () => {
    const made = await make();
    const url = `/v1/offers/${made.body.id}`;
    const body = {
      ...remanufactured,
      price: { amount: '330.00', currency: 'EUR' },
      reason: 'new list of the supplier',
    };
    const corrected = await api.call('POST', `${url}/corrections`, { as: shop.owner, body, ifMatch: '"1"' });
    expect(corrected).toMatchObject({ status: 201, body: { version: 2, price: { amount: '330.00' } } });
    const stale = await api.call('POST', `${url}/corrections`, { as: shop.owner, body, ifMatch: '"1"' });
    expect(stale.status).toBe(412);
    const before = await api.call('GET', `${url}?asOf=${made.body.recordedAt}`, { as: shop.owner });
    expect(before.body.price.amount).toBe('310.00');
    const all = await api.call('GET', `${url}/revisions`, { as: shop.owner });
    expect(all.body.items).toHaveLength(2);
  });

  it('API row 27: a missing currency, and a price and a deposit in two currencies, are refused; a foreign quote is kept as quoted', async () => {
    const without = await make({ price: { amount: '310.00' } });
    expect([without.status, without.body.errors[0].pointer]).toEqual([422, '/price/currency']);
    const mixed = await make({ coreDeposit: { amount: '80.00', currency: 'USD' } });
    expect([mixed.status, mixed.body.type]).toEqual([422, expect.stringContaining('currency-mismatch')]);
    expect(mixed.body.errors[0].pointer).toBe('/coreDeposit/currency');
    const foreign = await make({ price: { amount: '290.00', currency: 'USD' }, coreDeposit: null });
    expect([foreign.status, foreign.body.price]).toEqual([201, { amount: '290.00', currency: 'USD' }]);
  });

  it('refuses a negative price and decimals that the currency does not have, and takes a missing price as not quoted', async () => {
    const negative = await make({ price: { amount: '-1.00', currency: 'EUR' } });
    expect([negative.status, negative.body.errors[0].pointer]).toEqual([422, '/price/amount']);
    const yen = await make({ price: { amount: '310.50', currency: 'JPY' }, coreDeposit: null });
    expect(yen.status).toBe(422);
    const notQuoted = await make({ price: null, coreDeposit: null });
    expect([notQuoted.status, notQuoted.body.price]).toEqual([201, null]);
  });

  it('records an order, then its arrival as a correction, and keeps both', async () => {
    const { body: offer } = await make();
    const order = { orderedOn: '2026-03-02', promisedOn: '2026-03-05', arrivedOn: null };
    const ordered = await api.call('POST', `/v1/offers/${offer.id}/deliveries`, {
      as: shop.owner,
      body: order,
    });
    expect(ordered.status).toBe(201);
    const url = `/v1/deliveries/${ordered.body.id}`;
    expect(ordered.headers.location).toBe(url);
    const arrived = await api.call('POST', `${url}/corrections`, {
      as: shop.owner,
      body: { ...order, arrivedOn: '2026-03-09', reason: 'it came' },
      ifMatch: '"1"',
    });
    expect(arrived).toMatchObject({ status: 201, body: { arrivedOn: '2026-03-09', version: 2 } });
    const all = await api.call('GET', `/v1/offers/${offer.id}/deliveries`, { as: shop.owner });
    expect(all.body.items).toMatchObject([{ ...order, arrivedOn: '2026-03-09' }]);
    const history = await api.call('GET', `${url}/revisions`, { as: shop.owner });
    expect(history.body.items.map((item: { arrivedOn: string | null }) => item.arrivedOn)).toEqual([
      null,
      '2026-03-09',
    ]);
  });

  it('refuses a part that arrives before it was ordered, or on a day that has not come', async () => {
    const { body: offer } = await make();
    const send = (body: object) =>
      api.call('POST', `/v1/offers/${offer.id}/deliveries`, { as: shop.owner, body });
    const early = await send({ orderedOn: '2026-03-02', promisedOn: null, arrivedOn: '2026-03-01' });
    expect([early.status, early.body.errors[0].pointer]).toEqual([422, '/arrivedOn']);
    const late = await send({ orderedOn: '2026-03-02', promisedOn: null, arrivedOn: '2199-01-01' });
    expect([late.status, late.body.errors[0].rule]).toEqual([422, 'notInFuture']);
    const noOffer = await api.call('POST', `/v1/offers/${api.ids.next()}/deliveries`, {
      as: shop.owner,
      body: { orderedOn: '2026-03-02', promisedOn: null, arrivedOn: null },
    });
    expect(noOffer.status).toBe(404);
  });

  it('JOB rule 16: a fleet manager sees no offers, another shop neither list nor record', async () => {
    const { body: offer } = await make();
    const customer = await api.call('POST', '/v1/customers', {
      as: shop.owner,
      body: {
        kind: 'fleetOperator',
        contact: { name: 'Brindle Parcels' },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      },
    });
    const manager = await shop.user(['fleetManager'], customer.body.id);
    expect((await api.call('GET', '/v1/offers', { as: manager })).status).toBe(403);
    const other = await api.openShop();
    expect((await api.call('GET', `/v1/offers/${offer.id}`, { as: other.owner })).status).toBe(404);
    expect((await api.call('GET', '/v1/offers', { as: other.owner })).body.items).toEqual([]);
  });
});
