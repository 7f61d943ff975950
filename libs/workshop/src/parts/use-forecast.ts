import { syntetosBoylan } from '@endfloat/statistics';
import type { MonthOfUse } from '../ports/stock-queries.port.js';

/** Weight of the latest demand in the forecast from use; judgement, between the 0.1 and 0.2 usual for such series. */
export const useSmoothing = 0.15;
const daysOfMonth = 365.25 / 12;

/** Demand by what was used, where nothing better is known. */
export type UseForecast =
  | {
      readonly kind: 'estimated';
      readonly perDay: number;
      readonly months: number;
      readonly monthsWithUse: number;
    }
  | { readonly kind: 'insufficientData'; readonly of: string; readonly needed: number; readonly got: number };

/**
 * Mean use a day from whole months (Syntetos–Boylan): from the month of the first use to the last whole month before
 * today. Fewer than two months with use say nothing.
 */
export function useForecast(months: readonly MonthOfUse[], today: string): UseForecast {
  const byMonth = new Map<string, number>();
  for (const { month, pieces } of months) byMonth.set(month, (byMonth.get(month) ?? 0) + pieces);
  const current = `${today.slice(0, 7)}-01`;
  const first = [...byMonth.keys()].sort()[0];
  const series: number[] = [];
  for (let month = first; month !== undefined && month < current; month = monthAfter(month))
    series.push(Math.max(0, byMonth.get(month) ?? 0));
  const monthsWithUse = series.filter((pieces) => pieces > 0).length;
  const insufficient = {
    kind: 'insufficientData',
    of: 'monthsWithUse',
    needed: 2,
    got: monthsWithUse,
  } as const;
  if (monthsWithUse < 2) return insufficient;
  const forecast = syntetosBoylan(series, useSmoothing);
  if (forecast.kind !== 'estimated') return insufficient;
  return {
    kind: 'estimated',
    perDay: forecast.perPeriod / daysOfMonth,
    months: series.length,
    monthsWithUse,
  };
}

function monthAfter(month: string): string {
  const [year, number] = month.split('-').map(Number) as [number, number];
  return number === 12
    ? `${String(year + 1)}-01-01`
    : `${String(year)}-${String(number + 1).padStart(2, '0')}-01`;
}
