import { insufficientData } from '../descriptive/outcomes.js';
import { normalQuantile } from '../distributions/normal.js';
import { upperProbability } from '../inference/confidence-level.js';
import { requireBinomialCount, type BinomialCount } from './binomial-count.js';
import type { ProportionIntervalOutcome } from './proportion-interval.js';

/**
 * Wilson's score interval for a proportion, without continuity correction: all proportions that a score test at the
 * level does not refuse. Covers its level on average over proportions, a little less for some.
 *
 * @param count  successes out of trials
 * @param confidence  two-sided level, strictly between 0 and 1; default 0.95
 * @returns limits within [0, 1], exactly 0 without a success and exactly 1 without a failure; `insufficientData` without
 *   a trial
 * @throws RangeError on counts that are not whole, negative or contradictory, or a level outside (0, 1)
 * @source Wilson (1927), JASA 22:209–212; Newcombe (1998), Stat. Med. 17:857–872, method 3
 * @oracle test/oracles/statistics-regression/generate.R; Newcombe (1998) table I
 * @example wilsonInterval({ successes: 0, trials: 20 }) // => { kind: 'estimated', method: 'wilson', lower: 0, upper: 0.16112515805281 }
 */
export function wilsonInterval(count: BinomialCount, confidence = 0.95): ProportionIntervalOutcome {
  requireBinomialCount(count);
  const z = normalQuantile(upperProbability(confidence));
  const { successes, trials } = count;
  if (trials === 0) return insufficientData('trials', 1, 0);
  const proportion = successes / trials;
  const centre = successes + (z * z) / 2;
  const half = z * Math.sqrt((z * z) / 4 + successes * (1 - proportion));
  const weight = trials + z * z;
  return {
    kind: 'estimated',
    method: 'wilson',
    proportion,
    confidence,
    lower: successes === 0 ? 0 : (centre - half) / weight,
    upper: successes === trials ? 1 : (centre + half) / weight,
  };
}
