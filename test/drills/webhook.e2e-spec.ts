import { openDeliveries } from '@endfloat/worker';
import { BeginDueDeliveriesUseCase } from '@endfloat/workshop';
import { AesSealer, SealedWebhookTerms } from '@endfloat/persistence';
import { HttpWebhookSender } from '../../apps/worker/src/webhooks/http-sender.js';
import { jest } from '@jest/globals';
import {
  StandingClock,
  startTestApi,
  testSealingSecret,
  type Reply,
  type TestApi,
  type TestShop,
} from '../support/api.js';
import { answer, isSignedWith, openReceiver, type WebhookReceiver } from './webhook-receiver.js';

/** Some receivers are waited for until the sender gives up. */
jest.setTimeout(60_000);

type Deliveries = ReturnType<typeof openDeliveries>;

const clock = new StandingClock('2031-05-04T09:30:00.000Z');
let api: TestApi;
let receiver: WebhookReceiver;
let workers: readonly Deliveries[];
let shop: TestShop;

const openWorker = (): Deliveries =>
  openDeliveries({
    url: api.database.workerUrl,
    sealingSecret: testSealingSecret,
    webhookLoopback: true,
    parts: { clock, chance: { next: () => 0.5 }, sending: { totalMs: 2500 } },
  });

beforeAll(async () => {
  api = await startTestApi({ clock, webhookLoopback: true });
  receiver = await openReceiver();
  workers = [openWorker(), openWorker()];
});

afterAll(async () => {
  await Promise.all(workers.map((worker) => worker.close()));
  await receiver.close();
  await api.close();
});

beforeEach(async () => {
  receiver.received.length = 0;
  shop = await api.openShop();
});

interface Endpoint {
  readonly id: string;
  readonly path: string;
  readonly secret: string;
}

let paths = 0;
const jobOpened = 'endfloat.job.opened.v1';

async function endpoint(
  port = receiver.port,
  types: readonly string[] | null = [jobOpened],
): Promise<Endpoint> {
  const path = `/hook-${String((paths += 1))}`;
  const made = await api.call('POST', '/v1/webhook-endpoints', {
    as: shop.owner,
    headers: { 'idempotency-key': path },
    body: { url: `http://127.0.0.1:${String(port)}${path}`, description: 'a drill', eventTypes: types },
  });
  expect(made.status).toBe(201);
  return { id: made.body.id, path, secret: made.body.secret };
}

async function happen(times: number): Promise<void> {
  for (let at = 0; at < times; at += 1) {
    const [subjectId, vehicleId] = [api.ids.next(), api.ids.next()];
    await api.work.run(shop.id, (tx) =>
      tx.announce({ type: jobOpened, subjectId, at: clock.now(), payload: { vehicleId } }),
    );
  }
}

/** Every worker looks at the same moment, until none of them finds anything that is due. */
async function deliver(): Promise<void> {
  for (;;) {
    const begun = await Promise.all(workers.map((worker) => worker.round()));
    await Promise.all(workers.map((worker) => worker.rest()));
    if (begun.every((count) => count === 0)) return;
  }
}

const deliveriesOf = async ({ id }: Endpoint): Promise<Reply['body'][]> =>
  (await api.call('GET', `/v1/webhook-deliveries?endpointId=${id}&pageSize=200`, { as: shop.owner })).body
    .items;
const statesOf = async (of: Endpoint): Promise<string[]> =>
  (await deliveriesOf(of)).map(({ state }) => state);
const detail = async (id: string): Promise<Reply['body']> =>
  (await api.call('GET', `/v1/webhook-deliveries/${id}`, { as: shop.owner })).body;
const times = (of: Endpoint): number[] => [...receiver.counts(of.path).values()];

