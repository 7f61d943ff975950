import { requirePositive, requireProbability } from '../distributions/checked-arguments.js';

/** Any continuous life: survival function and density over age, in the caller's unit of age. */
export interface LifeDistribution {
  /** P(life > age), 1 at age 0, falling. */
  readonly survival: (age: number) => number;
  /** Density of the life, minus the derivative of `survival`. */
  readonly density: (age: number) => number;
  /** Age that no life exceeds, or Infinity. */
  readonly end: number;
  /** Some age in the middle of the lives, for example the median: sets the scale of the search. */
  readonly typical: number;
}

/** Refuses a typical age that is not positive or beyond the end, and a survival that is not 1 at age 0. */
export function requireLifeDistribution(life: LifeDistribution): void {
  requirePositive('typical age', life.typical);
  if (!(life.end >= life.typical))
    throw new RangeError('the end of the lives must not lie before the typical age');
  if (Math.abs(life.survival(0) - 1) > 1e-12) throw new RangeError('survival must be 1 at age 0');
}

/** Survival at an age, checked: an answer outside [0, 1] is a fault of the caller. */
export function survivalAt(life: LifeDistribution, age: number): number {
  const survival = life.survival(age);
  requireProbability(`survival at age ${age}`, survival);
  return survival;
}
