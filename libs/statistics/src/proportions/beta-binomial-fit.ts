import { insufficientData, type InsufficientData, type NotConverged } from '../descriptive/outcomes.js';
import { maximiseByNewton } from '../optimise/maximise-by-newton.js';
import { betaBinomialDerivatives, betaBinomialInLogits, exceedancesOf } from './beta-binomial-likelihood.js';
import { requireBinomialCount, type BinomialCount } from './binomial-count.js';

export interface BetaBinomialFit {
  readonly kind: 'estimated';
  readonly alpha: number;
  readonly beta: number;
  /** alpha / (alpha + beta). */
  readonly mean: number;
  /** 1 / (alpha + beta + 1): correlation of two trials of one group. */
  readonly correlation: number;
  /** Natural logarithm, without the binomial coefficients. */
  readonly logLikelihood: number;
}

export type BetaBinomialOutcome =
  | BetaBinomialFit
  /** The groups differ no more than chance: one common proportion fits best. */
  | { readonly kind: 'noExtraVariation'; readonly proportion: number }
  /** Every group is all successes or all failures: the best fit has no finite alpha and beta. */
  | { readonly kind: 'allOrNothing'; readonly proportion: number }
  /** Not a single success, or not a single failure, in any group. */
  | { readonly kind: 'allAlike'; readonly proportion: number }
  | InsufficientData
  | NotConverged;

/** ln θ tried as start of the search: θ from 1e-8 to 1e3. */
const STARTS = Array.from({ length: 45 }, (_, i) => Math.LN10 * (-8 + i / 4));

/**
 * Beta distribution of the success chances of similar groups, by maximum likelihood (beta-binomial model).
 *
 * @param groups  successes out of trials per group, any order; groups without a trial are skipped
 * @returns alpha and beta; the kinds above where the likelihood has no maximum inside; `insufficientData` with fewer
 *   than two groups of two or more trials, since single trials say nothing about the spread between groups. The
 *   likelihood is flat in alpha + beta for few groups: read the mean, not the pair.
 * @throws RangeError on counts that are not whole, negative or contradictory
 * @complexity O(groups + largest number of trials) time for each of some sixty evaluations; O(groups) memory
 * @source Griffiths (1973), Biometrics 29:637–648; Skellam (1948), J. R. Statist. Soc. B 10:257–261
 * @oracle test/oracles/statistics-regression/generate.R (batting averages of Efron & Morris 1975)
 * @example betaBinomialFit([{ successes: 0, trials: 5 }, { successes: 0, trials: 4 }]) // => { kind: 'allAlike', proportion: 0 }
 */
export function betaBinomialFit(groups: readonly BinomialCount[]): BetaBinomialOutcome {
  groups.forEach(requireBinomialCount);
  const informative = groups.filter(({ trials }) => trials >= 2).length;
  if (informative < 2) return insufficientData('groupsOfTwoOrMoreTrials', 2, informative);
  const successes = groups.reduce((sum, group) => sum + group.successes, 0);
  const trials = groups.reduce((sum, group) => sum + group.trials, 0);
  const proportion = successes / trials;
  if (successes === 0 || successes === trials) return { kind: 'allAlike', proportion };
  if (groups.every((group) => group.successes === 0 || group.successes === group.trials)) {
    return { kind: 'allOrNothing', proportion };
  }

  const counts = exceedancesOf(groups);
  const common = betaBinomialDerivatives(counts, proportion, 0);
  const start = STARTS.map((logSpread) => ({
    logSpread,
    value: betaBinomialDerivatives(counts, proportion, Math.exp(logSpread)).value,
  })).reduce((best, candidate) => (candidate.value > best.value ? candidate : best));
  // At spread 0 the derivative says whether any extra variation helps at all.
  if (common.spread <= 0 && start.value <= common.value) return { kind: 'noExtraVariation', proportion };

  const logit = Math.log(proportion / (1 - proportion));
  const found = maximiseByNewton((at) => betaBinomialInLogits(counts, at), [logit, start.logSpread], {
    tolerance: 1e-16,
  });
  if (found.kind !== 'found') return found;
  // One more full step: this close to the top it doubles the digits, where the value no longer shows a gain.
  const { gradient } = betaBinomialInLogits(counts, found.at);
  const [bestLogit, bestLogSpread] = found.at.map(
    (x, i) => x + gradient.reduce((sum, slope, j) => sum + found.inverseCurvature[i]![j]! * slope, 0),
  );
  const mean = 1 / (1 + Math.exp(-bestLogit!));
  const spread = Math.exp(bestLogSpread!);
  return {
    kind: 'estimated',
    alpha: mean / spread,
    beta: (1 - mean) / spread,
    mean,
    correlation: spread / (1 + spread),
    logLikelihood: found.value,
  };
}
