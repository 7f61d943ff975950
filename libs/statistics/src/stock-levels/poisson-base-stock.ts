import { requireFinite, requireProbability } from '../distributions/checked-arguments.js';
import { poissonCdf, poissonQuantile } from '../distributions/poisson.js';
import { expectedBackorders } from './expected-backorders.js';
import type { ServiceMeasure } from './service-measure.js';

export interface BaseStock {
  readonly kind: 'found';
  readonly measure: ServiceMeasure;
  /** Base stock level S: on hand plus on order, kept constant. */
  readonly level: number;
  /** The measure at that level, at least the target. */
  readonly service: number;
  /** Mean number of demands waiting at the level. */
  readonly expectedBackorders: number;
}

export type BaseStockOutcome =
  | BaseStock
  /** No finite stock is sure to cover unlimited demand. */
  | { readonly kind: 'unattainable'; readonly target: number };

/**
 * Smallest base stock of one-for-one replenishment that reaches a service target under Poisson demand.
 *
 * @param leadTimeDemand  mean demand during the time to replenish, 0 or more
 * @param target  service wanted, between 0 and 1
 * @param measure  'cycleService' P(D ≤ S), or 'readyRate' P(D ≤ S − 1), one piece more
 * @returns level, service reached and expected backorders; level 0 for a target of 0; `unattainable` for a target of 1
 *   with any demand. Without demand cycle service needs nothing and a ready rate above 0 needs one piece.
 * @throws RangeError on a negative or non-finite mean, or a target outside [0, 1]
 * @source Snyder & Shen (2019), Fundamentals of Supply Chain Theory, 2nd ed., ch. 4; Sherbrooke (2004), Optimal Inventory
 *   Modeling of Systems, ch. 2
 * @oracle test/oracles/statistics-regression/generate.R (qpois)
 * @example poissonBaseStock(0, 0.95, 'readyRate') // => { kind: 'found', level: 1, service: 1, expectedBackorders: 0 }
 */
export function poissonBaseStock(
  leadTimeDemand: number,
  target: number,
  measure: ServiceMeasure,
): BaseStockOutcome {
  requireFinite('leadTimeDemand', leadTimeDemand);
  if (leadTimeDemand < 0) throw new RangeError(`leadTimeDemand must be 0 or more, got ${leadTimeDemand}`);
  requireProbability('target', target);
  if (target === 1 && leadTimeDemand > 0) return { kind: 'unattainable', target };
  const extra = measure === 'readyRate' ? 1 : 0;
  const level = target === 0 ? 0 : poissonQuantile(target, leadTimeDemand) + extra;
  return {
    kind: 'found',
    measure,
    level,
    service: poissonCdf(level - extra, leadTimeDemand),
    expectedBackorders: expectedBackorders(level, leadTimeDemand),
  };
}
