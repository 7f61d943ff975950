import { lastStepAt } from '../survival/curve-lookup.js';
import type { RecurrenceCurve } from './mean-cumulative-function.js';

export type MeanAtAge =
  | {
      readonly kind: 'estimated';
      readonly mean: number;
      readonly standardError: number | null;
      readonly lower: number | null;
      readonly upper: number | null;
    }
  | { readonly kind: 'beyondObservation'; readonly firstAge: number; readonly lastAge: number };

/**
 * Value of a mean cumulative function at an age, the step at the age itself included.
 *
 * @param curve  answer of meanCumulativeFunction
 * @param age  0 or more
 * @returns mean with its limits, 0 without them before the first event; `beyondObservation` before the least or past
 *   the greatest age observed
 * @throws RangeError on an age below 0 or not finite
 * @complexity O(log n)
 * @source definition of a step function
 * @oracle worked by hand in the spec
 * @example meanAtAge({ ages: [], mean: [], standardErrors: [], lower: [], upper: [], firstAge: 0, lastAge: 5 }, 9) // => { kind: 'beyondObservation', firstAge: 0, lastAge: 5 }
 */
export function meanAtAge(
  curve: Pick<
    RecurrenceCurve,
    'ages' | 'mean' | 'standardErrors' | 'lower' | 'upper' | 'firstAge' | 'lastAge'
  >,
  age: number,
): MeanAtAge {
  if (!(age >= 0) || age === Infinity) throw new RangeError(`age must be 0 or more and finite, got ${age}`);
  const { firstAge, lastAge } = curve;
  if (age > lastAge || age < firstAge) return { kind: 'beyondObservation', firstAge, lastAge };
  const step = lastStepAt(curve.ages, age);
  if (step < 0) return { kind: 'estimated', mean: 0, standardError: null, lower: null, upper: null };
  return {
    kind: 'estimated',
    mean: curve.mean[step]!,
    standardError: curve.standardErrors[step]!,
    lower: curve.lower[step]!,
    upper: curve.upper[step]!,
  };
}
