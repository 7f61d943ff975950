import type { LifeSample } from './life-sample.js';

export interface AgeInterval {
  readonly lower: number;
  readonly upper: number;
}

/** Rows that cover the intervals first … last, taken together, with their weight. */
export interface CoveredRange {
  readonly first: number;
  readonly last: number;
  readonly weight: number;
}

export interface InnermostIntervals {
  readonly intervals: readonly AgeInterval[];
  readonly ranges: readonly CoveredRange[];
  readonly units: number;
}

/**
 * Turnbull's innermost intervals: from a lower end to the next upper end with no other end between. An interval (a, b]
 * starts just after a; an exact life [t, t] starts at t itself, so at one age the order is: starts of exact lives, upper
 * ends, starts of intervals. Rows of weight 0 are left out.
 */
export function innermostIntervals(sample: LifeSample): InnermostIntervals {
  const { lower, upper, weights } = sample;
  const rows = Array.from(lower, (_, row) => row).filter((row) => (weights?.[row] ?? 1) > 0);
  const ends = [
    ...rows.map((row) => ({ age: lower[row]!, rank: lower[row] === upper[row] ? 0 : 2 })),
    ...rows.map((row) => ({ age: upper[row]!, rank: 1 })),
  ].sort((a, b) => a.age - b.age || a.rank - b.rank || 0);
  const intervals: AgeInterval[] = [];
  const starts: number[] = [];
  let start: { age: number; rank: number } | null = null;
  for (const end of ends) {
    if (end.rank !== 1) start = end;
    else if (start !== null) {
      intervals.push({ lower: start.age, upper: end.age });
      starts.push(start.rank === 0 ? start.age : nextAfter(start.age));
      start = null;
    }
  }
  const grouped = new Map<number, CoveredRange>();
  let units = 0;
  for (const row of rows) {
    const weight = weights?.[row] ?? 1;
    units += weight;
    const begins = lower[row] === upper[row] ? lower[row]! : nextAfter(lower[row]!);
    const first = firstAtLeast(starts, begins);
    const last = lastAtMost(intervals, upper[row]!);
    const key = first * intervals.length + last;
    grouped.set(key, { first, last, weight: weight + (grouped.get(key)?.weight ?? 0) });
  }
  return { intervals, ranges: [...grouped.values()], units };
}

/** A number above the age and below every other age in use: the open end of an interval. */
const nextAfter = (age: number): number => (age === 0 ? Number.MIN_VALUE : age * (1 + Number.EPSILON));

function firstAtLeast(starts: readonly number[], value: number): number {
  let low = 0;
  let high = starts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (starts[middle]! >= value) high = middle;
    else low = middle + 1;
  }
  return low;
}

function lastAtMost(intervals: readonly AgeInterval[], value: number): number {
  let low = 0;
  let high = intervals.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (intervals[middle]!.upper <= value) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
