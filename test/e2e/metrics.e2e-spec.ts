import { Metrics, serveMetrics } from '@endfloat/api';
import { openTrial, type Trial } from '../support/http.js';
import { thingId, trialControllers } from '../support/trial-things.js';

/** Samples of an exposition: name with labels -> value; every line must be a comment or a sample. */
function samplesOf(text: string): Map<string, number> {
  const samples = new Map<string, number>();
  for (const line of text.split('\n').filter((each) => each !== '' && !each.startsWith('#'))) {
    const [, name, value] = /^([a-z0-9_]+(?:\{[^{}]*\})?) (\S+)$/.exec(line) ?? [];
    expect([line, Number.isFinite(Number(value))]).toEqual([line, true]);
    samples.set(name!, Number(value));
  }
  return samples;
}

describe('metrics', () => {
  let metrics: Metrics;
  let trial: Trial;
  beforeEach(async () => {
    metrics = new Metrics();
    trial = await openTrial(trialControllers, {}, { metrics });
  });
  afterEach(async () => {
    await trial.app.close();
    metrics.close();
  });

  const samples = async (): Promise<Map<string, number>> => samplesOf((await metrics.text()).text);
  const counted = (labels: string): string => `http_server_request_duration_seconds_count{${labels}}`;

  it('O3: count and time requests by the template of their path, their method, status and problem', async () => {
    const get = (url: string) => trial.request({ method: 'GET', url, headers: trial.owner });
    await get(`/v1/trial-things/${thingId}`);
    await get(`/v1/trial-things/${thingId}`);
    await get('/v1/trial-faults/missing');
    await trial.request({ method: 'GET', url: '/v1/trial-things' });
    const found = await samples();
    const route = (path: string, status: number, problem: string) =>
      counted(
        `http_request_method="GET",http_route="${path}",http_response_status_code="${String(status)}",error_type="${problem}"`,
      );
    expect(found.get(route('/v1/trial-things/:thingId', 200, ''))).toBe(2);
    expect(found.get(route('/v1/trial-faults/missing', 404, 'not-found'))).toBe(1);
    expect(found.get(route('/v1/trial-things', 401, 'missing-credential'))).toBe(1);
    expect(found.get('http_server_active_requests{http_request_method="GET"}')).toBe(0);
  });

  it('O3: hold no id, no query, no path that nobody declared and no method that nobody knows', async () => {
    await trial.request({ method: 'GET', url: `/v1/trial-things/${thingId}?canary=1`, headers: trial.owner });
    for (let path = 0; path < 20; path++)
      await trial.request({ method: 'GET', url: `/v1/canary-${String(path)}/${thingId}` });
    const { text } = await metrics.text();
    expect(text).not.toContain(thingId);
    expect(text).not.toContain('canary');
    expect(
      (await samples()).get(
        counted(
          'http_request_method="GET",http_route="",http_response_status_code="404",error_type="not-found"',
        ),
      ),
    ).toBe(20);
    metrics.begin('BREW');
    metrics.end({ method: 'BREW', route: '', status: 405, seconds: 0.1, problem: undefined });
    expect((await metrics.text()).text).not.toContain('BREW');
  });

  it('tell seconds: a request of 0.3 s lies between the bounds 0.25 and 0.5', async () => {
    const own = new Metrics();
    own.begin('GET');
    own.end({ method: 'GET', route: '/v1/x', status: 200, seconds: 0.3, problem: undefined });
    const found = samplesOf((await own.text()).text);
    own.close();
    const under = (bound: string): number | undefined =>
      [...found].find(([name]) => name.includes(`_bucket{le="${bound}"`))?.[1];
    expect([under('0.25'), under('0.5'), under('+Inf')]).toEqual([0, 1, 1]);
    const sum = [...found].find(([name]) => name.includes('duration_seconds_sum'))?.[1];
    expect(sum).toBe(0.3);
  });

  it('tell of connections to the database as they are when asked', async () => {
    let waiting = 0;
    metrics.watchPool(() => ({ used: 3, idle: 2, waiting }));
    waiting = 7;
    const found = await samples();
    expect([
      found.get('db_client_connection_count{db_client_connection_state="used"}'),
      found.get('db_client_connection_count{db_client_connection_state="idle"}'),
      found.get('db_client_connection_pending_requests'),
    ]).toEqual([3, 2, 7]);
  });

  it('tell of the process in bytes and seconds, and processor time once each time', async () => {
    const first = await samples();
    const second = await samples();
    for (const name of [
      'process_memory_usage_bytes',
      'process_uptime_seconds',
      'process_cpu_time_seconds_total',
    ])
      expect([name, first.get(name)! > 0]).toEqual([name, true]);
    // Were it added up, the second reading would be about twice the first.
    const spent = process.cpuUsage();
    expect(second.get('process_cpu_time_seconds_total')!).toBeLessThanOrEqual(
      (spent.user + spent.system) / 1e6,
    );
    expect(first.has('nodejs_eventloop_delay_p99_seconds')).toBe(true);
  });

  it('are served on an address of their own, and not by the interface', async () => {
    expect((await trial.request({ method: 'GET', url: '/metrics' })).status).toBe(404);
    const served = await serveMetrics(metrics, '127.0.0.1', 0);
    const address = `http://127.0.0.1:${String(served.port)}`;
    const answer = await fetch(`${address}/metrics`);
    expect([answer.status, answer.headers.get('content-type')]).toEqual([
      200,
      'text/plain; version=0.0.4; charset=utf-8',
    ]);
    expect(samplesOf(await answer.text()).size).toBeGreaterThan(5);
    expect((await fetch(`${address}/`)).status).toBe(404);
    expect((await fetch(`${address}/metrics`, { method: 'POST' })).status).toBe(404);
    await served.close();
    await expect(fetch(`${address}/metrics`)).rejects.toThrow();
  });

  it('API row 65: requests beyond the bound are turned away at once with 503, probes are answered, and room is given back', async () => {
    const bounded = await openTrial(trialControllers, { mostInFlight: 2 });
    const ask = () =>
      bounded.request({ method: 'GET', url: '/v1/trial-faults/slow', headers: bounded.owner });
    const answers = Promise.all([1, 2, 3, 4, 5].map(ask));
    expect((await bounded.request({ method: 'GET', url: '/readyz' })).status).toBe(200);
    const all = await answers;
    expect(all.map(({ status }) => status).sort()).toEqual([200, 200, 503, 503, 503]);
    for (const { body, headers } of all.filter(({ status }) => status === 503))
      expect([body.type, headers['retry-after']]).toEqual(['/problems/overloaded', '2']);
    expect((await ask()).status).toBe(200);
    await bounded.app.close();
  });
});
