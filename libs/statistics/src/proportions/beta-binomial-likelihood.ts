import type { SecondOrder } from '../optimise/maximise-by-newton.js';
import type { BinomialCount } from './binomial-count.js';

/** Whole numbers i from `from` to below `to`: `count` groups have more than i. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

/** For each i, how many groups have more than i successes, more than i failures, more than i trials; in stretches. */
export interface Exceedances {
  readonly successes: readonly Stretch[];
  readonly failures: readonly Stretch[];
  readonly trials: readonly Stretch[];
}

/** One stretch between neighbouring counts, so that memory grows with the groups and not with their trials. */
function exceeding(counts: readonly number[]): Stretch[] {
  const sorted = Float64Array.from(counts).sort();
  const stretches: Stretch[] = [];
  let from = 0;
  sorted.forEach((to, place) => {
    if (to > from) stretches.push({ from, to, count: sorted.length - place });
    from = to;
  });
  return stretches;
}

/** Exceedances of groups whose counts have been checked. */
export function exceedancesOf(groups: readonly BinomialCount[]): Exceedances {
  return {
    successes: exceeding(groups.map(({ successes }) => successes)),
    failures: exceeding(groups.map(({ successes, trials }) => trials - successes)),
    trials: exceeding(groups.map(({ trials }) => trials)),
  };
}

/** First and second derivatives of a log-likelihood in mean and spread. */
interface Derivatives {
  readonly value: number;
  readonly mean: number;
  readonly spread: number;
  readonly meanMean: number;
  readonly meanSpread: number;
  readonly spreadSpread: number;
}

/**
 * Log-likelihood (without binomial coefficients) in the mean μ and the spread θ = 1 / (α + β), and its derivatives.
 * Griffiths' form: sums of ln(μ + iθ), ln(1 − μ + iθ) and −ln(1 + iθ), which stays exact as θ goes to 0, where the
 * difference of two log-gamma functions loses all its digits.
 */
export function betaBinomialDerivatives(counts: Exceedances, mean: number, spread: number): Derivatives {
  const sum = { value: 0, mean: 0, spread: 0, meanMean: 0, meanSpread: 0, spreadSpread: 0 };
  const add = (stretches: readonly Stretch[], start: number, meanSign: number, sign: number): void => {
    for (const { from, to, count } of stretches) {
      for (let i = from; i < to; i += 1) {
        const at = start + i * spread;
        const first = (sign * count) / at;
        const second = -first / at;
        sum.value += sign * count * Math.log(at);
        sum.mean += meanSign * first;
        sum.spread += i * first;
        sum.meanMean += meanSign * meanSign * second;
        sum.meanSpread += meanSign * i * second;
        sum.spreadSpread += i * i * second;
      }
    }
  };
  add(counts.successes, mean, 1, 1);
  add(counts.failures, 1 - mean, -1, 1);
  add(counts.trials, 1, 0, -1);
  return sum;
}

/** The same in logit μ and ln θ, for an unbounded search. */
export function betaBinomialInLogits(counts: Exceedances, at: readonly number[]): SecondOrder {
  const [logit, logSpread] = at as [number, number];
  const mean = 1 / (1 + Math.exp(-logit));
  const spread = Math.exp(logSpread);
  const d = betaBinomialDerivatives(counts, mean, spread);
  const slope = mean * (1 - mean);
  const cross = d.meanSpread * slope * spread;
  return {
    value: d.value,
    gradient: [d.mean * slope, d.spread * spread],
    hessian: [
      [d.meanMean * slope * slope + d.mean * slope * (1 - 2 * mean), cross],
      [cross, d.spreadSpread * spread * spread + d.spread * spread],
    ],
  };
}
