import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { requireFinite } from '../distributions/checked-arguments.js';

/** Period by period: what keeping costs during it and what selling brings at its end, in one currency. */
export interface HoldingPeriod {
  readonly running: number;
  readonly resale: number;
}

export interface EconomicLifeOptions {
  /** Interest per period, above 0; no discounting when left out. Running costs fall due at the end of each period. */
  readonly discountRate?: number;
}

export interface EconomicLife {
  /**
   * 'minimumInside': a later listed period costs more. 'lowestAtLastPeriod': the list ends before the cost has turned, so
   * the true economic life may be longer.
   */
  readonly kind: 'minimumInside' | 'lowestAtLastPeriod';
  /** Number of periods to hold; of equal ones the shortest. */
  readonly periods: number;
  readonly cost: number;
  /** Cost per period when held for 1, 2, … periods: plain average, or equivalent annual cost with a discount rate. */
  readonly costs: readonly number[];
}

/** Refuses amounts that are not finite and a discount rate that is not positive. */
export function requirePeriods(
  price: number,
  periods: readonly HoldingPeriod[],
  options: EconomicLifeOptions,
): void {
  requireFinite('price', price);
  periods.forEach(({ running, resale }, i) => {
    requireFinite(`running cost of period ${i + 1}`, running);
    requireFinite(`resale after period ${i + 1}`, resale);
  });
  const { discountRate } = options;
  if (discountRate !== undefined && !(discountRate > 0 && discountRate < Infinity)) {
    throw new RangeError(`discountRate must be positive, got ${discountRate}`);
  }
}

/** Cost per period when held for 1, 2, … periods. */
export function costsOfHolding(
  price: number,
  periods: readonly HoldingPeriod[],
  { discountRate }: EconomicLifeOptions,
): readonly number[] {
  let spent = price;
  return periods.map(({ running, resale }, i) => {
    const n = i + 1;
    if (discountRate === undefined) {
      spent += running;
      return (spent - resale) / n;
    }
    const discount = Math.exp(-n * Math.log1p(discountRate));
    spent += running * discount;
    return ((spent - resale * discount) * discountRate) / -Math.expm1(-n * Math.log1p(discountRate));
  });
}

/**
 * Economic life: for how many periods to hold something so that it costs least per period, price less resale and running
 * cost together. Plain averages, or equivalent annual costs when a discount rate is given.
 *
 * @param price  what it costs to get (or, for something owned, what selling it now would bring)
 * @param periods  running cost and resale value of each period in order, equal periods
 * @param options  discount rate per period
 * @returns the number of periods with the lowest cost and the cost for every number; `insufficientData` without a period
 * @throws RangeError on a non-finite amount or a discount rate that is not positive
 * @source plain: textbook average annual cost (Jardine & Tsang, ch. 2); discounted: equivalent annual cost, Park,
 *   Contemporary Engineering Economics, ch. 14 (chapter from memory)
 * @oracle two published exercises and cases worked by hand in the spec
 * @example economicLife(6, [{ running: 1, resale: 3 }, { running: 4, resale: 2 }]) // => { kind: 'minimumInside', periods: 1, cost: 4, costs: [4, 4.5] }
 */
export function economicLife(
  price: number,
  periods: readonly HoldingPeriod[],
  options: EconomicLifeOptions = {},
): EconomicLife | InsufficientData {
  requirePeriods(price, periods, options);
  if (periods.length === 0) return insufficientData('periods', 1, 0);
  const costs = costsOfHolding(price, periods, options);
  const best = costs.reduce((lowest, cost, i) => (cost < costs[lowest]! ? i : lowest), 0);
  return {
    kind: best === costs.length - 1 ? 'lowestAtLastPeriod' : 'minimumInside',
    periods: best + 1,
    cost: costs[best]!,
    costs,
  };
}
