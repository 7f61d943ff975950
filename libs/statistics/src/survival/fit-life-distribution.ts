import {
  insufficientData,
  type Convergence,
  type InsufficientData,
  type NotConverged,
} from '../descriptive/outcomes.js';
import { maximiseByNewton } from '../optimise/maximise-by-newton.js';
import { requireLifeSample, type LifeSample } from './life-sample.js';
import { inBothParameters, inLocation, toLogLives, type LogLives } from './log-lives.js';
import { smallestExtremeValue, standardNormal, type StandardFamily } from './standard-family.js';

export const lifeFamilies = ['weibull', 'lognormal', 'exponential'] as const;
export type LifeFamily = (typeof lifeFamilies)[number];

/** Covariance of (mu, ln sigma) by the observed information; zeros for sigma where the family fixes it. */
export interface LifeCovariance {
  readonly muMu: number;
  readonly muLogSigma: number;
  readonly logSigmaLogSigma: number;
}

/** A fitted life distribution: (ln life − mu) / sigma has the standard distribution of the family. */
export interface LifeFit {
  readonly kind: 'estimated';
  readonly family: LifeFamily;
  readonly mu: number;
  readonly sigma: number;
  readonly covariance: LifeCovariance;
  readonly logLikelihood: number;
  /** Akaike's criterion, 2 · parameters − 2 · log-likelihood; compares families on the same data. */
  readonly akaike: number;
  readonly units: number;
  readonly events: number;
  readonly convergence: Convergence;
}

/**
 * Why a likelihood has no maximum: `oneLifeFitsAll` – one and the same life meets every row, so the shape grows without
 * end; `nothingOutlived` – no unit is known to have lived on after its entry, so the scale shrinks without end; `flat` –
 * the search ended where the data no longer tell lives apart.
 */
export const noMaximumReasons = ['oneLifeFitsAll', 'nothingOutlived', 'flat'] as const;

export interface NoMaximum {
  readonly kind: 'noMaximum';
  readonly reason: (typeof noMaximumReasons)[number];
  readonly events: number;
}

/** Exact lives of 0, which no continuous life distribution allows; give them as left-censored at the first age seen. */
export interface ZeroLives {
  readonly kind: 'zeroLives';
  readonly count: number;
}

export type LifeFitOutcome = LifeFit | NoMaximum | ZeroLives | InsufficientData | NotConverged;

/** Standard distribution of a family; the exponential one is that of Weibull with sigma 1. */
export const standardFamilyOf = (family: LifeFamily): StandardFamily =>
  family === 'lognormal' ? standardNormal : smallestExtremeValue;

/**
 * Maximum likelihood of a life distribution from exact, right-, left- and interval-censored lives with late entry, by
 * Newton's method in (mu, ln sigma). The exponential family is Weibull with sigma = 1.
 *
 * @param family  `weibull`, `lognormal` or `exponential`
 * @param sample  lives as intervals; ages in the caller's unit
 * @returns the fit; `insufficientData` with fewer than 2 events (exponential: 1), an event being a life with a finite
 *   upper end; `zeroLives`; `noMaximum`, for instance when all events are equal and none survived them; `notConverged`
 * @throws RangeError on unlike lengths, numbers below 0, a lower end that is not finite, upper below lower, entry at or
 *   above the upper end
 * @complexity O(n) a step, about 10 steps; O(n) memory
 * @source Meeker & Escobar (1998), Statistical Methods for Reliability Data, ch. 7, 8, 11.6
 * @oracle test/oracles/statistics-survival/generate.R
 * @example fitLifeDistribution('exponential', { lower: [1, 3], upper: [1, Infinity] }).kind // => 'estimated'
 */
export function fitLifeDistribution(family: LifeFamily, sample: LifeSample): LifeFitOutcome {
  requireLifeSample(sample);
  const lives = toLogLives(sample);
  const parameters = family === 'exponential' ? 1 : 2;
  const obstacle = obstacleOf(lives, parameters);
  if (obstacle !== null) return obstacle;
  const start = Math.log(lives.roughMean);
  const standard = standardFamilyOf(family);
  const found =
    parameters === 1
      ? maximiseByNewton(inLocation(lives, standard, 0), [start])
      : maximiseByNewton(inBothParameters(lives, standard), [start, 0]);
  if (found.kind !== 'found') return found;
  const { mu, logSigma, covariance } = parametersOf(found.at, found.inverseCurvature);
  // Standard errors beyond a factor of e¹⁰ in sigma or a thousand sigmas in mu come only from a vanishing slope.
  const flat = covariance.logSigmaLogSigma > 100 || covariance.muMu > 1e6 * Math.exp(2 * logSigma);
  if (flat) return { kind: 'noMaximum', reason: 'flat', events: lives.events };
  return {
    kind: 'estimated',
    family,
    mu,
    sigma: Math.exp(logSigma),
    covariance,
    logLikelihood: found.value,
    akaike: 2 * parameters - 2 * found.value,
    units: lives.units,
    events: lives.events,
    convergence: found.convergence,
  };
}

/** What can be seen before any search to stand in the way of a maximum. */
function obstacleOf(lives: LogLives, parameters: number): ZeroLives | NoMaximum | InsufficientData | null {
  const { zeroLives, events, outlived, oneLifeFitsAll } = lives;
  if (zeroLives > 0) return { kind: 'zeroLives', count: zeroLives };
  if (events < parameters) return insufficientData('events', parameters, events);
  if (!outlived) return { kind: 'noMaximum', reason: 'nothingOutlived', events };
  if (oneLifeFitsAll && parameters === 2) return { kind: 'noMaximum', reason: 'oneLifeFitsAll', events };
  return null;
}

/** The optimiser's answer by name; a family with one parameter has ln sigma = 0 without spread. */
function parametersOf(
  [mu = 0, logSigma = 0]: readonly number[],
  [[muMu = 0, muLogSigma = 0] = [], [, logSigmaLogSigma = 0] = []]: readonly (readonly number[])[],
): { mu: number; logSigma: number; covariance: LifeCovariance } {
  return { mu, logSigma, covariance: { muMu, muLogSigma, logSigmaLogSigma } };
}
