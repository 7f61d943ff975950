/**
 * Coefficients of the comeback model, in the order of every vector and matrix of a `ComebackTable`.
 * One level per action (for adjusting, where the tables hold chances by cause, a correction to what they say); for actions that keep the wear three rising steps of wear / criterion (around 0.8, 1.0 and 1.25,
 * never negative, so that more wear never makes adjusting better) and the functional criterion; earlier comebacks as
 * log(1 + count), apart for keeping and renewing; conditions that differ from the usual one of their action.
 */
export const comebackCoefficients = [
  'leave',
  'adjust',
  'reBush',
  'fitUsed',
  'fitRemanufactured',
  'fitNew',
  'wearBelowCriterion',
  'wearAtCriterion',
  'wearAboveCriterion',
  'functionalPositive',
  'functionalNegative',
  'earlierComebacksKept',
  'earlierComebacksRenewed',
  'arrivalWear',
  'newOldStock',
  'rebuilt',
  'reconditioned',
] as const;

/** A name of `comebackCoefficients`. */
export type ComebackCoefficient = (typeof comebackCoefficients)[number];
