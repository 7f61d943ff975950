import { fitFleetWear, type FleetWearFit, type WearDirection, type WearModel } from '@endfloat/wear';
import type { FittedPartRecord } from '../intake/fitted-parts.use-case.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import type { WearCase } from './wear-case.js';
import { wearSeriesOf, type WearSeries } from './wear-series.js';

/** Most parts a fleet is fitted to: the ones recorded last. The work of a fit grows with their number. */
export const mostPartsOfFleet = 100;

/** What the other parts of the kind in the shop lend, or why they lend nothing. */
export interface FleetWear {
  readonly fit: FleetWearFit;
  /** parts with a point, and how many were looked at */
  readonly partsWithPoints: number;
  readonly partsLookedAt: number;
  readonly partsOfKind: number;
}

export const modelOf = ({ fit }: FleetWear): WearModel | null =>
  fit.kind === 'estimated' ? fit.model : null;

/** Parts of one kind in the shop, the ones recorded last first. */
export async function partsOfKind(
  tx: ShopTransaction,
  componentType: string,
  asOf: string | undefined,
): Promise<readonly FittedPartRecord[]> {
  const parts = await tx.fittedParts.all({ componentType }, asOf);
  return [...parts].sort(
    (a, b) => b.firstRecordedAt.localeCompare(a.firstRecordedAt) || (a.id < b.id ? -1 : 1),
  );
}

/** Wear of a kind of part over the whole shop, fitted once a request. */
export function fleetWearOf(
  series: readonly WearSeries[],
  found: WearCase,
  counts: { readonly lookedAt: number; readonly ofKind: number },
): FleetWear {
  const withPoints = series.filter(({ points }) => points.length > 0);
  return {
    fit: fitOnce(withPoints, found.direction),
    partsWithPoints: new Set(withPoints.map(({ part }) => part.id)).size,
    partsLookedAt: counts.lookedAt,
    partsOfKind: counts.ofKind,
  };
}

/** The fleet a part of this kind borrows from, itself among it. */
export async function gatherFleetWear(
  tx: ShopTransaction,
  found: WearCase,
  asOf: string | undefined,
): Promise<FleetWear> {
  const all = await partsOfKind(tx, found.type.id, asOf);
  const parts = all.slice(0, mostPartsOfFleet);
  const series = await wearSeriesOf(tx, parts, found, asOf);
  return fleetWearOf(series, found, { lookedAt: parts.length, ofKind: all.length });
}

/** Most fits kept, each with the numbers it was made from. */
const mostFits = 32;
const fits = new Map<string, FleetWearFit>();

/**
 * A fit of the same points is the same fit, and takes long: the last ones are kept under the very numbers they were made
 * from, so that keeping them never changes an answer.
 */
function fitOnce(histories: readonly WearSeries[], direction: WearDirection): FleetWearFit {
  const numbers = histories.map(({ points }) =>
    points.map(({ km, value, u, instrumentId, biasU }) => [km, value, u, instrumentId, biasU]),
  );
  const key = `${direction} ${JSON.stringify(numbers)}`;
  const fit = fits.get(key) ?? fitFleetWear(histories, direction);
  fits.delete(key);
  fits.set(key, fit);
  const [oldest] = fits.keys();
  if (fits.size > mostFits && oldest !== undefined) fits.delete(oldest);
  return fit;
}
