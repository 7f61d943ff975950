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
 * O(n log n); without weights the sort is that of plain numbers.
 */
export function tallyByAge({ ages, weights, keep }: TallyRows): AgeTally {
  let kept = 0;
  const sortedAges = new Float64Array(ages.length);
  const rows = weights === undefined ? null : new Uint32Array(ages.length);
  for (let i = 0; i < ages.length; i += 1) {
    if (keep !== undefined && !keep(i)) continue;
    if (weights !== undefined && weights[i] === 0) continue;
    sortedAges[kept] = ages[i]!;
    if (rows !== null) rows[kept] = i;
    kept += 1;
  }
  const values = sortedAges.subarray(0, kept).sort();
  const order = rows === null ? undefined : orderByAge(rows.subarray(0, kept), (row) => ages[row]!);
  const distinct = new Float64Array(kept);
  const totals = new Float64Array(kept);
  let count = 0;
  for (let i = 0; i < kept; i += 1) {
    if (count === 0 || distinct[count - 1] !== values[i]) {
      distinct[count] = values[i]!;
      count += 1;
    }
    totals[count - 1]! += order === undefined || weights === undefined ? 1 : weights[order[i]!]!;
  }
  return { ages: distinct.slice(0, count), totals: totals.slice(0, count) };
}
