import {
  compareLives,
  componentLives,
  distanceAt,
  millisecondsPerDay,
  partLife,
  type ComponentLives,
  type LifeEnd,
  type LivesComparison,
  type PartFacts,
  type PartLife,
} from '@endfloat/reliability';
import { invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { FleetDistance, FleetPart } from '../ports/fleet-history.port.js';
import { fittedConditions, type FittedCondition } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import {
  comparedCustomer,
  customerOf,
  midnightOf,
  watchedFleet,
  type WatchedVehicle,
  type WatchOddity,
} from './watched-fleet.js';

/** On what lives are counted. */
export const lifeScales = ['days', 'km'] as const;
export type LifeScale = (typeof lifeScales)[number];

interface LivesSubject {
  readonly componentType: string;
  readonly position?: string | undefined;
  readonly ends: LifeEnd;
  readonly scale: LifeScale;
  /** end of the observation; now where absent */
  readonly until?: string | undefined;
  readonly asOf?: string | undefined;
}

interface PartFilter {
  readonly customerId?: string | undefined;
  readonly application?: string | undefined;
  readonly supplier?: string | undefined;
  readonly condition?: FittedCondition | undefined;
}

export type ComponentLivesQuery = LivesSubject & PartFilter;

export interface ComponentLivesView {
  readonly scale: LifeScale;
  readonly ends: LifeEnd;
  readonly lives: ComponentLives;
  readonly oddities: readonly WatchOddity[];
}

/** How long parts of a kind last, from when they were fitted, removed and inspected. */
export class ShowComponentLivesUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, query: ComponentLivesQuery): Promise<ComponentLivesView> {
    const until = query.until ?? this.clock.now();
    return this.work.read(caller.shopId, async (tx) => {
      const customerId = await customerOf(tx, caller, query.customerId);
      const { lives, oddities } = await gatherLives(tx, query, { ...query, customerId }, until);
      return { scale: query.scale, ends: query.ends, lives: componentLives(lives), oddities };
    });
  }
}

/** By what two groups of parts are told apart. */
export const lifeGroupings = ['supplier', 'condition', 'customer', 'application'] as const;
export type LifeGrouping = (typeof lifeGroupings)[number];

export interface LivesComparisonQuery extends LivesSubject {
  readonly by: LifeGrouping;
  readonly first: string;
  readonly second: string;
}

export interface LivesComparisonView {
  readonly scale: LifeScale;
  readonly ends: LifeEnd;
  readonly comparison: LivesComparison;
  readonly first: ComponentLives;
  readonly second: ComponentLives;
}

/** Whether the parts of one supplier, condition, customer or application last as long as those of another. */
export class CompareComponentLivesUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, query: LivesComparisonQuery): Promise<LivesComparisonView> {
    const { by, scale, ends } = query;
    if (query.first === query.second)
      throw invalidInput(
        '/second',
        'different',
        'Name two different groups: one cannot be compared with itself.',
      );
    const until = query.until ?? this.clock.now();
    return this.work.read(caller.shopId, async (tx) => {
      const groupOf = async (place: 'first' | 'second'): Promise<readonly PartLife[]> => {
        const value = query[place];
        if (by === 'customer') await comparedCustomer(tx, value, `/${place}`);
        if (by === 'condition' && !fittedConditions.some((each) => each === value))
          throw invalidInput(`/${place}`, 'oneOf', `Conditions are ${fittedConditions.join(', ')}.`);
        return (await gatherLives(tx, query, filterBy(by, value), until)).lives;
      };
      const [first, second] = [await groupOf('first'), await groupOf('second')];
      return {
        scale,
        ends,
        comparison: compareLives(first, second),
        first: componentLives(first),
        second: componentLives(second),
      };
    });
  }
}

function filterBy(by: LifeGrouping, value: string): PartFilter {
  switch (by) {
    case 'supplier':
      return { supplier: value };
    case 'condition':
      return { condition: value as FittedCondition };
    case 'customer':
      return { customerId: value };
    case 'application':
      return { application: value };
  }
}

interface GatheredLives {
  readonly lives: readonly PartLife[];
  readonly oddities: readonly WatchOddity[];
}

