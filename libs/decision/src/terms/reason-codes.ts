/** Why an option has no cost; stable codes. */
export const pricingProblems = [
  'noOffers',
  'priceMissing',
  'priceNegative',
  'priceAbsurd',
  'currencyDiffers',
  'leadTimeUnknown',
  'labourRateMissing',
  'downtimeCostMissing',
  'comebackHandlingMissing',
  'rateNegative',
  'rateAbsurd',
  'depositNegative',
  'repairAfterComebackCannotBePriced',
] as const;

/** A code of `pricingProblems`. */
export type PricingProblemCode = (typeof pricingProblems)[number];

/** Hard limits; they hold whatever an option costs. */
export const guardCodes = [
  'safetyFindingNotCured',
  'functionalCriterionPositive',
  'customerDeclined',
  'undecidedReadingAlone',
  'consentNeeded',
] as const;

/** A code of `guardCodes`. */
export type GuardCode = (typeof guardCodes)[number];

/** What speaks for the recommendation, or must be known with it; stable codes. */
export const reasonCodes = [
  'cheapestInTheEnd',
  'runnerUp',
  'onlyOptionLeft',
  'onlyOptionPriced',
  'functionalCriterionPositive',
  'functionalCriterionNegative',
  'functionalCriterionNotDone',
  'functionalCriterionNotValid',
  'wearLikelyBeyondCriterion',
  'wearLikelyWithinCriterion',
  'wearOnEitherSideOfCriterion',
  'wearNotMeasured',
  'readingsContradict',
  'wearBeyondModel',
  'rateFromReadings',
  'rateFromPopulation',
  'criterionReachedWithinPlan',
  'criterionNotReachedWithinPlan',
  'earlierComebacks',
  'comebackRisk',
  'leadTimeAsDelivered',
  'leadTimeAsPromisedOnly',
  'waitOutweighsPrice',
  'coreDepositAtRisk',
  'judgementNumbersOnly',
  'safetyFinding',
  'furtherReadingsWorthTheirCost',
  'replaceAtNextVisit',
] as const;

/** A code of `reasonCodes`. */
export type ReasonCode = (typeof reasonCodes)[number];
