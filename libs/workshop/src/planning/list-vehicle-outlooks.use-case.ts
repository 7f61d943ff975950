import { rankVehicles, type Attention, type VehicleAttention } from '@endfloat/reliability';
import type { Clock } from '../ports/clock.port.js';
import type { FleetVehicle, OpenMatters } from '../ports/fleet-history.port.js';
import type { ListPosition } from '../ports/record-store.port.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { midnightOf } from '../fleet/watched-fleet.js';
import { gatherDue, type DueService } from './gather-due.js';
import { askedVehicles } from './list-due-services.use-case.js';

/** Days back over which complaints and comebacks of a vehicle count; judgement. */
export const lookBackDays = 365;
const msPerDay = 86_400_000;

export interface VehicleOutlooksQuery {
  readonly customerId?: string | undefined;
  readonly vehicleId?: string | undefined;
  readonly soonWithin: { readonly days: number; readonly km: number };
  readonly asOf?: string | undefined;
  readonly after?: ListPosition | undefined;
  readonly limit: number;
}

export interface VehicleOutlook {
  readonly rank: number;
  readonly vehicle: FleetVehicle;
  readonly attention: VehicleAttention;
}

export interface VehicleOutlookList {
  readonly items: readonly VehicleOutlook[];
  readonly next: ListPosition | undefined;
}

/** Vehicles by what is coming, with the reasons: open findings, comebacks, repeated complaints, services by the plan. */
export class ListVehicleOutlooksUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, query: VehicleOutlooksQuery): Promise<VehicleOutlookList> {
    const now = query.asOf ?? this.clock.now();
    const { asOf, soonWithin, after, limit } = query;
    const since = new Date(Date.parse(now) - lookBackDays * msPerDay).toISOString();
    return this.work.read(caller.shopId, async (tx) => {
      const only = await askedVehicles(tx, caller, query, this.clock.now());
      if (only?.length === 0) return { items: [], next: undefined };
      const vehicles = (await tx.fleetHistory.vehicles({ only, asOf })).filter(
        ({ retiredOn }) => retiredOn === null || midnightOf(retiredOn) > now,
      );
      const open = await tx.fleetHistory.openMatters({ only, asOf, since, until: now });
      const due = await gatherDue(tx, { only, now, asOf, soonWithin });
      const ranked = rankVehicles(attentionOf(vehicles, open, due, Date.parse(now) / msPerDay));
      const byId = new Map(vehicles.map((vehicle) => [vehicle.vehicleId, vehicle]));
      const all = ranked.flatMap((attention, place): VehicleOutlook[] => {
        const vehicle = byId.get(attention.vehicleId);
        return vehicle === undefined ? [] : [{ rank: place + 1, vehicle, attention }];
      });
      const from = after === undefined ? 0 : Number(after.sortValue);
      const items = all.slice(from, from + limit);
      const last = items.at(-1);
      const isMore = all.length > from + limit && last !== undefined;
      return {
        items,
        next: isMore ? { sortValue: String(last.rank), id: last.vehicle.vehicleId } : undefined,
      };
    });
  }
}

function attentionOf(
  vehicles: readonly FleetVehicle[],
  open: readonly OpenMatters[],
  due: readonly DueService[],
  today: number,
): readonly VehicleAttention[] {
  const openOf = new Map(open.map((each) => [each.vehicleId, each]));
  const dueOf = new Map<string, DueService[]>();
  for (const each of due) {
    const own = dueOf.get(each.vehicle.vehicleId);
    if (own === undefined) dueOf.set(each.vehicle.vehicleId, [each]);
    else own.push(each);
  }
  return vehicles.map(({ vehicleId }) => {
    const own = dueOf.get(vehicleId) ?? [];
    const days = own.flatMap(({ due: { expectedDay } }) =>
      expectedDay === null ? [] : [expectedDay - today],
    );
    return {
      vehicleId,
      reasons: reasonsOf(openOf.get(vehicleId), own),
      daysToService: days.length === 0 ? null : Math.min(...days),
    };
  });
}

const nothingOpen: Omit<OpenMatters, 'vehicleId'> = {
  dangerousFindings: 0,
  majorFindings: 0,
  otherFindings: 0,
  comebacks: 0,
  repeatedSymptoms: 0,
  mostComebacksOfJob: 0,
};

function reasonsOf(found: OpenMatters | undefined, due: readonly DueService[]): readonly Attention[] {
  const open = found ?? nothingOpen;
  const most = open.mostComebacksOfJob;
  const counted: readonly Attention[] = [
    { reason: 'dangerousFinding', count: open.dangerousFindings },
    { reason: 'repeatedComeback', count: most > 1 ? most : 0 },
    { reason: 'majorFinding', count: open.majorFindings },
    { reason: 'overdueService', count: due.filter((each) => each.due.standing === 'overdue').length },
    { reason: 'comeback', count: open.comebacks },
    { reason: 'repeatedComplaint', count: open.repeatedSymptoms },
    { reason: 'otherFinding', count: open.otherFindings },
    { reason: 'serviceDueSoon', count: due.filter((each) => each.due.standing === 'dueSoon').length },
  ];
  return counted.filter(({ count }) => count > 0);
}
