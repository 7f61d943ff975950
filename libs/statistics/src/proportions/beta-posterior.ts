import { betaQuantile } from '../distributions/beta.js';
import { requirePositive } from '../distributions/checked-arguments.js';
import { tailProbability } from '../inference/confidence-level.js';
import type { Interval } from '../inference/interval.js';
import { requireBinomialCount, type BinomialCount } from './binomial-count.js';

export interface BetaParameters {
  readonly alpha: number;
  readonly beta: number;
}

export interface BetaPosterior extends BetaParameters {
  readonly mean: number;
  /** Equal-tailed. */
  readonly interval: Interval;
}

/**
 * What a beta prior becomes after some trials. With a prior fitted to similar groups the mean lies between the group's
 * own share and the common mean (empirical Bayes); the interval then leaves out the doubt about the prior itself.
 *
 * @param prior  alpha, beta, both positive
 * @param count  successes out of trials of the group; no trial leaves the prior as it is
 * @param confidence  probability inside the interval, strictly between 0 and 1; default 0.95
 * @returns Beta(alpha + successes, beta + failures), its mean and equal-tailed interval
 * @throws RangeError on a parameter that is not positive, contradictory counts, or a level outside (0, 1)
 * @source Gelman et al. (2013), Bayesian Data Analysis, 3rd ed., sec. 2.4 and 5.1
 * @oracle test/oracles/statistics-regression/generate.R
 * @example betaPosterior({ alpha: 1, beta: 1 }, { successes: 3, trials: 4 }) // => { alpha: 4, beta: 2, mean: 0.6666666666666666 }
 */
export function betaPosterior(prior: BetaParameters, count: BinomialCount, confidence = 0.95): BetaPosterior {
  requirePositive('alpha', prior.alpha);
  requirePositive('beta', prior.beta);
  requireBinomialCount(count);
  const tail = tailProbability(confidence);
  const alpha = prior.alpha + count.successes;
  const beta = prior.beta + count.trials - count.successes;
  return {
    alpha,
    beta,
    mean: alpha / (alpha + beta),
    interval: { lower: betaQuantile(tail, alpha, beta), upper: 1 - betaQuantile(tail, beta, alpha) },
  };
}
