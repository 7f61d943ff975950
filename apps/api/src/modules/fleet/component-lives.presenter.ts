import type {
  CalculationMethodDto,
  ComponentLivesDto,
  ComponentLivesResponse,
  LivesComparisonResponse,
  SurvivorPointDto,
} from '@endfloat/contracts';
import type { ComponentLives, FittedLife, LivesComparison, SurvivorCurve } from '@endfloat/reliability';
import type { ComponentLivesView, LivesComparisonView } from '@endfloat/workshop';
import { presentOddity } from './recurrence.presenter.js';

const livesMethod: CalculationMethodDto = {
  name: 'livesOfParts',
  variant:
    'maximum likelihood with exact, right-, left- and interval-censored lives and late entry; limits of shape, scale and B-lives by Wald on the logarithm; curve by Kaplan-Meier with Greenwood limits on the log-log scale, or by Turnbull where lives lie between inspections; a life of 0 is one of at most 1 day or km',
  source:
    'Meeker & Escobar (1998), Statistical Methods for Reliability Data, ch. 7, 8, 11; Kaplan & Meier (1958), JASA 53; Turnbull (1976), JRSS B 38',
};

export function presentComponentLives(view: ComponentLivesView): ComponentLivesResponse {
  return {
    ends: view.ends,
    scale: view.scale,
    ...presentLives(view.lives),
    oddities: view.oddities.map(presentOddity),
    method: livesMethod,
  };
}

function presentLives(lives: ComponentLives): ComponentLivesDto {
  const { counts } = lives;
  return {
    counts: {
      parts: counts.parts,
      exact: counts.exact,
      betweenInspections: counts.betweenInspections,
      lastingStill: counts.lastingStill,
      lateEntries: counts.lateEntries,
      leftOut: counts.leftOut.map(({ why, parts }) => ({ why, parts })),
    },
    greatestAge: lives.greatestAge,
    curve: presentCurve(lives.curve),
    weibull: presentFit(lives.weibull),
    lognormal: presentFit(lives.lognormal),
    closer: lives.closer,
  };
}

function presentCurve(curve: SurvivorCurve): ComponentLivesDto['curve'] {
  switch (curve.kind) {
    case 'estimated':
      return {
        kind: 'estimated',
        method: curve.method,
        level: curve.level,
        points: curve.points.map(({ age, fromAge, surviving, standardError, lower, upper, atRisk }) => ({
          age,
          fromAge,
          surviving,
          standardError,
          lower,
          upper,
          atRisk,
        })),
      };
    case 'insufficientData':
      return { kind: 'insufficientData', of: 'parts', needed: curve.needed, got: curve.got };
    case 'notConverged':
      return { kind: 'notConverged', iterations: 0, reason: 'the steps of the search ran out' };
    case 'noEvents':
      return { kind: 'noEvents' };
    case 'intervalsWithLateEntry':
      return { kind: 'intervalsWithLateEntry' };
  }
}

function presentFit(fit: FittedLife): ComponentLivesDto['weibull'] {
  switch (fit.kind) {
    case 'estimated': {
      const { shape, scale } = fit;
      return {
        kind: 'estimated',
        shape: shape === null ? null : limitsOf(shape),
        scale: limitsOf(scale),
        mean: fit.mean,
        bLives: fit.bLives.map(({ share, ...limits }) => ({ share, ...limitsOf(limits) })),
        logLikelihood: fit.fit.logLikelihood,
        akaike: fit.fit.akaike,
        level: scale.level,
        events: fit.fit.events,
        isBeyondData: fit.isBeyondData,
      };
    }
    case 'insufficientData':
      return { kind: 'insufficientData', of: 'lives that ended', needed: fit.needed, got: fit.got };
    case 'noMaximum':
      return { kind: 'noMaximum', reason: fit.reason };
    case 'notConverged':
      return { kind: 'notConverged', iterations: fit.iterations, reason: fit.reason };
    case 'zeroLives':
      throw new RangeError('lives of 0 were not made intervals');
  }
}

const limitsOf = ({ estimate, lower, upper }: { estimate: number; lower: number; upper: number }) => ({
  estimate,
  lower,
  upper,
});

const comparisonMethod: CalculationMethodDto = {
  name: 'comparisonOfLives',
  variant:
    'log-rank test with hypergeometric variance, and likelihood ratio of two Weibull distributions against one common to both (2 degrees of freedom), which takes lives between inspections too; both two-sided',
  source: 'Mantel (1966), Cancer Chemother. Rep. 50:163-170; Meeker & Escobar (1998), 8.3 and appendix B',
};

export function presentLivesComparison(view: LivesComparisonView): LivesComparisonResponse {
  return {
    ends: view.ends,
    scale: view.scale,
    first: presentLives(view.first),
    second: presentLives(view.second),
    ...presentTests(view.comparison),
    method: comparisonMethod,
  };
}

function presentTests({
  logRank,
  likelihoodRatio,
}: LivesComparison): Pick<LivesComparisonResponse, 'logRank' | 'likelihoodRatio'> {
  return {
    logRank:
      logRank === null
        ? { kind: 'intervalsOnly' }
        : logRank.kind === 'tested'
          ? {
              kind: 'tested',
              observedFirst: logRank.observed[0],
              expectedFirst: logRank.expected[0],
              chiSquare: logRank.chiSquare,
              pValue: logRank.pValue,
            }
          : logRank,
    likelihoodRatio:
      likelihoodRatio.kind === 'tested'
        ? {
            kind: 'tested',
            chiSquare: likelihoodRatio.chiSquare,
            degreesOfFreedom: likelihoodRatio.degreesOfFreedom,
            pValue: likelihoodRatio.pValue,
            scaleRatio: likelihoodRatio.scaleRatio,
          }
        : likelihoodRatio.kind === 'insufficientData'
          ? {
              kind: 'insufficientData',
              of: 'lives that ended in each group',
              needed: likelihoodRatio.needed,
              got: likelihoodRatio.got,
            }
          : { kind: 'notEstimated', group: likelihoodRatio.group },
  };
}

/** Points of the curve, for a table. */
export const survivorPoints = ({ curve }: ComponentLivesDto): readonly SurvivorPointDto[] =>
  curve.kind === 'estimated' ? curve.points : [];
