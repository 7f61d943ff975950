import { requireFiniteValues, type Numbers } from './checked-values.js';

/**
 * Sum of numbers with the rounding error of every addition carried along (Neumaier's form of Kahan's sum).
 *
 * @param values  any count, any order, finite, with partial sums that are finite too
 * @returns the sum; 0 for no values
 * @throws RangeError on a number that is not finite
 * @complexity O(n) time, O(1) memory
 * @source Neumaier (1974), ZAMM 54:39–51
 * @oracle exact rational arithmetic in the spec
 * @example compensatedSum([1, 1e100, 1, -1e100]) // => 2
 */
export function compensatedSum(values: Numbers): number {
  requireFiniteValues('values', values);
  let sum = 0;
  let lost = 0;
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i]!;
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}
