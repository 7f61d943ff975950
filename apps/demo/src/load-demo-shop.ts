import type { UnitOfWork } from '@endfloat/workshop';
import { DemoDesk } from './demo-desk.js';
import { furnishShop } from './furnish-shop.js';
import { HistoryClock, SeededIds } from './history-clock.js';
import { JoinedUnitOfWork } from './joined-unit-of-work.js';
import { customers, demoShopId, demoVehicleId } from './people.js';
import { SeededRandom } from './seeded-random.js';
import { makeStockShelf } from './stock-shelf.js';
import { makeStoryVan, storyVehicleId } from './story-van.js';
import { makeVanHistory } from './van-history.js';

const historyDays = 730;
const day = 86_400_000;

export interface DemoLoad {
  readonly work: UnitOfWork;
  /** secret of the installation, from which the keys of the demo people follow */
  readonly secret: string;
  /** end of the history when the shop is first made */
  readonly until: string;
  /** how many vans beside the one of the story; all where absent */
  readonly vans?: number;
}

/** The vans of the demo shop in order, each with the customer it belongs to. */
const vans = customers
  .flatMap((customer) => Array.from({ length: customer.vans }, () => customer))
  .map((customer, index) => ({ customer, number: index + 15 }));

/**
 * Makes the demo shop with two years of invented history, through the use cases, under a clock that stands where the
 * story stands. Each van is one transaction: a start that was cut off goes on with the next van. Answers how many
 * vehicles were made now.
 */
export async function loadDemoShop({
  work,
  secret,
  until,
  vans: count = vans.length,
}: DemoLoad): Promise<{ readonly vehicles: number }> {
  const from = await openedAt(work, secret, until);
  const end = new Date(Date.parse(from) + historyDays * day).toISOString();
  let vehicles = 0;
  const make = async (
    vehicleId: string,
    seed: number,
    history: (shop: DemoDesk, random: SeededRandom) => Promise<void>,
  ): Promise<void> => {
    const made = await work.run(demoShopId, async (tx) => {
      if ((await tx.vehicles.find(vehicleId)) !== undefined) return false;
      const random = new SeededRandom(seed);
      const clock = new HistoryClock(from);
      const sheet = (await tx.checkSheets.all({ code: 'throttle-housing' })).at(0);
      if (sheet === undefined) throw new RangeError('the shop has no throttle-housing sheet');
      await history(
        new DemoDesk(new JoinedUnitOfWork(tx), clock, new SeededIds(random, clock), sheet.id),
        random,
      );
      return true;
    });
    if (made) vehicles += 1;
  };
  await make(storyVehicleId, 1, (shop) => makeStoryVan(shop, end));
  for (const { customer, number } of vans.slice(0, count)) {
    const vehicleId = demoVehicleId(number);
    await make(vehicleId, 1000 + number, (shop, random) =>
      makeVanHistory(shop, { vehicleId, number, customer, from, until: end }, random),
    );
  }
  await work.run(demoShopId, (tx) => makeStockShelf(tx, end));
  return { vehicles };
}

/** When the shop was opened: read from it, or two years before `until` where it is opened now. */
async function openedAt(work: UnitOfWork, secret: string, until: string): Promise<string> {
  const from = new Date(Date.parse(until) - historyDays * day).toISOString();
  return work.run(demoShopId, async (tx) => {
    const settings = (await tx.settings.history(demoShopId))[0];
    if (settings !== undefined) return settings.recordedAt;
    const clock = new HistoryClock(from);
    await furnishShop(new JoinedUnitOfWork(tx), clock, new SeededIds(new SeededRandom(7), clock), secret);
    return from;
  });
}
