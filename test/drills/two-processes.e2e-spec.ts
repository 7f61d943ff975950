import { startTestApi, type TestApi } from '../support/api.js';
import { testServer } from '../support/database.js';
import { findBreaches } from './invariants.js';
import { startApiOn, type KillableServer } from './killable-server.js';

/** More with ENDFLOAT_TEST_ROUNDS. */
const rounds = Array.from(
  { length: Number(process.env['ENDFLOAT_TEST_ROUNDS'] ?? '5') },
  (_, index) => index,
);

interface Sent {
  readonly status: number;
  readonly body: { readonly id: string; readonly version: number };
  readonly isReplay: boolean;
}

let api: TestApi;
let processes: readonly KillableServer[];
let authorization: string;

beforeAll(async () => {
  api = await startTestApi();
  ({ authorization } = (await api.openShop()).owner);
  processes = await Promise.all([startApiOn(api.database), startApiOn(api.database)]);
});
afterAll(async () => {
  await Promise.all(processes.map((each) => each.stop()));
  await api.close();
});
afterEach(async () => {
  const url = new URL(testServer().adminUrl);
  url.pathname = new URL(api.database.ownerUrl).pathname;
  expect(await findBreaches(url.href)).toEqual([]);
});

const send = async (place: number, path: string, request: RequestInit): Promise<Sent> => {
  const headers = { authorization, 'content-type': 'application/json', ...request.headers };
  const { address } = processes[place % processes.length]!;
  const reply = await fetch(`${address}${path}`, { ...request, headers });
  const isReplay = reply.headers.get('idempotency-replayed') === '?1';
  return { status: reply.status, body: (await reply.json()) as Sent['body'], isReplay };
};
/** Ten at once, five to each process. */
const race = (path: string, requestOf: (place: number) => RequestInit): Promise<Sent[]> =>
  Promise.all(Array.from({ length: 10 }, (_, place) => send(place, path, requestOf(place))));
const count = (sent: readonly Sent[], status: number): number =>
  sent.filter((each) => each.status === status).length;
const customer = (name: string): object => ({
  kind: 'person',
  contact: { name },
  downtimeCostPerDay: null,
  planningDistanceKm: null,
});
const post = (body: object, headers: Record<string, string> = {}): RequestInit => ({
  method: 'POST',
  body: JSON.stringify(body),
  headers,
});

describe('two processes on one database', () => {
  it.each(rounds)('API row 35: of ten changes from one version one is taken (%i)', async () => {
    const { version } = (await send(0, '/v1/settings', {})).body;
    const headers = { 'content-type': 'application/merge-patch+json', 'if-match': `"${String(version)}"` };
    const sent = await race('/v1/settings', (place) => ({
      method: 'PATCH',
      body: JSON.stringify({ labourRatePerHour: `${String(100 + 10 * version + place)}.00` }),
      headers,
    }));
    expect([count(sent, 200), count(sent, 412)]).toEqual([1, 9]);
    expect((await send(1, '/v1/settings', {})).body.version).toBe(version + 1);
  });

  it.each(rounds)('API row 38: ten requests under one key have one effect (%i)', async (round) => {
    const body = customer('Idris Quern');
    const headers = { 'idempotency-key': `race-${String(round)}` };
    const sent = await race('/v1/customers', () => post(body, headers));
    const made = sent.filter(({ status }) => status === 201);
    expect(made.length + count(sent, 409)).toBe(10);
    expect(made.filter(({ isReplay }) => !isReplay)).toHaveLength(1);
    expect(new Set(made.map(({ body: { id } }) => id)).size).toBe(1);
  });

  it.each(rounds)('API row 32: one id for ten customers is taken by one (%i)', async () => {
    const id = api.ids.next();
    const sent = await race('/v1/customers', (place) =>
      post({ id, ...customer(`Perrin Vale ${String(place)}`) }),
    );
    expect([count(sent, 201), count(sent, 409)]).toEqual([1, 9]);
  });
});
