import { requirePositive } from '../distributions/checked-arguments.js';

/** Cost of one piece too many and of one too few, per period, in one currency. */
export interface NewsvendorCosts {
  readonly over: number;
  readonly under: number;
}

export interface NewsvendorLevel {
  readonly level: number;
  /** Expected cost of the period at that level. */
  readonly expectedCost: number;
  /** under / (under + over): the chance of covering the demand that pays. */
  readonly criticalRatio: number;
}

/** under / (under + over); refuses costs that are not positive. */
export function criticalRatio({ over, under }: NewsvendorCosts): number {
  requirePositive('over', over);
  requirePositive('under', under);
  return under / (under + over);
}
