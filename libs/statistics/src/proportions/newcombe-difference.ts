import type { InsufficientData } from '../descriptive/outcomes.js';
import type { Interval } from '../inference/interval.js';
import type { BinomialCount } from './binomial-count.js';
import { wilsonInterval } from './wilson-interval.js';

export interface ProportionDifference extends Interval {
  readonly kind: 'estimated';
  /** First proportion minus second. */
  readonly difference: number;
  readonly confidence: number;
}

/**
 * Interval for the difference of two independent proportions from their Wilson limits, squared and added
 * (Newcombe's method 10, no continuity correction).
 *
 * @param first  successes out of trials
 * @param second  successes out of trials, of other units than the first
 * @param confidence  two-sided level, strictly between 0 and 1; default 0.95
 * @returns first − second with limits within [−1, 1]; `insufficientData` when either has no trial
 * @throws RangeError on counts that are not whole, negative or contradictory, or a level outside (0, 1)
 * @source Newcombe (1998), Stat. Med. 17:873–890, method 10
 * @oracle test/oracles/statistics-regression/generate.R; Newcombe (1998) table II
 * @example newcombeDifference({ successes: 0, trials: 9 }, { successes: 0, trials: 9 }) // => { kind: 'estimated', difference: 0 }
 */
export function newcombeDifference(
  first: BinomialCount,
  second: BinomialCount,
  confidence = 0.95,
): ProportionDifference | InsufficientData {
  const one = wilsonInterval(first, confidence);
  const two = wilsonInterval(second, confidence);
  if (one.kind !== 'estimated') return one;
  if (two.kind !== 'estimated') return two;
  const difference = one.proportion - two.proportion;
  return {
    kind: 'estimated',
    difference,
    confidence,
    lower: difference - Math.hypot(one.proportion - one.lower, two.upper - two.proportion),
    upper: difference + Math.hypot(one.upper - one.proportion, two.proportion - two.lower),
  };
}
