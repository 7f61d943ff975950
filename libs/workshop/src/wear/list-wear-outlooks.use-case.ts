import type { WearModel } from '@endfloat/wear';
import type { Clock } from '../ports/clock.port.js';
import type { ListPosition } from '../ports/record-store.port.js';
import type { Vehicle } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { vehiclesOf } from '../recording/vehicle-visibility.js';
import type { FittedPartRecord } from '../intake/fitted-parts.use-case.js';
import { fleetWearOf, modelOf, mostPartsOfFleet, partsOfKind, type FleetWear } from './fleet-wear.js';
import { horizonOf } from './show-wear.use-case.js';
import { groupBy } from './group-by.js';
import {
  unknownCharacteristic,
  wearCasesOf,
  wearLimitOf,
  type WearCase,
  type WearLimit,
} from './wear-case.js';
import { wearSeriesOf, type WearSeries } from './wear-series.js';
import {
  wearStandingOf,
  wearViewOf,
  type WearQuestionOfPart,
  type WearUntil,
  type WearView,
} from './wear-view.js';

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
  /** fitted parts beyond those that are worked out in one request */
  readonly partsLeftOut: number;
  readonly items: readonly WearOutlook[];
  readonly next: ListPosition | undefined;
}

/** Most fitted parts whose outlook is worked out in one request: the ones recorded last. */
export const mostPartsOfOutlook = 4000;

/** Vehicles worked out between two looks at the store, so that other requests get their turn. */
const vehiclesAtOnce = 200;

interface Asked {
  readonly found: WearCase;
  readonly model: WearModel | null;
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
      const eligible = all.filter(
        ({ content, identity }) => content.removedAt === null && (own?.has(identity.vehicleId) ?? true),
      );
      const asked = eligible.slice(0, mostPartsOfOutlook);
      const learning = all.slice(0, mostPartsOfFleet);
      const parts = [...new Set([...asked, ...learning])];
      const series = await wearSeriesOf(tx, parts, found, asOf, { tellOverdue: false });
      const fleet = fleetOf(series, found, learning, all.length);
      const isAsked = new Set(asked.map(({ id }) => id));
      const shown = series.filter(({ part }) => isAsked.has(part.id));
      const ranked = await rankedOf(tx, shown, { found, model: modelOf(fleet), today, until, asOf });
      const { page, next } = pageOf(ranked, query);
      const partsLeftOut = eligible.length - asked.length;
      return { fleet, found, partsLeftOut, items: await viewsOf(tx, page, asOf), next };
    });
  }
}

/** A series with its place among the others. */
interface Ranked {
  readonly question: WearQuestionOfPart;
  readonly vehicleId: string;
  readonly sortValue: string;
  readonly id: string;
}

async function rankedOf(
  tx: ShopTransaction,
  shown: readonly WearSeries[],
  asked: Asked,
): Promise<readonly Ranked[]> {
  const ids = [...new Set(shown.map(({ part }) => part.identity.vehicleId))];
  const byVehicle = groupBy(shown, ({ part }) => part.identity.vehicleId);
  const ranked: Ranked[] = [];
  for (let from = 0; from < ids.length; from += vehiclesAtOnce) {
    const some = ids.slice(from, from + vehiclesAtOnce);
    const series = some.flatMap((id) => byVehicle.get(id) ?? []);
    ranked.push(...(await rankedOfSome(tx, some, series, asked)));
  }
  return ranked.sort((a, b) => byText(a.sortValue, b.sortValue) || byText(a.id, b.id));
}

async function rankedOfSome(
  tx: ShopTransaction,
  ids: readonly string[],
  shown: readonly WearSeries[],
  { found, model, today, until, asOf }: Asked,
): Promise<readonly Ranked[]> {
  const vehicles = new Map((await tx.vehicles.findMany(ids, asOf)).map(({ id, content }) => [id, content]));
  const seen = await tx.fleetHistory.distances({ only: ids, asOf });
  const limits = new Map<string, WearLimit | null>();
  return shown.flatMap((series) => {
    const { vehicleId } = series.part.identity;
    const vehicle = vehicles.get(vehicleId);
    if (vehicle === undefined || vehicle.retiredOn !== null) return [];
    const distances = { vehicle, entries: seen.get(vehicleId) ?? [] };
    const question = { found, series, distances, model, today, until };
    const limit = limitOnce(limits, question);
    const sortValue = rankOf(wearStandingOf(question, limit));
    return [{ question, vehicleId, sortValue, id: `${series.part.id} ${series.place ?? ''}` }];
  });
}

/** Vans that limits know no difference between have the same one. */
function limitOnce(
  known: Map<string, WearLimit | null>,
  { found, distances: { vehicle }, today }: WearQuestionOfPart,
): WearLimit | null {
  const key = JSON.stringify([vehicle.attributes, vehicle.firstUsedOn, vehicle.application]);
  const limit = known.get(key);
  if (limit !== undefined) return limit;
  const fresh = wearLimitOf(found, vehicle, today);
  known.set(key, fresh);
  return fresh;
}

/** Whole views of one page, with which of their instruments were overdue. */
async function viewsOf(
  tx: ShopTransaction,
  page: readonly Ranked[],
  asOf: string | undefined,
): Promise<readonly WearOutlook[]> {
  const found = page[0]?.question.found;
  if (found === undefined) return [];
  const parts = [...new Map(page.map(({ question: { series } }) => [series.part.id, series.part])).values()];
  const whole = new Map(
    (await wearSeriesOf(tx, parts, found, asOf)).map((each) => [`${each.part.id} ${each.place ?? ''}`, each]),
  );
  return page.map(({ question, vehicleId, id }) => {
    const view = wearViewOf({ ...question, series: whole.get(id) ?? question.series });
    return { vehicleId, vehicle: question.distances.vehicle, view };
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
function rankOf(standing: ReturnType<typeof wearStandingOf>): string {
  if (standing === null) return '9';
  const median = Math.min(1e9, standing.median ?? 1e9);
  return `${(1 - standing.probability).toFixed(digits)} ${median.toFixed(3).padStart(14, '0')}`;
}

function pageOf(
  ranked: readonly Ranked[],
  { after, limit }: WearOutlookQuery,
): { readonly page: readonly Ranked[]; readonly next: ListPosition | undefined } {
  const rest = ranked.filter(
    ({ sortValue, id }) =>
      after === undefined || (byText(sortValue, after.sortValue) || byText(id, after.id)) > 0,
  );
  const last = rest[limit - 1];
  return {
    page: rest.slice(0, limit),
    next: rest.length > limit && last !== undefined ? { sortValue: last.sortValue, id: last.id } : undefined,
  };
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
