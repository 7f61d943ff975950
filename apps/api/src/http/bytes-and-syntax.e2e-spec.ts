import { connect } from 'node:net';
import type { AddressInfo } from 'node:net';
import { openTrial, type Trial, type TrialAnswer } from '../../../../test/support/http.js';
import { arrived, thingId, trialControllers } from '../../../../test/support/trial-things.js';

const json = { 'content-type': 'application/json' };
const things = '/v1/trial-things';

describe('bytes and syntax', () => {
  let trial: Trial;
  let port: number;
  beforeAll(async () => {
    trial = await openTrial(trialControllers);
    await trial.app.listen(0, '127.0.0.1');
    port = (trial.app.getHttpServer().address() as AddressInfo).port;
  });
  afterAll(() => trial.app.close());

  const post = (payload: string | Buffer, headers: Record<string, string> = json): Promise<TrialAnswer> =>
    trial.request({ method: 'POST', url: things, headers: { ...trial.owner, ...headers }, payload });
  const get = (url: string): Promise<TrialAnswer> =>
    trial.request({ method: 'GET', url, headers: trial.owner });

  /** Writes bytes to the socket and gives back all that comes until the other side closes. */
  const raw = (bytes: string, linger = 2000): Promise<string> =>
    new Promise((resolve) => {
      let answer = '';
      const socket = connect(port, '127.0.0.1', () => socket.write(bytes));
      const timer = setTimeout(() => socket.destroy(), linger);
      socket.on('data', (chunk) => (answer += chunk.toString('latin1')));
      socket.on('error', () => undefined);
      socket.on('close', () => {
        clearTimeout(timer);
        resolve(answer);
      });
    });
  /** Status and problem of a raw answer, which must be a whole problem. */
  const rawProblem = (answer: string) => {
    const [head = '', body = ''] = answer.split('\r\n\r\n', 2);
    expect(head).toMatch(/content-type: application\/problem\+json/i);
    return {
      status: Number(head.split(' ')[1]),
      problem: JSON.parse(body) as { type: string; status: number },
      head,
    };
  };

  it('API row 12: a body beyond the limit is 413, said by its length or found while it arrives in chunks', async () => {
    const big = JSON.stringify({ name: 'x'.repeat(300 * 1024) });
    expect((await post(big)).body).toMatchObject({ status: 413, type: '/problems/too-large' });
    const chunk = `${(0x8000).toString(16)}\r\n${'1'.repeat(0x8000)}\r\n`;
    const head = `POST ${things} HTTP/1.1\r\nHost: a\r\nAuthorization: ${trial.owner.authorization}\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n`;
    const { status, head: answered } = rawProblem(await raw(head + chunk.repeat(10)));
    expect(status).toBe(413);
    expect(answered).toMatch(/connection: close/i);
  });

  describe('before a request is looked at', () => {
    const asking = (lines: readonly string[], body = ''): string => `${lines.join('\r\n')}\r\n\r\n${body}`;
    const bearer = (): string => `Authorization: ${trial.owner.authorization}`;

    it('a request without Host is 400 as a problem, also without a credential; HTTP/1.0 needs none', async () => {
      for (const more of [[], [bearer()]]) {
        const answer = rawProblem(
          await raw(asking([`GET ${things} HTTP/1.1`, 'Connection: close', ...more])),
        );
        expect([answer.status, answer.problem.type]).toEqual([400, '/problems/malformed-request']);
      }
      const old = await raw(asking([`GET ${things} HTTP/1.0`, bearer()]));
      expect(old).toMatch(/^HTTP\/1\.1 200 /);
    });

    it('two Host fields are 400, equal or not', async () => {
      for (const other of ['a', 'b', 'inside.example']) {
        const lines = [`GET ${things} HTTP/1.1`, 'Host: a', `host: ${other}`, bearer(), 'Connection: close'];
        const answer = rawProblem(await raw(asking(lines)));
        expect([other, answer.status, answer.problem.type]).toEqual([
          other,
          400,
          '/problems/malformed-request',
        ]);
      }
    });

    it('an expectation that nobody meets is 417 as a problem, and 100-continue is met', async () => {
      const head = (expect: string): string[] => [
        `POST ${things} HTTP/1.1`,
        'Host: a',
        bearer(),
        'Content-Type: application/json',
        'Content-Length: 2',
        `Expect: ${expect}`,
        'Connection: close',
      ];
      const refused = rawProblem(await raw(asking(head('200-ok'), '{}')));
      expect([refused.status, refused.problem.type]).toEqual([417, '/problems/expectation-failed']);
      const met = await raw(asking(head('100-continue'), '{}'));
      expect(met).toMatch(/^HTTP\/1\.1 100 Continue\r\n/);
      expect(met).toContain('HTTP/1.1 422 ');
    });

    it('API row 43: a body that is coded, whichever way, is 415 and read by nobody; identity is no coding', async () => {
      delete arrived.body;
      for (const coding of ['gzip', 'br', 'deflate', 'x-gzip', 'gzip, identity', 'aws-chunked']) {
        const refused = await post('{"name":"lamp"}', { ...json, 'content-encoding': coding });
        expect([coding, refused.status, refused.body.type]).toEqual([
          coding,
          415,
          '/problems/unsupported-media-type',
        ]);
        expect(refused.headers['accept-encoding']).toBe('identity');
      }
      expect(arrived.body).toBeUndefined();
      const plain = await post('{', { ...json, 'content-encoding': 'identity' });
      expect(plain.body.type).toBe('/problems/malformed-json');
    });
  });

  it('API row 12: a bulk route has a limit of its own', async () => {
    const items = Array.from({ length: 1000 }, () => ({
      name: 'lamp',
      words: ['aaaaaaaaa', 'bbbbbbbbb', 'ccccccccc'],
      conditions: {
        note: 'x'.repeat(20),
        other: 'y'.repeat(20),
        third: 'z'.repeat(20),
        fourth: 'w'.repeat(20),
      },
    }));
    const send = (payload: object) =>
      trial.request({ method: 'POST', url: `${things}/batches`, headers: trial.owner, payload });
    expect(JSON.stringify({ items }).length).toBeGreaterThan(200_000);
    expect(await send({ items: [...items] })).toMatchObject({ status: 202, body: { count: 1000 } });
    expect((await send({ items: [{ name: 'x'.repeat(3 * 1024 * 1024) }] })).status).toBe(413);
  });

  it('API row 13: JSON of a hundred thousand levels is 400 depth, of seventeen too, of sixteen is read', async () => {
    const nested = (levels: number) => `{"name":${'['.repeat(levels - 1)}${']'.repeat(levels - 1)}}`;
    expect((await post(nested(100_000))).body).toMatchObject({ status: 400, code: 'depth' });
    expect((await post(nested(17))).body).toMatchObject({ status: 400, code: 'depth' });
    expect((await post(nested(16))).body).toMatchObject({ status: 422 });
  });

  it('API row 14: a name twice in one object is 400, however it is escaped; the same name in two objects is not', async () => {
    for (const body of [
      '{"name":"a","name":"b"}',
      '{"name":"a","n\\u0061me":"b"}',
      '{"name":"a","price":{"amount":"1","amount":"2"}}',
    ]) {
      expect((await post(body)).body).toMatchObject({
        status: 400,
        type: '/problems/malformed-json',
        code: 'duplicate-name',
      });
    }
    expect(
      (await post('{"name":"a","price":{"amount":"1","currency":"EUR"},"conditions":{"name":"b"}}')).status,
    ).toBe(201);
  });

  it.each(['__proto__', 'constructor', 'prototype'])(
    'API row 15: the name %s is 400, at any level and in the query too',
    async (name) => {
      expect((await post(`{"name":"a","${name}":{}}`)).body).toMatchObject({
        status: 400,
        code: 'forbidden-name',
      });
      expect((await post(`{"name":"a","conditions":{"${name}":"1"}}`)).body).toMatchObject({
        status: 400,
        code: 'forbidden-name',
      });
      expect((await get(`${things}?${name}=1`)).body).toMatchObject({
        status: 400,
        errors: [{ pointer: `/${name}`, rule: 'forbiddenName' }],
      });
      expect((await get(`${things}?${name.replace('o', '%6f')}=1`)).status).toBe(400);
      expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    },
  );

  it('API row 16: broken UTF-8, a byte order mark, UTF-16 and a root that is no object are 400', async () => {
    const cases: [Buffer | string, string][] = [
      [Buffer.from([0x7b, 0x22, 0x6e, 0xff, 0x22, 0x3a, 0x31, 0x7d]), 'utf8'],
      [Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from('{"name":"a"}')]), 'bom'],
      [Buffer.from('{"name":"a"}', 'utf16le'), 'syntax'],
      ['null', 'not-object'],
      ['[]', 'not-object'],
      ['"text"', 'not-object'],
      ['7', 'not-object'],
      ['{"name":', 'syntax'],
    ];
    for (const [body, code] of cases) {
      expect([code, (await post(body)).body]).toEqual([code, expect.objectContaining({ status: 400, code })]);
    }
    const patch = await trial.request({
      method: 'PATCH',
      url: `${things}/${thingId}`,
      headers: { ...trial.owner, 'content-type': 'application/merge-patch+json', 'if-match': '"3"' },
      payload: 'null',
    });
    expect(patch.body).toMatchObject({ status: 400, code: 'not-object' });
  });

  it('API row 17: NUL and a lone surrogate in text are 422', async () => {
    for (const name of ['a\\u0000b', '\\ud800', 'a\\u001bb']) {
      expect((await post(`{"name":"${name}"}`)).body).toMatchObject({
        status: 422,
        errors: [{ pointer: '/name', rule: 'pattern' }],
      });
    }
    expect((await post('{"name":"\\ud83d\\ude00"}')).status).toBe(201);
  });

  it('API row 18: form, XML, plain text, another character set and no type at all are 415, and what is read is said', async () => {
    const types = [
      'application/x-www-form-urlencoded',
      'text/xml',
      'text/plain',
      'application/json; charset=utf-16',
      'application/merge-patch+json',
      'multipart/form-data; boundary=x',
      'nonsense',
    ];
    for (const type of types) {
      const answer = await post('{"name":"a"}', { 'content-type': type });
      expect([type, answer.status, answer.headers['accept-post']]).toEqual([type, 415, 'application/json']);
    }
    const untyped = rawProblem(
      await raw(
        `POST ${things} HTTP/1.1\r\nHost: a\r\nConnection: close\r\nAuthorization: ${trial.owner.authorization}\r\nContent-Length: 12\r\n\r\n{"name":"a"}`,
      ),
    );
    expect(untyped.status).toBe(415);
    const patch = await trial.request({
      method: 'PATCH',
      url: `${things}/${thingId}`,
      headers: { ...trial.owner, ...json, 'if-match': '"3"' },
      payload: '{}',
    });
    expect([patch.status, patch.headers['accept-patch']]).toEqual([415, 'application/merge-patch+json']);
    expect((await post('{"name":"a"}', { 'content-type': 'application/json; charset=UTF-8' })).status).toBe(
      201,
    );
  });

  it('API row 18: a route that reads another type says so, reads that and refuses JSON', async () => {
    const send = (type: string) =>
      trial.request({
        method: 'POST',
        url: `${things}/imports`,
        headers: { ...trial.owner, 'content-type': type },
        payload: 'a,b\r\n1,2\r\n',
      });
    expect(await send('text/csv')).toMatchObject({ status: 202, body: { count: 10 } });
    const refused = await send('application/json');
    expect([refused.status, refused.headers['accept-post']]).toEqual([415, 'text/csv']);
  });

  it('API row 19: a path that is no UTF-8 is 400, an id of 5,000 characters and an address of 20 kB are 414, header fields of 32 kB 431', async () => {
    expect((await get(`${things}/%ff`)).body).toMatchObject({
      status: 400,
      type: '/problems/invalid-parameter',
    });
    expect((await get(`${things}/${'a'.repeat(5000)}`)).body).toMatchObject({
      status: 414,
      type: '/problems/uri-too-long',
    });
    const long = rawProblem(
      await raw(
        `GET ${things}?cursor=${'a'.repeat(20_000)} HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n`,
      ),
    );
    expect([long.status, long.problem.type]).toEqual([414, '/problems/uri-too-long']);
    const heavy = rawProblem(
      await raw(`GET ${things} HTTP/1.1\r\nHost: a\r\nX-Filler: ${'a'.repeat(33_000)}\r\n\r\n`),
    );
    expect([heavy.status, heavy.problem.type]).toEqual([431, '/problems/headers-too-large']);
  });

  it('API row 20: page sizes are read exactly or refused', async () => {
    for (const size of ['0x10', '1e2', '%207%20', 'true', '', '0', '201', '-1', '1.0', '٣', 'NaN']) {
      expect([size, (await get(`${things}?pageSize=${size}`)).status]).toEqual([size, 400]);
    }
    expect((await get(`${things}?pageSize=5&pageSize=6`)).body).toMatchObject({
      status: 400,
      errors: [{ pointer: '/pageSize', rule: 'once' }],
    });
    expect((await get(`${things}?pageSize=5&page%53ize=6`)).status).toBe(400);
    expect((await get(`${things}?unheardOf=1`)).body).toMatchObject({
      status: 400,
      errors: [{ pointer: '/unheardOf', rule: 'unknownMember' }],
    });
    expect((await get(`${things}?pageSize=7`)).body.items).toHaveLength(7);
    expect((await post('{"name":"a","lit":"true"}')).status).toBe(422);
    expect((await post('{"name":"a","seats":["3"]}')).status).toBe(422);
  });

  it.each([
    [
      'a length and chunks',
      `POST ${things} HTTP/1.1\r\nHost: a\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n`,
    ],
    [
      'two lengths',
      `POST ${things} HTTP/1.1\r\nHost: a\r\nContent-Length: 5\r\nContent-Length: 6\r\n\r\nhello`,
    ],
    ['a folded header field', `GET /livez HTTP/1.1\r\nHost: a\r\nX-One: 1\r\n folded: 2\r\n\r\n`],
    ['a bare line feed in a header field', `GET /livez HTTP/1.1\r\nHost: a\nX-One: 1\r\n\r\n`],
    ['an unknown version', 'GET /livez HTTP/3.7\r\nHost: a\r\n\r\n'],
  ])('API row 21: %s is 400 as a problem, and the connection is closed', async (_what, bytes) => {
    const { status, problem, head } = rawProblem(await raw(bytes));
    expect([status, problem.status, problem.type]).toEqual([400, 400, '/problems/malformed-request']);
    expect(head).toMatch(/connection: close/i);
  });

  it('API row 23: a known path with another method is 405 with Allow, an unknown path 404', async () => {
    const put = await trial.request({
      method: 'PUT',
      url: things,
      headers: trial.owner,
      payload: { name: 'a' },
    });
    expect([put.status, put.headers['allow']]).toEqual([405, 'GET, HEAD, OPTIONS, POST']);
    const trace = await trial.request({ method: 'DELETE', url: `${things}/imports`, headers: trial.owner });
    expect(trace.headers['allow'] ?? '').not.toContain('PUT');
    expect(
      (
        await trial.request({
          method: 'PUT',
          url: '/v1/nowhere',
          headers: { 'content-type': 'text/xml' },
          payload: '<a/>',
        })
      ).body,
    ).toMatchObject({ status: 404, type: '/problems/not-found' });
    const options = await trial.request({ method: 'OPTIONS', url: `${things}/${thingId}` });
    expect([options.status, options.headers['allow'], options.headers['accept-patch']]).toEqual([
      204,
      'DELETE, GET, HEAD, OPTIONS, PATCH',
      'application/merge-patch+json',
    ]);
    expect((await trial.request({ method: 'OPTIONS', url: '/v1/nowhere' })).status).toBe(404);
  });

  it('hands the handler exactly what was sent', async () => {
    await post(`{"id":"${thingId.toUpperCase()}","name":"\\u00e9t\\u00e9","exact":"-12.500"}`);
    expect(arrived.body).toEqual({ id: thingId, name: 'été', exact: '-12.500' });
  });
});

