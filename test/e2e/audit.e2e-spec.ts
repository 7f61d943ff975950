import {
  StandingClock,
  startTestApi,
  type Reply,
  type TestApi,
  type TestShop,
  type TestUser,
} from '../support/api.js';

let api: TestApi;
let shop: TestShop;
const clock = new StandingClock('2031-05-04T09:30:00.000Z');

beforeAll(async () => {
  api = await startTestApi({ clock });
});
afterAll(() => api.close());
beforeEach(async () => {
  clock.moveOn(86_400_000 * 40);
  shop = await api.openShop();
  clock.moveOn(1000);
});

const entries = (query = '', as: TestUser = shop.owner): Promise<Reply> =>
  api.call('GET', `/v1/audit-entries${query}`, { as });
const instrument = {
  kind: 'dialIndicator',
  name: 'dial 3',
  serial: null,
  errorModel: { kind: 'maximumPermissibleError', limit: { value: '0.015', unit: 'mm' } },
  resolution: { value: '0.01', unit: 'mm' },
  retiredOn: null,
};
const newInstrument = async (as: TestUser): Promise<string> => {
  const made = await api.call('POST', '/v1/instruments', { as, body: instrument });
  expect(made.status).toBe(201);
  return made.body.id;
};

describe('S7: the audit trail', () => {
  it('JOB rule 1: tells who recorded and who corrected what, when and why', async () => {
    const desk = shop.owner;
    const id = await newInstrument(desk);
    const recordedAt = clock.now();
    clock.moveOn(60_000);
    const corrected = await api.call('POST', `/v1/instruments/${id}/corrections`, {
      as: shop.owner,
      ifMatch: '"1"',
      body: { ...instrument, name: 'dial 4', reason: 'wrong drawer' },
    });
    expect(corrected.status).toBe(201);
    clock.moveOn(1);
    const { body } = await entries(`?kind=instrument&recordId=${id}`);
    expect(body.items).toEqual([
      {
        kind: 'instrument',
        recordId: id,
        version: 2,
        action: 'corrected',
        at: new Date(Date.parse(recordedAt) + 60_000).toISOString(),
        by: shop.owner.id,
        reason: 'wrong drawer',
      },
      {
        kind: 'instrument',
        recordId: id,
        version: 1,
        action: 'recorded',
        at: recordedAt,
        by: desk.id,
        reason: null,
      },
    ]);
  });

  it('tells of keys that were made and revoked, of secrets, and of personal data that was erased', async () => {
    const technician = await shop.user(['technician']);
    const key = await api.call('POST', '/v1/api-keys', {
      as: shop.owner,
      body: { userId: technician.id, name: 'tablet', roles: ['technician'], expiresAt: null },
    });
    await api.call('POST', `/v1/api-keys/${String(key.body.id)}/revocations`, { as: shop.owner });
    await api.call('POST', '/v1/webhook-endpoints', {
      as: shop.owner,
      headers: { 'idempotency-key': 'a' },
      body: { url: 'https://hooks.example.com/', description: 'a', eventTypes: null },
    });
    const customer = await api.call('POST', '/v1/customers', {
      as: shop.owner,
      body: {
        kind: 'person',
        contact: { name: 'Erasmus Thorn' },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      },
    });
    await api.call('POST', `/v1/customers/${String(customer.body.id)}/erasures`, {
      as: shop.owner,
      body: { reason: 'asked for it in writing' },
    });
    clock.moveOn(1);
    const { body } = await entries('?pageSize=200');
    const told = body.items.map((each: { action: string; by: string | null; reason: string | null }) => [
      each.action,
      each.by,
      each.reason,
    ]);
    expect(told).toContainEqual(['keyMade', shop.owner.id, null]);
    expect(told).toContainEqual(['keyRevoked', shop.owner.id, null]);
    expect(told).toContainEqual(['secretMade', shop.owner.id, null]);
    expect(told).toContainEqual(['personalDataErased', shop.owner.id, 'asked for it in writing']);
    expect(JSON.stringify(body)).not.toContain('Thorn');
  });

  it('is read by user, by kind, and within a span of at most a year', async () => {
    const technician = await shop.user(['technician', 'owner']);
    await newInstrument(technician);
    await newInstrument(shop.owner);
    clock.moveOn(1);
    const own = await entries(`?userId=${technician.id}&kind=instrument`);
    expect(own.body.items.map(({ by }: { by: string }) => by)).toEqual([technician.id]);
    const then = clock.now();
    clock.moveOn(40 * 86_400_000);
    expect((await entries()).body.items).toEqual([]);
    const wider = await entries(`?from=2031-01-01T00:00:00Z&until=${then}`);
    expect(wider.status).toBe(200);
    const tooWide = await entries(`?from=2029-01-01T00:00:00Z&until=${then}`);
    expect([tooWide.status, tooWide.body.errors[0].pointer]).toEqual([400, '/from']);
    const turned = await entries(`?from=${clock.now()}&until=${then}`);
    expect(turned.status).toBe(400);
    expect((await entries('?kind=noSuchThing')).body.items).toEqual([]);
  });

  it('comes in pages, none twice, none missed', async () => {
    for (let at = 0; at < 6; at += 1) await newInstrument(shop.owner);
    clock.moveOn(1);
    const all = (await entries('?kind=instrument')).body.items;
    const seen: unknown[] = [];
    for (let cursor: string | null = ''; cursor !== null;) {
      const more: string = cursor === '' ? '' : `&cursor=${encodeURIComponent(cursor)}`;
      const page = await entries(`?kind=instrument&pageSize=2&until=${clock.now()}${more}`);
      seen.push(...page.body.items);
      cursor = page.body.nextCursor;
    }
    expect(seen).toEqual(all);
    expect(all).toHaveLength(6);
  });

  it('API row 1: is that of one shop', async () => {
    await newInstrument(shop.owner);
    const other = await api.openShop();
    clock.moveOn(1);
    const { body } = await entries('?pageSize=200', other.owner);
    expect(body.items.every(({ by }: { by: string }) => by === other.owner.id)).toBe(true);
    expect(body.items.some(({ kind }: { kind: string }) => kind === 'instrument')).toBe(false);
  });
});
