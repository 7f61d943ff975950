import type { SurvivalCurve } from './kaplan-meier.js';

export type SurvivalAtAge =
  | {
      readonly kind: 'estimated';
      readonly survival: number;
      readonly lower: number | null;
      readonly upper: number | null;
    }
  | { readonly kind: 'beyondObservation'; readonly lastAge: number };

/**
 * Value of a step curve at an age, the step at the age itself included.
 *
 * @param curve  answer of kaplanMeier
 * @param age  0 or more
 * @returns survival with its limits; before the first event 1, without limits; `beyondObservation` past the last
 *   observed age, also where the curve has reached 0
 * @throws RangeError on an age below 0 or not finite
 * @complexity O(log n)
 * @source definition of the product-limit estimate
 * @oracle worked by hand in the spec
 * @example survivalAtAge({ kind: 'estimated', ages: [], survival: [], lower: [], upper: [], lastAge: 5 }, 9) // => { kind: 'beyondObservation', lastAge: 5 }
 */
export function survivalAtAge(
  curve: Pick<SurvivalCurve, 'ages' | 'survival' | 'lower' | 'upper' | 'lastAge'>,
  age: number,
): SurvivalAtAge {
  if (!(age >= 0) || age === Infinity) throw new RangeError(`age must be 0 or more and finite, got ${age}`);
  if (age > curve.lastAge) return { kind: 'beyondObservation', lastAge: curve.lastAge };
  const step = lastStepAt(curve.ages, age);
  if (step < 0) return { kind: 'estimated', survival: 1, lower: null, upper: null };
  return {
    kind: 'estimated',
    survival: curve.survival[step]!,
    lower: curve.lower[step]!,
    upper: curve.upper[step]!,
  };
}

/** Index of the last age at or below the given one, −1 when there is none; ages rise. */
export function lastStepAt(ages: readonly number[], age: number): number {
  let low = 0;
  let high = ages.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ages[middle]! <= age) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

export type CurveQuantile =
  | {
      readonly kind: 'estimated';
      readonly age: number;
      /** Where the lower and the upper limit of the curve cross; null when they do not. */
      readonly lower: number | null;
      readonly upper: number | null;
    }
  | { readonly kind: 'notReached'; readonly leastSurvival: number; readonly lastAge: number };

/**
 * Age by which the given share has failed: the first age at which the curve is at or below 1 − probability; its limits
 * are the ages at which the limits of the curve get there (Brookmeyer & Crowley).
 *
 * @param curve  answer of kaplanMeier
 * @param probability  share failed, strictly between 0 and 1; 0.5 for the median
 * @returns the age, or `notReached` when the curve stays above; an exactly met level takes the first age
 * @throws RangeError on a probability outside (0, 1)
 * @complexity O(n)
 * @source Brookmeyer & Crowley (1982), Biometrics 38:29–41
 * @oracle worked by hand in the spec
 * @example curveQuantile({ kind: 'estimated', ages: [3], survival: [0.4], lower: [0.1], upper: [0.7], lastAge: 5 }, 0.5) // => { kind: 'estimated', age: 3, lower: 3, upper: null }
 */
export function curveQuantile(
  curve: Pick<SurvivalCurve, 'ages' | 'survival' | 'lower' | 'upper' | 'lastAge'>,
  probability: number,
): CurveQuantile {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`probability must lie strictly between 0 and 1, got ${probability}`);
  }
  // A product of fractions may miss an exactly met level by rounding; the slack is far below one unit in a million.
  const level = (1 - probability) * (1 + 1e-12);
  const firstAt = (column: readonly (number | null)[]): number | null => {
    const step = column.findIndex((value) => value !== null && value <= level);
    return step < 0 ? null : curve.ages[step]!;
  };
  const age = firstAt(curve.survival);
  if (age === null) {
    return { kind: 'notReached', leastSurvival: curve.survival.at(-1) ?? 1, lastAge: curve.lastAge };
  }
  return { kind: 'estimated', age, lower: firstAt(curve.lower), upper: firstAt(curve.upper) };
}
