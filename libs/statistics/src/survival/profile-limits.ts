import { requireLevel } from '../descriptive/checked-values.js';
import { chiSquareQuantile } from '../distributions/chi-square.js';
import { findRoot } from '../optimise/find-root.js';
import { maximiseByNewton, type SecondOrder } from '../optimise/maximise-by-newton.js';
import type { Limits } from './curve-limits.js';
import { standardFamilyOf, type LifeFit } from './fit-life-distribution.js';
import { lifeQuantile } from './life-estimates.js';
import { requireLifeSample, type LifeSample } from './life-sample.js';
import { inLocation, likelihoodOf, toLogLives, type LogLives } from './log-lives.js';
import type { StandardFamily } from './standard-family.js';

/**
 * Profile-likelihood limits of a Weibull shape: all shapes whose best log-likelihood is within ½ χ²(level; 1) of the
 * maximum. Better than Wald limits with few events.
 *
 * @param sample  the lives the fit was made from
 * @param fit  answer of fitLifeDistribution('weibull', sample)
 * @param level  two-sided, default 0.95
 * @returns limits; null on a side where the likelihood never falls far enough
 * @throws RangeError for a fit that is not Weibull, a level outside (0, 1), or a sample that fitLifeDistribution refuses
 * @complexity O(n) for each of about 150 likelihoods
 * @source Meeker & Escobar (1998), 8.3
 * @oracle test/oracles/statistics-survival/generate.R
 * @example profileShapeLimits({ lower: [], upper: [] }, { family: 'weibull', mu: 0, sigma: 1, logLikelihood: 0 }) // => { lower: null, upper: null }
 */
export function profileShapeLimits(
  sample: LifeSample,
  fit: Pick<LifeFit, 'family' | 'mu' | 'sigma' | 'logLikelihood'>,
  level = 0.95,
): Limits {
  requireLifeSample(sample);
  if (fit.family !== 'weibull') throw new RangeError(`a ${fit.family} fit has no shape to give limits of`);
  const lives = toLogLives(sample);
  const family = standardFamilyOf(fit.family);
  const best = followed([fit.mu], (logSigma, start) => maximised(inLocation(lives, family, logSigma), start));
  const { lower, upper } = likelihoodLimits(best, Math.log(fit.sigma), 0.3, fit.logLikelihood, level);
  return { lower: upper === null ? null : Math.exp(-upper), upper: lower === null ? null : Math.exp(-lower) };
}

/**
 * Profile-likelihood limits of the life by which a share has failed (B-life).
 *
 * @param sample  the lives the fit was made from
 * @param fit  answer of fitLifeDistribution for `weibull` or `lognormal` and the sample
 * @param probability  share failed, strictly between 0 and 1
 * @param level  two-sided, default 0.95
 * @returns limits; null on a side where the likelihood never falls far enough
 * @throws RangeError for an exponential fit, a probability or level outside (0, 1), or a sample that is refused
 * @complexity O(n) for each of about 150 likelihoods
 * @source Meeker & Escobar (1998), 8.3.3
 * @oracle test/oracles/statistics-survival/generate.R
 * @example profileQuantileLimits({ lower: [], upper: [] }, { family: 'weibull', mu: 0, sigma: 1, covariance: { muMu: 1, muLogSigma: 0, logSigmaLogSigma: 1 }, logLikelihood: 0 }, 0.1) // => { lower: null, upper: null }
 */
export function profileQuantileLimits(
  sample: LifeSample,
  fit: Pick<LifeFit, 'family' | 'mu' | 'sigma' | 'covariance' | 'logLikelihood'>,
  probability: number,
  level = 0.95,
): Limits {
  requireLifeSample(sample);
  if (fit.family === 'exponential') throw new RangeError('an exponential fit has a single parameter');
  const lives = toLogLives(sample);
  const family = standardFamilyOf(fit.family);
  const wald = lifeQuantile(fit, probability, level);
  const q = family.quantile(probability);
  const best = followed([Math.log(fit.sigma)], (logLife, start) =>
    maximised(alongQuantile(lives, family, logLife, q), start),
  );
  const reach = Math.max(0.01, wald.standardError);
  const { lower, upper } = likelihoodLimits(best, Math.log(wald.estimate), reach, fit.logLikelihood, level);
  return { lower: lower === null ? null : Math.exp(lower), upper: upper === null ? null : Math.exp(upper) };
}

interface Best {
  readonly value: number;
  readonly at: readonly number[];
}

const maximised = (f: (at: readonly number[]) => SecondOrder, start: readonly number[]): Best | null => {
  if (!Number.isFinite(f(start).value)) return null;
  const found = maximiseByNewton(f, start, { tolerance: 1e-16 });
  return found.kind === 'found' ? found : null;
};

/** The best value at each point of the profile, each search started where the last one ended. */
function followed(
  start: readonly number[],
  search: (point: number, start: readonly number[]) => Best | null,
): (point: number) => number | null {
  let from = start;
  return (point) => {
    const best = search(point, from) ?? search(point, start);
    if (best === null) return null;
    from = best.at;
    return best.value;
  };
}

/** Likelihood in ln sigma with the quantile mu + sigma q held at `logLife`, by the chain rule. */
function alongQuantile(
  lives: LogLives,
  family: StandardFamily,
  logLife: number,
  q: number,
): (at: readonly number[]) => SecondOrder {
  return ([logSigma = 0]) => {
    const reach = Math.exp(logSigma) * q;
    const sum = likelihoodOf(lives, family, logLife - reach, logSigma);
    return {
      value: sum.value,
      gradient: [sum.logSigma - reach * sum.mu],
      hessian: [
        [sum.logSigmaLogSigma - 2 * reach * sum.muLogSigma + reach * reach * sum.muMu - reach * sum.mu],
      ],
    };
  };
}

/** Both points at which the profile has fallen by ½ χ²(level; 1), sought by doubling steps and then closed in on. */
function likelihoodLimits(
  profile: (point: number) => number | null,
  centre: number,
  firstStep: number,
  maximum: number,
  level: number,
): Limits {
  requireLevel(level);
  const drop = chiSquareQuantile(level, 1) / 2;
  const side = (direction: 1 | -1): number | null => {
    let near = centre;
    for (let step = firstStep; step < 64; step *= 2) {
      const far = centre + direction * step;
      const value = profile(far);
      if (value === null) return null;
      if (value < maximum - drop) {
        // Inside the bracket the search has just succeeded on both sides; a failure there counts as fallen.
        const root = findRoot((point) => (profile(point) ?? -Infinity) - maximum + drop, near, far, {
          tolerance: 1e-9,
        });
        return root.kind === 'found' ? root.root : null;
      }
      near = far;
    }
    return null;
  };
  return { lower: side(-1), upper: side(1) };
}
