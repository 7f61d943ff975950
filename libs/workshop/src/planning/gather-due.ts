import { distanceAt, serviceDue, type ServiceDue } from '@endfloat/reliability';
import type { FleetDistance, FleetVehicle, LastDone } from '../ports/fleet-history.port.js';
import type { ServicePlanItem } from '../ports/records/planning.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { midnightOf } from '../fleet/watched-fleet.js';
import type { ServicePlanItemRecord } from './service-plan.use-case.js';
import { expectedKmAt, kmPerDayOf } from './usual-distance.js';

const msPerDay = 86_400_000;

export interface DueService {
  readonly vehicle: FleetVehicle;
  readonly planItemId: string;
  readonly item: ServicePlanItem;
  readonly due: ServiceDue;
  /** null: never, as far as anybody knows */
  readonly last: { readonly doneAt: string; readonly km: number | null } | null;
  /** last reliable reading of the odometer */
  readonly read: FleetDistance | null;
}

export interface DueQuestion {
  /** vehicles; all of the shop where absent */
  readonly only?: readonly string[] | undefined;
  readonly now: string;
  readonly asOf: string | undefined;
  readonly soonWithin: { readonly days: number; readonly km: number };
}

/** What is due on each vehicle in use, by the items of the plan that are for it. */
export async function gatherDue(
  tx: ShopTransaction,
  { only, now, asOf, soonWithin }: DueQuestion,
): Promise<readonly DueService[]> {
  const items = (await tx.servicePlanItems.all({}, asOf)).filter(({ content }) => content.inUse);
  if (items.length === 0 || only?.length === 0) return [];
  const vehicles = (await tx.fleetHistory.vehicles({ only, asOf })).filter(
    ({ retiredOn }) => retiredOn === null || midnightOf(retiredOn) > now,
  );
  const distances = await tx.fleetHistory.distances({ only, asOf });
  const done = lastDoneBy(await tx.fleetHistory.lastDone({ only, asOf }));
  const at = Date.parse(now);
  return vehicles.flatMap((vehicle) => {
    const points = distances.get(vehicle.vehicleId) ?? [];
    const kmPerDay = kmPerDayOf(vehicle, points);
    const nowKm = expectedKmAt(points, kmPerDay, at);
    const firstUse =
      vehicle.firstUsedOn === null ? null : Date.parse(midnightOf(vehicle.firstUsedOn)) / msPerDay;
    const state = { today: at / msPerDay, nowKm, kmPerDay, firstUse };
    return items
      .filter(({ content }) => isFor(content, vehicle))
      .map((item): DueService => {
        const last = lastOf(item, done.get(vehicle.vehicleId) ?? [], points);
        const lastDay = last === null ? null : { day: Date.parse(last.doneAt) / msPerDay, km: last.km };
        const interval = {
          days: item.content.everyDays,
          km: item.content.everyKm === null ? null : Number(item.content.everyKm),
        };
        const due = serviceDue(interval, { ...state, last: lastDay }, soonWithin);
        return { vehicle, planItemId: item.id, item: item.content, due, last, read: points.at(-1) ?? null };
      });
  });
}

const isFor = (item: ServicePlanItem, { vehicleId, application }: FleetVehicle): boolean =>
  item.vehicleId === null
    ? item.application === null || item.application === application
    : item.vehicleId === vehicleId;

function lastDoneBy(done: readonly LastDone[]): ReadonlyMap<string, readonly LastDone[]> {
  const found = new Map<string, LastDone[]>();
  for (const each of done) {
    const own = found.get(each.vehicleId);
    if (own === undefined) found.set(each.vehicleId, [each]);
    else own.push(each);
  }
  return found;
}

/** The latest of what counts as done: recorded as such, a part newly fitted, or work the item names. */
function lastOf(
  { id, content }: ServicePlanItemRecord,
  done: readonly LastDone[],
  points: readonly FleetDistance[],
): DueService['last'] {
  let latest: LastDone | null = null;
  for (const each of done) {
    const counts =
      each.planItemId === null
        ? content.componentType !== null &&
          each.componentType === content.componentType &&
          (each.action === null || content.actions.includes(each.action))
        : each.planItemId === id;
    if (counts && (latest === null || each.doneAt > latest.doneAt)) latest = each;
  }
  if (latest === null) return null;
  const { doneAt, distanceKm } = latest;
  if (distanceKm !== null) return { doneAt, km: Number(distanceKm) };
  const found = distanceAt(points, Date.parse(doneAt));
  return { doneAt, km: found.kind === 'known' ? found.km : null };
}
