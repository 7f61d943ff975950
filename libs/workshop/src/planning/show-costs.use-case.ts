import { addMoney, moneyFromNumber, type Money } from '@endfloat/metrology';
import { downtimeReasons, type Downtime, type DowntimeReason } from '@endfloat/reliability';
import { invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { FleetVehicle } from '../ports/fleet-history.port.js';
import type { ListPosition } from '../ports/record-store.port.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { askedVehicles } from './list-due-services.use-case.js';
import { vehicleCosts, type CostTerms, type VehicleCosts } from './vehicle-costs.js';

export interface CostsQuery {
  readonly customerId?: string | undefined;
  readonly vehicleId?: string | undefined;
  /** a year before the end where absent */
  readonly from?: string | undefined;
  /** now where absent */
  readonly until?: string | undefined;
  readonly asOf?: string | undefined;
}

/** Costs of a fleet: of all vehicles together, and of those on this page. */
export interface FleetCosts {
  readonly from: string;
  readonly until: string;
  readonly labourRatePerHour: Money;
  readonly vehicles: number;
  readonly total: Money;
  readonly labour: Money;
  readonly parts: Money;
  readonly downtimeCost: Money;
  readonly downtime: Downtime;
  /** of the vehicles whose distance is known: their costs and km, for the cost of a km */
  readonly withDistance: { readonly vehicles: number; readonly total: Money; readonly km: number };
  readonly items: readonly VehicleCosts[];
  readonly next: ListPosition | undefined;
}

const msPerYear = 365 * 86_400_000;

/** What vehicles cost within a time: work, parts and days off the road, for each and for all together; the dearest first. */
export class ShowFleetCostsUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    query: CostsQuery & { readonly after?: ListPosition | undefined; readonly limit: number },
  ): Promise<FleetCosts> {
    const time = timeOf(query, this.clock.now());
    return this.work.read(caller.shopId, async (tx) => {
      const only = await askedVehicles(tx, caller, query, this.clock.now());
      const { costs, currency, labourRatePerHour } = await gatherCosts(tx, {
        only,
        ...time,
        asOf: query.asOf,
      });
      const ranked = costs
        .map((each) => ({ each, rank: Number(each.total.amount) }))
        .sort((a, b) => b.rank - a.rank || (a.each.vehicle.vehicleId < b.each.vehicle.vehicleId ? -1 : 1))
        .map(({ each }) => each);
      const from = query.after === undefined ? 0 : Number(query.after.sortValue);
      const items = ranked.slice(from, from + query.limit);
      const last = items.at(-1);
      const end = from + items.length;
      return {
        ...time,
        labourRatePerHour: { amount: labourRatePerHour, currency },
        ...togetherOf(costs, currency),
        items,
        next:
          last === undefined || ranked.length <= end
            ? undefined
            : { sortValue: String(end), id: last.vehicle.vehicleId },
      };
    });
  }

  /** One vehicle; somebody else's is answered as not found. */
  async one(caller: Caller, query: CostsQuery & { readonly vehicleId: string }): Promise<FleetCosts> {
    return this.execute(caller, { ...query, limit: 1 });
  }
}

function timeOf(query: CostsQuery, now: string): { readonly from: string; readonly until: string } {
  const until = query.until ?? now;
  const from = query.from ?? new Date(Date.parse(until) - msPerYear).toISOString();
  if (Date.parse(from) >= Date.parse(until))
    throw invalidInput('/from', 'order', 'The time must begin before it ends.');
  return { from: new Date(from).toISOString(), until: new Date(until).toISOString() };
}

export interface GatheredCosts {
  readonly costs: readonly VehicleCosts[];
  readonly currency: string;
  readonly labourRatePerHour: string;
}

