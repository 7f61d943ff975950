import { requireFinite } from '../distributions/checked-arguments.js';

/** One observation: x in the caller's unit u, y in the caller's unit v. */
export type Point = readonly [x: number, y: number];

/** Refuses points with a number that is not finite. */
export function requireFinitePoints(points: readonly Point[]): void {
  points.forEach(([x, y], index) => {
    requireFinite(`x of point ${index}`, x);
    requireFinite(`y of point ${index}`, y);
  });
}

/** Number of distinct values, stopped once `enough` are seen. */
export function countDistinct(values: Iterable<number>, enough = Infinity): number {
  const seen = new Set<number>();
  for (const value of values) {
    seen.add(value);
    if (seen.size >= enough) break;
  }
  return seen.size;
}
