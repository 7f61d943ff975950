import { hatWeights } from '../grid/hat-weights.js';
import { logNormalShortfall } from '../grid/shortfall.js';
import { logNormalMean } from '../belief/wear-belief.js';
import { exp, log } from '../portable/elementary.js';
import type { LogNormalBelief } from '../tables/learned-tables.js';
import { greatestBySteps } from './greatest-at.js';

/** How far a learned population is expected from the judgement, standard deviations of logarithms; JUDGEMENT. */
export interface PopulationDoubt {
  readonly logMedian: number;
  readonly logLogSd: number;
}

/** Weights of a lognormal population over nodes. */
export const lognormalWeights = (nodes: Float64Array, population: LogNormalBelief): Float64Array =>
  hatWeights(nodes, logNormalShortfall(population.median, population.logSd, logNormalMean(population)));

const square = (x: number): number => x * x;

/**
 * Lognormal population from expected counts over nodes, near a prior.
 *
 * @param nodes   rising
 * @param counts  expected number of parts at each
 * @param prior   what it is expected to be
 * @param doubt   how far it may be from that
 * @returns mode of the posterior; the prior where there are no counts
 * @source M-step of an EM algorithm: Dempster, Laird & Rubin (1977), JRSS B 39:1-38
 */
export function fitLognormal(
  nodes: Float64Array,
  counts: Float64Array,
  prior: LogNormalBelief,
  doubt: PopulationDoubt,
): LogNormalBelief {
  if (!(counts.reduce((sum, count) => sum + count, 0) > 0) || prior.logSd === 0) return prior;
  const value = ([logMedian, logLogSd]: readonly number[]): number => {
    const weights = lognormalWeights(nodes, { median: exp(logMedian!), logSd: exp(logLogSd!) });
    let sum =
      -0.5 * square((logMedian! - log(prior.median)) / doubt.logMedian) -
      0.5 * square((logLogSd! - log(prior.logSd)) / doubt.logLogSd);
    for (let i = 0; i < counts.length; i += 1) {
      if (counts[i]! > 1e-9) sum += counts[i]! * log(weights[i]! + 1e-9);
    }
    return sum;
  };
  const [logMedian, logLogSd] = greatestBySteps(
    value,
    [log(prior.median), log(prior.logSd)],
    [4 * doubt.logMedian, 3 * doubt.logLogSd],
    4,
  );
  return { median: exp(logMedian!), logSd: exp(logLogSd!) };
}
