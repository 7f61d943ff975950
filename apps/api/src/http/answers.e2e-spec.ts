import {
  openTrial,
  otherShop,
  callerWith,
  type Trial,
  type TrialAnswer,
} from '../../../../test/support/http.js';
import { thingId, trialControllers } from '../../../../test/support/trial-things.js';

const things = '/v1/trial-things';
const one = `${things}/${thingId}`;

describe('answers', () => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await openTrial(trialControllers);
  });
  afterAll(() => trial.app.close());

  const get = (url: string, headers: Record<string, string> = {}): Promise<TrialAnswer> =>
    trial.request({ method: 'GET', url, headers: { ...trial.owner, ...headers } });
  const patch = (headers: Record<string, string>): Promise<TrialAnswer> =>
    trial.request({
      method: 'PATCH',
      url: one,
      headers: { ...trial.owner, 'content-type': 'application/merge-patch+json', ...headers },
      payload: '{}',
    });

  it('C1: a record has a strong tag made from its version, which differs where the query changes the representation', async () => {
    const plain = await get(one);
    expect([plain.headers['etag'], plain.headers['cache-control']]).toEqual(['"3"', 'private, no-cache']);
  });

  it('C3: If-None-Match that names the tag is 304 with the tag and without a body; another tag is 200', async () => {
    for (const known of ['"3"', 'W/"3"', '"1", "3"', '*']) {
      const { status, headers, text } = await get(one, { 'if-none-match': known });
      expect([known, status, headers['etag'], text]).toEqual([known, 304, '"3"', '']);
    }
    expect((await get(one, { 'if-none-match': '"4"' })).status).toBe(200);
    expect((await get(one, { 'if-none-match': '3' })).status).toBe(400);
  });

  it('C2: a change without If-Match is 428, with an old or weak tag 412, with the right one in a list or * it is made', async () => {
    expect((await patch({})).body).toMatchObject({ status: 428, type: '/problems/precondition-required' });
    for (const old of ['"2"', 'W/"3"', '"x"', '"2", W/"3"'])
      expect([old, (await patch({ 'if-match': old })).status]).toEqual([old, 412]);
    for (const right of ['"3"', '"2", "3"', '*', '"3.AbC-_9"']) {
      const { status, headers } = await patch({ 'if-match': right });
      expect([right, status, headers['etag']]).toEqual([right, 200, '"4"']);
    }
    expect((await patch({ 'if-match': 'three' })).status).toBe(400);
  });

  it('P1, P3: a list is walked by its links, with the filters kept, and nothing comes twice', async () => {
    const seen: string[] = [];
    let url = `${things}?pageSize=50&lit=true`;
    for (;;) {
      const { body, headers } = await get(url);
      seen.push(...(body.items as { name: string }[]).map(({ name }) => name));
      expect(headers['cache-control']).toBe('no-store');
      const link = headers['link'];
      if (link === undefined) {
        expect(body.nextCursor).toBeNull();
        break;
      }
      url = /^<([^>]+)>; rel="next"$/.exec(String(link))?.[1] ?? '';
      expect(url).toContain('lit=true');
      expect(url).toContain('pageSize=50');
    }
    expect(new Set(seen).size).toBe(120);
    expect(seen).toHaveLength(120);
  });

  it('P2: a cursor of another filter, another shop, another path, or not ours is 400', async () => {
    const cursor = String((await get(`${things}?pageSize=2`)).body.nextCursor);
    expect((await get(`${things}?pageSize=3&cursor=${cursor}`)).status).toBe(200);
    const stranger = trial.credentials.add({ ...callerWith('owner'), shopId: otherShop });
    const foreign = await trial.request({
      method: 'GET',
      url: `${things}?cursor=${cursor}`,
      headers: stranger,
    });
    const refused = [
      foreign,
      await get(`${things}?lit=true&cursor=${cursor}`),
      await get(`${things}?cursor=${cursor.slice(0, -3)}AAA`),
      await get(`${things}?cursor=WzFd.AAAA`),
    ];
    expect(refused.map(({ body }) => body.type as string)).toEqual(
      Array.from({ length: 4 }, () => '/problems/invalid-cursor'),
    );
    expect((await get(`${things}?cursor=nonsense`)).body.type).toBe('/problems/invalid-parameter');
  });

  it('H1: what was made is 201 with its Location and tag, and the same again is 200', async () => {
    const send = (name: string) =>
      trial.request({ method: 'POST', url: things, headers: trial.owner, payload: { name } });
    const made = await send('lamp');
    expect([
      made.status,
      made.headers['location'],
      made.headers['etag'],
      made.headers['cache-control'],
    ]).toEqual([201, one, '"1"', 'no-store']);
    expect((await send('again')).status).toBe(200);
    const closed = await trial.request({
      method: 'POST',
      url: `${one}/closures`,
      headers: trial.owner,
      payload: {},
    });
    expect(closed.status).toBe(201);
    expect(
      (
        await trial.request({
          method: 'POST',
          url: `${one}/closures`,
          headers: trial.owner,
          payload: { a: 1 },
        })
      ).body,
    ).toMatchObject({ status: 422, errors: [{ pointer: '/a', rule: 'unknownMember' }] });
  });

  it('H3: HEAD answers as GET does, without the body', async () => {
    const head = await trial.request({ method: 'HEAD', url: one, headers: trial.owner });
    expect([head.status, head.headers['etag'], head.text]).toEqual([200, '"3"', '']);
    expect((await trial.request({ method: 'HEAD', url: '/v1/nowhere' })).status).toBe(404);
  });

  it('H5: a request that accepts nothing the route can give is 406', async () => {
    expect((await get(one, { accept: 'text/csv' })).body).toMatchObject({
      status: 406,
      type: '/problems/not-acceptable',
    });
    expect((await get(one, { accept: '*/*;q=0' })).status).toBe(406);
    expect((await get(one, { accept: 'application/json;q=0, */*' })).status).toBe(406);
    expect((await get(one, { accept: 'text/html, application/*;q=0.8' })).status).toBe(200);
    const csv = await get(`${things}/exports/all`, { accept: 'text/csv' });
    expect([csv.status, csv.text]).toEqual([200, 'name\r\nlamp\r\n']);
    expect((await get(`${things}/exports/all`, { accept: 'application/json' })).status).toBe(406);
  });

  it('a list that is told as a table, too, is CSV for whoever prefers it: a file with a tag and the link to the next page', async () => {
    const url = `${things}?pageSize=2`;
    const { text, headers } = await get(url, { accept: 'text/csv' });
    expect(text).toBe(`id,name\r\n${thingId},thing 0\r\n${thingId},thing 1\r\n`);
    expect(headers['content-type']).toBe('text/csv; charset=utf-8; header=present');
    expect(headers['content-disposition']).toBe('attachment; filename="trial-things.csv"');
    expect(headers['link']).toContain('rel="next"');
    const known = await get(url, { accept: 'text/csv', 'if-none-match': String(headers['etag']) });
    expect([known.status, known.text]).toEqual([304, '']);
    expect((await get(url, { accept: 'text/csv;q=0.5, application/json' })).body.items).toHaveLength(2);
  });

  it('H9: return=minimal leaves the body out and is echoed; other preferences are ignored', async () => {
    const minimal = await patch({ 'if-match': '"3"', prefer: 'respond-async, return=minimal' });
    expect([
      minimal.status,
      minimal.text,
      minimal.headers['preference-applied'],
      minimal.headers['etag'],
    ]).toEqual([204, '', 'return=minimal', '"4"']);
    const other = await patch({ 'if-match': '"3"', prefer: 'handling=lenient' });
    expect([other.status, other.headers['preference-applied']]).toEqual([200, undefined]);
  });

  it('answers 204 without a body where there is nothing to say', async () => {
    const gone = await trial.request({
      method: 'DELETE',
      url: one,
      headers: { ...trial.owner, 'if-match': '"3"' },
    });
    expect([gone.status, gone.text]).toEqual([204, '']);
  });

  it('E1, E4: a bug is 500 with a trace id, and tells nothing else', async () => {
    const { body, headers } = await get('/v1/trial-faults/bug', {
      traceparent: '00-0af7651916cd43dd8448eb211c80319c-b7ad6b7169203331-01',
    });
    expect(body).toEqual({
      type: '/problems/internal',
      title: 'Something went wrong on our side.',
      status: 500,
      code: 'internal',
      instance: '/v1/trial-faults/bug',
      traceId: '0af7651916cd43dd8448eb211c80319c',
    });
    expect(headers['cache-control']).toBe('no-store');
  });

  it('O2: a broken traceparent is replaced', async () => {
    for (const traceparent of [
      'nonsense',
      '00-00000000000000000000000000000000-b7ad6b7169203331-01',
      '00-0af7651916cd43dd8448eb211c80319c-0000000000000000-01',
    ]) {
      const { body } = await get('/v1/trial-faults/missing', { traceparent });
      expect(body.traceId).toMatch(/^[0-9a-f]{32}$/);
      expect(traceparent).not.toContain(body.traceId as string);
    }
  });

  it('API row 54: a database that is away is 503 with Retry-After, and its address is not told', async () => {
    const { body, headers, text } = await get('/v1/trial-faults/away');
    expect([body.status, body.type, headers['retry-after']]).toEqual([503, '/problems/unavailable', '2']);
    expect(text).not.toContain('10.0.0.7');
  });

  it('lets pages of other origins read answers, and answers their preflight', async () => {
    const preflight = await trial.request({
      method: 'OPTIONS',
      url: one,
      headers: { origin: 'https://front.example', 'access-control-request-method': 'PATCH' },
    });
    expect([
      preflight.status,
      preflight.headers['access-control-allow-origin'],
      preflight.headers['access-control-allow-methods'],
    ]).toEqual([204, '*', 'DELETE, GET, HEAD, OPTIONS, PATCH']);
    expect((await get('/v1/nowhere')).headers['access-control-allow-origin']).toBe('*');
  });

  it('sends header fields that keep browsers from guessing', async () => {
    const { headers } = await get(one);
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'content-security-policy': "default-src 'none';frame-ancestors 'none'",
      'referrer-policy': 'no-referrer',
      vary: 'Authorization, Accept',
    });
  });
});

