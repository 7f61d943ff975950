import { Writable } from 'node:stream';
import { createLogger } from './operation/logger.js';
import { callerWith, openTrial, trialShop, type Trial } from '../../../../test/support/http.js';
import { arrived, thingId, trialControllers } from '../../../../test/support/trial-things.js';

const things = '/v1/trial-things';

describe('access', () => {
  let trial: Trial;
  const lines: string[] = [];
  beforeAll(async () => {
    const sink = new Writable({
      write(chunk: Buffer, _encoding, done) {
        lines.push(chunk.toString());
        done();
      },
    });
    trial = await openTrial(trialControllers, {}, { logger: createLogger({ logLevel: 'debug' }, sink) });
  });
  afterAll(() => trial.app.close());

  const get = (headers: Record<string, string>, url = things) =>
    trial.request({ method: 'GET', url, headers });

  it.each(['shopId', 'version', 'createdAt', 'role', 'isAdmin'])(
    'API row 5: %s in a body is 422 as an unknown member, never dropped',
    async (member) => {
      const answer = await trial.request({
        method: 'POST',
        url: things,
        headers: trial.owner,
        payload: { name: 'lamp', [member]: 1 },
      });
      expect(answer.body).toMatchObject({
        status: 422,
        errors: [{ pointer: `/${member}`, rule: 'unknownMember' }],
      });
    },
  );

  it('API row 6: a member outside the contract fails the test that sees it', async () => {
    const answer = await get(trial.owner, '/v1/trial-faults/leak');
    expect(answer.body).toMatchObject({ status: 500, type: '/problems/internal' });
    expect(lines.join('')).toContain('/shopId');
  });

  it('API row 6: in production the member is stripped and the log says so', async () => {
    const production = await openTrial(trialControllers, { strictAnswers: false });
    const { status, body } = await production.request({
      method: 'GET',
      url: '/v1/trial-faults/leak',
      headers: production.owner,
    });
    expect([status, body]).toEqual([200, { id: thingId, name: 'lamp', version: 1 }]);
    await production.app.close();
  });

  it('API row 7: a role that the operation does not list is 403, and the header field says why', async () => {
    const auditor = trial.credentials.add(callerWith('auditor'));
    expect((await get(auditor)).status).toBe(200);
    const refused = await trial.request({
      method: 'POST',
      url: things,
      headers: auditor,
      payload: { name: 'lamp' },
    });
    expect([refused.status, refused.body.type, refused.headers['www-authenticate']]).toEqual([
      403,
      '/problems/insufficient-scope',
      'Bearer realm="endfloat", error="insufficient_scope"',
    ]);
  });

  it('API row 9: a key in the address is not read, and no part of a key reaches the log', async () => {
    const secret = trial.owner.authorization.split('.')[1] ?? '';
    expect((await get({}, `${things}?access_token=${secret}`)).status).toBe(401);
    expect((await get(trial.owner, `${things}?access_token=${secret}`)).status).toBe(400);
    expect((await get(trial.owner)).status).toBe(200);
    expect((await get({ authorization: `Bearer wrong999.${secret}` })).status).toBe(401);
    expect(lines.length).toBeGreaterThan(4);
    expect(lines.join('')).not.toContain(secret);
  });

  it('API row 10: wrong keys are all the same 401, and too many from one address are 429 before they are looked up', async () => {
    const limited = await openTrial(trialControllers, {
      rateLimits: {
        perAddress: { requests: 1000, seconds: 60 },
        perCaller: { requests: 1000, seconds: 60 },
        wrongCredentials: { requests: 5, seconds: 60 },
      },
    });
    const [scheme = '', key = ''] = limited.owner.authorization.split(' ');
    const [prefix = '', secret = ''] = key.split('.');
    const expired = limited.credentials.add(callerWith('owner'), '2001-01-01T00:00:00Z').authorization;
    const wrong = [
      `${scheme} ${prefix}.${secret.split('').reverse().join('')}`,
      `${scheme} nobody99.${secret}`,
      `Basic ${key}`,
      expired,
      `${scheme} ${prefix}`,
    ];
    const bodies = [];
    for (const authorization of wrong) {
      const { status, body, headers } = await limited.request({
        method: 'GET',
        url: things,
        headers: { authorization },
      });
      expect([status, headers['www-authenticate']]).toEqual([
        401,
        'Bearer realm="endfloat", error="invalid_token"',
      ]);
      bodies.push(JSON.stringify({ ...body, traceId: '' }));
    }
    expect(new Set(bodies).size).toBe(1);
    const turnedAway = await limited.request({ method: 'GET', url: things, headers: limited.owner });
    expect(turnedAway.status).toBe(429);
    expect(Number(turnedAway.headers['retry-after'])).toBeGreaterThan(0);
    await limited.app.close();
  });

  it('API row 10: the limit of a caller is told in structured fields and enforced', async () => {
    const limited = await openTrial(trialControllers, {
      rateLimits: {
        perAddress: { requests: 1000, seconds: 60 },
        perCaller: { requests: 2, seconds: 60 },
        wrongCredentials: { requests: 5, seconds: 60 },
      },
    });
    const ask = () => limited.request({ method: 'GET', url: things, headers: limited.owner });
    const first = await ask();
    expect([first.headers['ratelimit-policy'], first.headers['ratelimit']]).toEqual([
      '"caller";q=2;w=60',
      expect.stringMatching(/^"caller";r=1;t=\d+$/),
    ]);
    await ask();
    const third = await ask();
    expect([third.status, third.body.type, third.headers['ratelimit']]).toEqual([
      429,
      '/problems/rate-limited',
      expect.stringMatching(/^"caller";r=0;t=\d+$/),
    ]);
    await limited.app.close();
  });

  it('API row 11: a forged X-Forwarded-For does not give an address a new limit', async () => {
    const limited = await openTrial(trialControllers, {
      rateLimits: {
        perAddress: { requests: 2, seconds: 60 },
        perCaller: { requests: 1000, seconds: 60 },
        wrongCredentials: { requests: 5, seconds: 60 },
      },
    });
    // The document itself was read once to open the trial.
    const statuses = [];
    for (const address of ['203.0.113.1', '203.0.113.2', '203.0.113.3']) {
      statuses.push(
        (
          await limited.request({
            method: 'GET',
            url: things,
            headers: { ...limited.owner, 'x-forwarded-for': address },
          })
        ).status,
      );
    }
    expect(statuses).toEqual([200, 429, 429]);
    await limited.app.close();
  });

  it('hands the caller of the credential to the handler, and nothing the request says of itself', async () => {
    await trial.request({
      method: 'POST',
      url: things,
      headers: { ...trial.owner, 'x-shop-id': 'other' },
      payload: { name: 'lamp' },
    });
    expect(arrived.caller).toEqual(callerWith('owner'));
    expect(arrived.caller?.shopId).toBe(trialShop);
  });
});
