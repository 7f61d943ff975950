import { compensatedSum } from '@endfloat/statistics';
import { demandUpTo, type DemandDistribution } from '../demand/demand-distribution.js';

/**
 * What a stock level promises over one lead time. 'cycleService': the chance that nobody waits, P(D ≤ S). 'readyRate':
 * the chance that a piece is left on the shelf, P(D ≤ S − 1). 'fillRate': the share of the pieces asked for that is
 * there, 1 − E(D − S)⁺ / E(D).
 */
export const stockServiceMeasures = ['cycleService', 'readyRate', 'fillRate'] as const;
/** A measure of `stockServiceMeasures`. */
export type StockServiceMeasure = (typeof stockServiceMeasures)[number];

/** A level to be judged; whole, 0 or more. */
function requireLevel(level: number): void {
  if (!Number.isInteger(level) || level < 0)
    throw new RangeError(`level must be whole, 0 or more, got ${level}`);
}

/**
 * Mean number of pieces that are asked for and not there.
 *
 * @param demand  over the lead time
 * @param level   pieces at its beginning, on hand and on order
 * @returns E(D − S)⁺ in pieces
 * @throws RangeError on a level that is not whole or negative
 * @source Snyder & Shen (2019), Fundamentals of Supply Chain Theory, 2nd ed., sec. 4.3
 * @example expectedShort({ probabilities: [0.5, 0.25, 0.25] }, 1) // => 0.25
 */
export function expectedShort({ probabilities }: DemandDistribution, level: number): number {
  requireLevel(level);
  return compensatedSum(probabilities.slice(level + 1).map((chance, beyond) => chance * (beyond + 1)));
}

/**
 * Service of a stock level under any demand in whole pieces.
 *
 * @param demand   over the lead time
 * @param level    pieces at its beginning, on hand and on order
 * @param measure  which promise is meant
 * @returns between 0 and 1; without any demand the fill rate is 1: nobody waits
 * @throws RangeError on a level that is not whole or negative
 * @source Snyder & Shen (2019), Fundamentals of Supply Chain Theory, 2nd ed., ch. 4; Sherbrooke (2004), Optimal
 *   Inventory Modeling of Systems, ch. 2
 * @example serviceOfLevel({ probabilities: [0.5, 0.5] }, 0, 'cycleService') // => 0.5
 */
export function serviceOfLevel(
  demand: DemandDistribution,
  level: number,
  measure: StockServiceMeasure,
): number {
  requireLevel(level);
  if (measure === 'cycleService') return demandUpTo(demand, level);
  if (measure === 'readyRate') return demandUpTo(demand, level - 1);
  const mean = compensatedSum(demand.probabilities.map((chance, count) => chance * count));
  return mean === 0 ? 1 : Math.min(1, Math.max(0, 1 - expectedShort(demand, level) / mean));
}