describe('webhooks, counted at the receiver', () => {
  it('two workers at once: every event comes to every endpoint exactly once, signed and whole', async () => {
    const [first, second] = [await endpoint(), await endpoint()];
    await happen(30);
    await deliver();
    for (const each of [first, second]) {
      expect(times(each)).toEqual(Array<number>(30).fill(1));
      expect(new Set(await statesOf(each))).toEqual(new Set(['delivered']));
      expect(receiver.at(each.path).every((message) => isSignedWith(each.secret, message))).toBe(true);
      expect(receiver.at(each.path).every((message) => isSignedWith('whsec_AAAA', message))).toBe(false);
    }
    const message = receiver.at(first.path)[0]!;
    expect(message.contentType).toBe('application/cloudevents+json; charset=utf-8');
    expect(JSON.parse(message.body)).toMatchObject({
      specversion: '1.0',
      id: message.id,
      type: jobOpened,
      source: `urn:uuid:${shop.id}`,
      data: { vehicleId: expect.any(String) as string },
    });
    expect(message.timestamp).toBe(String(Math.floor(Date.parse(clock.now()) / 1000)));
  });

  it('API row 63: what was rolled back is told to nobody', async () => {
    const told = await endpoint();
    const fault = new Error('planted');
    const failing = api.work.run(shop.id, async (tx) => {
      await tx.announce({ type: jobOpened, subjectId: told.id, at: clock.now(), payload: {} });
      throw fault;
    });
    await expect(failing).rejects.toBe(fault);
    await deliver();
    expect([receiver.at(told.path).length, await statesOf(told)]).toEqual([0, []]);
  });

  it('API row 50: a receiver that is down six hours is tried on its schedule, and told once it is back, under the same id', async () => {
    const told = await endpoint();
    receiver.behave(told.path, answer(503));
    await happen(3);
    await deliver();
    expect(times(told)).toEqual([1, 1, 1]);
    await deliver();
    expect(times(told)).toEqual([1, 1, 1]);
    // Half of a fifth longer than planned, since chance is a half: 5 s, 5 min, 30 min, 2 h, then 5 h.
    for (const [index, seconds] of [5.5, 330, 1980, 7920].entries()) {
      clock.moveOn(seconds * 1000 - 1);
      await deliver();
      expect(times(told)).toEqual(Array<number>(3).fill(index + 1));
      clock.moveOn(1);
      await deliver();
      expect(times(told)).toEqual(Array<number>(3).fill(index + 2));
    }
    receiver.behave(told.path, answer(200));
    clock.moveOn(19_800_000);
    await deliver();
    expect(times(told)).toEqual([6, 6, 6]);
    expect(await statesOf(told)).toEqual(['delivered', 'delivered', 'delivered']);
    const one = await detail((await deliveriesOf(told))[0]!.id);
    expect(
      one.log.map(({ outcome, status }: { outcome: string; status: number }) => [outcome, status]),
    ).toEqual([...Array<unknown>(5).fill(['refused', 503]), ['accepted', 200]]);
  });

  it('gives up after ten attempts over three days, says so, and tells it again when asked', async () => {
    const port = await closedPort();
    const told = await endpoint(port);
    await happen(1);
    const begun = Date.parse(clock.now());
    for (let attempt = 1; attempt <= 12; attempt += 1) {
      await deliver();
      clock.moveOn(86_400_000 * 1.2);
    }
    const [failed] = await deliveriesOf(told);
    expect([failed!.state, failed!.attempts, failed!.nextAttemptAt]).toEqual(['failed', 10, null]);
    const { log } = await detail(failed!.id);
    expect(log.map(({ outcome }: { outcome: string }) => outcome)).toEqual(
      Array<string>(10).fill('notReached'),
    );
    expect(Date.parse(failed!.settledAt) - begun).toBeGreaterThan(3 * 86_400_000);
    const url = `/v1/webhook-endpoints/${told.id}`;
    const moved = await api.call('PATCH', url, {
      as: shop.owner,
      ifMatch: '*',
      body: { url: `http://127.0.0.1:${String(receiver.port)}${told.path}` },
    });
    expect(moved.status).toBe(200);
    const replay = await api.call('POST', `/v1/webhook-deliveries/${String(failed!.id)}/replays`, {
      as: shop.owner,
    });
    expect([replay.status, replay.body.eventId]).toEqual([201, failed!.eventId]);
    await deliver();
    expect([...receiver.counts(told.path)]).toEqual([[failed!.eventId, 1]]);
    expect((await detail(replay.body.id)).state).toBe('delivered');
    expect((await detail(failed!.id)).state).toBe('failed');
  });

  it('a slow receiver holds up nobody but itself', async () => {
    const [slow, quick] = [await endpoint(), await endpoint()];
    let release = (): void => undefined;
    const released = new Promise<void>((resolve) => (release = resolve));
    receiver.behave(
      slow.path,
      (_request, response) => void released.then(() => response.writeHead(204).end()),
    );
    await happen(6);
    const [one, two] = workers as [Deliveries, Deliveries];
    const patient = openDeliveries({
      url: api.database.workerUrl,
      sealingSecret: testSealingSecret,
      webhookLoopback: true,
      parts: { clock, sending: { totalMs: 20_000 } },
    });
    try {
      await patient.round();
      const arrived = async (): Promise<void> => {
        while (receiver.at(quick.path).length < 6) {
          await patient.round();
          await new Promise((resolve) => setImmediate(resolve));
        }
      };
      await arrived();
      expect(times(quick)).toEqual(Array<number>(6).fill(1));
      expect((await statesOf(slow)).filter((state) => state === 'delivered')).toEqual([]);
      release();
      await patient.rest();
      await Promise.all([one.rest(), two.rest()]);
      await deliver();
      expect(times(slow)).toEqual(Array<number>(6).fill(1));
    } finally {
      release();
      await patient.close();
    }
  });

  it('API row 48: a redirect is a failure and followed nowhere', async () => {
    const told = await endpoint();
    receiver.behave(told.path, answer(302, { location: `http://127.0.0.1:${String(receiver.port)}/inside` }));
    await happen(2);
    await deliver();
    expect([times(told), receiver.at('/inside').length]).toEqual([[1, 1], 0]);
    const { log } = await detail((await deliveriesOf(told))[0]!.id);
    expect(log).toMatchObject([{ outcome: 'redirected', status: 302 }]);
  });

  it('API row 49: an answer without end is read up to 64 kB; one that trickles is left after the time', async () => {
    const [huge, trickling] = [await endpoint(), await endpoint()];
    let sent = 0;
    receiver.behave(huge.path, (_request, response) => {
      response.writeHead(200);
      const chunk = Buffer.alloc(16 * 1024);
      const more = (): void => {
        if (response.destroyed || sent > 64 * 1024 * 1024) return;
        sent += chunk.byteLength;
        if (response.write(chunk)) setImmediate(more);
        else response.once('drain', more);
      };
      more();
    });
    receiver.behave(trickling.path, (_request, response) => response.writeHead(200).write('.'));
    await happen(1);
    await deliver();
    expect([times(huge), times(trickling)]).toEqual([[1], [1]]);
    expect(await statesOf(huge)).toEqual(['delivered']);
    expect(sent).toBeLessThan(16 * 1024 * 1024);
    const { log, state } = await detail((await deliveriesOf(trickling))[0]!.id);
    expect([state, log[0].outcome]).toEqual(['waiting', 'timedOut']);
  });

  it('a receiver that lies about its length, or hangs up, has accepted nothing', async () => {
    const [lying, hanging] = [await endpoint(), await endpoint()];
    receiver.behave(lying.path, (_request, response) => {
      response.writeHead(200, { 'content-length': '1000' }).write('short');
      setImmediate(() => response.destroy());
    });
    receiver.behave(hanging.path, (request) => request.socket.destroy());
    await happen(1);
    await deliver();
    for (const each of [lying, hanging]) {
      const { log, state } = await detail((await deliveriesOf(each))[0]!.id);
      expect([state, log[0].outcome]).toEqual(['waiting', 'notReached']);
    }
    receiver.behave(lying.path, answer(200));
    clock.moveOn(5500);
    await deliver();
    expect([times(lying), await statesOf(lying)]).toEqual([[2], ['delivered']]);
  });

  it('API row 50: 410 ends it: nothing more is sent until somebody makes the endpoint active again', async () => {
    const told = await endpoint();
    receiver.behave(told.path, answer(410));
    await happen(12);
    await deliver();
    const sent = receiver.at(told.path).length;
    const deliveries = await deliveriesOf(told);
    // Those that were under way when the first one was answered were sent, too: every attempt is in the log.
    expect(deliveries.reduce<number>((sum, { attempts }) => sum + Number(attempts), 0)).toBe(sent);
    expect(times(told)).toEqual(Array<number>(sent).fill(1));
    expect(new Set(deliveries.map(({ state }) => state as string))).toEqual(new Set(['failed', 'withdrawn']));
    const url = `/v1/webhook-endpoints/${told.id}`;
    const gone = await api.call('GET', url, { as: shop.owner });
    expect([gone.body.state, gone.body.version]).toEqual(['gone', 2]);
    expect(gone.body.reason).toContain('410');
    await happen(3);
    clock.moveOn(86_400_000 * 5);
    await deliver();
    expect(receiver.at(told.path).length).toBe(sent);
    receiver.behave(told.path, answer(200));
    await api.call('PATCH', url, { as: shop.owner, ifMatch: '"2"', body: { state: 'active' } });
    await happen(2);
    await deliver();
    expect(receiver.at(told.path).length).toBe(sent + 2);
  });

  it('API row 50: a receiver that asks for time gets it', async () => {
    const told = await endpoint();
    receiver.behave(told.path, answer(429, { 'retry-after': '600' }));
    await happen(1);
    await deliver();
    clock.moveOn(599_999);
    await deliver();
    expect(times(told)).toEqual([1]);
    clock.moveOn(1);
    await deliver();
    expect(times(told)).toEqual([2]);
  });

  it('API row 62: what a worker began and never concluded is begun by another after a minute, once', async () => {
    const told = await endpoint();
    await happen(1);
    const terms = new SealedWebhookTerms(new AesSealer(testSealingSecret), true);
    const dead = new BeginDueDeliveriesUseCase(api.work, clock, terms);
    const most = { perEndpoint: 4, limit: 10, exceptEndpoints: [] };
    expect(await dead.execute(shop.id, most)).toHaveLength(1);
    clock.moveOn(59_999);
    await deliver();
    expect(times(told)).toEqual([]);
    clock.moveOn(1);
    await deliver();
    expect([times(told), await statesOf(told)]).toEqual([[1], ['delivered']]);
    const { attempts, log } = await detail((await deliveriesOf(told))[0]!.id);
    expect([attempts, log.map(({ number }: { number: number }) => number)]).toEqual([2, [2]]);
  });

  it('API row 52: both secrets sign for a day, then the new one alone', async () => {
    const told = await endpoint();
    const rotated = await api.call('POST', `/v1/webhook-endpoints/${told.id}/secrets`, { as: shop.owner });
    const fresh = rotated.body.secret as string;
    const signs = async (): Promise<boolean[]> => {
      receiver.received.length = 0;
      await happen(1);
      await deliver();
      const [message] = receiver.at(told.path);
      return [fresh, told.secret].map((secret) => isSignedWith(secret, message!));
    };
    expect(await signs()).toEqual([true, true]);
    clock.moveOn(86_400_000 - 1);
    expect(await signs()).toEqual([true, true]);
    clock.moveOn(1);
    expect(await signs()).toEqual([true, false]);
  });

  it('a paused endpoint is told nothing, and nothing that waited for it', async () => {
    const told = await endpoint();
    await happen(2);
    const url = `/v1/webhook-endpoints/${told.id}`;
    await api.call('PATCH', url, { as: shop.owner, ifMatch: '*', body: { state: 'paused' } });
    await happen(2);
    await deliver();
    expect([times(told), await statesOf(told)]).toEqual([[], ['withdrawn', 'withdrawn']]);
  });
});

