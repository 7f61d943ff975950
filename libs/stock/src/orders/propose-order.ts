import type { DemandDistribution } from '../demand/demand-distribution.js';
import { smallestLevel, type StockLevel } from '../levels/smallest-level.js';
import { expectedShort, serviceOfLevel, type StockServiceMeasure } from '../levels/stock-service.js';

/** What there is, what is coming, and what is wanted of it. */
export interface OrderQuestion {
  /** demand over the lead time of an order placed now */
  readonly demand: DemandDistribution;
  readonly onHand: number;
  /** ordered and not yet there */
  readonly onOrder: number;
  readonly measure: StockServiceMeasure;
  readonly target: number;
}

/** How many to order now; 0: none. */
export interface OrderProposal {
  readonly kind: 'proposed';
  readonly quantity: number;
  /** on hand and on order together */
  readonly position: number;
  readonly level: StockLevel;
  /** service over the lead time if nothing is ordered now, and pieces missing on average */
  readonly serviceWithout: number;
  readonly shortWithout: number;
}

/** A proposal, or that no level is sure of everything. */
export type OrderProposalOutcome = OrderProposal | { readonly kind: 'unattainable'; readonly target: number };

/**
 * What to order now, so that what is on hand and on order reaches the level of the service wanted (base stock policy:
 * each order brings the position up to the level).
 *
 * @param question  demand over the lead time, stock and the service wanted; counts are whole and not negative
 * @returns quantity, level and the service with and without it; `unattainable` for a target of 1
 * @throws RangeError on counts that are not whole or negative, or a target outside [0, 1]
 * @source Snyder & Shen (2019), Fundamentals of Supply Chain Theory, 2nd ed., sec. 4.4 (base stock policy)
 * @example proposeOrder({ demand: { probabilities: [0, 0, 0, 1] }, onHand: 1, onOrder: 0, measure: 'cycleService', target: 0.9 }).quantity // => 2
 */
export function proposeOrder(question: OrderQuestion): OrderProposalOutcome {
  const { demand, onHand, onOrder, measure, target } = question;
  for (const [name, value] of Object.entries({ onHand, onOrder })) {
    if (!Number.isInteger(value) || value < 0)
      throw new RangeError(`${name} must be whole, 0 or more, got ${value}`);
  }
  const level = smallestLevel(demand, measure, target);
  if (level.kind === 'unattainable') return level;
  const position = onHand + onOrder;
  return {
    kind: 'proposed',
    quantity: Math.max(0, level.level - position),
    position,
    level,
    serviceWithout: serviceOfLevel(demand, position, measure),
    shortWithout: expectedShort(demand, position),
  };
}
