import { tailProbability } from '../inference/confidence-level.js';
import type { BinomialCount } from './binomial-count.js';
import { jeffreysInterval } from './jeffreys-interval.js';
import type { ProportionIntervalOutcome } from './proportion-interval.js';

/**
 * Modified Jeffreys interval: the plain one, except near the ends, where it covers too little. Without a success the
 * upper limit is 1 − (α/2)^(1/n), with one success the lower limit is 0; failures likewise, mirrored.
 * For a single trial, where both rules apply, the first one holds.
 *
 * @param count  successes out of trials
 * @param confidence  two-sided level 1 − α, strictly between 0 and 1; default 0.95
 * @returns limits within [0, 1]; `insufficientData` without a trial
 * @throws RangeError on counts that are not whole, negative or contradictory, or a level outside (0, 1)
 * @source Brown, Cai & DasGupta (2001), Statistical Science 16:101–133, sec. 4.1.2 and table A.1
 * @oracle the closed forms in the spec; elsewhere the plain Jeffreys interval
 * @example modifiedJeffreysInterval({ successes: 0, trials: 1 }) // => { method: 'modifiedJeffreys', lower: 0, upper: 0.975 }
 */
export function modifiedJeffreysInterval(count: BinomialCount, confidence = 0.95): ProportionIntervalOutcome {
  const plain = jeffreysInterval(count, confidence);
  if (plain.kind !== 'estimated') return plain;
  const { successes, trials } = count;
  const failures = trials - successes;
  const extreme = -Math.expm1(Math.log(tailProbability(confidence)) / trials);
  return {
    ...plain,
    method: 'modifiedJeffreys',
    lower: failures === 0 ? 1 - extreme : successes === 1 ? 0 : plain.lower,
    upper: successes === 0 ? extreme : failures === 1 ? 1 : plain.upper,
  };
}
