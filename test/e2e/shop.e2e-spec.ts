import {
  StandingClock,
  startTestApi,
  type Reply,
  type TestApi,
  type TestShop,
  type TestUser,
} from '../support/api.js';

describe('the shop, its people and their keys', () => {
  let api: TestApi;
  let clock: StandingClock;
  let shop: TestShop;

  beforeAll(async () => {
    clock = new StandingClock('2026-03-02T09:00:00.000Z');
    api = await startTestApi({ clock });
    shop = await api.openShop();
  });
  afterAll(() => api.close());

  const get = (url: string, as: TestUser = shop.owner): Promise<Reply> => api.call('GET', url, { as });
  const post = (url: string, body?: object, as: TestUser = shop.owner): Promise<Reply> =>
    api.call('POST', url, { as, body });
  const patch = (url: string, body: unknown, ifMatch?: string, as: TestUser = shop.owner): Promise<Reply> =>
    api.call('PATCH', url, { as, body, ifMatch });

  describe('settings', () => {
    const url = '/v1/settings';
    const tag = async (): Promise<string> => String((await get(url)).headers['etag']);
    const change = async (body: object): Promise<Reply> => patch(url, body, await tag());

    it('changes what the patch names and leaves the rest, under the next version', async () => {
      const before = await get(url);
      const version = Number(before.body.version) + 1;
      const changed = await change({ labourRatePerHour: '84.50', comebackWindowDays: 120 });
      expect(changed.status).toBe(200);
      expect(changed.body).toEqual({
        ...before.body,
        labourRatePerHour: '84.50',
        comebackWindowDays: 120,
        version,
      });
      expect(changed.headers['etag']).toBe(`"${version}"`);
      expect((await get(url)).body).toEqual(changed.body);
    });

    it('JOB rule 1: what the settings were on a day stays readable', async () => {
      const before = await get(url);
      clock.moveOn(60_000);
      await change({ comebackHandling: '275.00' });
      const then = await get(`${url}?asOf=${new Date(Date.parse(clock.now()) - 1).toISOString()}`);
      expect(then.body).toMatchObject({
        version: before.body.version,
        comebackHandling: before.body.comebackHandling,
        replacedAt: clock.now(),
      });
      expect((await get(url)).body.comebackHandling).toBe('275.00');
      expect((await get(`${url}?asOf=2019-01-01T00:00:00Z`)).status).toBe(404);
    });

    it('API row 35: a change needs the version it was made from: none is 428, a stale or a weak one 412', async () => {
      const stale = await tag();
      expect((await patch(url, { name: 'Quillmarsh Vans' })).status).toBe(428);
      await change({ name: 'Quillmarsh Vans' });
      expect((await patch(url, { name: 'Marsh Vans' }, stale)).status).toBe(412);
      expect((await patch(url, { name: 'Marsh Vans' }, `W/${await tag()}`)).status).toBe(412);
      expect((await get(url)).body.name).toBe('Quillmarsh Vans');
    });

    it('API row 35: of ten changes made from one version one is taken', async () => {
      const from = await tag();
      const answers = await Promise.all(
        Array.from({ length: 10 }, (_, at) => patch(url, { name: `Quillmarsh ${at}` }, from)),
      );
      expect(answers.map(({ status }) => status).sort()).toEqual([200, ...Array<number>(9).fill(412)]);
    });

    it('API row 34: null is refused where nothing may be absent', async () => {
      const from = await tag();
      for (const member of ['name', 'currency', 'comebackWindowDays', 'planningDistanceKm']) {
        const refused = await patch(url, { [member]: null }, from);
        expect([member, refused.status, refused.body.errors[0].pointer]).toEqual([member, 422, `/${member}`]);
      }
      expect(await tag()).toBe(from);
    });

    it('API row 34: a patch that is empty, or says what is so already, changes nothing, not even the version', async () => {
      const { body: before } = await get(url);
      for (const same of [{}, { name: before.name, comebackWindowDays: before.comebackWindowDays }]) {
        const { status, body } = await change(same);
        expect([status, body]).toEqual([200, before]);
      }
      expect((await patch(url, {}, '"0"')).status).toBe(412);
    });

    it('API row 18: a patch that is no merge patch is refused by its type', async () => {
      const refused = await api.call('PATCH', url, {
        as: shop.owner,
        body: { name: 'Marsh Vans' },
        ifMatch: await tag(),
        headers: { 'content-type': 'application/json' },
      });
      expect([refused.status, refused.headers['accept-patch']]).toEqual([
        415,
        'application/merge-patch+json',
      ]);
    });

    it('API row 27: money keeps to the currency: no unknown code, no more decimals than it has, nothing negative', async () => {
      for (const [body, pointer] of [
        [{ currency: 'QQQ' }, '/currency'],
        [{ labourRatePerHour: '80.005' }, '/labourRatePerHour'],
        [{ downtimeCostPerDay: '-60.00' }, '/downtimeCostPerDay'],
        [{ comebackHandling: 250 }, '/comebackHandling'],
        // Yen have no decimals: the amounts that stay would be none any more.
        [{ currency: 'JPY' }, '/labourRatePerHour'],
      ] as const) {
        const refused = await change(body);
        expect([body, refused.status, refused.body.errors[0].pointer]).toEqual([body, 422, pointer]);
      }
      const whole = { labourRatePerHour: '8000', downtimeCostPerDay: '6000', comebackHandling: '25000' };
      const inYen = await change({ currency: 'JPY', ...whole });
      expect(inYen.body).toMatchObject({ currency: 'JPY', ...whole });
    });

    it('refuses a time zone that does not exist, and windows that are none', async () => {
      for (const body of [
        { timeZone: 'Mars/Olympus' },
        { comebackWindowDays: 0 },
        { comebackWindowDays: 1.5 },
        { comebackWindowKm: '-1' },
        { rankingMinimumJobs: '20' },
      ]) {
        const refused = await change(body);
        expect([body, refused.status, refused.body.errors[0].pointer]).toEqual([
          body,
          422,
          `/${Object.keys(body)[0]!}`,
        ]);
      }
    });

    it('refuses a watch window of no known family, and two of one', async () => {
      const window = (familyId: string) => ({ familyId, days: 120, km: '8000' });
      const unknown = await change({ comebackFamilyWindows: [window('hums-at-dusk')] });
      expect([unknown.status, unknown.body.errors[0].pointer]).toEqual([
        422,
        '/comebackFamilyWindows/0/familyId',
      ]);
      expect(unknown.body.errors[0].detail).toContain('stalling');
      const twice = await change({ comebackFamilyWindows: [window('stalling'), window('stalling')] });
      expect([twice.status, twice.body.errors[0].pointer]).toEqual([
        422,
        '/comebackFamilyWindows/1/familyId',
      ]);
      expect((await get(url)).body.comebackFamilyWindows).toEqual([]);
    });

    it('API row 1: settings are those of the caller’s shop', async () => {
      const other = await api.openShop({ name: 'Sallow Van Shed' });
      expect((await get(url, other.owner)).body).toMatchObject({ id: other.id, name: 'Sallow Van Shed' });
    });
  });

  describe('users', () => {
    const person = { displayName: 'Corin Teasel', roles: ['technician'], customerId: null, active: true };
    const fleet = async (): Promise<string> =>
      (
        await post('/v1/customers', {
          kind: 'fleetOperator',
          contact: { name: 'Brindle Parcels' },
          downtimeCostPerDay: null,
          planningDistanceKm: null,
        })
      ).body.id;

    it('are recorded once, listed, and changed from a version', async () => {
      const id = api.ids.next();
      const made = await post('/v1/users', { ...person, id });
      expect(made).toMatchObject({ status: 201, body: { ...person, id, version: 1 } });
      expect((await post('/v1/users', { ...person, id })).status).toBe(200);
      expect((await post('/v1/users', { ...person, id, displayName: 'Other' })).status).toBe(409);
      const list = await get('/v1/users?pageSize=200');
      expect(list.body.items.map((each: { id: string }) => each.id)).toContain(id);
      expect((await patch(`/v1/users/${id}`, { displayName: 'Corin T.' })).status).toBe(428);
      const changed = await patch(`/v1/users/${id}`, { displayName: 'Corin T.' }, '"1"');
      expect(changed.body).toMatchObject({ ...person, displayName: 'Corin T.', version: 2 });
      expect((await patch(`/v1/users/${id}`, { active: false }, '"1"')).status).toBe(412);
      expect((await patch(`/v1/users/${api.ids.next()}`, { active: false }, '"1"')).status).toBe(404);
    });

    it('JOB rule 16: a fleet manager belongs to one customer and holds no role in the shop', async () => {
      const customerId = await fleet();
      const both = await post('/v1/users', { ...person, roles: ['fleetManager', 'desk'], customerId });
      expect([both.status, both.body.errors[0].pointer]).toEqual([422, '/roles']);
      const without = await post('/v1/users', { ...person, roles: ['fleetManager'] });
      expect([without.status, without.body.errors[0].pointer]).toEqual([422, '/customerId']);
      const staff = await post('/v1/users', { ...person, customerId });
      expect([staff.status, staff.body.errors[0].pointer]).toEqual([422, '/customerId']);
      const made = await post('/v1/users', { ...person, roles: ['fleetManager'], customerId });
      expect(made.status).toBe(201);
      const url = `/v1/users/${made.body.id}`;
      const promoted = await patch(url, { roles: ['owner'] }, '"1"');
      expect([promoted.status, promoted.body.errors[0].pointer]).toEqual([422, '/customerId']);
      expect((await patch(url, { roles: ['owner'], customerId: null }, '"1"')).status).toBe(200);
    });

    it('API row 2: a customer of another shop is an unknown reference', async () => {
      const other = await api.openShop();
      const customerId = await fleet();
      const refused = await post(
        '/v1/users',
        { ...person, roles: ['fleetManager'], customerId },
        other.owner,
      );
      expect([refused.status, refused.body.errors[0].pointer]).toEqual([422, '/customerId']);
    });

    it('API row 5: nobody makes themselves an owner', async () => {
      const desk = await shop.user(['desk']);
      const refused = await patch(`/v1/users/${desk.id}`, { roles: ['owner'] }, '"1"', desk);
      expect(refused.status).toBe(403);
    });
  });

  describe('keys', () => {
    const order = (userId: string, more: object = {}) => ({
      userId,
      name: 'tablet at bay 2',
      roles: ['technician'],
      expiresAt: null,
      ...more,
    });
    const bearer = (key: string): TestUser => ({ id: '', authorization: `Bearer ${key}` });
    const newKey = async (roles: readonly string[] = ['technician'], more: object = {}) => {
      const user = await post('/v1/users', {
        displayName: 'Corin Teasel',
        roles,
        customerId: null,
        active: true,
      });
      const made = await post('/v1/api-keys', order(user.body.id, { roles, ...more }));
      expect(made.status).toBe(201);
      return { userId: user.body.id as string, made, key: made.body.key as string };
    };
    const refusedKey = async (key: string): Promise<void> => {
      const answer = await get('/v1/instruments', bearer(key));
      expect([answer.status, answer.body.type]).toEqual([401, '/problems/invalid-token']);
      expect(answer.headers['www-authenticate']).toContain('invalid_token');
    };

    it('opens what its user may, and is shown this once', async () => {
      const { made, key } = await newKey();
      expect((await get('/v1/instruments', bearer(key))).status).toBe(200);
      const list = await get('/v1/api-keys');
      const listed = list.body.items.find(({ id }: { id: string }) => id === made.body.id);
      const { key: shown, ...rest } = made.body;
      expect(listed).toEqual({ ...rest, lastUsedAt: clock.now() });
      const secret = String(shown).split('.')[1]!;
      expect(JSON.stringify(list.body)).not.toContain(secret);
      const kept = await api.work.read(shop.id, (tx) => tx.apiKeys.list());
      expect(JSON.stringify(kept)).not.toContain(secret);
      expect(made.headers['cache-control']).toContain('no-store');
    });

    it('can do no more than its user may, then and later', async () => {
      const { userId, key } = await newKey(['desk', 'technician']);
      const refused = await post('/v1/api-keys', order(userId, { roles: ['technician', 'owner'] }));
      expect([refused.status, refused.body.errors[0].pointer]).toEqual([422, '/roles']);
      expect((await get('/v1/customers', bearer(key))).status).toBe(200);
      const customer = {
        kind: 'person',
        contact: { name: 'Fenwick Moss' },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      };
      expect((await post('/v1/customers', customer, bearer(key))).status).toBe(201);
      await patch(`/v1/users/${userId}`, { roles: ['technician'] }, '"1"');
      const now = await post('/v1/customers', customer, bearer(key));
      expect([now.status, now.body.type]).toEqual([403, '/problems/insufficient-scope']);
    });

    it('is void once revoked, and stays so', async () => {
      const { made, key } = await newKey();
      const url = `/v1/api-keys/${made.body.id}/revocations`;
      clock.moveOn(1000);
      const revoked = await post(url);
      expect(revoked).toMatchObject({ status: 201, body: { revokedAt: clock.now() } });
      await refusedKey(key);
      expect((await post(url)).status).toBe(409);
      expect((await post(`/v1/api-keys/${api.ids.next()}/revocations`)).status).toBe(404);
    });

    it('is void from the moment it expires, and cannot be made expired', async () => {
      const expiresAt = new Date(Date.parse(clock.now()) + 60_000).toISOString();
      const { userId, key } = await newKey(['technician'], { expiresAt });
      expect((await get('/v1/instruments', bearer(key))).status).toBe(200);
      clock.moveOn(60_000);
      await refusedKey(key);
      const late = await post('/v1/api-keys', order(userId, { expiresAt }));
      expect([late.status, late.body.errors[0].pointer]).toEqual([422, '/expiresAt']);
    });

    it('is void while its user is not active', async () => {
      const { userId, key } = await newKey();
      await patch(`/v1/users/${userId}`, { active: false }, '"1"');
      await refusedKey(key);
      await patch(`/v1/users/${userId}`, { active: true }, '"2"');
      expect((await get('/v1/instruments', bearer(key))).status).toBe(200);
    });

    it('is void with any other secret or prefix', async () => {
      const [{ key }, { key: other }] = [await newKey(), await newKey()];
      const [prefix, secret] = key.split('.') as [string, string];
      await refusedKey(`${prefix}.${other.split('.')[1]!}`);
      await refusedKey(`${prefix}.${secret.slice(0, -1)}${secret.endsWith('A') ? 'B' : 'A'}`);
      await refusedKey(`${Buffer.alloc(32, 7).toString('base64url')}.${secret}`);
    });

    it('API row 9: a key in the query is no credential', async () => {
      const { key } = await newKey();
      const answer = await api.call('GET', `/v1/instruments?access_token=${encodeURIComponent(key)}`);
      expect(answer.status).toBe(401);
    });

    it('API row 1: a key of another shop is not there to be revoked', async () => {
      const other = await api.openShop();
      const { made, key } = await newKey();
      const url = `/v1/api-keys/${made.body.id}/revocations`;
      expect((await post(url, undefined, other.owner)).status).toBe(404);
      expect((await get('/v1/instruments', bearer(key))).status).toBe(200);
      const foreign = await post('/v1/api-keys', order(made.body.userId), other.owner);
      expect([foreign.status, foreign.body.errors[0].pointer]).toEqual([422, '/userId']);
    });
  });

  describe('API row 7: who may do what', () => {
    const routes = [
      ['GET', '/v1/settings', ['owner', 'desk', 'technician', 'parts', 'developer', 'auditor']],
      ['PATCH', '/v1/settings', ['owner']],
      ['GET', '/v1/users', ['owner', 'desk', 'technician', 'parts', 'auditor']],
      ['POST', '/v1/users', ['owner']],
      ['GET', '/v1/api-keys', ['owner', 'auditor']],
      ['POST', '/v1/api-keys', ['owner']],
    ] as const;
    const roles = ['owner', 'desk', 'technician', 'parts', 'developer', 'auditor', 'fleetManager'] as const;

    it.each(routes)('API row 7: %s %s is for %j alone', async (method, url, allowed) => {
      const customer = await post('/v1/customers', {
        kind: 'fleetOperator',
        contact: { name: 'Brindle Parcels' },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      });
      for (const role of roles) {
        const as = await shop.user([role], role === 'fleetManager' ? customer.body.id : undefined);
        const body = method === 'GET' ? undefined : {};
        const answer = await api.call(method, url, { as, body });
        const isRefused = answer.status === 403;
        expect([role, isRefused]).toEqual([role, !(allowed as readonly string[]).includes(role)]);
        if (isRefused) expect(answer.body.type).toBe('/problems/insufficient-scope');
      }
    });
  });
});
