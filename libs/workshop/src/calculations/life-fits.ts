import {
  failureProbability,
  fitLifeDistribution,
  lifeMoments,
  lifeQuantile,
  lifeScale,
  profileQuantileLimits,
  profileShapeLimits,
  weibayes,
  weibullShape,
  type LifeFamily,
  type LifeFit,
} from '@endfloat/statistics';
import type { UnitCode } from '@endfloat/metrology';
import { invalidInput } from '../errors/domain.errors.js';
import { calculated, type CalculationMethod } from './calculation-method.js';
import { refusing, requireColumns } from './refusing.js';
import { livesOf, type LivesCommand } from './survival-curves.js';

export const lifeFits: CalculationMethod = {
  id: 'life-fits',
  title: 'Weibull, lognormal or exponential distribution of lives',
  name: 'maximumLikelihood',
  variant:
    'exact, right-, left- and interval-censored lives with late entry; Weibull F(t) = 1 - exp(-(t/scale)^shape); Wald limits symmetric on the logarithm (failure shares: on the standardised deviate); profile limits by the likelihood ratio',
  source: 'Meeker & Escobar (1998), Statistical Methods for Reliability Data, ch. 7, 8 and 11.6',
  caseIds: [
    'nist-weibull-54-hours',
    'nist-weibull-55-hours',
    'generator-fans-weibull',
    'ball-bearings-weibull',
    'heat-exchanger-weibull',
    'locomotive-controls',
  ],
};

/** Most rows for which profile limits are searched: each takes about 150 passes over the rows. */
export const mostRowsForProfile = 5000;

export interface LifeFitCommand extends LivesCommand {
  readonly family: LifeFamily;
  readonly level?: number | undefined;
  readonly failedShares?: readonly number[] | undefined;
  readonly atAges?: readonly number[] | undefined;
  readonly withProfileLimits?: boolean | undefined;
}

/** Fit of a life distribution with its scale, shape, B-lives and failure shares. */
export function calculateLifeFit(command: LifeFitCommand) {
  const { unit = '1', family, level = 0.95, lower, withProfileLimits = false } = command;
  if (withProfileLimits && lower.length > mostRowsForProfile) {
    throw invalidInput(
      '/withProfileLimits',
      'rows',
      `Profile limits are searched for up to ${mostRowsForProfile} rows; group like rows by weights, or take the Wald limits.`,
    );
  }
  const lives = livesOf(command);
  const fit = refusing(['lower', 'upper', 'entryAges', 'weights'], () => fitLifeDistribution(family, lives));
  const result =
    fit.kind === 'estimated'
      ? { ...withoutInternals(fit), ...estimatesOf(fit, { ...command, lives, level, withProfileLimits }) }
      : fit;
  return calculated(lifeFits, lower.length, { unit, result });
}

function withoutInternals({ kind, family, mu, sigma, logLikelihood, akaike, units, events }: LifeFit) {
  return { kind, family, mu, sigma, logLikelihood, akaike, units, events };
}

interface Asked extends LifeFitCommand {
  readonly lives: ReturnType<typeof livesOf>;
  readonly level: number;
  readonly withProfileLimits: boolean;
}

function estimatesOf(
  fit: LifeFit,
  { lives, level, withProfileLimits, failedShares = [0.1], atAges = [] }: Asked,
) {
  const hasShape = fit.family !== 'lognormal';
  const isProfiled = withProfileLimits && fit.family !== 'exponential';
  return {
    ...lifeMoments(fit),
    scale: lifeScale(fit, level),
    shape: hasShape
      ? {
          ...weibullShape(fit, level),
          profileLimits:
            isProfiled && fit.family === 'weibull' ? profileShapeLimits(lives, fit, level) : null,
        }
      : null,
    lives: failedShares.map((failedShare) => ({
      failedShare,
      ...lifeQuantile(fit, failedShare, level),
      profileLimits: isProfiled ? profileQuantileLimits(lives, fit, failedShare, level) : null,
    })),
    failedBy: atAges.map((age) => ({ age, ...failureProbability(fit, age, level) })),
  };
}

export const weibayesEstimates: CalculationMethod = {
  id: 'weibayes-estimates',
  title: 'Scale of a Weibull distribution whose shape is known from before',
  name: 'weibayes',
  variant:
    'right-censored lives, shape taken as known; chi-square limits with 2r + 2 degrees of freedom below and 2r above; without an event a one-sided lower limit only',
  source: 'Nelson (1985), Journal of Quality Technology 17:140-146',
  caseIds: ['generator-fans-exponential'],
};

export interface WeibayesCommand {
  readonly unit?: UnitCode | undefined;
  readonly ages: readonly number[];
  readonly events: readonly number[];
  readonly weights?: readonly number[] | undefined;
  readonly shape: number;
  readonly level?: number | undefined;
}

/** Characteristic life for a given shape, even without a failure. */
export function calculateWeibayes({
  unit = '1',
  ages,
  events,
  weights,
  shape,
  level = 0.95,
}: WeibayesCommand) {
  requireColumns({ ages, events, weights });
  const result = refusing(['ages', 'events', 'weights', 'shape', 'level'], () =>
    weibayes({ ages, events, weights }, shape, level),
  );
  return calculated(weibayesEstimates, ages.length, { unit, result });
}
