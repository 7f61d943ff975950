import { chanceOfAny, chanceToEndWithin, type NeedSource, type WeibullLife } from '@endfloat/stock';
import { probabilityOfReaching, type WearTrend } from '@endfloat/wear';
import { invalidInput } from '../errors/domain.errors.js';
import type { Vehicle } from '../ports/records/vehicles.records.js';
import type { YearlyDistance } from '../wear/yearly-distance.js';

/** How far ahead is asked: days from now, or further km of each van. */
export type NeedHorizon =
  { readonly kind: 'days'; readonly days: number } | { readonly kind: 'distance'; readonly km: number };

/** One reason why a van may need a part, with its chance for any horizon. */
export interface NeedReason {
  readonly source: NeedSource;
  /** characteristic, job or count behind it */
  readonly about: Readonly<Record<string, string>>;
  /** null: this reason cannot say for that kind of horizon */
  readonly chanceWithin: (horizon: NeedHorizon) => number | null;
}

/** A van with a part of the kind, and why it may need another. */
export interface VanNeeds {
  readonly vehicleId: string;
  readonly label: string | null;
  readonly position: string;
  /** which variant of the part fits: the shop's own word */
  readonly application: string | null;
  readonly reasons: readonly NeedReason[];
}

/** Chance of one van, and the reasons that made it. */
export interface VanChance {
  readonly vehicleId: string;
  readonly label: string | null;
  readonly position: string;
  readonly chance: number;
  readonly reasons: readonly {
    readonly source: NeedSource;
    readonly chance: number;
    readonly about: Readonly<Record<string, string>>;
  }[];
}

/**
 * Chance that a van needs a part within a horizon. Wear is measured, so the life of such parts in general is asked only
 * where the wear of this one says nothing; what is planned and what may come back are reasons of their own.
 */
export function vanChance(van: VanNeeds, horizon: NeedHorizon): VanChance | null {
  const known = van.reasons.flatMap(({ source, about, chanceWithin }) => {
    const chance = chanceWithin(horizon);
    return chance === null ? [] : [{ source, chance, about }];
  });
  const isMeasured = known.some(({ source }) => source === 'wear');
  const counted = known.filter(({ source }) => source !== 'life' || !isMeasured);
  if (counted.length === 0) return null;
  const { vehicleId, label, position } = van;
  // Characteristics of one part wear together: the likeliest counts, not each for itself.
  const wear = counted.filter(({ source }) => source === 'wear').map(({ chance }) => chance);
  const others = counted.filter(({ source }) => source !== 'wear').map(({ chance }) => chance);
  const chance = chanceOfAny([...(wear.length === 0 ? [] : [Math.max(...wear)]), ...others]);
  return { vehicleId, label, position, chance, reasons: counted };
}

export function wearReason(
  trend: WearTrend,
  yearly: YearlyDistance | null,
  characteristicId: string,
): NeedReason {
  return {
    source: 'wear',
    about: { characteristic: characteristicId, observations: String(trend.observations) },
    chanceWithin: (horizon) => {
      if (horizon.kind === 'distance') return probabilityOfReaching(trend, horizon);
      if (yearly === null) return null;
      const { kmPerYear, u } = yearly;
      return probabilityOfReaching(trend, {
        kind: 'days',
        days: horizon.days,
        kmPerYear: Math.max(0, kmPerYear),
        kmPerYearU: u,
      });
    },
  };
}

/** Lives of the kind in days and in km; null where too few have ended to say anything. */
export interface KnownLives {
  readonly days: WeibullLife | null;
  readonly km: WeibullLife | null;
}

export function lifeReason(
  lives: KnownLives,
  age: { readonly days: number | null; readonly km: number | null },
): NeedReason {
  return {
    source: 'life',
    about: {},
    chanceWithin: (horizon) => {
      const [life, lived, ahead] =
        horizon.kind === 'days' ? [lives.days, age.days, horizon.days] : [lives.km, age.km, horizon.km];
      return life === null || lived === null ? null : chanceToEndWithin(life, lived, ahead);
    },
  };
}

export function plannedReason(jobId: string, chance: number): NeedReason {
  return { source: 'openJob', about: { jobId }, chanceWithin: () => chance };
}

/** A comeback may come at any time of the days that are left of the watch window: in equal shares, which is judgement. */
export function comebackReason(
  jobId: string,
  chance: number,
  left: { readonly days: number; readonly km: number; readonly kmPerDay: number | null },
): NeedReason {
  return {
    source: 'comeback',
    about: { jobId },
    chanceWithin: (horizon) => {
      const share =
        horizon.kind === 'days'
          ? horizon.days / left.days
          : Math.max(
              horizon.km / left.km,
              left.kmPerDay === null || left.kmPerDay === 0 ? 0 : horizon.km / (left.kmPerDay * left.days),
            );
      return chance * Math.min(1, Math.max(0, share));
    },
  };
}

/** Days ahead and km ahead are one question in two forms; both at once, or neither, is none. */
export function horizonOfQuery(days: number | undefined, km: number | undefined): NeedHorizon {
  if (days !== undefined && km === undefined) return { kind: 'days', days };
  if (km !== undefined && days === undefined) return { kind: 'distance', km };
  throw invalidInput('/days', 'oneHorizon', 'Ask for the next days or for the next km, one of the two.');
}

export const labelOf = (vehicle: Vehicle): string | null => vehicle.label ?? vehicle.plate;