async function gatherLives(
  tx: ShopTransaction,
  { componentType, position, ends, scale, asOf }: LivesSubject,
  filter: PartFilter,
  until: string,
): Promise<GatheredLives> {
  const { customerId, application, supplier, condition } = filter;
  const { vehicles, oddities } = await watchedFleet(tx, { customerId, application, until, asOf });
  const isWhole = customerId === undefined && application === undefined;
  const only = isWhole ? undefined : vehicles.map(({ vehicle }) => vehicle.vehicleId);
  const all = await tx.fleetHistory.parts({ componentType, until, only, asOf });
  const parts = all.filter(
    (part) =>
      (position === undefined || part.position === position) &&
      (supplier === undefined || part.supplier === supplier) &&
      (condition === undefined || part.condition === condition),
  );
  const distances =
    scale === 'km' ? await tx.fleetHistory.distances({ only, asOf }) : new Map<string, never>();
  const watched = new Map(vehicles.map((each) => [each.vehicle.vehicleId, each]));
  const lives = parts.map((part): PartLife => {
    const vehicle = watched.get(part.vehicleId);
    if (vehicle === undefined) return { kind: 'leftOut', why: 'neverWatched' };
    const facts =
      scale === 'days'
        ? factsInDays(part, vehicle)
        : factsInKm(part, vehicle, distances.get(part.vehicleId) ?? []);
    return partLife(facts, ends);
  });
  return { lives, oddities };
}

const dayOf = (at: string | number): number =>
  (typeof at === 'number' ? at : Date.parse(at)) / millisecondsPerDay;

/** A first part on a vehicle that was watched from its first day on is as old as the vehicle. */
function fittedMoment({ fittedAt, condition }: FleetPart, { vehicle, spans }: WatchedVehicle): number | null {
  if (fittedAt !== null) return Date.parse(fittedAt);
  if (condition !== 'original' || vehicle.firstUsedOn === null) return null;
  const birth = Date.parse(midnightOf(vehicle.firstUsedOn));
  const [first] = spans;
  return first !== undefined && first.from - birth < millisecondsPerDay ? birth : null;
}

function factsInDays(part: FleetPart, watched: WatchedVehicle): PartFacts {
  const fitted = fittedMoment(part, watched);
  return {
    fitted: fitted === null ? null : dayOf(fitted),
    removed: part.removedAt === null ? null : dayOf(part.removedAt),
    watched: watched.spans.map(({ from, until }) => ({ from: dayOf(from), until: dayOf(until) })),
    inspections: part.inspections.map(({ at, isWorn }) => ({ at: dayOf(at), isWorn })),
  };
}

/** The same by distance, which is known only between the first and the last reliable reading of the odometer. */
function factsInKm(part: FleetPart, watched: WatchedVehicle, distances: readonly FleetDistance[]): PartFacts {
  const kmAt = (at: number): number | null => {
    const found = distanceAt(distances, at);
    return found.kind === 'known' ? found.km : null;
  };
  const recordedOr = (km: string | null, at: number | null): number | null =>
    km !== null ? Number(km) : at === null ? null : kmAt(at);
  const moment = fittedMoment(part, watched);
  const isFirst = part.fittedAt === null && moment !== null;
  const fitted = isFirst ? 0 : recordedOr(part.fittedKm, moment);
  const removedMoment = part.removedAt === null ? null : Date.parse(part.removedAt);
  const removed = recordedOr(part.removedKm, removedMoment);
  const isRemovalLost = removedMoment !== null && removed === null;
  const [firstRead, lastRead] = [distances[0], distances.at(-1)];
  const spans = watched.spans.flatMap(({ from, until }) => {
    if (firstRead === undefined || lastRead === undefined) return [];
    // A removal at an unknown distance: the part lasted at least to the last reading before it.
    const end = isRemovalLost ? Math.min(until, removedMoment) : until;
    const [start, stop] = [Math.max(from, firstRead.at), Math.min(end, lastRead.at)];
    if (stop < start) return [];
    const isFittedWhileWatched = moment !== null && moment >= from && moment <= until && fitted !== null;
    const startKm = kmAt(start) ?? 0;
    const untilKm = Math.max(
      kmAt(stop) ?? 0,
      removedMoment !== null && removedMoment <= until ? (removed ?? 0) : 0,
    );
    const fromKm = isFittedWhileWatched ? Math.min(startKm, fitted) : startKm;
    return untilKm < fromKm ? [] : [{ from: fromKm, until: untilKm }];
  });
  const inspections = part.inspections.flatMap(({ at, isWorn }) => {
    const km = kmAt(Date.parse(at));
    return km === null ? [] : [{ at: km, isWorn }];
  });
  return { fitted, removed: isRemovalLost ? null : removed, watched: spans, inspections };
}
