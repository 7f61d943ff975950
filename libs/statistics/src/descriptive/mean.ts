import type { Numbers } from './checked-values.js';
import { compensatedSum } from './compensated-sum.js';
import { insufficientData, type InsufficientData } from './outcomes.js';

export type MeanOutcome =
  { readonly kind: 'estimated'; readonly mean: number; readonly count: number } | InsufficientData;

/**
 * Arithmetic mean.
 *
 * @param values  n ≥ 1, any order, finite
 * @returns the mean, or `insufficientData` for no values
 * @throws RangeError on a number that is not finite
 * @complexity O(n) time, O(1) memory
 * @source NIST/SEMATECH e-Handbook 1.3.5.1
 * @oracle GUM table 1 in the spec
 * @example mean([1, 2, 6]) // => { kind: 'estimated', mean: 3, count: 3 }
 */
export function mean(values: Numbers): MeanOutcome {
  if (values.length === 0) return insufficientData('values', 1, 0);
  return { kind: 'estimated', mean: compensatedSum(values) / values.length, count: values.length };
}
