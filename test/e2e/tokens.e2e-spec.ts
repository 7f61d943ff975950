import { createHmac } from 'node:crypto';
import {
  startTestApi,
  StandingClock,
  type Reply,
  type TestApi,
  type TestShop,
  type TestUser,
} from '../support/api.js';
import { testSettings } from '../support/http.js';
import { LoopbackIssuer } from './token-issuer.js';

const audience = 'https://vans.brindle.example';

describe('tokens of an outside issuer', () => {
  const clock = new StandingClock('2031-05-04T09:00:00.000Z');
  let issuer: LoopbackIssuer;
  let api: TestApi;
  let shop: TestShop;
  let desk: TestUser;
  const shopIds: Record<string, string> = {};

  beforeAll(async () => {
    issuer = await LoopbackIssuer.start();
    for (const [kid, alg] of [
      ['one', 'ES256'],
      ['two', 'RS256'],
      ['three', 'PS256'],
      ['four', 'EdDSA'],
      ['not-allowed', 'ES384'],
    ] as const)
      await issuer.addKey(kid, alg);
    api = await startTestApi({
      clock,
      settings: {
        rateLimits: { ...testSettings.rateLimits, wrongCredentials: { requests: 1000, seconds: 60 } },
      },
      tokenIssuers: [
        {
          issuer: issuer.issuer,
          audience,
          jwksUrl: issuer.jwksUrl,
          algorithms: ['RS256', 'PS256', 'ES256', 'EdDSA'],
          // Filled below: shops are opened on the running interface.
          shop: { claim: 'tenant', values: shopIds },
          person: { claim: 'person' },
          roles: {
            claim: 'groups',
            values: { counter: ['desk'], everything: ['owner', 'desk'], customers: ['fleetManager'] },
          },
        },
      ],
    });
    shop = await api.openShop();
    shopIds['brindle'] = shop.id;
    desk = await shop.user(['desk']);
  });
  afterAll(async () => {
    await api.close();
    await issuer.close();
  });

  const now = (): number => Math.floor(Date.parse(clock.now()) / 1000);
  const claims = (more: Record<string, unknown> = {}): Record<string, unknown> => ({
    iss: issuer.issuer,
    aud: audience,
    sub: 'user-17',
    iat: now(),
    exp: now() + 300,
    tenant: 'brindle',
    person: desk.id,
    groups: ['counter'],
    ...more,
  });
  const get = (token: string, url = '/v1/customers'): Promise<Reply> =>
    api.call('GET', url, { as: { id: '', authorization: `Bearer ${token}` } });
  const newCustomer = (name: string, as: TestUser = shop.owner): Promise<Reply> =>
    api.call('POST', '/v1/customers', {
      as,
      body: {
        kind: 'fleetOperator',
        contact: { name },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      },
    });
  const isRefused = async (token: string): Promise<void> => {
    const { status, headers, body } = await get(token);
    expect([status, body.type, headers['www-authenticate'], body.detail]).toEqual([
      401,
      '/problems/invalid-token',
      'Bearer realm="endfloat", error="invalid_token"',
      undefined,
    ]);
  };

  it.each(['one', 'two', 'three', 'four'])('opens what its person may, signed with key %s', async (kid) => {
    expect((await get(await issuer.sign(claims(), kid))).status).toBe(200);
  });

  it('records under the person it speaks for', async () => {
    const made = await newCustomer('Odd Hollow Bakery', {
      id: '',
      authorization: `Bearer ${await issuer.sign(claims())}`,
    });
    expect(made).toMatchObject({ status: 201, body: { recordedBy: desk.id } });
  });

  it('API row 7: gives no role that its person does not have, and none that the document does not list', async () => {
    const all = await issuer.sign(claims({ groups: ['everything', 'owner', '__proto__'] }));
    expect((await get(all)).status).toBe(200);
    const settings = await api.call('PATCH', '/v1/settings', {
      as: { id: '', authorization: `Bearer ${all}` },
      body: { name: 'Taken over' },
      ifMatch: '"1"',
    });
    expect([settings.status, settings.body.type]).toEqual([403, '/problems/insufficient-scope']);
    for (const groups of [[], ['owner'], undefined, 7])
      expect((await get(await issuer.sign(claims({ groups })))).status).toBe(403);
  });

  it('API row 1: speaks for listed shops alone, and for people of that shop', async () => {
    const other = await api.openShop();
    await isRefused(await issuer.sign(claims({ tenant: other.id })));
    await isRefused(await issuer.sign(claims({ tenant: 'constructor' })));
    await isRefused(await issuer.sign(claims({ person: other.owner.id })));
    await isRefused(await issuer.sign(claims({ person: 'user-17' })));
  });

  it('a fleet manager sees the vehicles of their customer only', async () => {
    const [customer, stranger] = [await newCustomer('Brindle Parcels'), await newCustomer('Fenwick Moss')];
    const manager = await shop.user(['fleetManager'], customer.body.id);
    const token = await issuer.sign(claims({ person: manager.id, groups: ['counter', 'customers'] }));
    await api.call('POST', '/v1/vehicles', {
      as: shop.owner,
      body: {
        customerId: stranger.body.id,
        ownedFrom: '2031-01-01T09:00:00Z',
        chassisNumber: null,
        plate: null,
        label: 'Van 14',
        firstUsedOn: null,
        application: null,
        attributes: {},
        expectedKmPerYear: null,
        observedSpans: [],
        retiredOn: null,
      },
    });
    expect((await get(await issuer.sign(claims()), '/v1/vehicles')).body.items).toHaveLength(1);
    expect(await get(token, '/v1/vehicles')).toMatchObject({ status: 200, body: { items: [] } });
    const customers = await get(token);
    expect(customers.body.items.map(({ id }: { id: string }) => id)).toEqual([customer.body.id]);
  });

  it('is void while its person is not active', async () => {
    const leaver = await shop.user(['desk']);
    const token = await issuer.sign(claims({ person: leaver.id }));
    expect((await get(token)).status).toBe(200);
    await api.call('PATCH', `/v1/users/${leaver.id}`, {
      as: shop.owner,
      body: { active: false },
      ifMatch: '"1"',
    });
    await isRefused(token);
  });

  describe('API row 8: what is not a token for us is 401 without detail', () => {
    it('unsigned, or signed by a shared secret made of the public key', async () => {
      const part = (value: object): string => Buffer.from(JSON.stringify(value)).toString('base64url');
      const unsigned = `${part({ alg: 'none', typ: 'at+jwt' })}.${part(claims())}.`;
      await isRefused(unsigned);
      const publicKey = await issuer.addKey('shared', 'RS256');
      const input = `${part({ alg: 'HS256', typ: 'at+jwt', kid: 'shared' })}.${part(claims())}`;
      for (const secret of [JSON.stringify(publicKey), publicKey.n ?? ''])
        await isRefused(`${input}.${createHmac('sha256', secret).update(input).digest('base64url')}`);
    });

    it('with a key that is published for an algorithm we do not allow', async () => {
      await isRefused(await issuer.sign(claims(), 'not-allowed'));
    });

    it.each([
      ['another audience', { aud: 'https://other.example' }],
      ['no audience', { aud: undefined }],
      ['another issuer', { iss: 'https://id.brindle.example.evil.example' }],
      ['no issuer', { iss: undefined }],
      ['no end', { exp: undefined }],
      ['no subject', { sub: undefined }],
      ['no moment of issue', { iat: undefined }],
      ['an end that is a text', { exp: '4102444800' }],
    ])('with %s', async (_what, more) => {
      await isRefused(await issuer.sign(claims(more)));
    });

    it.each(['JWT', 'at+jwt2', 'id+jwt', undefined])('with the type %s', async (typ) => {
      await isRefused(await issuer.sign(claims(), 'one', { typ }));
    });

    it('changed after signing, cut, or with claims that are no object', async () => {
      const [head = '', body = '', mark = ''] = (await issuer.sign(claims())).split('.');
      const owner = Buffer.from(JSON.stringify(claims({ person: shop.owner.id }))).toString('base64url');
      for (const token of [`${head}.${owner}.${mark}`, `${head}.${body}.`, `${head}.W10.${mark}`, 'a.b.c'])
        await isRefused(token);
    });

    it('with a critical extension nobody here knows', async () => {
      const [, body = '', mark = ''] = (await issuer.sign(claims())).split('.');
      const head = { alg: 'ES256', kid: 'one', typ: 'at+jwt', crit: ['exp2'], exp2: 1 };
      await isRefused(`${Buffer.from(JSON.stringify(head)).toString('base64url')}.${body}.${mark}`);
    });

    it('with a key it brings or names itself: a path as kid, jwk, jku, x5u lead nowhere', async () => {
      const own = await issuer.addKey('../../keys', 'ES256', false);
      const before = [...new Set(issuer.paths)];
      await isRefused(await issuer.sign(claims(), '../../keys'));
      await isRefused(
        await issuer.sign(claims(), '../../keys', {
          kid: 'one',
          jwk: own,
          jku: `${issuer.jwksUrl}/evil`,
          x5u: 'http://127.0.0.1:1/',
        }),
      );
      expect([...new Set(issuer.paths)]).toEqual(before);
    });
  });

  it('API row 64: clocks may differ by a minute and no more', async () => {
    expect((await get(await issuer.sign(claims({ exp: now() - 59 })))).status).toBe(200);
    await isRefused(await issuer.sign(claims({ exp: now() - 61 })));
    expect((await get(await issuer.sign(claims({ nbf: now() + 59 })))).status).toBe(200);
    await isRefused(await issuer.sign(claims({ nbf: now() + 61 })));
  });

  it('asks for the keys once, however many tokens name keys that do not exist', async () => {
    await issuer.addKey('nobody', 'ES256', false);
    const asked = issuer.asked;
    for (let turn = 0; turn < 10; turn++) await isRefused(await issuer.sign(claims(), 'nobody'));
    expect(issuer.asked - asked).toBeLessThanOrEqual(1);
  });

  it('API row 9: a token in the query is no credential', async () => {
    const token = await issuer.sign(claims());
    const answer = await api.call('GET', `/v1/customers?access_token=${token}`);
    expect([answer.status, answer.body.type]).toEqual([401, '/problems/missing-credential']);
  });
});

