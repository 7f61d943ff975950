import { fitLifeDistribution, rightCensoredLives, type LifeFitOutcome } from '@endfloat/statistics';
import type { WeibullLife } from '@endfloat/stock';
import type { FittedPartRecord } from '../intake/fitted-parts.use-case.js';
import type { OdometerEntry, Vehicle } from '../ports/records/vehicles.records.js';
import { presentKm } from '../wear/yearly-distance.js';
import type { KnownLives } from './gather-needs.js';

/** Fewest ended lives that a curve is laid through for needs; judgement. */
export const fewestEndedLives = 5;

const msPerDay = 86_400_000;

/** A van as lives need it. */
export interface VanOfPart {
  readonly vehicle: Vehicle;
  readonly firstRecordedAt: string;
  readonly entries: readonly OdometerEntry[];
}

/** How old a part is, and since when anybody would have seen it end; null: not known. */
export interface PartAge {
  readonly days: number | null;
  readonly km: number | null;
}

/** Why a life ended: worn or failed; what was taken off for another reason goes on elsewhere. */
const ended = (part: FittedPartRecord): boolean =>
  part.content.removedAt !== null && part.content.removalReason !== 'vehicleRetired';

/** Age of a part at a moment, or at its removal. One that came with the van is as old as the van. */
export function ageOf({ content }: FittedPartRecord, van: VanOfPart, now: string): PartAge {
  const since =
    content.fittedAt ??
    (content.condition === 'original' && van.vehicle.firstUsedOn !== null
      ? `${van.vehicle.firstUsedOn}T00:00:00Z`
      : null);
  const until = content.removedAt ?? now;
  const fittedKm = content.fittedKm ?? (content.condition === 'original' ? '0' : null);
  const endKm = content.removedAt === null ? presentKm(van.entries) : content.removedKm;
  return {
    days: since === null ? null : Math.max(0, (Date.parse(until) - Date.parse(since)) / msPerDay),
    km: fittedKm === null || endKm === null ? null : Math.max(0, Number(endKm) - Number(fittedKm)),
  };
}

/** The lives behind a curve. */
export interface LivesOfKind {
  readonly lives: KnownLives;
  readonly ended: number;
  readonly running: number;
  /** parts whose age nobody knows */
  readonly leftOut: number;
}

/**
 * Weibull lives of a kind of part by the parts of the shop: those that were removed, those still running, and each only
 * from the day on which the shop would have seen its end (late entry).
 */
export function livesOfKind(
  parts: readonly FittedPartRecord[],
  vans: ReadonlyMap<string, VanOfPart>,
  now: string,
): LivesOfKind {
  const rows = { ages: [] as number[], events: [] as number[], entryAges: [] as number[] };
  const km = { ages: [] as number[], events: [] as number[] };
  let leftOut = 0;
  for (const part of parts) {
    const van = vans.get(part.identity.vehicleId);
    const age = van === undefined ? null : ageOf(part, van, now);
    if (van === undefined || age === null || age.days === null || age.days <= 0) {
      leftOut += 1;
      continue;
    }
    const entry =
      age.days - (Date.parse(part.content.removedAt ?? now) - Date.parse(seenFrom(van))) / msPerDay;
    if (entry >= age.days) {
      leftOut += 1;
      continue;
    }
    rows.ages.push(age.days);
    rows.events.push(ended(part) ? 1 : 0);
    rows.entryAges.push(Math.max(0, entry));
    if (age.km === null || age.km <= 0) continue;
    km.ages.push(age.km);
    km.events.push(ended(part) ? 1 : 0);
  }
  const count = rows.events.filter((event) => event === 1).length;
  return {
    lives: { days: weibullOf(rows), km: weibullOf(km) },
    ended: count,
    running: rows.events.length - count,
    leftOut,
  };
}

function seenFrom({ vehicle, firstRecordedAt }: VanOfPart): string {
  return vehicle.observedSpans.map(({ from }) => from).sort()[0] ?? firstRecordedAt;
}

function weibullOf(sample: {
  readonly ages: readonly number[];
  readonly events: readonly number[];
  readonly entryAges?: readonly number[];
}): WeibullLife | null {
  if (sample.events.filter((event) => event === 1).length < fewestEndedLives) return null;
  const fit: LifeFitOutcome = fitLifeDistribution('weibull', rightCensoredLives(sample));
  return fit.kind === 'estimated' ? { scale: Math.exp(fit.mu), shape: 1 / fit.sigma } : null;
}
