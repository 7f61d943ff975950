import {
  compareRecurrences,
  fleetRecurrence,
  millisecondsPerDay,
  recurrenceTrend,
  type FleetRecurrence,
  type RecurrenceComparison,
  type RecurrenceTrend,
  type UnitHistory,
} from '@endfloat/reliability';
import { invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { FleetEventKind } from '../ports/fleet-history.port.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { symptomNames } from '../jobs/symptom-names.js';
import {
  comparedCustomer,
  customerOf,
  midnightOf,
  watchedFleet,
  type FleetScope,
  type WatchOddity,
} from './watched-fleet.js';

interface RecurrenceSubject {
  /** what recurs; replacements where absent */
  readonly of?: FleetEventKind | undefined;
  /** kind of part; must be there for replacements */
  readonly componentType?: string | undefined;
  /** complaints of this symptom only */
  readonly symptom?: string | undefined;
  /** end of the observation; now where absent */
  readonly until?: string | undefined;
  readonly asOf?: string | undefined;
}

export interface FleetRecurrenceQuery extends RecurrenceSubject {
  /** vehicles while this customer owned them; all vehicles of the shop where absent */
  readonly customerId?: string | undefined;
  readonly application?: string | undefined;
}

/** Histories of a fleet by age of the vehicles, and what of it could not be used. */
interface GatheredHistories {
  readonly histories: readonly UnitHistory[];
  readonly withoutFirstUse: number;
  readonly neverWatched: number;
  readonly oddities: readonly WatchOddity[];
}

export interface FleetRecurrenceView extends Omit<GatheredHistories, 'histories'> {
  readonly of: FleetEventKind;
  readonly recurrence: FleetRecurrence;
  /** null where nothing recurred */
  readonly trend: RecurrenceTrend | null;
}

/** How often something recurs per vehicle by age, over a fleet that joins, leaves and goes unseen. */
export class ShowFleetRecurrenceUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, query: FleetRecurrenceQuery): Promise<FleetRecurrenceView> {
    const subject = checkedSubject(query);
    const until = query.until ?? this.clock.now();
    return this.work.read(caller.shopId, async (tx) => {
      const customerId = await customerOf(tx, caller, query.customerId);
      const scope = { customerId, application: query.application, until, asOf: query.asOf };
      const { histories, ...rest } = await gatherHistories(tx, subject, scope);
      const recurrence = fleetRecurrence(histories);
      const trend = recurrence.kind === 'estimated' ? recurrenceTrend(histories) : null;
      return { of: subject.of, recurrence, trend, ...rest };
    });
  }
}

/** By what two fleets are told apart. */
export const fleetGroupings = ['customer', 'application'] as const;
export type FleetGrouping = (typeof fleetGroupings)[number];

export interface FleetComparisonQuery extends RecurrenceSubject {
  readonly by: FleetGrouping;
  readonly first: string;
  readonly second: string;
}

export interface FleetComparisonView {
  readonly of: FleetEventKind;
  readonly comparison: RecurrenceComparison;
  readonly vehicles: readonly [number, number];
  readonly events: readonly [number, number];
}

/** Whether something recurs more often in one fleet than in another. */
export class CompareFleetsUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, query: FleetComparisonQuery): Promise<FleetComparisonView> {
    const subject = checkedSubject(query);
    if (query.first === query.second)
      throw invalidInput(
        '/second',
        'different',
        'Name two different fleets: one cannot be compared with itself.',
      );
    const until = query.until ?? this.clock.now();
    return this.work.read(caller.shopId, async (tx) => {
      const fleetOf = async (place: 'first' | 'second'): Promise<readonly UnitHistory[]> => {
        const group = query[place];
        const customerId =
          query.by === 'customer' ? await comparedCustomer(tx, group, `/${place}`) : undefined;
        const application = query.by === 'application' ? group : undefined;
        const scope = { customerId, application, until, asOf: query.asOf };
        return (await gatherHistories(tx, subject, scope)).histories;
      };
      const [first, second] = [await fleetOf('first'), await fleetOf('second')];
      const eventsOf = (group: readonly UnitHistory[]): number =>
        group.reduce((sum, { eventAges }) => sum + eventAges.length, 0);
      return {
        of: subject.of,
        comparison: compareRecurrences(first, second),
        vehicles: [first.length, second.length],
        events: [eventsOf(first), eventsOf(second)],
      };
    });
  }
}

type CheckedSubject = RecurrenceSubject & { readonly of: FleetEventKind };

function checkedSubject(query: RecurrenceSubject): CheckedSubject {
  const { of = 'replacements', componentType, symptom } = query;
  if (of === 'replacements' && componentType === undefined)
    throw invalidInput('/componentType', 'required', 'Say of which kind of part replacements are counted.');
  if (of === 'replacements' && symptom !== undefined)
    throw invalidInput(
      '/symptom',
      'unexpected',
      'A replacement has no symptom. Ask for complaints or comebacks.',
    );
  if (symptom !== undefined && !symptomNames.has(symptom))
    throw invalidInput('/symptom', 'oneOf', 'No symptom has this id. GET /v1/symptoms lists them.');
  return { ...query, of };
}

async function gatherHistories(
  tx: ShopTransaction,
  { of, componentType, symptom }: CheckedSubject,
  scope: FleetScope,
): Promise<GatheredHistories> {
  const { vehicles, neverWatched, oddities } = await watchedFleet(tx, scope);
  const only = scope.customerId === undefined ? undefined : vehicles.map(({ vehicle }) => vehicle.vehicleId);
  const { until, asOf } = scope;
  const events = await tx.fleetHistory.events({ of, componentType, symptom, until, only, asOf });
  const eventsOf = new Map<string, number[]>();
  for (const { vehicleId, at } of events)
    eventsOf.set(vehicleId, [...(eventsOf.get(vehicleId) ?? []), Date.parse(at)]);
  const histories = vehicles.flatMap(({ vehicle, spans }): UnitHistory[] => {
    if (vehicle.firstUsedOn === null) return [];
    const birth = Date.parse(midnightOf(vehicle.firstUsedOn));
    const age = (at: number): number => (at - birth) / millisecondsPerDay;
    return [
      {
        spans: spans.map(({ from, until: end }) => ({ from: age(from), until: age(end) })),
        eventAges: (eventsOf.get(vehicle.vehicleId) ?? []).map(age),
      },
    ];
  });
  return { histories, withoutFirstUse: vehicles.length - histories.length, neverWatched, oddities };
}
