import {
  startTestApi,
  StandingClock,
  type Reply,
  type TestApi,
  type TestShop,
  type TestUser,
} from '../support/api.js';

const minute = 60_000;

describe('keys of a shop', () => {
  const clock = new StandingClock('2031-05-04T09:00:00.000Z');
  let api: TestApi;
  let shop: TestShop;

  beforeAll(async () => {
    api = await startTestApi({ clock });
    shop = await api.openShop();
  });
  afterAll(() => api.close());

  const bearer = (key: string): TestUser => ({ id: '', authorization: `Bearer ${key}` });
  const post = (url: string, body: unknown, as = shop.owner): Promise<Reply> =>
    api.call('POST', url, { as, body });
  const look = async (key: string): Promise<number> =>
    (await api.call('GET', '/v1/customers', { as: bearer(key) })).status;
  const newKey = async (more: object = {}): Promise<{ id: string; key: string }> => {
    const desk = await shop.user(['desk']);
    const made = await post('/v1/api-keys', {
      userId: desk.id,
      name: 'counter',
      roles: ['desk'],
      expiresAt: null,
      ...more,
    });
    expect(made.status).toBe(201);
    return made.body;
  };
  const rotate = (id: string, overlapMinutes: number, expiresAt: string | null = null): Promise<Reply> =>
    post(`/v1/api-keys/${id}/rotations`, { overlapMinutes, expiresAt });
  const listed = async (id: string) => {
    const { body } = await api.call('GET', '/v1/api-keys', { as: shop.owner });
    return body.items.find((each: { id: string }) => each.id === id);
  };
  const customer = {
    kind: 'person',
    contact: { name: 'Fenwick Moss' },
    downtimeCostPerDay: null,
    planningDistanceKm: null,
  };

  it('API row 7: a key that only reads is refused every write, whatever its roles', async () => {
    const { id, key } = await newKey({ readOnly: true });
    expect(await listed(id)).toMatchObject({ readOnly: true });
    expect(await look(key)).toBe(200);
    const refused = await post('/v1/customers', customer, bearer(key));
    expect([refused.status, refused.body.type, refused.headers['www-authenticate']]).toEqual([
      403,
      '/problems/insufficient-scope',
      'Bearer realm="endfloat", error="insufficient_scope"',
    ]);
    expect((await post('/v1/customers', customer, bearer((await newKey()).key))).status).toBe(201);
    const boss = await newKey({ userId: shop.owner.id, roles: ['owner'], readOnly: true });
    const patched = await api.call('PATCH', '/v1/settings', {
      as: bearer(boss.key),
      body: { name: 'Other' },
      ifMatch: '"1"',
    });
    expect(patched.status).toBe(403);
  });

  it('a key and its successor both work for the overlap, then the successor alone', async () => {
    const { id, key } = await newKey({ readOnly: true });
    const next = await rotate(id, 60);
    expect(next).toMatchObject({ status: 201, body: { replaces: id, roles: ['desk'], readOnly: true } });
    expect([await look(key), await look(next.body.key)]).toEqual([200, 200]);
    clock.moveOn(59 * minute);
    expect([await look(key), await look(next.body.key)]).toEqual([200, 200]);
    clock.moveOn(minute);
    expect([await look(key), await look(next.body.key)]).toEqual([401, 200]);
  });

  it('without overlap the earlier key ends at once', async () => {
    const { id, key } = await newKey();
    const next = await rotate(id, 0);
    expect([await look(key), await look(next.body.key)]).toEqual([401, 200]);
    const again = await rotate(id, 60);
    expect([again.status, again.body.type]).toEqual([409, '/problems/state-conflict']);
    expect(await look(key)).toBe(401);
  });

  it('an overlap never lets a key live longer than was said', async () => {
    const expiresAt = new Date(Date.parse(clock.now()) + 5 * minute).toISOString();
    const { id, key } = await newKey({ expiresAt });
    expect((await rotate(id, 60)).status).toBe(201);
    expect(await listed(id)).toMatchObject({ expiresAt });
    clock.moveOn(5 * minute);
    expect(await look(key)).toBe(401);
  });

  it('a key has one successor, also when two are asked for at once', async () => {
    const { id, key } = await newKey();
    const answers = await Promise.all([1, 2, 3, 4].map(() => rotate(id, 60)));
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 409, 409, 409]);
    expect(await look(key)).toBe(200);
  });

  it('a key that was revoked, that is of another shop, or for nobody gets no successor', async () => {
    const { id } = await newKey();
    const other = await api.openShop();
    const body = { overlapMinutes: 0, expiresAt: null };
    expect((await post(`/v1/api-keys/${id}/rotations`, body, other.owner)).status).toBe(404);
    await api.call('POST', `/v1/api-keys/${id}/revocations`, { as: shop.owner });
    expect((await rotate(id, 60)).status).toBe(409);
    const late = await rotate((await newKey()).id, 60, clock.now());
    expect([late.status, late.body.errors[0].pointer]).toEqual([422, '/expiresAt']);
  });

  it('tells when a key was last used, to within a minute, and nothing of attempts with a wrong secret', async () => {
    const { id, key } = await newKey();
    expect(await listed(id)).toMatchObject({ lastUsedAt: null });
    const wrong = `${key.slice(0, -1)}${key.endsWith('A') ? 'B' : 'A'}`;
    expect(await look(wrong)).toBe(401);
    expect(await listed(id)).toMatchObject({ lastUsedAt: null });
    const first = clock.now();
    expect(await look(key)).toBe(200);
    clock.moveOn(minute - 1);
    expect(await look(key)).toBe(200);
    expect(await listed(id)).toMatchObject({ lastUsedAt: first });
    clock.moveOn(1);
    expect(await look(key)).toBe(200);
    expect(await listed(id)).toMatchObject({ lastUsedAt: clock.now() });
  });
});
