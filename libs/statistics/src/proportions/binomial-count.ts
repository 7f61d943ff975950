import { requireCount } from '../distributions/checked-arguments.js';

/** Successes out of trials. */
export interface BinomialCount {
  readonly successes: number;
  readonly trials: number;
}

/** Refuses counts that are not whole or negative, and more successes than trials. */
export function requireBinomialCount({ successes, trials }: BinomialCount): void {
  requireCount('successes', successes);
  requireCount('trials', trials);
  if (successes > trials) throw new RangeError(`${successes} successes out of ${trials} trials`);
}
