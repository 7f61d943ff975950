import { EndfloatClient, type ClientSettings } from './endfloat-client.js';
import { ProblemError, UnexpectedAnswerError } from './client-errors.js';
import type { HttpAnswer, HttpRequest } from './http-exchange.js';

const vehicleId = '0193f2c0-0000-7000-8000-000000000014';

interface Prepared {
  readonly status: number;
  readonly body?: unknown;
  readonly fields?: Readonly<Record<string, string>>;
}
type Step = Prepared | 'noAnswer';

const answerOf = ({ status, body, fields = {} }: Prepared): HttpAnswer => {
  const all: Record<string, string> = {
    'content-type':
      status >= 400 ? 'application/problem+json; charset=utf-8' : 'application/json; charset=utf-8',
    ...fields,
  };
  return {
    status,
    headers: { get: (name) => all[name.toLowerCase()] ?? null },
    text: () =>
      Promise.resolve(body === undefined ? '' : typeof body === 'string' ? body : JSON.stringify(body)),
  };
};
const problem = (status: number, code = 'request.refused'): object => ({
  type: `/problems/some-type`,
  title: 'Refused',
  status,
  code,
  instance: '/v1/vehicles',
  traceId: '0'.repeat(32),
});

/** A service that gives prepared answers, one after the other, and keeps what it was asked. */
function prepare(steps: readonly Step[], settings: Partial<ClientSettings> = {}) {
  const asked: (HttpRequest & { readonly url: string })[] = [];
  const waits: number[] = [];
  let keys = 0;
  const client = new EndfloatClient({
    baseUrl: 'http://shop.invalid/',
    apiKey: 'prefix00.secret',
    newKey: () => `key-${String((keys += 1))}`,
    wait: (milliseconds) => {
      waits.push(milliseconds);
      return Promise.resolve();
    },
    fetch: (url, request) => {
      const step = steps[asked.length];
      asked.push({ ...request, url });
      if (step === undefined) return Promise.reject(new Error('asked more often than prepared for'));
      return step === 'noAnswer'
        ? Promise.reject(new TypeError('connection lost'))
        : Promise.resolve(answerOf(step));
    },
    ...settings,
  });
  return { client, asked, waits };
}
const page = (items: readonly number[], nextCursor: string | null): Prepared => ({
  status: 200,
  body: { items, nextCursor },
});
const refusalOf = async (work: Promise<unknown>): Promise<unknown> =>
  work.then(
    () => undefined,
    (error: unknown) => error,
  );

