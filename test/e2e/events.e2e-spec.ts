import type { OpenAPIV3_1 } from 'openapi-types';
import { eventTypes } from '@endfloat/workshop';
import { startTestApi, type Reply, type TestApi, type TestShop, type TestUser } from '../support/api.js';

let api: TestApi;
let shop: TestShop;

beforeAll(async () => {
  api = await startTestApi();
});
afterAll(() => api.close());
beforeEach(async () => {
  shop = await api.openShop();
});

const type = 'endfloat.job.opened.v1';
const read = (after?: string, pageSize = 200, as: TestUser = shop.owner): Promise<Reply> =>
  api.call(
    'GET',
    `/v1/events?pageSize=${String(pageSize)}${after === undefined ? '' : `&after=${encodeURIComponent(after)}`}`,
    { as },
  );
const idsOf = ({ body }: Reply): string[] => body.events.map(({ id }: { id: string }) => id);
const subjectsOf = ({ body }: Reply): string[] =>
  body.events.map(({ subject }: { subject: string }) => subject);
const announce = (subjectId: string = api.ids.next()): Promise<void> =>
  api.work.run(shop.id, (tx) =>
    tx.announce({ type, subjectId, at: new Date().toISOString(), payload: { vehicleId: subjectId } }),
  );

/** Opens a door once; whoever waits passes then. */
function door(): { open: () => void; opened: Promise<void> } {
  let open = (): void => undefined;
  const opened = new Promise<void>((resolve) => (open = resolve));
  return { open, opened };
}

