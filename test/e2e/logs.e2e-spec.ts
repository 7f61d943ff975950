import { Writable } from 'node:stream';
import { createLogger } from '@endfloat/api';
import { startTestApi, type TestApi, type TestShop } from '../support/api.js';

const canary = 'canary-5b77c1';
const traceId = '0af7651916cd43dd8448eb211c80319c';

interface Line {
  readonly msg?: string;
  readonly traceId?: string;
  readonly requestId?: string;
  readonly route?: string | null;
  readonly status?: number;
  readonly problem?: string;
  readonly user?: string;
  readonly time?: string;
  readonly err?: { readonly type: string; readonly code?: string };
}

describe('the log', () => {
  const written: string[] = [];
  let api: TestApi;
  let shop: TestShop;

  beforeAll(async () => {
    const sink = new Writable({
      write(chunk: Buffer, _encoding, done) {
        written.push(chunk.toString());
        done();
      },
    });
    api = await startTestApi({ parts: { logger: createLogger({ logLevel: 'debug' }, sink) } });
    shop = await api.openShop({ name: canary });
  });
  afterAll(() => api.close());

  const lines = (): readonly Line[] => written.map((line) => JSON.parse(line) as Line);

  it('has one line for each answer: trace, request, template of the path, status, problem, who', async () => {
    written.length = 0;
    const traceparent = `00-${traceId}-b7ad6b7169203331-01`;
    await api.call('GET', '/v1/settings', { as: shop.owner, headers: { traceparent } });
    const missing = await api.call('GET', `/v1/vehicles/${api.ids.next()}`, {
      as: shop.owner,
      headers: { traceparent },
    });
    const [first, second] = lines();
    expect(lines()).toHaveLength(2);
    expect(first).toMatchObject({
      msg: 'answered',
      traceId,
      route: '/v1/settings',
      status: 200,
      user: shop.owner.id,
    });
    expect(second).toMatchObject({
      traceId,
      route: '/v1/vehicles/:vehicleId',
      status: 404,
      problem: 'not-found',
    });
    expect(missing.body.traceId).toBe(traceId);
    expect(first?.requestId).toMatch(/^[0-9a-f]{16}$/);
    expect(second?.requestId).not.toBe(first?.requestId);
    expect(first?.time).toMatch(/^\d{4}-\d\d-\d\dT.*Z$/);
  });

  it('API row 9: holds nothing of what was sent, wherever it stood', async () => {
    written.length = 0;
    const as = shop.owner;
    const body = {
      kind: 'person',
      contact: { name: canary, telephone: canary, email: `${canary}@example.com` },
      downtimeCostPerDay: null,
      planningDistanceKm: null,
    };
    const headers = {
      cookie: `session=${canary}`,
      'x-api-key': canary,
      'user-agent': canary,
      referer: `https://${canary}.example/`,
      'idempotency-key': canary,
      'proxy-authorization': canary,
      'x-forwarded-for': canary,
    };
    const statuses = [
      await api.call('POST', '/v1/customers', { as, body, headers }),
      await api.call('POST', '/v1/customers', { as, body: { ...body, [canary]: canary }, headers }),
      await api.call('POST', '/v1/customers', { as, body: `{"${canary}":`, headers }),
      await api.call('GET', `/v1/customers?token=${canary}`, { as, headers }),
      await api.call('GET', `/v1/customers/${canary}`, { as, headers }),
      await api.call('GET', `/v1/${canary}`, { as, headers }),
      await api.call('GET', '/v1/customers', { headers: { ...headers, authorization: `Bearer ${canary}` } }),
      await api.call('GET', '/v1/customers', {
        headers: { ...headers, authorization: `Bearer ${canary}.${canary}.${canary}` },
      }),
    ].map(({ status }) => status);
    expect(statuses.filter((status) => status >= 500)).toEqual([]);
    // What was made is looked up once by the test itself.
    expect(lines()).toHaveLength(statuses.length + 1);
    expect(written.join('')).not.toContain(canary);
  });

  it('API row 9: an error of the database that quotes a row is told by its code alone', async () => {
    written.length = 0;
    const pool = api.work as unknown as { read: unknown };
    const { read } = pool;
    pool.read = () =>
      Promise.reject(
        Object.assign(new Error(`invalid input: "${canary}"`), {
          code: '22P02',
          severity: 'ERROR',
          detail: `Failing row contains (${canary}).`,
        }),
      );
    const answer = await api.call('GET', '/v1/settings', { as: shop.owner });
    pool.read = read;
    expect(answer.status).toBe(500);
    expect(JSON.stringify(answer.body)).not.toContain(canary);
    const failure = lines().find(({ msg }) => msg === 'request failed');
    expect(failure).toMatchObject({ traceId: answer.body.traceId, err: { code: '22P02' } });
    expect(written.join('')).not.toContain(canary);
  });

  it('keeps what is named like a secret out, however deep it lies', () => {
    const own: string[] = [];
    const sink = new Writable({
      write(chunk: Buffer, _encoding, done) {
        own.push(chunk.toString());
        done();
      },
    });
    const log = createLogger({ logLevel: 'info' }, sink);
    log.info({ authorization: canary, a: { key: canary, b: { secret: canary } }, token: canary }, 'told');
    log.error({
      err: Object.assign(new Error('failed'), { config: { headers: { authorization: canary } } }),
    });
    log.error(Object.assign(new Error('failed'), { password: canary }));
    expect(own).toHaveLength(3);
    expect(own.join('')).not.toContain(canary);
  });
});
