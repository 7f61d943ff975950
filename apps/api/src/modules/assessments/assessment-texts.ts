import type {
  FlipQuantity,
  GuardCode,
  OptionAction,
  PricingProblemCode,
  Reason,
  ReasonCode,
  ReportedValue,
} from '@endfloat/decision';

/** Options in the words of the trade. */
export const actionTexts: Readonly<Record<OptionAction, string>> = {
  leave: 'leave it as it is',
  adjust: 'clean and adjust (the worn part stays in)',
  reBush: 're-bush it',
  fitUsed: 'fit a used part',
  fitRemanufactured: 'fit a remanufactured part',
  fitNew: 'fit a new part',
};

/** `{name}` is the value of that name with its unit, `{name%}` the same as a percentage, `{option}` the option meant. */
export const reasonTexts: Readonly<Record<ReasonCode, string>> = {
  cheapestInTheEnd: 'In the end the least is spent if you {option}: {expectedCost}, comebacks included.',
  runnerUp: 'The next best is to {option}; it costs {dearerBy} more in the end.',
  onlyOptionLeft: 'To {option} is all that the guards leave.',
  onlyOptionPriced: 'To {option} is all that can be priced.',
  functionalCriterionPositive:
    'Moving the shaft by hand works the switch, validly judged: no measured number outweighs that.',
  functionalCriterionNegative: 'Moving the shaft by hand does not work the switch, validly judged.',
  functionalCriterionNotDone: 'The functional criterion has not been tried.',
  functionalCriterionNotValid:
    'The functional criterion was tried and is not valid yet: put what it depends on right and repeat it.',
  wearLikelyBeyondCriterion:
    'The wear of {value} (standard uncertainty {standardUncertainty}) is probably beyond {criterion}: {probabilityBeyond%}.',
  wearLikelyWithinCriterion:
    'The wear of {value} (standard uncertainty {standardUncertainty}) is probably still within {criterion}: {probabilityBeyond%} that it is not.',
  wearOnEitherSideOfCriterion:
    'The wear of {value} (standard uncertainty {standardUncertainty}) may lie on either side of {criterion}: {probabilityBeyond%} that it is beyond.',
  wearNotMeasured:
    'The wear has not been measured so that it counts; from parts like it, {probabilityBeyond%} that it is beyond {criterion}.',
  readingsContradict: 'The readings contradict each other or what is possible: they have to be repeated.',
  wearBeyondModel: 'The reading of {value} lies outside what the model covers; it was taken as {takenAs}.',
  rateFromReadings:
    'It wears by {rate} (standard error {standardError}), from {points} inspections of this part.',
  rateFromPopulation:
    'How fast this part wears is not known yet ({got} of {needed} points): the rate of parts like it was taken.',
  criterionReachedWithinPlan:
    'Nothing being done, it reaches the criterion within {distance} with a chance of {probability%}.',
  criterionNotReachedWithinPlan:
    'Nothing being done, it reaches the criterion within {distance} with a chance of only {probability%}.',
  earlierComebacks: 'This came back {count} times before.',
  comebackRisk:
    'If you {option}, it comes back with a chance of {probability%}; that costs {cost} on average.',
  leadTimeAsDelivered:
    'To {option} the part takes {days} as this supplier really delivers (deliveries counted: {deliveries}).',
  leadTimeAsPromisedOnly:
    'To {option} the part takes {days}, reckoned from the promise alone: no delivery of this supplier is known.',
  waitOutweighsPrice:
    'To {option} is {priceDifference} cheaper to buy, and the wait costs {downtimeDifference} more than that.',
  coreDepositAtRisk: 'The deposit may be lost: {atRisk} on average.',
  judgementNumbersOnly:
    'The chances are judgement: no job of this shop whose watch window has elapsed has taught them yet.',
  safetyFinding: 'There is an open dangerous finding; it is never traded against money.',
  furtherReadingsWorthTheirCost:
    '{readings} more readings are worth their cost: they save {expectedGain} on average and cost {cost}.',
  replaceAtNextVisit: 'Order the part ahead and do it at the next planned visit.',
};

