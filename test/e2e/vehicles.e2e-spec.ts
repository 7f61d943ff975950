import { startTestApi, type TestApi, type TestShop } from '../support/api.js';

const van = {
  chassisNumber: 'ZZZTEST7XZA000014',
  plate: 'QX 14 LTN',
  label: 'Van 14',
  firstUsedOn: '1991-04-02',
  application: null,
  attributes: {},
  expectedKmPerYear: null,
  observedSpans: [],
  retiredOn: null,
};

describe('vehicles', () => {
  let api: TestApi;
  let shop: TestShop;
  let customerId: string;

  beforeAll(async () => {
    api = await startTestApi();
    shop = await api.openShop();
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

  it('records a vehicle and shows it with its owner', async () => {
    const made = await api.call('POST', '/v1/vehicles', { as: shop.owner, body: { ...van, customerId } });
    expect(made.status).toBe(201);
    expect(made.headers.location).toBe(`/v1/vehicles/${made.body.id}`);
    const shown = await api.call('GET', `/v1/vehicles/${made.body.id}`, { as: shop.owner });
    expect(shown.body).toMatchObject({ label: 'Van 14', owner: { customerId }, version: 1 });
  });

  it('answers the same request sent again with the first record, and other content under its id with 409', async () => {
    const body = { ...van, id: api.ids.next(), chassisNumber: null, plate: null, customerId };
    expect((await api.call('POST', '/v1/vehicles', { as: shop.owner, body })).status).toBe(201);
    expect((await api.call('POST', '/v1/vehicles', { as: shop.owner, body })).status).toBe(200);
    const other = await api.call('POST', '/v1/vehicles', {
      as: shop.owner,
      body: { ...body, label: 'Van 15' },
    });
    expect(other.status).toBe(409);
  });

  it('JOB rule 11: a wrong check digit and a double number warn and refuse nothing', async () => {
    const body = { ...van, chassisNumber: 'ZZZTEST70ZA000014', plate: null, customerId };
    const made = await api.call('POST', '/v1/vehicles', { as: shop.owner, body });
    expect(made.status).toBe(201);
    expect(made.body.warnings.map((warning: { code: string }) => warning.code)).toEqual([
      'checkDigitDiffers',
    ]);
    const again = await api.call('POST', '/v1/vehicles', { as: shop.owner, body });
    expect(again.body.warnings.map((warning: { code: string }) => warning.code)).toContain(
      'numberAlsoOnOtherVehicle',
    );
  });

  it('JOB rule 1: a correction keeps the earlier revision and is refused from a stale version', async () => {
    const made = await api.call('POST', '/v1/vehicles', {
      as: shop.owner,
      body: { ...van, plate: 'AB 1', customerId },
    });
    const url = `/v1/vehicles/${made.body.id}`;
    const body = { ...van, plate: 'AB 2', reason: 'read wrongly in the rain' };
    const without = await api.call('POST', `${url}/corrections`, { as: shop.owner, body });
    expect(without.status).toBe(428);
    const corrected = await api.call('POST', `${url}/corrections`, { as: shop.owner, body, ifMatch: '"1"' });
    expect(corrected).toMatchObject({
      status: 201,
      body: { plate: 'AB 2', version: 2, reason: 'read wrongly in the rain' },
    });
    const stale = await api.call('POST', `${url}/corrections`, { as: shop.owner, body, ifMatch: '"1"' });
    expect(stale.status).toBe(412);
    const before = await api.call('GET', `${url}?asOf=${made.body.recordedAt}`, { as: shop.owner });
    expect(before.body).toMatchObject({ plate: 'AB 1', version: 1 });
    const all = await api.call('GET', `${url}/revisions`, { as: shop.owner });
    expect(all.body.items.map((item: { plate: string }) => item.plate)).toEqual(['AB 1', 'AB 2']);
  });

  it("JOB rule 16: a fleet manager sees their customer's vehicles only, and loses sight of a van that changes hands", async () => {
    const fleet = await api.call('POST', '/v1/customers', {
      as: shop.owner,
      body: {
        kind: 'fleetOperator',
        contact: { name: 'Brindle Parcels' },
        downtimeCostPerDay: '95.00',
        planningDistanceKm: null,
      },
    });
    const manager = await shop.user(['fleetManager'], fleet.body.id);
    const own = await api.call('POST', '/v1/vehicles', {
      as: shop.owner,
      body: { ...van, customerId: fleet.body.id },
    });
    const foreign = await api.call('POST', '/v1/vehicles', { as: shop.owner, body: { ...van, customerId } });
    const list = await api.call('GET', '/v1/vehicles', { as: manager });
    expect(list.body.items.map((item: { id: string }) => item.id)).toEqual([own.body.id]);
    const unknown = await api.call('GET', `/v1/vehicles/${api.ids.next()}`, { as: manager });
    const hidden = await api.call('GET', `/v1/vehicles/${foreign.body.id}`, { as: manager });
    expect([hidden.status, hidden.body.type, hidden.body.detail]).toEqual([
      404,
      unknown.body.type,
      unknown.body.detail,
    ]);
    await api.call('POST', `/v1/vehicles/${own.body.id}/ownerships`, {
      as: shop.owner,
      body: { customerId, fromAt: new Date().toISOString() },
    });
    expect((await api.call('GET', `/v1/vehicles/${own.body.id}`, { as: manager })).status).toBe(404);
  });

  it('API row 1: another shop sees neither the vehicle nor that it exists', async () => {
    const other = await api.openShop();
    const made = await api.call('POST', '/v1/vehicles', { as: shop.owner, body: { ...van, customerId } });
    expect((await api.call('GET', `/v1/vehicles/${made.body.id}`, { as: other.owner })).status).toBe(404);
  });

  it('API row 2: a customer of another shop inside a body is an unknown reference', async () => {
    const other = await api.openShop();
    const answer = await api.call('POST', '/v1/vehicles', { as: other.owner, body: { ...van, customerId } });
    expect(answer.status).toBe(422);
    expect(answer.body.errors[0].pointer).toBe('/customerId');
  });
});