/** Costs of vehicles within a time, at the present rates of the shop and of their owners. */
export async function gatherCosts(
  tx: ShopTransaction,
  scope: {
    readonly only: readonly string[] | undefined;
    readonly from: string;
    readonly until: string;
    readonly asOf: string | undefined;
  },
): Promise<GatheredCosts> {
  const { from, until } = scope;
  const settings = await settingsOf(tx);
  const { currency, labourRatePerHour } = settings;
  const vehicles = await tx.fleetHistory.vehicles(scope);
  const work = grouped(await tx.fleetHistory.yearsOfWork(scope));
  const visits = grouped(await tx.fleetHistory.visits(scope));
  const distances = await tx.fleetHistory.distances(scope);
  const perDay = await downtimeRates(tx, vehicles, until);
  const costs = vehicles.map((vehicle) => {
    const { vehicleId } = vehicle;
    const facts = {
      vehicle,
      work: work.get(vehicleId) ?? [],
      visits: visits.get(vehicleId) ?? [],
      distances: distances.get(vehicleId) ?? [],
    };
    const downtimeCostPerDay = perDay.get(vehicleId) ?? settings.downtimeCostPerDay;
    const terms: CostTerms = { currency, labourRatePerHour, downtimeCostPerDay, from, until };
    return vehicleCosts(facts, terms);
  });
  return { costs, currency, labourRatePerHour };
}

/** What a day off the road costs the owner at the end of the time, where they have said so. */
async function downtimeRates(
  tx: ShopTransaction,
  vehicles: readonly FleetVehicle[],
  until: string,
): Promise<ReadonlyMap<string, string>> {
  const ownerOf = new Map(
    vehicles.flatMap(({ vehicleId, owners }): [string, string][] => {
      const owner = owners.findLast(({ fromAt }) => fromAt <= until);
      return owner === undefined ? [] : [[vehicleId, owner.customerId]];
    }),
  );
  const ids = [...new Set(ownerOf.values())];
  const customers = ids.length === 0 ? [] : await tx.customers.findMany(ids);
  const rates = new Map(customers.map(({ id, content }) => [id, content.downtimeCostPerDay]));
  return new Map(
    [...ownerOf].flatMap(([vehicleId, customerId]): [string, string][] => {
      const rate = rates.get(customerId) ?? null;
      return rate === null ? [] : [[vehicleId, rate]];
    }),
  );
}

function grouped<T extends { readonly vehicleId: string }>(
  rows: readonly T[],
): ReadonlyMap<string, readonly T[]> {
  const found = new Map<string, T[]>();
  for (const row of rows) {
    const own = found.get(row.vehicleId);
    if (own === undefined) found.set(row.vehicleId, [row]);
    else own.push(row);
  }
  return found;
}

function totalOf(amounts: readonly Money[], currency: string): Money {
  return amounts.reduce(
    (sum, each) => {
      const next = addMoney(sum, each);
      if (next.kind !== 'money') throw new RangeError('amounts of one currency did not add');
      return next.money;
    },
    moneyFromNumber(0, currency),
  );
}

function togetherOf(
  costs: readonly VehicleCosts[],
  currency: string,
): Omit<FleetCosts, 'from' | 'until' | 'labourRatePerHour' | 'items' | 'next'> {
  const sum = (of: (each: VehicleCosts) => Money): Money => totalOf(costs.map(of), currency);
  const known = costs.flatMap((each) =>
    each.distance.kind === 'known' ? [{ each, km: each.distance.km }] : [],
  );
  const byReason = Object.fromEntries(
    downtimeReasons.map((reason) => [
      reason,
      costs.reduce((days, each) => days + each.downtime.byReason[reason], 0),
    ]),
  ) as Record<DowntimeReason, number>;
  return {
    vehicles: costs.length,
    total: sum(({ total }) => total),
    labour: sum(({ labour }) => labour),
    parts: sum(({ parts }) => parts),
    downtimeCost: sum(({ downtimeCost }) => downtimeCost),
    downtime: {
      days: costs.reduce((days, each) => days + each.downtime.days, 0),
      visits: costs.reduce((visits, each) => visits + each.downtime.visits, 0),
      byReason,
    },
    withDistance: {
      vehicles: known.length,
      total: totalOf(
        known.map(({ each }) => each.total),
        currency,
      ),
      km: known.reduce((km, each) => km + each.km, 0),
    },
  };
}
