import { insufficientData } from '../descriptive/outcomes.js';
import { betaQuantile } from '../distributions/beta.js';
import { tailProbability } from '../inference/confidence-level.js';
import { requireBinomialCount, type BinomialCount } from './binomial-count.js';
import type { ProportionIntervalOutcome } from './proportion-interval.js';

/**
 * Clopper–Pearson ("exact") interval for a proportion: never covers less than its level, usually more.
 *
 * @param count  successes out of trials
 * @param confidence  two-sided level, strictly between 0 and 1 (default 0.95); half of the rest on each side, also at 0 and n
 *   successes
 * @returns limits within [0, 1], 0 without a success and 1 without a failure; `insufficientData` without a trial
 * @throws RangeError on counts that are not whole, negative or contradictory, or a level outside (0, 1)
 * @source Clopper & Pearson (1934), Biometrika 26:404–413; beta form Brown, Cai & DasGupta (2001), Stat. Sci. 16:101–133
 * @oracle test/oracles/statistics-regression/generate.R (binom.test); Newcombe (1998) table I
 * @example clopperPearsonInterval({ successes: 0, trials: 1 }) // => { method: 'clopperPearson', lower: 0, upper: 0.975 }
 */
export function clopperPearsonInterval(count: BinomialCount, confidence = 0.95): ProportionIntervalOutcome {
  requireBinomialCount(count);
  const tail = tailProbability(confidence);
  const { successes, trials } = count;
  if (trials === 0) return insufficientData('trials', 1, 0);
  const failures = trials - successes;
  return {
    kind: 'estimated',
    method: 'clopperPearson',
    proportion: successes / trials,
    confidence,
    lower: successes === 0 ? 0 : betaQuantile(tail, successes, failures + 1),
    // The mirrored quantile keeps the upper tail as it is instead of taking 1 − tail.
    upper: failures === 0 ? 1 : 1 - betaQuantile(tail, failures, successes + 1),
  };
}
