import { weibullSurvival } from '@endfloat/statistics';

/** A Weibull life: `scale` in the unit of the ages, `shape` without unit. */
export interface WeibullLife {
  readonly scale: number;
  readonly shape: number;
}

/**
 * Chance that a part which has lived to an age ends within a further stretch.
 *
 * @param life   scale and shape, both positive
 * @param age    lived so far, 0 or more, in the unit of the scale
 * @param ahead  further stretch, 0 or more, in the same unit
 * @returns 1 − R(age + ahead) / R(age); 1 where survival to the age already has the chance 0
 * @throws RangeError on numbers outside these ranges
 * @source definition of the conditional distribution of a remaining life; Meeker & Escobar (1998), 2.1
 * @example chanceToEndWithin({ scale: 100, shape: 1 }, 50, 0) // => 0
 */
export function chanceToEndWithin({ scale, shape }: WeibullLife, age: number, ahead: number): number {
  for (const [name, value] of Object.entries({ age, ahead })) {
    if (!(value >= 0) || value === Infinity) throw new RangeError(`${name} must be 0 or more, got ${value}`);
  }
  const alive = weibullSurvival(age, scale, shape);
  return alive === 0 ? 1 : Math.min(1, Math.max(0, 1 - weibullSurvival(age + ahead, scale, shape) / alive));
}