describe('probes and the end of the process', () => {
  it('O1: readiness follows the probe, liveness touches nothing', async () => {
    const trial = await openTrial([]);
    expect((await trial.request({ method: 'GET', url: '/readyz' })).body).toEqual({ status: 'ok' });
    trial.probe.reason = 'database';
    const unready = await trial.request({ method: 'GET', url: '/readyz' });
    expect([unready.status, unready.body.type, unready.headers['retry-after']]).toEqual([
      503,
      '/problems/unavailable',
      '2',
    ]);
    expect((await trial.request({ method: 'GET', url: '/livez' })).status).toBe(200);
    await trial.app.close();
  });

  it('API row 57: told to end, the process is first not ready while it still answers, then finishes what it has begun', async () => {
    const trial = await openTrial(trialControllers, { drainTime: 2000 });
    await trial.app.listen(0, '127.0.0.1');
    const address = await trial.app.getUrl();
    const begun = fetch(`${address}/v1/trial-faults/slow`, { headers: trial.owner });
    const closing = trial.app.close();
    let readiness = await fetch(`${address}/readyz`);
    while (readiness.status === 200) readiness = await fetch(`${address}/readyz`);
    expect([readiness.status, ((await readiness.json()) as { type: string }).type]).toEqual([
      503,
      '/problems/shutting-down',
    ]);
    expect((await fetch(`${address}/v1/trial-faults/slow`, { headers: trial.owner })).status).toBe(200);
    expect((await begun).status).toBe(200);
    await closing;
    await expect(fetch(`${address}/livez`)).rejects.toThrow();
  });
});
