import { AppModule, createApi, openPorts } from '@endfloat/api';
import {
  startTestApi,
  StandingClock,
  testSealingSecret,
  type Reply,
  type TestApi,
  type TestShop,
  type TestUser,
} from '../support/api.js';
import { testSettings } from '../support/http.js';

let api: TestApi;
let shop: TestShop;
const clock = new StandingClock('2031-05-04T09:30:00.000Z');

beforeAll(async () => {
  api = await startTestApi({ clock });
  shop = await api.openShop();
});

afterAll(() => api.close());

const customer = (name: string): object => ({
  kind: 'person',
  contact: { name },
  downtimeCostPerDay: null,
  planningDistanceKm: null,
});
const van = (customerId: string): object => ({
  customerId,
  ownedFrom: '2020-01-01T00:00:00Z',
  chassisNumber: null,
  plate: null,
  label: 'Van 14',
  firstUsedOn: null,
  application: null,
  attributes: {},
  expectedKmPerYear: null,
  observedSpans: [],
  retiredOn: null,
});

let keys = 0;
const newKey = (): string => `key-${String((keys += 1))}`;
const post = (
  url: string,
  body: object | undefined,
  key: string,
  more: { as?: TestUser; headers?: Record<string, string>; ifMatch?: string } = {},
): Promise<Reply> =>
  api.call('POST', url, {
    as: more.as ?? shop.owner,
    body,
    ifMatch: more.ifMatch,
    headers: { 'idempotency-key': key, ...more.headers },
  });
const names = async (): Promise<string[]> =>
  (await api.call('GET', '/v1/customers?pageSize=200', { as: shop.owner })).body.items.map(
    (each: { contact: { name: string } | null }) => each.contact?.name,
  );
/** Status, header fields that belong to the answer, and body, as text. */
const told = ({ status, headers, body }: Reply): unknown => [
  status,
  headers['etag'],
  headers['location'],
  headers['content-type'],
  JSON.stringify(body),
];

