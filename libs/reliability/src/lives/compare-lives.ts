import {
  chiSquareSurvival,
  fitLifeDistribution,
  logRankTest,
  type LogRankOutcome,
} from '@endfloat/statistics';
import { censoredSample, knownLives, lifeSample, type KnownLife } from './life-rows.js';
import type { PartLife } from './part-life.js';

/** Weibull distributions of two groups against one common to both. */
export type LikelihoodRatio =
  | {
      readonly kind: 'tested';
      /** 2 x (sum of the log-likelihoods apart - that together) */
      readonly chiSquare: number;
      readonly degreesOfFreedom: 2;
      readonly pValue: number;
      /** characteristic life of the first over that of the second */
      readonly scaleRatio: number;
    }
  | { readonly kind: 'insufficientData'; readonly needed: number; readonly got: number }
  /** one of the three distributions cannot be had from the lives */
  | { readonly kind: 'notEstimated'; readonly group: 'first' | 'second' | 'both' };

export interface LivesComparison {
  readonly parts: readonly [number, number];
  /** null where any life is known to an interval only, which the test does not take */
  readonly logRank: LogRankOutcome | null;
  readonly likelihoodRatio: LikelihoodRatio;
}

/**
 * Whether the parts of one group last as long as those of another: the log-rank test, and a likelihood-ratio test of
 * Weibull distributions that takes lives between inspections too.
 *
 * @param first   lives of the first group
 * @param second  of the second, on the same scale
 * @param grain   finest life that is told apart, default 1
 * @returns both tests, each with its own reason where there is none; the likelihood ratio (two degrees of freedom:
 *   scale and shape) needs two lives that have ended in each group
 * @throws RangeError on a grain that is not positive
 * @source Mantel (1966), Cancer Chemother. Rep. 50; Meeker & Escobar (1998), 8.3 and appendix B (likelihood ratio)
 * @oracle worked by hand in the spec; the log-rank test in its own room
 * @example compareLives([], []).likelihoodRatio // => { kind: 'insufficientData', needed: 2, got: 0 }
 */
export function compareLives(
  first: readonly PartLife[],
  second: readonly PartLife[],
  grain = 1,
): LivesComparison {
  if (!(grain > 0 && Number.isFinite(grain)))
    throw new RangeError(`the grain must be positive and finite, got ${grain}`);
  const groups = [knownLives(first), knownLives(second)] as const;
  const [one, other] = groups.map(censoredSample);
  return {
    parts: [groups[0].length, groups[1].length],
    logRank: one === undefined || other === undefined ? null : logRankTest(one, other),
    likelihoodRatio: likelihoodRatio(groups[0], groups[1], grain),
  };
}

function likelihoodRatio(
  first: readonly KnownLife[],
  second: readonly KnownLife[],
  grain: number,
): LikelihoodRatio {
  const ended = [first, second].map((group) => group.filter(({ upper }) => upper !== Infinity).length);
  const got = Math.min(...ended);
  if (got < 2) return { kind: 'insufficientData', needed: 2, got };
  const fitOf = (group: readonly KnownLife[]) => fitLifeDistribution('weibull', lifeSample(group, grain));
  const one = fitOf(first);
  if (one.kind !== 'estimated') return { kind: 'notEstimated', group: 'first' };
  const other = fitOf(second);
  if (other.kind !== 'estimated') return { kind: 'notEstimated', group: 'second' };
  const both = fitOf([...first, ...second]);
  if (both.kind !== 'estimated') return { kind: 'notEstimated', group: 'both' };
  const chiSquare = Math.max(0, 2 * (one.logLikelihood + other.logLikelihood - both.logLikelihood));
  return {
    kind: 'tested',
    chiSquare,
    degreesOfFreedom: 2,
    pValue: chiSquareSurvival(chiSquare, 2),
    scaleRatio: Math.exp(one.mu - other.mu),
  };
}
