import { normalQuantile } from '@endfloat/statistics';
import { reachedWithin } from './level-forecast.js';
import type { WearTrend } from './wear-trend.js';

/** Until when: a further distance, or a number of days at a yearly distance that is itself uncertain. */
export type Horizon =
  | { readonly kind: 'distance'; readonly km: number }
  | { readonly kind: 'days'; readonly days: number; readonly kmPerYear: number; readonly kmPerYearU: number };

const shares = 41;
const daysPerYear = 365.25;

/**
 * Probability that a part reaches the limit of its trend before a further distance, or before a date.
 *
 * Before a date: the yearly distance is taken as normal about what is expected, never negative, in 41 equal shares.
 *
 * @param trend    of one part
 * @param horizon  further km from `trend.nowKm`, or days from now with the yearly distance and its standard uncertainty
 * @returns probability between 0 and 1
 * @throws RangeError on a negative or non-finite distance, number of days, yearly distance or uncertainty
 */
export function probabilityOfReaching(trend: WearTrend, horizon: Horizon): number {
  const within = (km: number) => reachedWithin(trend.forecast, trend.orientedLimit, km);
  const numbers = Object.entries(horizon).filter(([name]) => name !== 'kind') as [string, number][];
  for (const [name, value] of numbers) {
    if (!(value >= 0 && Number.isFinite(value)))
      throw new RangeError(`${name} is not negative and finite: ${value}`);
  }
  if (horizon.kind === 'distance') return within(horizon.km);
  const { days, kmPerYear, kmPerYearU } = horizon;
  if (kmPerYearU === 0) return within((days / daysPerYear) * kmPerYear);
  let total = 0;
  for (let share = 0; share < shares; share += 1) {
    const yearly = Math.max(0, kmPerYear + kmPerYearU * normalQuantile((share + 0.5) / shares));
    total += within((days / daysPerYear) * yearly);
  }
  return total / shares;
}
