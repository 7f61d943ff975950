import { requireFiniteValues, type Numbers } from './checked-values.js';
import { insufficientData, type InsufficientData } from './outcomes.js';

export type SampleQuantileOutcome =
  { readonly kind: 'estimated'; readonly quantile: number; readonly count: number } | InsufficientData;

/**
 * Sample quantile, type 7 of Hyndman and Fan: linear between order statistics, at position (n − 1) p + 1.
 *
 * @param values  n ≥ 1, any order, finite; not changed
 * @param probability  between 0 (least value) and 1 (greatest)
 * @returns the quantile, or `insufficientData` for no values
 * @throws RangeError on a number that is not finite or a probability outside [0, 1]
 * @complexity O(n log n) time, O(n) memory
 * @source Hyndman & Fan (1996), Am. Stat. 50:361–365, definition 7
 * @oracle worked by hand in the spec
 * @example sampleQuantile([4, 1, 2], 0.25) // => { kind: 'estimated', quantile: 1.5, count: 3 }
 */
export function sampleQuantile(values: Numbers, probability: number): SampleQuantileOutcome {
  if (!(probability >= 0 && probability <= 1)) {
    throw new RangeError(`probability must lie between 0 and 1, got ${probability}`);
  }
  requireFiniteValues('values', values);
  const count = values.length;
  if (count === 0) return insufficientData('values', 1, 0);
  const sorted = Float64Array.from(values).sort();
  const position = (count - 1) * probability;
  const below = Math.floor(position);
  const low = sorted[below]!;
  const high = sorted[Math.min(below + 1, count - 1)]!;
  return { kind: 'estimated', quantile: low + (position - below) * (high - low), count };
}

/**
 * Sample median: the middle value, or the mean of the two middle ones.
 *
 * @param values  n ≥ 1, any order, finite; not changed
 * @returns the median, or `insufficientData` for no values
 * @throws RangeError on a number that is not finite
 * @complexity O(n log n) time, O(n) memory
 * @source NIST/SEMATECH e-Handbook 1.3.5.1; equal to the quantile of type 7 at ½
 * @oracle worked by hand in the spec
 * @example median([4, 1, 2]) // => { kind: 'estimated', quantile: 2, count: 3 }
 */
export function median(values: Numbers): SampleQuantileOutcome {
  return sampleQuantile(values, 0.5);
}
