import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { normalSurvival } from '../distributions/normal.js';
import { countDistinct, requireFinitePoints, type Point } from '../regression/point.js';
import { concordance, scoreVariance, type Concordance } from './concordance.js';
import { exactScoreTail } from './exact-score-tail.js';

/** How the p-values were found. */
export const mannKendallMethods = ['exact', 'normalWithContinuityCorrection'] as const;
export type MannKendallMethod = (typeof mannKendallMethods)[number];

/** Longest series whose p-values are exact. */
export const exactUpTo = 10;

export interface MannKendallTest {
  readonly kind: 'estimated';
  readonly observations: number;
  /** Rising pairs minus falling pairs. */
  readonly score: number;
  readonly variance: number;
  /** (S ∓ 1) / √variance, 0 for S = 0; given for both methods. */
  readonly z: number;
  /** S over all pairs. */
  readonly tauA: number;
  /** S over the geometric mean of the pairs untied in x and those untied in y. */
  readonly tauB: number;
  readonly method: MannKendallMethod;
  /** P(S at least this large) without a trend. */
  readonly pUpward: number;
  /** P(S at most this large) without a trend. */
  readonly pDownward: number;
  readonly pTwoSided: number;
}

export type MannKendallOutcome =
  MannKendallTest | { readonly kind: 'allTied'; readonly observations: number } | InsufficientData;

type Tails = Pick<MannKendallTest, 'method' | 'pUpward' | 'pDownward' | 'pTwoSided'>;

function exactTails({ score, observations, tiesInX, tiesInY }: Concordance): Tails {
  const ties = tiesInY.length > 0 ? tiesInY : tiesInX;
  const pUpward = exactScoreTail(score, observations, ties);
  const pDownward = exactScoreTail(-score, observations, ties);
  return { method: 'exact', pUpward, pDownward, pTwoSided: Math.min(1, 2 * Math.min(pUpward, pDownward)) };
}

function normalTails(score: number, deviation: number, z: number): Tails {
  return {
    method: 'normalWithContinuityCorrection',
    pUpward: normalSurvival((score - 1) / deviation),
    pDownward: normalSurvival((-score - 1) / deviation),
    pTwoSided: 2 * normalSurvival(Math.abs(z)),
  };
}

/**
 * Mann–Kendall test of a steady rise or fall: how many pairs of observations rise over x, minus how many fall.
 * Assumes independent observations; says nothing about the size of the trend.
 *
 * @param points  pairs (x, y), any order, finite; equal values of either are allowed
 * @returns score, variance corrected for ties, z with continuity correction and p-values. Up to 10 observations the
 *   p-values are exact, ties on one side included; with ties in both x and y, and for longer series, they are normal.
 *   `allTied` when all y are equal, `insufficientData` with fewer than two points or one distinct x.
 * @throws RangeError on a non-finite number
 * @ties pairs tied in x or y count 0; the variance and the exact distribution are those given the ties
 * @complexity O(n log n)
 * @source Mann (1945); Kendall (1970); Gilbert (1987), Statistical Methods for Environmental Pollution Monitoring, 16.4
 * @oracle test/oracles/statistics-regression/generate.R
 * @example mannKendall([[1, 10], [2, 15], [3, 14], [4, 20]]) // => { kind: 'estimated', score: 4, pUpward: 0.16666666666666666 }
 */
export function mannKendall(points: readonly Point[]): MannKendallOutcome {
  requireFinitePoints(points);
  const n = points.length;
  if (n < 2) return insufficientData('points', 2, n);
  const distinct = countDistinct(
    points.map(([x]) => x),
    2,
  );
  if (distinct < 2) return insufficientData('distinctX', 2, distinct);
  const found = concordance(points);
  const variance = scoreVariance(found);
  if (variance === 0) return { kind: 'allTied', observations: n };

  const { score, pairs, pairsTiedInX, pairsTiedInY, tiesInX, tiesInY } = found;
  const z = (score - Math.sign(score)) / Math.sqrt(variance);
  const exact = n <= exactUpTo && (tiesInX.length === 0 || tiesInY.length === 0);
  return {
    kind: 'estimated',
    observations: n,
    score,
    variance,
    z,
    tauA: score / pairs,
    tauB: score / Math.sqrt((pairs - pairsTiedInX) * (pairs - pairsTiedInY)),
    ...(exact ? exactTails(found) : normalTails(score, Math.sqrt(variance), z)),
  };
}