describe('the client', () => {
  it('fills the path and the query in, and leaves out what is undefined', async () => {
    const { client, asked } = prepare([{ status: 200, body: {} }]);
    await client.call('getVehicleWear', {
      path: { vehicleId: 'a/b c' },
      query: { characteristic: 'play & more', withinKm: '500' },
    });
    expect(asked[0]?.url).toBe(
      'http://shop.invalid/v1/vehicles/a%2Fb%20c/wear?characteristic=play%20%26%20more&withinKm=500',
    );
    expect(asked[0]?.method).toBe('GET');
  });

  it('refuses to ask for a record without its id, which would ask for the list', async () => {
    const { client, asked } = prepare([]);
    const error = await refusalOf(client.call('showVehicle', { path: { vehicleId: '' } }));
    expect(error).toBeInstanceOf(RangeError);
    expect(asked).toEqual([]);
  });

  it('sends the key of the shop in its header alone, and follows no redirect with it', async () => {
    const { client, asked } = prepare([{ status: 200, body: {} }]);
    await client.call('listApiKeys');
    expect(asked[0]?.headers['authorization']).toBe('Bearer prefix00.secret');
    expect(asked[0]?.redirect).toBe('error');
    expect(asked[0]?.url).not.toContain('secret');
    expect(JSON.stringify(client)).not.toContain('secret');
  });

  it('gives the tag, the place, and whether the answer is a kept one', async () => {
    const fields = { etag: '"3"', location: `/v1/vehicles/${vehicleId}`, 'idempotency-replayed': '?1' };
    const { client } = prepare([
      { status: 201, body: { id: vehicleId }, fields },
      { status: 200, body: {} },
    ]);
    const made = await client.call('revokeApiKey', { path: { keyId: vehicleId } });
    expect(made).toEqual({
      status: 201,
      data: { id: vehicleId },
      etag: '"3"',
      location: `/v1/vehicles/${vehicleId}`,
      isReplayed: true,
    });
    const read = await client.call('getSettings');
    expect([read.etag, read.location, read.isReplayed]).toEqual([null, null, false]);
  });

  it('puts a key of its own on each creating call, and the given one where one is given', async () => {
    const { client, asked } = prepare([1, 2, 3].map(() => ({ status: 201, body: {} })));
    const path = { keyId: vehicleId };
    await client.call('revokeApiKey', { path });
    await client.call('revokeApiKey', { path });
    await client.call('revokeApiKey', { path, idempotencyKey: 'mine' });
    expect(asked.map(({ headers }) => headers['idempotency-key'])).toEqual(['key-1', 'key-2', 'mine']);
  });

  it('makes keys that differ where no maker is given', async () => {
    const { client, asked } = prepare([1, 2].map(() => ({ status: 201, body: {} })));
    const plain = new EndfloatClient({
      baseUrl: 'http://shop.invalid',
      apiKey: 'k.s',
      fetch: (url, request) => {
        asked.push({ ...request, url });
        return Promise.resolve(answerOf({ status: 201, body: {} }));
      },
    });
    await plain.call('revokeApiKey', { path: { keyId: vehicleId } });
    await plain.call('revokeApiKey', { path: { keyId: vehicleId } });
    const keys = asked.map(({ headers }) => headers['idempotency-key']);
    expect(new Set(keys).size).toBe(2);
    expect(keys.every((key) => /^[!-~]{1,255}$/.test(key ?? ''))).toBe(true);
    expect(client).toBeInstanceOf(EndfloatClient);
  });

  it('puts no key on reading and on changing by a patch', async () => {
    const { client, asked } = prepare([1, 2].map(() => ({ status: 200, body: {} })));
    await client.call('getSettings');
    await client.call('updateSettings', { ifMatch: '"1"', body: { name: 'Tarnbrook Vans' } });
    expect(asked.map(({ headers }) => headers['idempotency-key'])).toEqual([undefined, undefined]);
    expect(asked[1]?.headers).toMatchObject({
      'if-match': '"1"',
      'content-type': 'application/merge-patch+json',
    });
    expect(asked[1]?.body).toBe('{"name":"Tarnbrook Vans"}');
  });

  it('goes through all pages by their cursors, keeping the filter', async () => {
    const { client, asked } = prepare([page([1, 2], 'a.b'), page([], 'c.d'), page([3], null)]);
    const items: unknown[] = [];
    for await (const item of client.items('listVehicles', { query: { pageSize: '2', plate: 'QM 14' } }))
      items.push(item);
    expect(items).toEqual([1, 2, 3]);
    expect(asked.map(({ url }) => url.split('?')[1])).toEqual([
      'pageSize=2&plate=QM%2014',
      'pageSize=2&plate=QM%2014&cursor=a.b',
      'pageSize=2&plate=QM%2014&cursor=c.d',
    ]);
  });

  it('asks for no page that nobody takes', async () => {
    const { client, asked } = prepare([page([1, 2], 'a.b')]);
    for await (const items of client.pages('listVehicles')) {
      expect(items.items).toEqual([1, 2]);
      break;
    }
    expect(asked).toHaveLength(1);
  });

  it('says undefined where the version with the tag still holds', async () => {
    const { client, asked } = prepare([{ status: 304 }, { status: 200, body: { id: vehicleId } }]);
    const path = { vehicleId };
    expect(await client.callIfChanged('showVehicle', '"2"', { path })).toBeUndefined();
    expect((await client.callIfChanged('showVehicle', '"2"', { path }))?.data).toEqual({ id: vehicleId });
    expect(asked[0]?.headers['if-none-match']).toBe('"2"');
  });

  it('asks for the tag alone where no body is wanted', async () => {
    const { client, asked } = prepare([{ status: 204, fields: { etag: '"4"' } }]);
    const answer = await client.callForTag('updateSettings', { ifMatch: '"3"', body: {} });
    expect([answer.etag, answer.data]).toEqual(['"4"', undefined]);
    expect(asked[0]?.headers['prefer']).toBe('return=minimal');
  });

  it('reads a table as CSV', async () => {
    const { client, asked } = prepare([
      { status: 200, body: 'a,b\r\n1,2\r\n', fields: { 'content-type': 'text/csv; charset=utf-8' } },
    ]);
    const { data } = await client.csv('listStockLines');
    expect(data).toBe('a,b\r\n1,2\r\n');
    expect(asked[0]?.headers['accept']).toBe('text/csv');
  });
});

describe('a refusal', () => {
  it('is thrown with its type, code and faults', async () => {
    const errors = [{ pointer: '/name', rule: 'minLength', detail: 'must not be empty' }];
    const { client } = prepare([{ status: 422, body: { ...problem(422, 'input.invalid'), errors } }]);
    const error = await refusalOf(client.call('getSettings'));
    expect(error).toBeInstanceOf(ProblemError);
    const { status, code, type, faults, message } = error as ProblemError;
    expect({ status, code, type, faults }).toEqual({
      status: 422,
      code: 'input.invalid',
      type: 'some-type',
      faults: errors,
    });
    expect(message).toContain('input.invalid');
    expect(message).toContain('/name: must not be empty');
  });

  it('of another kind than the interface gives is told apart', async () => {
    const fields = { 'content-type': 'text/html' };
    const { client } = prepare([
      { status: 502, body: '<h1>bad gateway</h1>', fields },
      { status: 200, body: '<h1>sign in</h1>', fields },
    ]);
    for (const status of [502, 200]) {
      const error = await refusalOf(client.call('getSettings'));
      expect(error).toBeInstanceOf(UnexpectedAnswerError);
      expect((error as UnexpectedAnswerError).status).toBe(status);
    }
  });
});

