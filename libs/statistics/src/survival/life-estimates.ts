import { requireLevel } from '../descriptive/checked-values.js';
import { logGamma } from '../distributions/special-functions.js';
import { standardFamilyOf, type LifeFit } from './fit-life-distribution.js';
import { multiplierOf } from './curve-limits.js';

/** An estimate with two-sided limits of the Wald kind. */
export interface WaldEstimate {
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
  /** Standard error on the scale on which the limits are symmetric; the function that answers says which. */
  readonly standardError: number;
  readonly level: number;
}

/** exp of an estimate and its symmetric limits. */
function onLogScale(log: number, standardError: number, level: number): WaldEstimate {
  const reach = multiplierOf(level) * standardError;
  return {
    estimate: Math.exp(log),
    lower: Math.exp(log - reach),
    upper: Math.exp(log + reach),
    standardError,
    level,
  };
}

/**
 * Shape of a fitted Weibull distribution, 1 / sigma, with limits symmetric on ln shape.
 *
 * @param fit  answer of fitLifeDistribution for `weibull` (shape) or `exponential` (1, without spread)
 * @param level  two-sided, default 0.95
 * @returns shape, limits, standard error of ln shape
 * @throws RangeError for a lognormal fit, which has no shape, or a level outside (0, 1)
 * @source Meeker & Escobar (1998), 8.4
 * @oracle test/oracles/statistics-survival/generate.R
 * @example weibullShape({ family: 'weibull', mu: 0, sigma: 0.5, covariance: { muMu: 1, muLogSigma: 0, logSigmaLogSigma: 0 } }).estimate // => 2
 */
export function weibullShape(
  fit: Pick<LifeFit, 'family' | 'mu' | 'sigma' | 'covariance'>,
  level = 0.95,
): WaldEstimate {
  requireLevel(level);
  if (fit.family === 'lognormal') throw new RangeError('a lognormal distribution has no Weibull shape');
  return onLogScale(-Math.log(fit.sigma), Math.sqrt(fit.covariance.logSigmaLogSigma), level);
}

/**
 * Scale of a fitted life distribution, exp(mu), with limits symmetric on mu: the characteristic life of a Weibull
 * distribution, the mean of an exponential, the median of a lognormal.
 *
 * @param fit  answer of fitLifeDistribution
 * @param level  two-sided, default 0.95
 * @returns scale, limits, standard error of mu
 * @throws RangeError on a level outside (0, 1)
 * @source Meeker & Escobar (1998), 8.4
 * @oracle test/oracles/statistics-survival/generate.R
 * @example lifeScale({ mu: 0, covariance: { muMu: 1, muLogSigma: 0, logSigmaLogSigma: 0 } }).estimate // => 1
 */
export function lifeScale(fit: Pick<LifeFit, 'mu' | 'covariance'>, level = 0.95): WaldEstimate {
  requireLevel(level);
  return onLogScale(fit.mu, Math.sqrt(fit.covariance.muMu), level);
}

/**
 * Life by which the given share has failed (B-life; 0.1 for B10), with limits symmetric on its logarithm (delta method).
 *
 * @param fit  answer of fitLifeDistribution
 * @param probability  share failed, strictly between 0 and 1
 * @param level  two-sided, default 0.95
 * @returns life, limits, standard error of ln life
 * @throws RangeError on a probability or level outside (0, 1)
 * @source Meeker & Escobar (1998), 8.4.3
 * @oracle test/oracles/statistics-survival/generate.R
 * @example lifeQuantile({ family: 'lognormal', mu: 0, sigma: 2, covariance: { muMu: 0, muLogSigma: 0, logSigmaLogSigma: 0 } }, 0.5).estimate // => 1
 */
export function lifeQuantile(
  fit: Pick<LifeFit, 'family' | 'mu' | 'sigma' | 'covariance'>,
  probability: number,
  level = 0.95,
): WaldEstimate {
  requireLevel(level);
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`probability must lie strictly between 0 and 1, got ${probability}`);
  }
  const gradient = fit.sigma * standardFamilyOf(fit.family).quantile(probability);
  return onLogScale(fit.mu + gradient, standardErrorAlong(fit, gradient), level);
}

/**
 * Share failed by an age, with limits symmetric on the standardised age z = (ln age − mu) / sigma, so they stay in (0, 1).
 *
 * @param fit  answer of fitLifeDistribution
 * @param age  positive, finite
 * @param level  two-sided, default 0.95
 * @returns share failed, limits, standard error of z
 * @throws RangeError on an age that is not positive or a level outside (0, 1)
 * @source Meeker & Escobar (1998), 8.4.3
 * @oracle test/oracles/statistics-survival/generate.R
 * @example failureProbability({ family: 'lognormal', mu: 0, sigma: 2, covariance: { muMu: 0, muLogSigma: 0, logSigmaLogSigma: 0 } }, 1).estimate // => 0.5
 */
export function failureProbability(
  fit: Pick<LifeFit, 'family' | 'mu' | 'sigma' | 'covariance'>,
  age: number,
  level = 0.95,
): WaldEstimate {
  requireLevel(level);
  if (!(age > 0) || age === Infinity) throw new RangeError(`age must be positive and finite, got ${age}`);
  const { cdf } = standardFamilyOf(fit.family);
  const z = (Math.log(age) - fit.mu) / fit.sigma;
  const standardError = standardErrorAlong(fit, fit.sigma * z) / fit.sigma;
  const reach = multiplierOf(level) * standardError;
  return { estimate: cdf(z), lower: cdf(z - reach), upper: cdf(z + reach), standardError, level };
}

/** Standard error of mu + sigma q at fixed q; the gradient in ln sigma is sigma q. */
function standardErrorAlong({ covariance }: Pick<LifeFit, 'covariance'>, gradient: number): number {
  const { muMu, muLogSigma, logSigmaLogSigma } = covariance;
  return Math.sqrt(Math.max(0, muMu + 2 * gradient * muLogSigma + gradient * gradient * logSigmaLogSigma));
}

/**
 * Mean and standard deviation of a fitted life distribution.
 *
 * @param fit  answer of fitLifeDistribution
 * @returns both in the unit of age; Infinity where they exceed the range of numbers
 * @throws RangeError on a sigma that is not above −½, which no fit has
 * @source Weibull: scale Γ(1 + sigma); NIST/SEMATECH e-Handbook 1.3.6.6.8 and 1.3.6.6.9
 * @oracle test/oracles/statistics-survival/generate.R
 * @example lifeMoments({ family: 'exponential', mu: 0, sigma: 1 }) // => { mean: 1, standardDeviation: 1 }
 */
export function lifeMoments(fit: Pick<LifeFit, 'family' | 'mu' | 'sigma'>): {
  readonly mean: number;
  readonly standardDeviation: number;
} {
  const { mu, sigma } = fit;
  const [logFirst, logSecond] =
    fit.family === 'lognormal'
      ? [sigma ** 2 / 2, 2 * sigma ** 2]
      : [logGamma(1 + sigma), logGamma(1 + 2 * sigma)];
  const mean = Math.exp(mu + logFirst);
  return { mean, standardDeviation: mean * Math.sqrt(Math.expm1(logSecond - 2 * logFirst)) };
}
