import { requireFinite, requirePositive } from '../distributions/checked-arguments.js';

/** Cost of a replacement before failure and of one at failure, all consequences included, in one currency. */
export interface ReplacementCosts {
  readonly planned: number;
  readonly failure: number;
}

/** Refuses a planned cost that is not positive and a failure cost that is negative or not finite. */
export function requireReplacementCosts({ planned, failure }: ReplacementCosts): void {
  requirePositive('planned cost', planned);
  requireFinite('failure cost', failure);
  if (failure < 0) throw new RangeError(`failure cost must be 0 or more, got ${failure}`);
}

/** Why waiting for the failure is cheapest. */
export const runToFailureReasons = [
  'failureCostsNoMore',
  'hazardDoesNotRiseEnough',
  'optimumBeyondAnyLife',
] as const;
export type RunToFailureReason = (typeof runToFailureReasons)[number];

export interface OptimalAge {
  readonly kind: 'optimum';
  /** Age of planned replacement, in the unit of the life. */
  readonly age: number;
  /** Long-run cost per unit of age. */
  readonly costRate: number;
  readonly runToFailureCostRate: number;
  /** 1 − costRate / runToFailureCostRate. */
  readonly saving: number;
  /** Mean age at replacement, planned or not. */
  readonly meanCycle: number;
  /** Share of cycles that end in a failure. */
  readonly failureShare: number;
}

export interface RunToFailure {
  readonly kind: 'runToFailure';
  readonly reason: RunToFailureReason;
  readonly costRate: number;
  readonly meanLife: number;
}
