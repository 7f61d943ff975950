import { log, logistic } from '../portable/elementary.js';
import { comebackCoefficients } from '../tables/comeback-coefficients.js';
import type { ComebackCoefficient } from '../tables/comeback-coefficients.js';
import type { OfferedCondition, OptionAction } from '../terms/option-actions.js';

/** Validly judged functional criterion as the model sees it; anything not valid is none. */
export type FunctionalEvidence = 'positive' | 'negative' | 'none';

/** What the chance of a comeback depends on, apart from the wear that stays in. */
export interface RepairContext {
  readonly action: OptionAction;
  /** null where no part is fitted */
  readonly condition: OfferedCondition | null;
  /** mean of the step at the criterion over the wear of the part on arrival; 0 where no part is fitted */
  readonly arrivalStep: number;
  readonly functional: FunctionalEvidence;
  readonly earlierComebacks: number;
}

const WIDTH = 0.12;

/**
 * The three rising steps of wear: shares of the way past 0.8, 1.0 and 1.25 of the criterion.
 *
 * @param wear  share of the criterion, 1 = criterion
 * @returns three shares from 0 to 1
 */
export function wearSteps(wear: number): readonly [number, number, number] {
  return [logistic((wear - 0.8) / WIDTH), logistic((wear - 1) / WIDTH), logistic((wear - 1.25) / WIDTH)];
}

const at = (name: ComebackCoefficient): number => comebackCoefficients.indexOf(name);
const FIRST_STEP = at('wearBelowCriterion');

/** Places of the coefficients that are never negative. */
export const risingCoefficients: readonly number[] = (
  [
    'wearBelowCriterion',
    'wearAtCriterion',
    'wearAboveCriterion',
    'earlierComebacksKept',
    'arrivalWear',
  ] as const
).map(at);

/**
 * Values the coefficients are multiplied with.
 *
 * @param context  repair and history
 * @param steps    steps of the wear that stays in; for renewing actions they have no bearing
 * @returns one value a coefficient, in the order of `comebackCoefficients`
 * @throws RangeError on a count of comebacks that is negative or not whole
 */
export function comebackFeatures(
  context: RepairContext,
  steps: readonly [number, number, number],
): Float64Array {
  const { action, condition, functional, earlierComebacks } = context;
  if (!Number.isInteger(earlierComebacks) || earlierComebacks < 0) {
    throw new RangeError(`a count of comebacks is a whole number, got ${earlierComebacks}`);
  }
  const features = new Float64Array(comebackCoefficients.length);
  features[at(action)] = 1;
  if (action === 'leave' || action === 'adjust') {
    steps.forEach((step, k) => (features[FIRST_STEP + k] = step));
    if (functional === 'positive') features[at('functionalPositive')] = 1;
    if (functional === 'negative') features[at('functionalNegative')] = 1;
    features[at('earlierComebacksKept')] = log(1 + earlierComebacks);
    return features;
  }
  features[at('earlierComebacksRenewed')] = log(1 + earlierComebacks);
  features[at('arrivalWear')] = context.arrivalStep;
  if (condition === 'newOldStock' || condition === 'rebuilt' || condition === 'reconditioned')
    features[at(condition)] = 1;
  return features;
}

/**
 * Chance of a comeback for one set of coefficients.
 *
 * @param coefficients  in the order of `comebackCoefficients`
 * @param features      of the repair
 * @param logOdds       what the coefficients correct; 0 where they alone say it
 * @returns a share from 0 to 1
 */
export function comebackChance(
  coefficients: ArrayLike<number>,
  features: ArrayLike<number>,
  logOdds = 0,
): number {
  let sum = logOdds;
  for (let k = 0; k < features.length; k += 1) if (features[k] !== 0) sum += coefficients[k]! * features[k]!;
  return logistic(sum);
}

/** The part of the sum that wear has no bearing on. */
function levelOf(coefficients: ArrayLike<number>, withoutWear: ArrayLike<number>): number {
  let level = 0;
  for (let k = 0; k < withoutWear.length; k += 1)
    if (withoutWear[k] !== 0) level += coefficients[k]! * withoutWear[k]!;
  return level;
}

/**
 * Chance of a comeback at one wear, from features with all steps 0; the same sum as `addComebackChances`.
 *
 * @param coefficients  in the order of `comebackCoefficients`
 * @param withoutWear   features of the repair with all steps 0
 * @param step          steps of the wear
 * @param logOdds       what the coefficients correct
 * @returns a share from 0 to 1
 */
export function chanceAtStep(
  coefficients: ArrayLike<number>,
  withoutWear: ArrayLike<number>,
  [x, y, z]: readonly [number, number, number],
  logOdds: number,
): number {
  const [a, b, c] = [coefficients[FIRST_STEP]!, coefficients[FIRST_STEP + 1]!, coefficients[FIRST_STEP + 2]!];
  return logistic(logOdds + levelOf(coefficients, withoutWear) + a * x + b * y + c * z);
}

/**
 * Chances of a comeback over many wears for one set of coefficients; the same sum as `comebackChance`, the part that does
 * not depend on the wear being added up once.
 *
 * @param coefficients  in the order of `comebackCoefficients`
 * @param withoutWear   features of the repair with all steps 0
 * @param steps         steps of each wear
 * @param logOdds       what the coefficients correct, one number a wear
 * @param add           receives the chances, added to what is there
 */
export function addComebackChances(
  coefficients: ArrayLike<number>,
  withoutWear: ArrayLike<number>,
  steps: readonly (readonly [number, number, number])[],
  logOdds: Float64Array,
  add: Float64Array,
): void {
  const level = levelOf(coefficients, withoutWear);
  const [a, b, c] = [coefficients[FIRST_STEP]!, coefficients[FIRST_STEP + 1]!, coefficients[FIRST_STEP + 2]!];
  for (let i = 0; i < steps.length; i += 1) {
    const [x, y, z] = steps[i]!;
    add[i] = add[i]! + logistic(logOdds[i]! + level + a * x + b * y + c * z);
  }
}
