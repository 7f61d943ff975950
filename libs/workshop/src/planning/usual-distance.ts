import type { FleetDistance, FleetVehicle } from '../ports/fleet-history.port.js';

const msPerDay = 86_400_000;
const daysPerYear = 365.25;
/** Fewest days between two readings from which a distance a day is read; judgement. */
const fewestDays = 90;

/** How far a vehicle goes in a day: as its owner expects, else between its first and last reading; null: not known. */
export function kmPerDayOf(
  { expectedKmPerYear }: Pick<FleetVehicle, 'expectedKmPerYear'>,
  distances: readonly FleetDistance[],
): number | null {
  if (expectedKmPerYear !== null) return Number(expectedKmPerYear) / daysPerYear;
  const [first, last] = [distances[0], distances.at(-1)];
  if (first === undefined || last === undefined) return null;
  const days = (last.at - first.at) / msPerDay;
  return days < fewestDays || last.km < first.km ? null : (last.km - first.km) / days;
}

/** Present distance: the last reading, and what the vehicle has usually gone since; null without a reading. */
export function expectedKmAt(
  distances: readonly FleetDistance[],
  kmPerDay: number | null,
  at: number,
): number | null {
  const last = distances.at(-1);
  if (last === undefined) return null;
  return last.km + (kmPerDay ?? 0) * Math.max(0, (at - last.at) / msPerDay);
}
