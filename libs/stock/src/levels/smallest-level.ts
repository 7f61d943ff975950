import { demandQuantile, type DemandDistribution } from '../demand/demand-distribution.js';
import { expectedShort, serviceOfLevel, type StockServiceMeasure } from './stock-service.js';

/** A stock level with what it promises. */
export interface StockLevel {
  readonly kind: 'found';
  readonly level: number;
  readonly measure: StockServiceMeasure;
  readonly target: number;
  /** the measure at the level, at least the target */
  readonly service: number;
  /** mean number of pieces asked for and not there */
  readonly expectedShort: number;
  /** the measure with one piece less; null at level 0 */
  readonly serviceBelow: number | null;
}

/** The level, or that there is none: a target of 1 is refused, also where this demand is bounded. */
export type StockLevelOutcome = StockLevel | { readonly kind: 'unattainable'; readonly target: number };

/**
 * Smallest stock level that keeps a service promise over a lead time.
 *
 * @param demand   over the lead time, in whole pieces
 * @param measure  what is promised
 * @param target   between 0 and 1, met to 1 part in 10¹³; 1 is `unattainable`, as no real demand is certain to end
 * @returns level, its service and what one piece less would give; 0 for a target of 0
 * @throws RangeError on a target outside [0, 1]
 * @source Snyder & Shen (2019), Fundamentals of Supply Chain Theory, 2nd ed., ch. 4, for any distribution of demand
 * @oracle A9.3: R qpois, in the spec
 * @example smallestLevel({ probabilities: [0.5, 0.5] }, 'cycleService', 0.9).level // => 1
 */
export function smallestLevel(
  demand: DemandDistribution,
  measure: StockServiceMeasure,
  target: number,
): StockLevelOutcome {
  if (!(target >= 0 && target <= 1)) throw new RangeError(`target must lie between 0 and 1, got ${target}`);
  if (target === 1) return { kind: 'unattainable', target };
  let level = 0;
  // The distribution ends, so the service reaches 1 one piece beyond its end at the latest.
  while (serviceOfLevel(demand, level, measure) < target * (1 - 1e-13)) level += 1;
  return {
    kind: 'found',
    level,
    measure,
    target,
    service: serviceOfLevel(demand, level, measure),
    expectedShort: expectedShort(demand, level),
    serviceBelow: level === 0 ? null : serviceOfLevel(demand, level - 1, measure),
  };
}

/** What a piece too many and a piece too few cost over the stretch that the demand is for; in one currency. */
export interface StockCosts {
  readonly over: number;
  readonly under: number;
}

/** The level with the lowest expected cost. */
export interface CostLevel {
  readonly level: number;
  readonly expectedCost: number;
  readonly criticalRatio: number;
}

/**
 * Expected cost of a level over one stretch of demand.
 *
 * @param demand  in whole pieces
 * @param costs   both positive
 * @param level   whole, 0 or more
 * @returns over · E(S − D)⁺ + under · E(D − S)⁺
 * @throws RangeError on costs that are not positive and finite, or a level that is negative or not whole
 * @source Snyder & Shen (2019), Fundamentals of Supply Chain Theory, 2nd ed., eq. 4.3
 * @example costOfLevel({ probabilities: [1] }, { over: 1, under: 4 }, 3) // => 3
 */
export function costOfLevel(demand: DemandDistribution, costs: StockCosts, level: number): number {
  requireCosts(costs);
  const mean = demand.probabilities.reduce((sum, chance, count) => sum + chance * count, 0);
  const short = expectedShort(demand, level);
  return costs.over * (level - mean + short) + costs.under * short;
}

/**
 * Level with the lowest expected cost: the smallest S with P(D ≤ S) ≥ under / (under + over).
 *
 * @param demand  in whole pieces
 * @param costs   both positive
 * @returns level, its cost and the critical ratio
 * @throws RangeError on costs that are not positive and finite
 * @source Snyder & Shen (2019), Fundamentals of Supply Chain Theory, 2nd ed., sec. 4.3.4
 * @oracle A9.2: examples 4.7 of the same book, in the spec
 * @example cheapestLevel({ probabilities: [0.5, 0.5] }, { over: 1, under: 4 }).level // => 1
 */
export function cheapestLevel(demand: DemandDistribution, costs: StockCosts): CostLevel {
  requireCosts(costs);
  const criticalRatio = costs.under / (costs.under + costs.over);
  const level = demandQuantile(demand, criticalRatio);
  return { level, expectedCost: costOfLevel(demand, costs, level), criticalRatio };
}

function requireCosts({ over, under }: StockCosts): void {
  for (const [name, value] of Object.entries({ over, under })) {
    if (!(value > 0) || value === Infinity) throw new RangeError(`${name} must be above 0, got ${value}`);
  }
}
