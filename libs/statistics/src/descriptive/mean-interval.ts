import { studentTQuantile } from '../distributions/student-t.js';
import type { Interval } from '../inference/interval.js';
import { requireLevel, type Numbers } from './checked-values.js';
import type { InsufficientData } from './outcomes.js';
import { sampleVariance } from './sample-variance.js';

export type MeanIntervalOutcome =
  | {
      readonly kind: 'estimated';
      readonly mean: number;
      /** s / √n. */
      readonly standardError: number;
      readonly interval: Interval;
      readonly degreesOfFreedom: number;
    }
  | InsufficientData;

/**
 * Mean of independent values with Student's interval: mean ± t · s / √n with n − 1 degrees of freedom. Exact for normal
 * values; for others it holds the better the more there are.
 *
 * @param values  n ≥ 2, any order, finite; not changed
 * @param level  two-sided, strictly between 0 and 1; default 0.95
 * @returns mean and limits in the unit of the values; `insufficientData` with fewer than two. Equal values have an
 *   interval of no width
 * @throws RangeError on a number that is not finite or a level outside (0, 1)
 * @complexity O(n)
 * @source Student (1908), Biometrika 6:1–25; NIST/SEMATECH e-Handbook 1.3.5.2
 * @oracle NIST StRD NumAcc1 (certified mean and standard deviation); worked by hand in the spec
 * @example meanInterval([1, 3], 0.5) // => { kind: 'estimated', mean: 2, standardError: 1, degreesOfFreedom: 1 }
 */
export function meanInterval(values: Numbers, level = 0.95): MeanIntervalOutcome {
  requireLevel(level);
  const found = sampleVariance(values);
  if (found.kind !== 'estimated') return found;
  const { mean, standardDeviation, count } = found;
  const standardError = standardDeviation / Math.sqrt(count);
  const reach = studentTQuantile(0.5 + level / 2, count - 1) * standardError;
  return {
    kind: 'estimated',
    mean,
    standardError,
    interval: { lower: mean - reach, upper: mean + reach },
    degreesOfFreedom: count - 1,
  };
}