describe('where messages cannot be led', () => {
  const message = { id: 'a', timestamp: 1, body: '{}', secrets: ['whsec_AAAA'] };

  it('API row 46: an address inside is refused when it is sent, too, whatever was recorded', async () => {
    const sender = new HttpWebhookSender({ allowsLoopback: false });
    for (const url of [
      `http://127.0.0.1:${String(receiver.port)}/inside`,
      'https://127.0.0.1/inside',
      'https://169.254.169.254/latest',
      'https://[::ffff:127.0.0.1]/',
      'https://2130706433/',
    ]) {
      expect([url, (await sender.send({ ...message, url })).outcome]).toEqual([url, 'addressNotAllowed']);
    }
    expect(receiver.received).toEqual([]);
  });

  it.each([
    ['a private address', ['10.0.0.7']],
    ['a public one beside a private one', ['93.184.215.14', '10.0.0.7']],
    ['a mapped loopback', ['::ffff:127.0.0.1']],
    ['the secrets of a cloud', ['169.254.169.254']],
  ])(
    'API row 47: a name that leads to %s is not connected to, and asked for once',
    async (_what, addresses) => {
      let asked = 0;
      const sender = new HttpWebhookSender({
        allowsLoopback: false,
        resolve: () => {
          asked += 1;
          return Promise.resolve(addresses);
        },
      });
      const result = await sender.send({ ...message, url: 'https://hooks.example.com/' });
      expect([result.outcome, asked]).toEqual(['addressNotAllowed', 1]);
    },
  );

  it('API row 47: a name that changes its mind is connected to where it was checked', async () => {
    let asked = 0;
    const sender = new HttpWebhookSender({
      allowsLoopback: true,
      totalMs: 2000,
      resolve: () => {
        asked += 1;
        return Promise.resolve(asked === 1 ? ['127.0.0.1'] : ['10.0.0.7']);
      },
    });
    receiver.received.length = 0;
    const url = `http://localhost:${String(receiver.port)}/checked`;
    expect(await sender.send({ ...message, url })).toMatchObject({ outcome: 'accepted', status: 204 });
    expect([asked, receiver.at('/checked').length]).toEqual([1, 1]);
  });

  it('a name that has no answer in time is no address', async () => {
    const sender = new HttpWebhookSender({
      allowsLoopback: false,
      totalMs: 50,
      resolve: () => new Promise(() => undefined),
    });
    expect(await sender.send({ ...message, url: 'https://hooks.example.com/' })).toMatchObject({
      outcome: 'timedOut',
    });
  });
});

/** A port on which nobody listens. */
async function closedPort(): Promise<number> {
  const other = await openReceiver();
  await other.close();
  return other.port;
}