describe('sending again', () => {
  const path = { keyId: vehicleId };

  it('waits as long as the answer says, and sends the same request with the same key', async () => {
    const busy = (status: number, after: string): Prepared => ({
      status,
      body: problem(status),
      fields: { 'retry-after': after },
    });
    const { client, asked, waits } = prepare([
      busy(503, '2'),
      busy(429, '7'),
      busy(409, '1'),
      { status: 201, body: { id: 1 } },
    ]);
    expect((await client.call('revokeApiKey', { path })).data).toEqual({ id: 1 });
    expect(waits).toEqual([2000, 7000, 1000]);
    expect(new Set(asked.map((each) => JSON.stringify(each))).size).toBe(1);
    expect(asked[0]?.headers['idempotency-key']).toBe('key-1');
  });

  it('doubles the wait where no time is named, also after a lost answer', async () => {
    const { client, waits } = prepare([
      'noAnswer',
      { status: 503, body: problem(503) },
      'noAnswer',
      page([], null),
    ]);
    await client.call('listVehicles');
    expect(waits).toEqual([250, 500, 1000]);
  });

  it('gives up after the attempts it was given, with the last refusal', async () => {
    const steps: Step[] = [1, 2].map(() => ({
      status: 503,
      body: problem(503),
      fields: { 'retry-after': '1' },
    }));
    const { client, asked } = prepare(steps, { retries: { attempts: 2 } });
    const error = await refusalOf(client.call('getSettings'));
    expect((error as ProblemError).status).toBe(503);
    expect((error as ProblemError).retryAfterSeconds).toBe(1);
    expect(asked).toHaveLength(2);
  });

  it('hands a refusal on at once where it asks for a longer wait than allowed', async () => {
    const { client, asked, waits } = prepare([
      { status: 429, body: problem(429), fields: { 'retry-after': '3600' } },
    ]);
    const error = await refusalOf(client.call('getSettings'));
    expect((error as ProblemError).retryAfterSeconds).toBe(3600);
    expect([asked.length, waits]).toEqual([1, []]);
  });

  it('does not repeat a patch whose answer was lost: it may have been done', async () => {
    const { client, asked } = prepare(['noAnswer', { status: 200, body: {} }]);
    const error = await refusalOf(client.call('updateSettings', { ifMatch: '"1"', body: {} }));
    expect(error).toBeInstanceOf(TypeError);
    expect(asked).toHaveLength(1);
  });

  it.each([400, 404, 409, 412, 422, 500])('does not repeat what was answered with %i', async (status) => {
    const { client, asked } = prepare([{ status, body: problem(status) }]);
    expect(await refusalOf(client.call('revokeApiKey', { path }))).toBeInstanceOf(ProblemError);
    expect(asked).toHaveLength(1);
  });

  it('ends when the caller ends it, also while it waits', async () => {
    const end = new AbortController();
    const waiting = { status: 503, body: problem(503), fields: { 'retry-after': '20' } };
    let sent = 0;
    const client = new EndfloatClient({
      baseUrl: 'http://shop.invalid',
      apiKey: 'k.s',
      fetch: () => {
        sent += 1;
        queueMicrotask(() => end.abort(new Error('enough')));
        return Promise.resolve(answerOf(waiting));
      },
    });
    const error = await refusalOf(client.call('getSettings', { signal: end.signal }));
    expect((error as Error).message).toBe('enough');
    expect(sent).toBe(1);
  });

  it.each([0, 1.5, Number.NaN])('refuses %p attempts', (attempts) => {
    expect(() => prepare([], { retries: { attempts } })).toThrow(RangeError);
  });
});

describe('the types of the client', () => {
  it('let no call through that the document does not have', () => {
    const { client } = prepare([]);
    const wrong = [
      // @ts-expect-error -- no such operation
      () => client.call('launchVehicle'),
      // @ts-expect-error -- the path is needed
      () => client.call('showVehicle'),
      // @ts-expect-error -- a change needs the tag of the version it was made from
      () => client.call('updateSettings', { body: {} }),
      // @ts-expect-error -- no such member
      () => client.call('updateSettings', { ifMatch: '"1"', body: { nickname: 'x' } }),
      // @ts-expect-error -- not a list with a cursor
      () => client.pages('getSettings'),
      // @ts-expect-error -- not given as CSV
      () => client.csv('getSettings'),
    ];
    expect(wrong).toHaveLength(6);
  });
});
