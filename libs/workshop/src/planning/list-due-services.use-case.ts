import type { DueStanding } from '@endfloat/reliability';
import type { Clock } from '../ports/clock.port.js';
import type { ListPosition } from '../ports/record-store.port.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { customerOf } from '../fleet/watched-fleet.js';
import { vehiclesOf, visibleVehicle } from '../recording/vehicle-visibility.js';
import { gatherDue, type DueService } from './gather-due.js';

export interface DueServicesQuery {
  readonly customerId?: string | undefined;
  readonly vehicleId?: string | undefined;
  /** all standings where absent */
  readonly standings?: readonly DueStanding[] | undefined;
  readonly soonWithin: { readonly days: number; readonly km: number };
  readonly asOf?: string | undefined;
  readonly after?: ListPosition | undefined;
  readonly limit: number;
}

export interface DueServiceList {
  readonly items: readonly DueService[];
  readonly next: ListPosition | undefined;
  /** over all that were asked for, whatever the standing */
  readonly counts: Readonly<Record<DueStanding, number>>;
  readonly vehicles: number;
}

/** What is due and overdue by the service plan: the longest overdue first, what nobody knows of at the end. */
export class ListDueServicesUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, query: DueServicesQuery): Promise<DueServiceList> {
    const now = query.asOf ?? this.clock.now();
    const { soonWithin, asOf } = query;
    return this.work.read(caller.shopId, async (tx) => {
      const only = await askedVehicles(tx, caller, query, this.clock.now());
      const all = await gatherDue(tx, { only, now, asOf, soonWithin });
      const counts = { overdue: 0, dueSoon: 0, later: 0, unknown: 0 };
      for (const { due } of all) counts[due.standing] += 1;
      const vehicles = new Set(all.map(({ vehicle }) => vehicle.vehicleId)).size;
      const { standings } = query;
      const asked = standings === undefined ? all : all.filter(({ due }) => standings.includes(due.standing));
      return { ...pageOf(asked, query), counts, vehicles };
    });
  }
}

/** Ids of the vehicles asked for that the caller may know of; undefined: all of the shop. */
export async function askedVehicles(
  tx: ShopTransaction,
  caller: Caller,
  query: Pick<DueServicesQuery, 'customerId' | 'vehicleId'>,
  now: string,
): Promise<readonly string[] | undefined> {
  const customerId = await customerOf(tx, caller, query.customerId);
  const own = customerId === undefined ? undefined : await vehiclesOf(tx, customerId, now);
  if (query.vehicleId === undefined) return own;
  const { id } = await visibleVehicle(tx, caller, query.vehicleId, now);
  return own === undefined || own.includes(id) ? [id] : [];
}

/** The day it is expected to be due, to the millisecond so that it survives being written; without one last. */
const rankOf = ({ due: { expectedDay } }: DueService): number =>
  expectedDay === null ? Infinity : Math.round(expectedDay * 86_400_000);

const idOf = ({ vehicle, planItemId }: DueService): string => `${vehicle.vehicleId} ${planItemId}`;

interface Ranked {
  readonly service: DueService;
  readonly rank: number;
}

const inOrder = (a: Ranked, b: Ranked): number =>
  a.rank === b.rank ? byText(idOf(a.service), idOf(b.service)) : a.rank - b.rank;

const isBehind = ({ service, rank }: Ranked, { sortValue, id }: ListPosition): boolean => {
  const from = sortValue === 'none' ? Infinity : Number(sortValue);
  return rank === from ? idOf(service) > id : rank > from;
};

function pageOf(
  services: readonly DueService[],
  { after, limit }: DueServicesQuery,
): Pick<DueServiceList, 'items' | 'next'> {
  const ranked = services.map((service) => ({ service, rank: rankOf(service) })).sort(inOrder);
  const from = after === undefined ? 0 : ranked.findIndex((each) => isBehind(each, after));
  const page = from < 0 ? [] : ranked.slice(from, from + limit);
  const last = page.at(-1);
  const isMore = from >= 0 && ranked.length > from + limit && last !== undefined;
  return {
    items: page.map(({ service }) => service),
    next: isMore
      ? { sortValue: last.rank === Infinity ? 'none' : String(last.rank), id: idOf(last.service) }
      : undefined,
  };
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
