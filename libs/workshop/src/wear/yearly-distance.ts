import type { FleetDistance } from '../ports/fleet-history.port.js';
import type { OdometerEntry, Vehicle } from '../ports/records/vehicles.records.js';

/** How far a vehicle goes in a year, and how that is known. */
export interface YearlyDistance {
  readonly kmPerYear: number;
  /** standard uncertainty */
  readonly u: number;
  readonly basis: 'stated' | 'odometer';
}

/** Doubt about next year's distance as a share of it; judgement. */
const shareOfDoubt = 0.2;
const msPerDay = 86_400_000;
/** Fewest days between two odometer entries a yearly distance is read from; judgement. */
const fewestDays = 90;

/** An odometer entry, or a distance that is known to be reliable, with its moment in milliseconds since 1970. */
export type DistanceSeen = Pick<OdometerEntry, 'reliable' | 'distanceKm' | 'readAt'> | FleetDistance;

const reliable = (entries: readonly DistanceSeen[]): readonly FleetDistance[] =>
  entries
    .flatMap((entry) => {
      if ('km' in entry) return [entry];
      const { reliable: isReliable, distanceKm, readAt } = entry;
      return isReliable && distanceKm !== null ? [{ km: Number(distanceKm), at: Date.parse(readAt) }] : [];
    })
    .sort((a, b) => a.at - b.at);

/** Present distance by the last reliable entry; null where there is none. */
export const presentKm = (entries: readonly DistanceSeen[]): number | null =>
  reliable(entries).at(-1)?.km ?? null;

/** What the owner expects, else what the odometer shows over 90 days or more; null where neither is known. */
export function yearlyDistanceOf(vehicle: Vehicle, entries: readonly DistanceSeen[]): YearlyDistance | null {
  if (vehicle.expectedKmPerYear !== null) {
    const kmPerYear = Number(vehicle.expectedKmPerYear);
    return { kmPerYear, u: shareOfDoubt * kmPerYear, basis: 'stated' };
  }
  const known = reliable(entries);
  const [first, last] = [known[0], known.at(-1)];
  if (first === undefined || last === undefined) return null;
  const days = (last.at - first.at) / msPerDay;
  if (days < fewestDays || last.km < first.km) return null;
  const kmPerYear = ((last.km - first.km) / days) * 365.25;
  return { kmPerYear, u: shareOfDoubt * kmPerYear, basis: 'odometer' };
}

/** Whole days from one local day to another. */
export const daysBetween = (from: string, until: string): number =>
  Math.round((Date.parse(`${until}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / msPerDay);
