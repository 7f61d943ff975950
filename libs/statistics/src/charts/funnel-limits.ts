import { binomialCdf, binomialQuantile } from '../distributions/binomial.js';
import { requireCount, requireProbability } from '../distributions/checked-arguments.js';
import { requireLevel } from '../inference/confidence-level.js';
import type { Interval } from '../inference/interval.js';

/**
 * Limit of a funnel plot at one tail probability: the binomial quantile r, moved back by the share of its own step that
 * goes beyond the probability, (r − (F(r) − p) / (F(r) − F(r − 1))) / n; not below 0.
 */
function funnelLimit(target: number, trials: number, probability: number): number {
  const r = binomialQuantile(probability, trials, target);
  const reached = binomialCdf(r, trials, target);
  const beyond = (reached - probability) / (reached - binomialCdf(r - 1, trials, target));
  return Math.max(0, (r - beyond) / trials);
}

/**
 * Limits of a funnel plot for proportions: where shares of n trials lie with the given coverage if the chance is the
 * target, by exact binomial quantiles with Spiegelhalter's interpolation, which takes the steps out of the lines.
 *
 * @param target  chance to compare with, between 0 and 1
 * @param trials  1 or more
 * @param coverage  probability between the limits, half of the rest on each side; usual 0.95 and 0.998
 * @returns limits as shares; at a target of 0 or 1 both limits are the target, since nothing else can happen
 * @throws RangeError on a target outside [0, 1], trials that are not whole or 0, a coverage outside (0, 1)
 * @source Spiegelhalter (2005), Statistics in Medicine 24:1185–1202, appendix A.1.1
 * @oracle test/oracles/statistics-regression/generate.R
 * @example funnelLimits(0, 12, 0.95) // => { lower: 0, upper: 0 }
 */
export function funnelLimits(target: number, trials: number, coverage: number): Interval {
  requireProbability('target', target);
  requireCount('trials', trials);
  if (trials === 0) throw new RangeError('trials must be 1 or more');
  requireLevel('coverage', coverage);
  if (target === 0 || target === 1) return { lower: target, upper: target };
  return {
    lower: funnelLimit(target, trials, (1 - coverage) / 2),
    upper: funnelLimit(target, trials, (1 + coverage) / 2),
  };
}
