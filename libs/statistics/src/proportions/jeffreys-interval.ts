import { insufficientData } from '../descriptive/outcomes.js';
import { betaQuantile } from '../distributions/beta.js';
import { tailProbability } from '../inference/confidence-level.js';
import { requireBinomialCount, type BinomialCount } from './binomial-count.js';
import type { ProportionIntervalOutcome } from './proportion-interval.js';

/**
 * Jeffreys interval for a proportion, plain form: equal-tailed quantiles of Beta(x + ½, n − x + ½), with 0 as lower limit
 * without a success and 1 as upper limit without a failure.
 *
 * @param count  successes out of trials
 * @param confidence  two-sided level, strictly between 0 and 1; default 0.95
 * @returns limits within [0, 1]; `insufficientData` without a trial
 * @throws RangeError on counts that are not whole, negative or contradictory, or a level outside (0, 1)
 * @source Brown, Cai & DasGupta (2001), Statistical Science 16:101–133, sec. 3.1.2 (their table A.1 lists the modified form)
 * @oracle test/oracles/statistics-regression/generate.R
 * @example jeffreysInterval({ successes: 0, trials: 20 }) // => { method: 'jeffreys', lower: 0, upper: 0.116638982905 }
 */
export function jeffreysInterval(count: BinomialCount, confidence = 0.95): ProportionIntervalOutcome {
  requireBinomialCount(count);
  const tail = tailProbability(confidence);
  const { successes, trials } = count;
  if (trials === 0) return insufficientData('trials', 1, 0);
  const failures = trials - successes;
  return {
    kind: 'estimated',
    method: 'jeffreys',
    proportion: successes / trials,
    confidence,
    lower: successes === 0 ? 0 : betaQuantile(tail, successes + 0.5, failures + 0.5),
    upper: failures === 0 ? 1 : 1 - betaQuantile(tail, failures + 0.5, successes + 0.5),
  };
}
