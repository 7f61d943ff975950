import type { Point } from '../regression/point.js';

/** Pairs of observations sorted by what their x and y say together. */
export interface Concordance {
  readonly observations: number;
  /** Pairs rising together minus pairs running against each other. */
  readonly score: number;
  /** Sizes of the groups of equal x, and of equal y, singles left out. */
  readonly tiesInX: readonly number[];
  readonly tiesInY: readonly number[];
  readonly pairs: number;
  readonly pairsTiedInX: number;
  readonly pairsTiedInY: number;
}

/** Number of pairs (i < j) with values[i] > values[j], by bottom-up merging; sorts its argument. */
function countInversions(values: Float64Array<ArrayBuffer>): number {
  const n = values.length;
  let from = values;
  let to = new Float64Array(n);
  let inversions = 0;
  for (let width = 1; width < n; width *= 2) {
    for (let start = 0; start < n; start += 2 * width) {
      const middle = Math.min(start + width, n);
      const end = Math.min(start + 2 * width, n);
      let left = start;
      let right = middle;
      for (let at = start; at < end; at += 1) {
        if (left < middle && (right >= end || from[left]! <= from[right]!)) {
          to[at] = from[left]!;
          left += 1;
        } else {
          to[at] = from[right]!;
          right += 1;
          inversions += middle - left;
        }
      }
    }
    [from, to] = [to, from];
  }
  return inversions;
}

function groupSizes(count: number, sameAsBefore: (i: number) => boolean): number[] {
  const sizes: number[] = [];
  let size = 1;
  for (let i = 1; i <= count; i += 1) {
    if (i < count && sameAsBefore(i)) size += 1;
    else {
      if (size > 1) sizes.push(size);
      size = 1;
    }
  }
  return sizes;
}

const pairsWithin = (sizes: readonly number[]): number =>
  sizes.reduce((sum, t) => sum + (t * (t - 1)) / 2, 0);

/**
 * Score and ties of all pairs in O(n log n) (Knight 1966): sorted by x and, within equal x, by y, the discordant pairs
 * are the inversions of y.
 */
export function concordance(points: readonly Point[]): Concordance {
  const n = points.length;
  const sorted = points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
  const x = (i: number): number => sorted[i]![0];
  const y = Float64Array.from(sorted, (point) => point[1]);
  const tiesInX = groupSizes(n, (i) => x(i) === x(i - 1));
  const tiesInBoth = groupSizes(n, (i) => x(i) === x(i - 1) && y[i] === y[i - 1]);
  const ordered = y.toSorted();
  const tiesInY = groupSizes(n, (i) => ordered[i] === ordered[i - 1]);
  const discordant = countInversions(y);
  const pairs = (n * (n - 1)) / 2;
  const pairsTiedInX = pairsWithin(tiesInX);
  const pairsTiedInY = pairsWithin(tiesInY);
  const untied = pairs - pairsTiedInX - pairsTiedInY + pairsWithin(tiesInBoth);
  return {
    observations: n,
    score: untied - 2 * discordant,
    tiesInX,
    tiesInY,
    pairs,
    pairsTiedInX,
    pairsTiedInY,
  };
}

const sumOver = (sizes: readonly number[], term: (t: number) => number): number =>
  sizes.reduce((sum, t) => sum + term(t), 0);

/**
 * Variance of the score when x and y are unrelated, corrected for ties in both (Kendall 1970, Rank Correlation
 * Methods, 4th ed., ch. 5; without ties in x it is Gilbert's 1987 eq. 16.4). 0 when all x or all y are equal.
 */
export function scoreVariance({ observations: n, tiesInX, tiesInY }: Concordance): number {
  if (n < 2 || tiesInX[0] === n || tiesInY[0] === n) return 0;
  const main = (t: number): number => t * (t - 1) * (2 * t + 5);
  const twos = (t: number): number => t * (t - 1);
  const threes = (t: number): number => t * (t - 1) * (t - 2);
  const both =
    n > 2 ? (sumOver(tiesInX, threes) * sumOver(tiesInY, threes)) / (9 * n * (n - 1) * (n - 2)) : 0;
  return (
    (main(n) - sumOver(tiesInX, main) - sumOver(tiesInY, main)) / 18 +
    both +
    (sumOver(tiesInX, twos) * sumOver(tiesInY, twos)) / (2 * n * (n - 1))
  );
}