describe('an issuer that is away or lies', () => {
  it.each([
    ['fails', { status: 500 }],
    ['redirects', { status: 302, headers: { location: 'http://127.0.0.1:1/keys' } }],
    ['answers something else', { status: 200, body: '<html>' }],
    ['answers without end', { status: 200, body: 'x'.repeat(300 * 1024) }],
    ['answers no keys', { status: 200, body: '{"keys":7}' }],
  ])('is 503 with Retry-After when it %s, and is left alone for a while', async (_what, fault) => {
    const issuer = await LoopbackIssuer.start();
    await issuer.addKey('one', 'ES256');
    issuer.fault = fault;
    const api = await startTestApi({
      tokenIssuers: [
        {
          issuer: issuer.issuer,
          audience,
          jwksUrl: issuer.jwksUrl,
          algorithms: ['ES256'],
          shop: { claim: 'tenant', values: { brindle: '0193f2c0-0000-7000-8000-000000000001' } },
          person: { claim: 'sub' },
          roles: { claim: 'groups', values: { counter: ['desk'] } },
        },
      ],
    });
    const at = Math.floor(Date.now() / 1000);
    const token = await issuer.sign({ iss: issuer.issuer, aud: audience, sub: 'x', iat: at, exp: at + 300 });
    for (let turn = 0; turn < 3; turn++) {
      const answer = await api.call('GET', '/v1/customers', {
        as: { id: '', authorization: `Bearer ${token}` },
      });
      expect([answer.status, answer.body.type, answer.headers['retry-after']]).toEqual([
        503,
        '/problems/unavailable',
        '5',
      ]);
    }
    expect(issuer.asked).toBe(1);
    await api.close();
    await issuer.close();
  });
});