describe('the feed of what happened', () => {
  it('tells in the form of CloudEvents, and of one shop only', async () => {
    const other = await api.openShop();
    const customer = await api.call('POST', '/v1/customers', {
      as: shop.owner,
      body: {
        kind: 'fleetOperator',
        contact: { name: 'Brindle Parcels' },
        downtimeCostPerDay: null,
        planningDistanceKm: null,
      },
    });
    const vehicle = await api.call('POST', '/v1/vehicles', {
      as: shop.owner,
      body: {
        customerId: customer.body.id,
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
      },
    });
    const told = await read();
    expect(told.body.events.at(-1)).toMatchObject({
      specversion: '1.0',
      source: `urn:uuid:${shop.id}`,
      type: 'endfloat.vehicle.recorded.v1',
      subject: vehicle.body.id,
      datacontenttype: 'application/json',
      dataschema: 'urn:endfloat:event:endfloat.vehicle.recorded.v1',
      data: { customerId: customer.body.id },
    });
    expect(JSON.stringify(told.body)).not.toContain('Brindle');
    expect((await read(undefined, 200, other.owner)).body.events).toEqual([]);
  });

  it('goes on from where it was, page by page, and stays there when nothing is new', async () => {
    const subjects = Array.from({ length: 7 }, () => api.ids.next());
    for (const subject of subjects) await announce(subject);
    const seen: string[] = [];
    let after: string | undefined;
    for (let more = true; more;) {
      const page = await read(after, 3);
      seen.push(...subjectsOf(page));
      after = page.body.after as string;
      more = page.body.hasMore as boolean;
    }
    expect(seen).toEqual(subjects);
    const still = await read(after);
    expect([still.body.events, still.body.hasMore]).toEqual([[], false]);
    await announce();
    expect((await read(still.body.after)).body.events).toHaveLength(1);
    expect((await read(after)).body.events).toHaveLength(1);
  });

  it('misses nothing of a transaction that began earlier and ended later', async () => {
    const [early, late] = [api.ids.next(), api.ids.next()];
    const [written, end] = [door(), door()];
    const slow = api.work.run(shop.id, async (tx) => {
      await tx.announce({ type, subjectId: early, at: new Date().toISOString(), payload: {} });
      written.open();
      await end.opened;
    });
    await written.opened;
    await announce(late);
    const first = await read();
    expect(subjectsOf(first)).toEqual([late]);
    end.open();
    await slow;
    const second = await read(first.body.after);
    expect(subjectsOf(second)).toEqual([early]);
    expect(subjectsOf(await read(second.body.after))).toEqual([]);
    expect(subjectsOf(await read()).sort()).toEqual([early, late].sort());
  });

  it('misses nothing while a page is being read and others write', async () => {
    for (let at = 0; at < 5; at += 1) await announce();
    const first = await read(undefined, 2);
    const [written, end] = [door(), door()];
    const slow = api.work.run(shop.id, async (tx) => {
      await tx.announce({ type, subjectId: api.ids.next(), at: new Date().toISOString(), payload: {} });
      written.open();
      await end.opened;
    });
    await written.opened;
    await announce();
    const second = await read(first.body.after, 2);
    end.open();
    await slow;
    const seen = [...idsOf(first), ...idsOf(second)];
    let after = second.body.after as string;
    for (let calls = 0; calls < 6; calls += 1) {
      const next = await read(after, 2);
      seen.push(...idsOf(next));
      after = next.body.after;
    }
    expect([seen.length, new Set(seen).size]).toEqual([7, 7]);
    expect(seen.sort()).toEqual(idsOf(await read()).sort());
  });

  it('keeps the order of one record, though the later writer had begun before the earlier one', async () => {
    const record = api.ids.next();
    const announcing = (
      tx: Parameters<Parameters<typeof api.work.run>[1]>[0],
      count: number,
    ): Promise<void> =>
      tx.announce({ type, subjectId: record, at: new Date().toISOString(), payload: { count } });
    const [begun, go] = [door(), door()];
    const later = api.work.run(shop.id, async (tx) => {
      // Has written something of another record, so that its transaction is the older one.
      await tx.announce({ type, subjectId: api.ids.next(), at: new Date().toISOString(), payload: {} });
      begun.open();
      await go.opened;
      await tx.takeTurn(record);
      await announcing(tx, 2);
    });
    await begun.opened;
    await api.work.run(shop.id, async (tx) => {
      await tx.takeTurn(record);
      await announcing(tx, 1);
    });
    const first = await read();
    go.open();
    await later;
    const rest = await read(first.body.after);
    const counts = [...first.body.events, ...rest.body.events]
      .filter(({ subject }: { subject: string }) => subject === record)
      .map(({ data }: { data: { count: number } }) => data.count);
    expect(counts).toEqual([1, 2]);
    const atOnce = (await read()).body.events
      .filter(({ subject }: { subject: string }) => subject === record)
      .map(({ data }: { data: { count: number } }) => data.count);
    expect(atOnce).toEqual([1, 2]);
  });

  it('gives every event once to a reader who polls while many write at once', async () => {
    const seen: string[] = [];
    let after: string | undefined;
    let writing = true;
    const poll = async (): Promise<void> => {
      const page = await read(after, 7);
      seen.push(...idsOf(page));
      after = page.body.after;
    };
    const reader = (async () => {
      while (writing) await poll();
      for (let calls = 0; calls < 20; calls += 1) await poll();
    })();
    const writer = async (count: number): Promise<void> => {
      for (let at = 0; at < count; at += 1) await announce();
    };
    await Promise.all(Array.from({ length: 4 }, () => writer(15)));
    writing = false;
    await reader;
    expect([seen.length, new Set(seen).size]).toEqual([60, 60]);
  });

  it('refuses a place of another shop, of another list, or of nobody', async () => {
    const other = await api.openShop();
    const { body } = await read();
    const foreign = await read(body.after, 200, other.owner);
    expect([foreign.status, foreign.body.type]).toEqual([400, '/problems/invalid-cursor']);
    const vehicles = await api.call('GET', `/v1/vehicles?cursor=${encodeURIComponent(String(body.after))}`, {
      as: shop.owner,
    });
    expect(vehicles.status).toBe(400);
    expect((await read('bm90.aGluZw')).status).toBe(400);
  });

  it('W5: every type stands in the document under webhooks, with the schema of its data', async () => {
    const { body } = await api.call('GET', '/openapi.json');
    const { webhooks = {} } = body as OpenAPIV3_1.Document;
    expect(Object.keys(webhooks).sort()).toEqual(Object.keys(eventTypes).sort());
    const text = JSON.stringify(webhooks['endfloat.job.released.v1']);
    for (const word of ['webhook-id', 'webhook-timestamp', 'webhook-signature', 'vehicleId', '410'])
      expect(text).toContain(word);
  });
});