describe('slow clients', () => {
  let trial: Trial;
  let port: number;
  beforeAll(async () => {
    trial = await openTrial(trialControllers, { requestTimeout: 400 });
    await trial.app.listen(0, '127.0.0.1');
    port = (trial.app.getHttpServer().address() as AddressInfo).port;
  });
  afterAll(() => trial.app.close());

  it('API row 22: a request that does not arrive in time is 408 and closed, while others are answered', async () => {
    const head = `POST ${things} HTTP/1.1\r\nHost: a\r\nAuthorization: ${trial.owner.authorization}\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{`;
    const answers = [head, 'GET /livez HTTP/1.1\r\nHos'].map(
      (bytes) =>
        new Promise<string>((resolve) => {
          let answer = '';
          const socket = connect(port, '127.0.0.1', () => socket.write(bytes));
          socket.on('data', (chunk) => (answer += chunk.toString()));
          socket.on('error', () => undefined);
          socket.on('close', () => resolve(answer));
        }),
    );
    const quick = await fetch(`http://127.0.0.1:${port}/livez`);
    expect([quick.status, await quick.json()]).toEqual([200, { status: 'ok' }]);
    for (const answer of await Promise.all(answers)) {
      expect(answer).toMatch(/^HTTP\/1\.1 408 /);
      expect(answer).toContain('/problems/request-timeout');
    }
  }, 15_000);
});
