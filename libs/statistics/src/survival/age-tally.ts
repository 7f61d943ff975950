import type { Numbers } from '../descriptive/checked-values.js';
import { orderByAge } from './age-order.js';

/** Distinct ages in rising order, each with the sum of the weights that fall on it. */
export interface AgeTally {
  readonly ages: Float64Array;
  readonly totals: Float64Array;
}

/** Rows that a tally takes: all, or those with the wanted mark. */
export interface TallyRows {
  readonly ages: Numbers;
  readonly weights?: Numbers | undefined;
  readonly keep?: ((row: number) => boolean) | undefined;
}

/**
 * Sums weights by age. Ages are equal only when they are the same number; rows of weight 0 count for nothing.
 * O(n log n) for short columns, O(n) for long ones.
 */
export function tallyByAge({ ages, weights, keep }: TallyRows): AgeTally {
  const rows = new Uint32Array(ages.length);
  let kept = 0;
  for (let row = 0; row < ages.length; row += 1) {
    if (keep !== undefined && !keep(row)) continue;
    if (weights !== undefined && weights[row] === 0) continue;
    rows[kept] = row;
    kept += 1;
  }
  const ordered = orderByAge(rows.subarray(0, kept), (place) => ages[rows[place]!]!);
  const distinct = new Float64Array(kept);
  const totals = new Float64Array(kept);
  let count = 0;
  for (let i = 0; i < kept; i += 1) {
    const age = ordered.ages[i]!;
    if (count === 0 || distinct[count - 1] !== age) {
      distinct[count] = age;
      count += 1;
    }
    totals[count - 1]! += weights === undefined ? 1 : weights[ordered.rows[i]!]!;
  }
  return { ages: distinct.slice(0, count), totals: totals.slice(0, count) };
}
