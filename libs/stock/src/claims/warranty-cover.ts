import { dayNumber } from '../time/day-number.js';

/** A warranty: it ends with its months or its distance, whichever is reached first; null: no such bound. */
export interface WarrantyTerms {
  readonly months: number | null;
  readonly km: number | null;
}

/** Whether a warranty still held. */
export type WarrantyCover =
  | { readonly kind: 'covered' }
  | { readonly kind: 'ended'; readonly by: 'months' | 'distance' }
  /** no terms are known, or a bound of them cannot be looked at and the other one has not passed */
  | { readonly kind: 'unknown' };

/**
 * Last day of a warranty of some months: the same day of the month, or the month's last day where it has no such day.
 *
 * @param from    local day it begins
 * @param months  whole, 0 or more
 * @returns local day
 * @throws RangeError on a day that is none, or months that are not whole or negative
 * @source common practice, no source
 * @example lastDayOfMonths('2026-01-31', 1) // => '2026-02-28'
 */
export function lastDayOfMonths(from: string, months: number): string {
  if (!Number.isInteger(months) || months < 0)
    throw new RangeError(`months must be whole, 0 or more, got ${months}`);
  dayNumber(from);
  const [year, month, day] = from.split('-').map(Number) as [number, number, number];
  const lastOfMonth = new Date(Date.UTC(year, month - 1 + months + 1, 0));
  const wanted = Math.min(day, lastOfMonth.getUTCDate());
  return new Date(Date.UTC(year, month - 1 + months, wanted)).toISOString().slice(0, 10);
}

/**
 * Whether a warranty held when the fault showed.
 *
 * @param terms     months and km
 * @param fittedOn  local day the part was fitted; null: not known
 * @param foundOn   local day the fault showed
 * @param km        gone with the part by then; null: not known
 * @returns covered (its last day and last km included), ended (the bound that was passed; months are named first), or
 *   unknown
 * @throws RangeError on a day that is none, months that are not whole or negative, a distance that is negative or not
 *   finite
 * @source common practice, no source: months or distance, whichever comes first
 * @example warrantyCoverOn({ months: 12, km: 20000 }, '2026-01-01', '2026-06-01', 21000) // => { kind: 'ended', by: 'distance' }
 */
export function warrantyCoverOn(
  terms: WarrantyTerms,
  fittedOn: string | null,
  foundOn: string,
  km: number | null,
): WarrantyCover {
  if (km !== null && !(km >= 0 && Number.isFinite(km)))
    throw new RangeError(`km must be 0 or more, got ${km}`);
  for (const day of fittedOn === null ? [foundOn] : [fittedOn, foundOn]) dayNumber(day);
  const isAfterMonths = reached(
    terms.months,
    fittedOn,
    (months, from) => foundOn > lastDayOfMonths(from, months),
  );
  const isBeyondKm = reached(terms.km, km, (most, gone) => gone > most);
  if (isAfterMonths === true) return { kind: 'ended', by: 'months' };
  if (isBeyondKm === true) return { kind: 'ended', by: 'distance' };
  const isWithoutTerms = terms.months === null && terms.km === null;
  return isWithoutTerms || isAfterMonths === null || isBeyondKm === null
    ? { kind: 'unknown' }
    : { kind: 'covered' };
}

/** False without the bound, null where the bound is there and what it bounds is not known. */
function reached<B, K>(
  bound: B | null,
  known: K | null,
  isPast: (bound: B, known: K) => boolean,
): boolean | null {
  if (bound === null) return false;
  return known === null ? null : isPast(bound, known);
}
