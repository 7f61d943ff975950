import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { requireFinite } from '../distributions/checked-arguments.js';
import {
  costsOfHolding,
  requirePeriods,
  type EconomicLifeOptions,
  type HoldingPeriod,
} from './economic-life.js';

export interface ChallengerDecision {
  /**
   * 'replaceNow': however long the present one is kept, it costs more per period than the challenger. 'keep': for
   * `periods` more, then replace. 'keepThroughout': beyond the last listed period the list cannot say.
   */
  readonly kind: 'replaceNow' | 'keep' | 'keepThroughout';
  /** Periods to keep the present one; 0 when replaced now. */
  readonly periods: number;
  /** Cost per period of the present one if kept for 1, 2, … periods. */
  readonly costs: readonly number[];
  /** Cost of each further period alone: running cost and loss of resale value, with interest when discounted. */
  readonly marginalCosts: readonly number[];
}

function marginalCostsOf(
  resaleNow: number,
  periods: readonly HoldingPeriod[],
  { discountRate = 0 }: EconomicLifeOptions,
): readonly number[] {
  return periods.map(({ running, resale }, i) => {
    const before = i === 0 ? resaleNow : periods[i - 1]!.resale;
    return running + before * (1 + discountRate) - resale;
  });
}

/**
 * Keep the present one (the defender) or replace it by a challenger: the defender is priced at what selling it now would
 * bring, never at what was once paid. It is replaced now if even its cheapest remaining life costs more per period than
 * the challenger over its own economic life; otherwise it is kept for that life and then period by period as long as the
 * next one alone does not cost more than the challenger. At equal cost it is kept. Challengers are taken as staying the
 * same.
 *
 * @param resaleNow  what selling the defender now would bring
 * @param periods  the defender's further periods in order
 * @param challengerCost  the challenger's cost per period over its economic life (same discount rate)
 * @param options  discount rate per period
 * @returns the decision with the costs behind it; `insufficientData` without a period
 * @throws RangeError on a non-finite amount or a discount rate that is not positive
 * @source Terborgh (1949), Dynamic Equipment Policy; decision procedure as in Park, Contemporary Engineering Economics,
 *   ch. 14 (from memory)
 * @oracle cases worked by hand in the spec
 * @example challengerRule(5, [{ running: 2, resale: 4 }], 2) // => { kind: 'replaceNow', periods: 0, costs: [3], marginalCosts: [3] }
 */
export function challengerRule(
  resaleNow: number,
  periods: readonly HoldingPeriod[],
  challengerCost: number,
  options: EconomicLifeOptions = {},
): ChallengerDecision | InsufficientData {
  requirePeriods(resaleNow, periods, options);
  requireFinite('challengerCost', challengerCost);
  if (periods.length === 0) return insufficientData('periods', 1, 0);
  const costs = costsOfHolding(resaleNow, periods, options);
  const marginalCosts = marginalCostsOf(resaleNow, periods, options);
  const best = costs.reduce((lowest, cost, i) => (cost < costs[lowest]! ? i : lowest), 0);
  if (costs[best]! > challengerCost) return { kind: 'replaceNow', periods: 0, costs, marginalCosts };
  let kept = best + 1;
  while (kept < periods.length && marginalCosts[kept]! <= challengerCost) kept += 1;
  return { kind: kept === periods.length ? 'keepThroughout' : 'keep', periods: kept, costs, marginalCosts };
}
