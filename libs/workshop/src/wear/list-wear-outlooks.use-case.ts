import type { Clock } from '../ports/clock.port.js';
import type { ListPosition } from '../ports/record-store.port.js';
import type { OdometerEntry, Vehicle } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { vehiclesOf } from '../recording/vehicle-visibility.js';
import type { FittedPartRecord } from '../intake/fitted-parts.use-case.js';
import { fleetWearOf, modelOf, mostPartsOfFleet, partsOfKind, type FleetWear } from './fleet-wear.js';
import { horizonOf } from './show-wear.use-case.js';
import { unknownCharacteristic, wearCasesOf, type WearCase } from './wear-case.js';
import { wearSeriesOf, type WearSeries } from './wear-series.js';
import { wearViewOf, type WearUntil, type WearView } from './wear-view.js';

export interface WearOutlookQuery {
  readonly componentType: string;
  readonly characteristic: string;
  readonly until: WearUntil;
  readonly asOf?: string | undefined;
  readonly after?: ListPosition | undefined;
  readonly limit: number;
}

/** A van and what is to be expected of one of its parts. */
export interface WearOutlook {
  readonly vehicleId: string;
  readonly vehicle: Vehicle;
  readonly view: WearView;
}

export interface WearOutlookList {
  readonly fleet: FleetWear;
  readonly found: WearCase;
  readonly items: readonly WearOutlook[];
  readonly next: ListPosition | undefined;
}

/** Most fitted parts whose outlook is worked out in one request: the ones recorded last. */
export const mostPartsOfOutlook = 1000;

/** Vehicles worked out between two looks at the store, so that other requests get their turn. */
const vehiclesAtOnce = 50;

interface Asked {
  readonly found: WearCase;
  readonly fleet: FleetWear;
  readonly today: string;
  readonly until: WearUntil | null;
  readonly asOf: string | undefined;
}

/** Which vans will reach a limit before then: the likeliest first, those without an answer at the end. */
export class ListWearOutlooksUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, query: WearOutlookQuery): Promise<WearOutlookList> {
    const now = this.clock.now();
    const { componentType, characteristic, asOf } = query;
    return this.work.read(caller.shopId, async (tx) => {
      const { today, until } = await horizonOf(tx, asOf ?? now, query.until);
      const [found] = await wearCasesOf(tx, componentType, characteristic, asOf);
      if (found === undefined) throw unknownCharacteristic(characteristic);
      const all = await partsOfKind(tx, componentType, asOf);
      const own =
        caller.customerId === undefined ? null : new Set(await vehiclesOf(tx, caller.customerId, now));
      const asked = all
        .filter(
          ({ content, identity }) => content.removedAt === null && (own?.has(identity.vehicleId) ?? true),
        )
        .slice(0, mostPartsOfOutlook);
      const learning = all.slice(0, mostPartsOfFleet);
      const series = await wearSeriesOf(tx, [...new Set([...asked, ...learning])], found, asOf);
      const fleet = fleetOf(series, found, learning, all.length);
      const isAsked = new Set(asked.map(({ id }) => id));
      const shown = series.filter(({ part }) => isAsked.has(part.id));
      const outlooks = await outlooksOf(tx, shown, { found, fleet, today, until, asOf });
      return { fleet, found, ...pageOf(outlooks, query) };
    });
  }
}

async function outlooksOf(
  tx: ShopTransaction,
  shown: readonly WearSeries[],
  asked: Asked,
): Promise<readonly WearOutlook[]> {
  const ids = [...new Set(shown.map(({ part }) => part.identity.vehicleId))];
  const outlooks: WearOutlook[] = [];
  for (let from = 0; from < ids.length; from += vehiclesAtOnce) {
    const some = new Set(ids.slice(from, from + vehiclesAtOnce));
    const series = shown.filter(({ part }) => some.has(part.identity.vehicleId));
    outlooks.push(...(await outlooksOfSome(tx, [...some], series, asked)));
  }
  return outlooks;
}

async function outlooksOfSome(
  tx: ShopTransaction,
  ids: readonly string[],
  shown: readonly WearSeries[],
  { found, fleet, today, until, asOf }: Asked,
): Promise<readonly WearOutlook[]> {
  const vehicles = new Map((await tx.vehicles.findMany(ids, asOf)).map(({ id, content }) => [id, content]));
  const entries = new Map<string, OdometerEntry[]>(ids.map((id) => [id, []]));
  for (const { identity, content } of await tx.odometerEntries.all({ vehicleId: ids }, asOf))
    entries.get(identity.vehicleId)?.push(content);
  const model = modelOf(fleet);
  return shown.flatMap((series) => {
    const { vehicleId } = series.part.identity;
    const vehicle = vehicles.get(vehicleId);
    if (vehicle === undefined || vehicle.retiredOn !== null) return [];
    const distances = { vehicle, entries: entries.get(vehicleId) ?? [] };
    return [{ vehicleId, vehicle, view: wearViewOf({ found, series, distances, model, today, until }) }];
  });
}

/** A fleet is fitted to the parts recorded last, whoever owns them: only its means and spreads go to others. */
function fleetOf(
  series: readonly WearSeries[],
  found: WearCase,
  learning: readonly FittedPartRecord[],
  ofKind: number,
): FleetWear {
  const ids = new Set(learning.map(({ id }) => id));
  return fleetWearOf(
    series.filter(({ part }) => ids.has(part.id)),
    found,
    { lookedAt: learning.length, ofKind },
  );
}

const digits = 12;

/** Sorts as text: the likeliest first, then the nearer median; without an answer last. */
function rankOf({ view: { chance, outcome } }: WearOutlook): string {
  if (chance?.kind !== 'estimated' || outcome.kind !== 'estimated') return '9';
  const median = Math.min(1e9, outcome.distanceToLimit.median ?? 1e9);
  return `${(1 - chance.probability).toFixed(digits)} ${median.toFixed(3).padStart(14, '0')}`;
}

function pageOf(
  outlooks: readonly WearOutlook[],
  { after, limit }: WearOutlookQuery,
): Pick<WearOutlookList, 'items' | 'next'> {
  const ranked = outlooks
    .map((outlook) => ({
      outlook,
      sortValue: rankOf(outlook),
      id: `${outlook.view.series.part.id} ${outlook.view.series.place ?? ''}`,
    }))
    .sort((a, b) => byText(a.sortValue, b.sortValue) || byText(a.id, b.id))
    .filter(
      ({ sortValue, id }) =>
        after === undefined || (byText(sortValue, after.sortValue) || byText(id, after.id)) > 0,
    );
  const last = ranked[limit - 1];
  return {
    items: ranked.slice(0, limit).map(({ outlook }) => outlook),
    next:
      ranked.length > limit && last !== undefined ? { sortValue: last.sortValue, id: last.id } : undefined,
  };
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