describe('a request with an Idempotency-Key', () => {
  it('API row 36: sent again gets the first answer, marked, and has no second effect', async () => {
    const key = newKey();
    const first = await post('/v1/customers', customer('Ottoline Farrow'), key);
    expect([first.status, first.headers['idempotency-replayed']]).toEqual([201, undefined]);
    clock.moveOn(60_000);
    for (let again = 0; again < 3; again += 1) {
      const repeat = await post('/v1/customers', customer('Ottoline Farrow'), key);
      expect(told(repeat)).toEqual(told(first));
      expect(repeat.headers['idempotency-replayed']).toBe('?1');
    }
    expect((await names()).filter((name) => name === 'Ottoline Farrow')).toHaveLength(1);
  });

  it('API row 36: is the same one however its body is written, and the key however it is quoted', async () => {
    const key = newKey();
    const body = customer('Perrin Vale');
    const first = await post('/v1/customers', body, key);
    const turned = Object.fromEntries(Object.entries(body).reverse());
    expect(told(await post('/v1/customers', turned, `"${key}"`))).toEqual(told(first));
  });

  it('API row 36: keeps what was answered, not what would be answered now', async () => {
    const key = newKey();
    const made = await post('/v1/customers', customer('Sabine Torrow'), key);
    const url = `/v1/customers/${String(made.body.id)}`;
    const changed = await api.call('PATCH', url, {
      as: shop.owner,
      body: { downtimeCostPerDay: '75.00' },
      ifMatch: '*',
    });
    const isPatched = changed.status === 200;
    const repeat = await post('/v1/customers', customer('Sabine Torrow'), key);
    expect(told(repeat)).toEqual(told(made));
    expect([isPatched, repeat.body.version]).toEqual([isPatched, 1]);
  });

  it('API row 37: with another body, path or query is refused, and the first answer stands', async () => {
    const key = newKey();
    const first = await post('/v1/customers', customer('Lorcan Pike'), key);
    const other = await post('/v1/customers', customer('Lorcan Pyke'), key);
    expect([other.status, other.body.type]).toEqual([422, '/problems/idempotency-key-reused']);
    const elsewhere = await post('/v1/vehicles', van(first.body.id), key);
    expect(elsewhere.status).toBe(422);
    expect(told(await post('/v1/customers', customer('Lorcan Pike'), key))).toEqual(told(first));
    expect(await names()).not.toContain('Lorcan Pyke');
  });

  it('API row 37: the same key of another shop, or of another person, is another key', async () => {
    const key = newKey();
    const other = await api.openShop();
    const desk = await shop.user(['desk']);
    const first = await post('/v1/customers', customer('Una Sedge'), key);
    const second = await post('/v1/customers', customer('Una Sedge'), key, { as: other.owner });
    const third = await post('/v1/customers', customer('Una Sedge'), key, { as: desk });
    expect([first, second, third].map(({ status }) => status)).toEqual([201, 201, 201]);
    expect(new Set([first, second, third].map(({ body }) => body.id as string)).size).toBe(3);
  });

  it('API row 38: sent ten times at once has one effect; the others get its answer or are told to wait', async () => {
    const key = newKey();
    const answers = await Promise.all(
      Array.from({ length: 10 }, () => post('/v1/customers', customer('Idris Quern'), key)),
    );
    const made = answers.filter(({ status }) => status === 201);
    const waiting = answers.filter(({ status }) => status === 409);
    expect(made.length + waiting.length).toBe(10);
    expect(new Set(made.map(({ body }) => body.id as string)).size).toBe(1);
    expect(made.filter(({ headers }) => headers['idempotency-replayed'] === undefined)).toHaveLength(1);
    for (const { body, headers } of waiting)
      expect([body.type, headers['retry-after']]).toEqual(['/problems/idempotency-in-progress', '1']);
    expect((await names()).filter((name) => name === 'Idris Quern')).toHaveLength(1);
  });

  it('API row 38: a key that is held by a running transaction is told so at once', async () => {
    const key = newKey();
    let release = (): void => undefined;
    const held = new Promise<void>((resolve) => (release = resolve));
    let begun = (): void => undefined;
    const hasBegun = new Promise<void>((resolve) => (begun = resolve));
    const { createHash } = await import('node:crypto');
    const hash = createHash('sha256').update(`${shop.owner.id}/${key}`).digest('hex');
    const holder = api.work.run(shop.id, async (tx) => {
      expect(await tx.storedAnswers.claim(hash)).toBe(true);
      begun();
      await held;
    });
    await hasBegun;
    const waiting = await post('/v1/customers', customer('Held Back'), key);
    expect(waiting.status).toBe(409);
    release();
    await holder;
    expect((await post('/v1/customers', customer('Held Back'), key)).status).toBe(201);
  });

  it('API row 39: an answer that was lost is given by another process, since it was committed with the effect', async () => {
    const key = newKey();
    const first = await post('/v1/customers', customer('Marit Holloway'), key);
    const ports = openPorts(
      { url: api.database.apiUrl, size: 2, waitMs: 2000 },
      { clock, ids: api.ids, sealingSecret: testSealingSecret },
    );
    const second = await createApi({ settings: testSettings, module: AppModule.register(ports.providers) });
    try {
      const repeat = await second.inject({
        method: 'POST',
        url: '/v1/customers',
        headers: {
          authorization: shop.owner.authorization,
          'content-type': 'application/json',
          'idempotency-key': key,
        },
        payload: JSON.stringify(customer('Marit Holloway')),
      });
      expect([repeat.statusCode, repeat.headers['idempotency-replayed']]).toEqual([201, '?1']);
      expect(JSON.parse(repeat.payload)).toEqual(first.body);
    } finally {
      await second.close();
      await ports.close();
    }
  });

  it('a refused request stores nothing and may be sent again under its key', async () => {
    const key = newKey();
    const refused = await post('/v1/vehicles', van(api.ids.next()), key);
    expect(refused.status).toBe(422);
    const owner = await post('/v1/customers', customer('Petra Lund'), newKey());
    const made = await post('/v1/vehicles', van(owner.body.id), key);
    expect([made.status, made.headers['idempotency-replayed']]).toEqual([201, undefined]);
  });

  it('a key that cannot be one is refused before anything is done', async () => {
    for (const key of ['a b', 'k'.repeat(256), '""', 'ü']) {
      const refused = await post('/v1/customers', customer('Nobody'), key);
      expect([key, refused.status, refused.body.errors[0].pointer]).toEqual([key, 400, '/Idempotency-Key']);
    }
    expect(await names()).not.toContain('Nobody');
  });

  it('works for what makes a secret: the same key of the shop is shown again to who asked for it', async () => {
    const key = newKey();
    const technician = await shop.user(['technician']);
    const body = { userId: technician.id, name: 'tablet', roles: ['technician'], expiresAt: null };
    const first = await post('/v1/api-keys', body, key);
    const again = await post('/v1/api-keys', body, key);
    expect(again.body.key).toBe(first.body.key);
    const { rows } = await rowsOf(`SELECT * FROM stored_answer`);
    expect(JSON.stringify(rows)).not.toContain(String(first.body.key).split('.')[1]);
    expect(JSON.stringify(rows)).not.toContain('Ottoline');
  });

  it('with return=minimal is answered as briefly again', async () => {
    const key = newKey();
    const headers = { prefer: 'return=minimal' };
    const raw = () =>
      api.app.inject({
        method: 'POST',
        url: '/v1/customers',
        headers: {
          authorization: shop.owner.authorization,
          'content-type': 'application/json',
          'idempotency-key': key,
          ...headers,
        },
        payload: JSON.stringify(customer('Briony Vetch')),
      });
    const [first, again] = [await raw(), await raw()];
    expect([
      again.statusCode,
      again.payload,
      again.headers['preference-applied'],
      again.headers['location'],
    ]).toEqual([first.statusCode, '', 'return=minimal', first.headers['location']]);
  });

  it('is forgotten after its time, and its answer erased by the worker', async () => {
    const key = newKey();
    const first = await post('/v1/customers', customer('Tamsin Reed'), key);
    clock.moveOn(48 * 3_600_000 - 1);
    expect(told(await post('/v1/customers', customer('Tamsin Reed'), key))).toEqual(told(first));
    clock.moveOn(1);
    const erased = await api.work.run(shop.id, (tx) => tx.storedAnswers.eraseExpired(clock.now()));
    expect(erased).toBeGreaterThan(0);
    const anew = await post('/v1/customers', customer('Tamsin Reed'), key);
    expect([anew.status, anew.body.id === first.body.id]).toEqual([201, false]);
  });

  it('JOB rule 1: stored answers count as personal: erasing a customer erases them, and the request still has one effect', async () => {
    const key = newKey();
    const made = await post('/v1/customers', customer('Erasmus Thorn'), key);
    const url = `/v1/customers/${String(made.body.id)}`;
    const before = await rowsOf('SELECT content FROM stored_answer WHERE erased_at IS NULL');
    expect(before.rows.length).toBeGreaterThan(0);
    const erasure = await api.call('POST', `${url}/erasures`, {
      as: shop.owner,
      body: { reason: 'asked for it in writing' },
    });
    expect(erasure.status).toBeLessThan(300);
    const after = await rowsOf(
      `SELECT content FROM stored_answer WHERE content IS NOT NULL AND shop_id = '${shop.id}'`,
    );
    expect(after.rows).toEqual([]);
    const repeat = await post('/v1/customers', customer('Erasmus Thorn'), key);
    expect([repeat.status, repeat.body, repeat.headers['location']]).toEqual([
      204,
      '',
      made.headers['location'],
    ]);
    expect(await names()).not.toContain('Erasmus Thorn');
  });
});

async function rowsOf(statement: string): Promise<{ rows: unknown[] }> {
  const { openDatabasePool } = await import('@endfloat/persistence');
  const pool = openDatabasePool({ url: api.database.apiUrl, size: 1, waitMs: 5000 });
  const client = await pool.connect();
  try {
    await client.query(`BEGIN; SELECT set_config('app.shop', '${shop.id}', true)`);
    return await client.query(statement);
  } finally {
    client.release(true);
    await pool.end();
  }
}