export const guardTexts: Readonly<Record<GuardCode, string>> = {
  safetyFindingNotCured: 'A dangerous finding stays open if you {option}: this is never offered.',
  functionalCriterionPositive:
    'Moving the shaft by hand works the switch, so to {option} would leave a worn part in: this is not offered.',
  customerDeclined: 'The customer has said no: to {option} is not offered.',
  undecidedReadingAlone:
    'The measurement alone is undecided or missing and is no reason to replace; the expected cost may be, once further readings were offered.',
  consentNeeded: 'The customer has not consented to this amount yet.',
};

export const pricingTexts: Readonly<Record<PricingProblemCode, string>> = {
  noOffers: 'Nobody offers a part for this. Record an offer, or ask for it.',
  priceMissing: 'The price was not quoted.',
  priceNegative: 'The price is negative.',
  priceAbsurd: 'The price is beyond anything plausible.',
  currencyDiffers: 'The amount is in another currency; amounts of two currencies are never summed.',
  leadTimeUnknown: 'Nothing was promised and nothing was delivered before, so the wait is not known.',
  labourRateMissing: 'The price of labour is not known.',
  downtimeCostMissing: 'The cost of a day off the road is not known.',
  comebackHandlingMissing: 'The cost of handling a comeback is not known.',
  rateNegative: 'The rate is negative.',
  rateAbsurd: 'The rate is beyond anything plausible.',
  depositNegative: 'The deposit is negative.',
  repairAfterComebackCannotBePriced:
    'Nothing that renews the part can be priced, so what follows a comeback has no price either.',
};

export const flipTexts: Readonly<Record<FlipQuantity, string>> = {
  wearNow: 'the wear now',
  price: 'the price of the part',
  leadTime: 'the lead time',
  downtimeCost: 'the cost of a day off the road',
  comebackProbability: 'the chance of a comeback',
};

/** A value with its unit as people write it. */
export function inWords({ value, unit }: ReportedValue): string {
  if (unit === '1') return value;
  if (unit === 'd') return `${String(Number(Number(value).toFixed(1)))} days`;
  return `${value} ${unit.replace('/1000.km', ' per 1000 km')}`;
}

/** Nothing estimated is ever quite impossible or certain. */
function inPercent({ value }: ReportedValue): string {
  const percent = Number((Number(value) * 100).toFixed(1));
  if (percent === 0) return 'less than 0.1 %';
  return percent === 100 ? 'more than 99.9 %' : `${String(percent)} %`;
}

/** Fills a sentence; a value that is missing shows as a dash, never as a gap. */
export function sentence(
  template: string,
  values: Readonly<Record<string, ReportedValue>>,
  option: string | null,
): string {
  return template.replaceAll(/\{([A-Za-z]+)(%?)\}/g, (_, name: string, percent: string) => {
    if (name === 'option') return option ?? '-';
    const value = values[name];
    if (value === undefined) return '-';
    return percent === '%' ? inPercent(value) : inWords(value);
  });
}

export function reasonText({ code, values }: Reason, option: string | null): string {
  return sentence(reasonTexts[code], roundedToDoubt(values), option);
}

/** In words a size has no more digits than its doubt bears: two significant ones of the standard uncertainty (JCGM 100, 7.2.6). */
function roundedToDoubt(
  values: Readonly<Record<string, ReportedValue>>,
): Readonly<Record<string, ReportedValue>> {
  const { value, standardUncertainty: doubt } = values;
  if (value === undefined || doubt === undefined || value.unit !== doubt.unit) return values;
  const [size, u] = [Number(value.value), Number(doubt.value)];
  if (!Number.isFinite(size) || !Number.isFinite(u) || u <= 0) return values;
  const decimals = Math.max(0, 1 - Math.floor(Math.log10(u)));
  return {
    ...values,
    value: { ...value, value: size.toFixed(decimals) },
    standardUncertainty: { ...doubt, value: u.toFixed(decimals) },
  };
}
