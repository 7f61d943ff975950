import { openPorts } from '@endfloat/api';
import { demoShopId, demoUsers, loadDemoShop, storyVehicleId } from '@endfloat/demo';
import {
  ListComebacksUseCase,
  ListReadingsUseCase,
  ListVehiclesUseCase,
  ShowVehicleUseCase,
  type Caller,
} from '@endfloat/workshop';
import { createTestDatabase, type TestDatabase } from '../support/database.js';

const until = '2026-06-01T12:00:00.000Z';
const weeksBefore = (weeks: number): string =>
  new Date(Date.parse(until) - weeks * 7 * 86_400_000).toISOString();

describe('the demo shop', () => {
  let database: TestDatabase;
  let ports: ReturnType<typeof openPorts>;
  const load = (vans: number) =>
    loadDemoShop({ work: ports.work, secret: 'a secret that only this test knows', until, vans });
  const caller = (role: string): Caller => {
    const user = demoUsers.find((each) => each.role === role)!;
    return {
      shopId: demoShopId,
      userId: user.id,
      roles: [user.role],
      ...(user.customer === null ? {} : { customerId: user.customer }),
    };
  };

  beforeAll(async () => {
    database = await createTestDatabase();
    ports = openPorts({ url: database.apiUrl, size: 4, waitMs: 5000 });
  });
  afterAll(async () => {
    await ports.close();
    await database.drop();
  });

  it('is made van by van, so that a start that was cut off goes on with the next, and a further one makes nothing', async () => {
    expect(await load(1)).toEqual({ vehicles: 2 });
    expect(await load(2)).toEqual({ vehicles: 1 });
    expect(await load(2)).toEqual({ vehicles: 0 });
  });

  it('was recorded when it happened: as of week five of the story the comeback is not known', async () => {
    const list = new ListComebacksUseCase(ports.work, ports.clock);
    const now = await list.execute(caller('fleetManager'), { vehicleId: storyVehicleId, limit: 10 });
    expect(now.items.map(({ content }) => content.state)).toEqual(['confirmed']);
    const weekFive = await list.execute(caller('fleetManager'), {
      vehicleId: storyVehicleId,
      limit: 10,
      asOf: weeksBefore(5),
    });
    expect(weekFive.items).toEqual([]);
    const shown = await new ShowVehicleUseCase(ports.work, ports.clock).execute(caller('desk'), {
      id: storyVehicleId,
      asOf: weeksBefore(10),
    });
    expect(shown.record.content.label).toBe('Van 14');
  });

  it('keeps the mistyped reading beside its correction', async () => {
    const list = new ListReadingsUseCase(ports.work, ports.clock);
    const found = await list.execute(caller('technician'), {
      vehicleId: storyVehicleId,
      characteristic: 'shaft-radial-play-lower',
      limit: 50,
    });
    const corrected = found.items.filter(({ revision }) => revision === 2);
    expect(corrected.map(({ content, reason }) => [content.shown, reason])).toEqual([
      ['0.15', 'digits swapped when typing: the dial showed 0.15'],
    ]);
  });

  it('shows a fleet manager the vans of their own fleet', async () => {
    const found = await new ListVehiclesUseCase(ports.work, ports.clock).execute(caller('fleetManager'), {
      limit: 50,
    });
    expect(found.items.length).toBeGreaterThan(0);
    const owned = await Promise.all(
      found.items.map(({ id }) =>
        new ShowVehicleUseCase(ports.work, ports.clock).execute(caller('desk'), { id }),
      ),
    );
    expect([...new Set(owned.map(({ owner }) => owner?.customerId))]).toEqual([
      caller('fleetManager').customerId,
    ]);
  });
});
