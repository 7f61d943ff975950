import { localDay } from '../bench/local-day.js';
import { invalidInput, notFound } from '../errors/domain.errors.js';
import type { FittedPartRecord } from '../intake/fitted-parts.use-case.js';
import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { requiredRecord } from '../recording/required-record.js';
import { mayKnowVehicle, visibleVehicle } from '../recording/vehicle-visibility.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { gatherFleetWear, modelOf, type FleetWear } from './fleet-wear.js';
import { unknownCharacteristic, wearCasesIfKnown, type WearCase } from './wear-case.js';
import { wearSeriesOf } from './wear-series.js';
import { wearViewOf, type VehicleDistances, type WearUntil, type WearView } from './wear-view.js';
import { daysBetween } from './yearly-distance.js';

export interface WearQuery {
  readonly characteristic?: string | undefined;
  readonly until?: WearUntil | undefined;
  readonly asOf?: string | undefined;
}

/** Trends of one characteristic with the fleet they borrow from. */
export interface CharacteristicWear {
  readonly found: WearCase;
  /** null where no series has a point that strength could be lent to */
  readonly fleet: FleetWear | null;
  readonly views: readonly WearView[];
}

export interface PartWear {
  readonly part: FittedPartRecord;
  readonly characteristics: readonly CharacteristicWear[];
}

/** Longest time ahead a chance is given for: ten years. */
const mostDays = 3653;

/** Today in the shop, and the horizon checked against it. */
export async function horizonOf(
  tx: ShopTransaction,
  moment: string,
  until: WearUntil | undefined,
): Promise<{ readonly today: string; readonly until: WearUntil | null }> {
  const { timeZone } = await settingsOf(tx);
  const today = localDay(moment, timeZone);
  if (until?.kind === 'day') {
    const days = daysBetween(today, until.day);
    if (days < 0) throw invalidInput('/until', 'order', `${until.day} has passed; today is ${today}.`);
    if (days > mostDays)
      throw invalidInput('/until', 'range', 'Wear is not told for more than ten years ahead.');
  }
  return { today, until: until ?? null };
}

/** Wear of one fitted part: from its own as-found readings, lent strength by the parts of its kind. */
export class ShowPartWearUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, query: WearQuery & { readonly fittedPartId: string }): Promise<PartWear> {
    const now = this.clock.now();
    return this.work.read(caller.shopId, async (tx) => {
      const part = await requiredRecord(tx.fittedParts, 'fitted part', query.fittedPartId, query.asOf);
      const { vehicleId } = part.identity;
      if (!(await mayKnowVehicle(tx, caller, vehicleId, now))) throw notFound('fitted part');
      const distances = await distancesOf(tx, vehicleId, query.asOf);
      const [wear] = await wearOfParts(tx, [part], distances, { ...query, moment: query.asOf ?? now });
      return wear!;
    });
  }
}

/** Wear of every part that is fitted to a vehicle. */
export class ShowVehicleWearUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, query: WearQuery & { readonly vehicleId: string }): Promise<readonly PartWear[]> {
    const now = this.clock.now();
    const { vehicleId, asOf } = query;
    return this.work.read(caller.shopId, async (tx) => {
      await visibleVehicle(tx, caller, vehicleId, now, asOf);
      const parts = await tx.fittedParts.all({ vehicleId }, asOf);
      const fitted = parts.filter(({ content }) => content.removedAt === null);
      const distances = await distancesOf(tx, vehicleId, asOf);
      return wearOfParts(tx, fitted, distances, { ...query, moment: asOf ?? now });
    });
  }
}

async function distancesOf(
  tx: ShopTransaction,
  vehicleId: string,
  asOf: string | undefined,
): Promise<VehicleDistances> {
  const vehicle = await requiredRecord(tx.vehicles, 'vehicle', vehicleId, asOf);
  const entries = await tx.odometerEntries.all({ vehicleId }, asOf);
  return { vehicle: vehicle.content, entries: entries.map(({ content }) => content) };
}

async function wearOfParts(
  tx: ShopTransaction,
  parts: readonly FittedPartRecord[],
  distances: VehicleDistances,
  query: WearQuery & { readonly moment: string },
): Promise<readonly PartWear[]> {
  const { characteristic, asOf, moment } = query;
  const { today, until } = await horizonOf(tx, moment, query.until);
  const wear = new Map<string, CharacteristicWear[]>(parts.map(({ id }) => [id, []]));
  for (const componentType of [...new Set(parts.map(({ content }) => content.componentType))].sort()) {
    const ofType = parts.filter(({ content }) => content.componentType === componentType);
    for (const found of (await wearCasesIfKnown(tx, componentType, characteristic, asOf)) ?? []) {
      const series = await wearSeriesOf(tx, ofType, found, asOf);
      const hasPoints = series.some(({ points }) => points.length > 0);
      const fleet = hasPoints ? await gatherFleetWear(tx, found, asOf) : null;
      const model = fleet === null ? null : modelOf(fleet);
      const views = series.map((each) => wearViewOf({ found, series: each, distances, model, today, until }));
      for (const { id } of ofType)
        wear.get(id)?.push({ found, fleet, views: views.filter((view) => view.series.part.id === id) });
    }
  }
  const isNowhere = [...wear.values()].every(({ length }) => length === 0);
  if (characteristic !== undefined && isNowhere) throw unknownCharacteristic(characteristic);
  return parts.map((part) => ({ part, characteristics: wear.get(part.id) ?? [] }));
}
