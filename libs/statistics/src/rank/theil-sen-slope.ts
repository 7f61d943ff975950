import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { normalQuantile } from '../distributions/normal.js';
import { upperProbability } from '../inference/confidence-level.js';
import type { Interval } from '../inference/interval.js';
import { countDistinct, requireFinitePoints, type Point } from '../regression/point.js';
import { concordance, scoreVariance } from './concordance.js';
import { pairSlopeOrderStatistics } from './pair-slope-order-statistics.js';

export interface TheilSenSlope {
  readonly kind: 'estimated';
  readonly observations: number;
  /** Pairs with different x. */
  readonly pairs: number;
  /** Median of the pair slopes, v per u. */
  readonly slope: number;
  /** median(y) − slope · median(x) (Conover), in v. */
  readonly intercept: number;
  /** Gilbert's limits, or null: with so few pairs no interval of this kind reaches the level. */
  readonly interval: Interval | null;
}

export type TheilSenOutcome = TheilSenSlope | InsufficientData;

function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length / 2;
  return Number.isInteger(half) ? (sorted[half - 1]! + sorted[half]!) / 2 : sorted[Math.floor(half)]!;
}

/** The two whole ranks around a fractional one, and the share of the way to the upper. */
interface Rank {
  readonly below: number;
  readonly above: number;
  readonly share: number;
}

const rankAt = (rank: number): Rank => ({
  below: Math.floor(rank),
  above: Math.ceil(rank),
  share: rank - Math.floor(rank),
});

/** Ranks of the median and of Gilbert's limits; null where a limit would fall outside the list of slopes. */
function soughtRanks(
  pairs: number,
  halfWidth: number,
): { middle: Rank; limits: readonly [Rank, Rank] | null } {
  const lower = (pairs - halfWidth) / 2;
  const upper = (pairs + halfWidth) / 2 + 1;
  return {
    middle: rankAt((pairs + 1) / 2),
    limits: lower >= 1 && upper <= pairs ? [rankAt(lower), rankAt(upper)] : null,
  };
}

/**
 * Slope of a straight line as the median of all pairwise slopes (Theil–Sen), with Gilbert's confidence limits.
 * For series with a few wild values: up to 29 % of them do not carry the slope away. No assumption on the shape of the
 * error, but observations must be independent.
 *
 * Limits: with N pairs and C = z · √Var(S) of the Mann–Kendall score, the (N − C)/2-th smallest slope and the
 * ((N + C)/2 + 1)-th, fractional ranks interpolated between neighbours. Where a rank falls outside 1 … N the interval is
 * null instead of being cut off at the extreme slopes.
 *
 * @param points  pairs (x in u, y in v), any order, finite
 * @param confidence  two-sided level, strictly between 0 and 1; default 0.95
 * @returns slope, intercept and interval; `insufficientData` with fewer than two points or one distinct x
 * @throws RangeError on a non-finite number, a level outside (0, 1) or a slope too steep for double precision
 * @ties pairs with equal x are skipped; ties enter Var(S)
 * @complexity O(n²) time in at most four passes; memory bounded at 16 MB (10⁴ points are 5·10⁷ pairs, never stored)
 * @source Sen (1968), JASA 63:1379–1389; Gilbert (1987), 16.5; intercept Conover (1980), Practical Nonparametric
 *   Statistics, 5.5
 * @oracle test/oracles/statistics-regression/generate.R
 * @example theilSenSlope([[0, 0], [1, 2], [2, 4]]) // => { kind: 'estimated', slope: 2, intercept: 0, interval: null }
 */
export function theilSenSlope(points: readonly Point[], confidence = 0.95): TheilSenOutcome {
  const z = normalQuantile(upperProbability(confidence));
  requireFinitePoints(points);
  if (points.length < 2) return insufficientData('points', 2, points.length);
  const distinct = countDistinct(
    points.map(([x]) => x),
    2,
  );
  if (distinct < 2) return insufficientData('distinctX', 2, distinct);

  const sorted = points.toSorted((a, b) => a[0] - b[0]);
  const found = concordance(sorted);
  const pairs = found.pairs - found.pairsTiedInX;
  const { middle, limits } = soughtRanks(pairs, z * Math.sqrt(scoreVariance(found)));
  const ranks = [middle, ...(limits ?? [])];
  const values = pairSlopeOrderStatistics(
    Float64Array.from(sorted, ([x]) => x),
    Float64Array.from(sorted, ([, y]) => y),
    pairs,
    ranks.flatMap(({ below, above }) => [below, above]),
  );
  if (!values.every(Number.isFinite)) {
    throw new RangeError('points are too close together in x for a slope in double precision');
  }
  const [slope, lower, upper] = ranks.map(({ share }, i) => {
    const below = values[2 * i]!;
    return below + share * (values[2 * i + 1]! - below);
  });
  return {
    kind: 'estimated',
    observations: points.length,
    pairs,
    slope: slope!,
    intercept: median(points.map(([, y]) => y)) - slope! * median(points.map(([x]) => x)),
    interval: limits === null ? null : { lower: lower!, upper: upper! },
  };
}
