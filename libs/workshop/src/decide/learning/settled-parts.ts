import type { RenewingAction, SettledDelivery, SettledPart, WearingCharacteristic } from '@endfloat/decision';
import type { FittedPartRecord } from '../../intake/fitted-parts.use-case.js';
import type { Recorded } from '../../ports/record-store.port.js';
import type { Delivery, OfOffer } from '../../ports/records/decide.records.js';
import type { Complaint } from '../../ports/records/jobs.records.js';
import type { OdometerEntry, OfVehicle } from '../../ports/records/vehicles.records.js';
import type { ShopTransaction } from '../../ports/unit-of-work.port.js';
import { partsOfKind } from '../../wear/fleet-wear.js';
import { wearCasesIfKnown } from '../../wear/wear-case.js';
import { kmAtFitting } from '../../wear/part-readings.js';
import { wearSeriesOf, type WearSeries } from '../../wear/wear-series.js';
import { presentKm } from '../../wear/yearly-distance.js';
import { componentCaseIfKnown } from '../component-case.js';
import { daysBetween } from '../days-between.js';
import { actionOfCondition } from '../gather-offers.js';
import { kindsWithTariffs } from '../repair-tariffs.js';

/** Most parts of a kind that wear is learned from: the ones recorded last. The work grows with their number. Judgement. */
export const mostPartsLearned = 100;

/** Parts of the kinds that can be assessed, from fitting to removal or to the last time the vehicle was seen. */
export async function settledParts(tx: ShopTransaction): Promise<readonly SettledPart[]> {
  const parts: SettledPart[] = [];
  for (const componentType of kindsWithTariffs) {
    const component = await componentCaseIfKnown(tx, componentType);
    const [wearing] = component?.wearing ?? [];
    if (wearing === undefined) continue;
    const { sizes } = wearing;
    const [found] = (await wearCasesIfKnown(tx, componentType, wearing.characteristic.id, undefined)) ?? [];
    if (found === undefined) continue;
    const all = (await partsOfKind(tx, componentType, undefined)).slice(0, mostPartsLearned);
    const series = await wearSeriesOf(tx, all, found, undefined, { tellOverdue: false });
    const seen = await lifeOf(tx, all);
    parts.push(...all.flatMap((part) => settledPart(part, series, sizes, seen) ?? []));
  }
  return parts;
}

interface SeenLives {
  readonly entries: ReadonlyMap<string, readonly OdometerEntry[]>;
  /** complaints by vehicle, confirmed comebacks left out */
  readonly complaints: ReadonlyMap<string, readonly Complaint[]>;
}

async function lifeOf(tx: ShopTransaction, parts: readonly FittedPartRecord[]): Promise<SeenLives> {
  const vehicleId = [...new Set(parts.map(({ identity }) => identity.vehicleId))];
  if (vehicleId.length === 0) return { entries: new Map(), complaints: new Map() };
  const complaints = await tx.complaints.all({ vehicleId });
  const links =
    complaints.length === 0
      ? []
      : await tx.comebacks.all({ complaintId: complaints.map(({ id }) => id), state: 'confirmed' });
  const repeats = new Set(links.map(({ identity }) => identity.complaintId));
  return {
    entries: contentsByVehicle(await tx.odometerEntries.all({ vehicleId })),
    complaints: contentsByVehicle(complaints.filter(({ id }) => !repeats.has(id))),
  };
}

function contentsByVehicle<C extends object>(
  records: readonly Recorded<OfVehicle, C>[],
): ReadonlyMap<string, readonly C[]> {
  const groups = new Map<string, C[]>();
  for (const { identity, content } of records) {
    const group = groups.get(identity.vehicleId);
    if (group === undefined) groups.set(identity.vehicleId, [content]);
    else group.push(content);
  }
  return groups;
}

/** null where it is not known at which distance the part was fitted, or the vehicle was not seen since. */
function settledPart(
  part: FittedPartRecord,
  series: readonly WearSeries[],
  { unwornSize, criterionSize }: WearingCharacteristic,
  { entries, complaints }: SeenLives,
): SettledPart | null {
  const { vehicleId } = part.identity;
  const { componentType, condition, removedAt, removedKm } = part.content;
  const start = kmAtFitting(part);
  const end =
    removedAt === null
      ? presentKm(entries.get(vehicleId) ?? [])
      : removedKm === null
        ? null
        : Number(removedKm);
  if (start === null || end === null || end <= start) return null;
  const whole = criterionSize - unwornSize;
  const own = series.find((each) => each.part.id === part.id && each.points.length > 0);
  const watchedKm = end - start;
  return {
    action: renewalOf(condition),
    watchedKm,
    inspections: (own?.points ?? [])
      .filter(({ km }) => km >= 0 && km <= watchedKm)
      .map(({ km, value, u }) => ({
        kmSinceFitted: km,
        share: Math.max(0, (value - unwornSize) / whole),
        standardUncertainty: u / Math.abs(whole),
      })),
    // Which answers were validly judged is not looked up here: the width of the criterion stays judgement.
    criterion: [],
    complaintsKm: (complaints.get(vehicleId) ?? [])
      .filter(({ components }) => components.includes(componentType))
      .flatMap(({ distanceKm }) => (distanceKm === null ? [] : [Number(distanceKm) - start]))
      .filter((km) => km >= 0 && km <= watchedKm),
  };
}

/** How a part came; null: it was on the vehicle from the start, or nobody knows. */
function renewalOf(condition: string): RenewingAction | null {
  const action = Object.entries(actionOfCondition).find(([each]) => each === condition)?.[1];
  return action === undefined || action === 'leave' || action === 'adjust' ? null : action;
}

/** Deliveries with a promise, as they were promised and as they came. */
export async function settledDeliveries(tx: ShopTransaction): Promise<readonly SettledDelivery[]> {
  const offers = new Map((await tx.offers.all({})).map(({ id, content }) => [id, content]));
  const deliveries: readonly Recorded<OfOffer, Delivery>[] = await tx.deliveries.all({});
  return deliveries.flatMap(({ identity, content: { orderedOn, promisedOn, arrivedOn } }) => {
    const offer = offers.get(identity.offerId);
    if (offer === undefined || promisedOn === null || arrivedOn === null) return [];
    const promisedDays = daysBetween(orderedOn, promisedOn);
    const actualDays = daysBetween(orderedOn, arrivedOn);
    return promisedDays < 0 || actualDays < 0
      ? []
      : [{ supplierId: offer.supplier, promisedDays, actualDays }];
  });
}
