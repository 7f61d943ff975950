import type { Money } from '@endfloat/metrology';
import { parseMoney } from '@endfloat/metrology';
import type { PricingProblem } from '../terms/assessment.js';
import type { AssessmentInput } from '../terms/assessment-input.js';
import type { OptionTerms, PartOffer } from '../terms/option-terms.js';
import type { PricingProblemCode } from '../terms/reason-codes.js';
import { expectedLeadTime } from './expected-lead-time.js';
import type { CommonPrices, RepairCandidate } from './repair-candidate.js';

/** Amounts above this are taken for a slip of the pen, in any currency. */
export const absurdAmount = 1_000_000_000;

/** An option with its priced offers, and those that cannot be priced. */
export interface PricedOffers {
  readonly option: OptionTerms;
  readonly candidates: readonly RepairCandidate[];
  readonly problems: readonly PricingProblem[];
  readonly unpricedOffers: readonly {
    readonly offerId: string;
    readonly problems: readonly PricingProblem[];
  }[];
}

type Amount = { readonly value: number } | { readonly code: PricingProblemCode };

function amountOf(
  money: Money | null,
  currency: string,
  codes: Readonly<Record<'missing' | 'negative' | 'absurd', PricingProblemCode>>,
): Amount {
  if (money === null) return { code: codes.missing };
  if (money.currency !== currency) return { code: 'currencyDiffers' };
  const parsed = parseMoney(money.amount, money.currency);
  if (parsed.kind !== 'money') throw new RangeError(`not an amount of money: ${parsed.kind}`);
  const value = Number(parsed.money.amount);
  if (value < 0) return { code: codes.negative };
  return value > absurdAmount ? { code: codes.absurd } : { value };
}

const rateCodes = (missing: PricingProblemCode) =>
  ({ missing, negative: 'rateNegative', absurd: 'rateAbsurd' }) as const;
const priceCodes = { missing: 'priceMissing', negative: 'priceNegative', absurd: 'priceAbsurd' } as const;
const depositCodes = { missing: 'priceMissing', negative: 'depositNegative', absurd: 'priceAbsurd' } as const;

function requireShare(name: string, value: number): void {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${name} is a share from 0 to 1, got ${value}`);
}

function requireNotNegative(name: string, value: number): void {
  if (!Number.isFinite(value) || value < 0)
    throw new RangeError(`${name} is a finite number of 0 or more, got ${value}`);
}

/**
 * Prices common to all options, or what is missing or wrong with them.
 *
 * @param input  the assessment
 * @returns plain numbers, or problems named by the member they were found in
 * @throws RangeError on hours or days that are negative or not finite, on money that was never checked
 */
export function commonPrices(input: AssessmentInput): CommonPrices | readonly PricingProblem[] {
  const { rates, currency } = input;
  requireNotNegative('hours of a later complaint', rates.laterComplaint.labourHours);
  requireNotNegative('days of a later complaint', rates.laterComplaint.downtimeDays);
  const amounts = {
    labourPerHour: amountOf(rates.labourPerHour, currency, rateCodes('labourRateMissing')),
    downtimePerDay: amountOf(rates.downtimePerDay, currency, rateCodes('downtimeCostMissing')),
    comebackHandling: amountOf(rates.comebackHandling, currency, rateCodes('comebackHandlingMissing')),
  };
  const problems = Object.entries(amounts).flatMap(([at, amount]) =>
    'code' in amount ? [{ code: amount.code, at }] : [],
  );
  const { labourPerHour, downtimePerDay, comebackHandling } = amounts;
  if ('code' in labourPerHour || 'code' in downtimePerDay || 'code' in comebackHandling) return problems;
  return {
    labourPerHour: labourPerHour.value,
    downtimePerDay: downtimePerDay.value,
    comebackHandling: comebackHandling.value,
    laterComplaintHours: rates.laterComplaint.labourHours,
    laterComplaintDays: rates.laterComplaint.downtimeDays,
    isUsableWhileWaiting: input.isUsableWhileWaiting,
  };
}

function priceOffer(
  option: OptionTerms,
  offer: PartOffer,
  input: AssessmentInput,
  prices: CommonPrices,
): RepairCandidate | readonly PricingProblem[] {
  const at = offer.offerId;
  const price = amountOf(offer.price, input.currency, priceCodes);
  const deposit =
    offer.core === null ? { value: 0 } : amountOf(offer.core.deposit, input.currency, depositCodes);
  if (offer.core !== null) requireShare('the chance of losing a deposit', offer.core.probabilityOfLosing);
  const leadTime = expectedLeadTime(offer.leadTime, input.tables.leadTime);
  if ('code' in price || 'code' in deposit || leadTime.kind === 'unknown') {
    const codes: PricingProblemCode[] = [price, deposit].flatMap((amount) =>
      'code' in amount ? [amount.code] : [],
    );
    if (leadTime.kind === 'unknown') codes.push('leadTimeUnknown');
    return codes.map((code) => ({ code, at }));
  }
  return {
    optionId: option.optionId,
    action: option.action,
    offerId: offer.offerId,
    condition: offer.condition,
    partPrice: price.value,
    labour: option.labourHours * prices.labourPerHour,
    workshopDays: option.workshopDays,
    leadTime,
    coreDepositAtRisk: deposit.value * (offer.core?.probabilityOfLosing ?? 0),
    arrivalWear: offer.arrivalWear,
    warranty: offer.warranty,
  };
}

/**
 * Prices every offer of an option in plain numbers, or says what is missing. Nothing is taken for zero: an option without
 * offers, an offer without price or with an unknown lead time has no cost.
 *
 * @param option  the option
 * @param input   the assessment it belongs to
 * @param prices  prices common to all options
 * @returns candidates, and problems of the option and of single offers
 * @throws RangeError on hours, days or shares out of range, on money that was never checked
 */
export function priceOption(option: OptionTerms, input: AssessmentInput, prices: CommonPrices): PricedOffers {
  requireNotNegative('labour hours', option.labourHours);
  requireNotNegative('workshop days', option.workshopDays);
  if (option.action === 'leave' || option.action === 'adjust') {
    const candidate: RepairCandidate = {
      optionId: option.optionId,
      action: option.action,
      offerId: null,
      condition: null,
      partPrice: 0,
      labour: option.labourHours * prices.labourPerHour,
      workshopDays: option.workshopDays,
      leadTime: null,
      coreDepositAtRisk: 0,
      arrivalWear: { kind: 'notMeasured' },
      warranty: { coversPart: false, coversLabour: false },
    };
    return { option, candidates: [candidate], problems: [], unpricedOffers: [] };
  }
  const priced = option.offers.map((offer) => ({ offer, result: priceOffer(option, offer, input, prices) }));
  const candidates = priced.flatMap(({ result }) => ('optionId' in result ? [result] : []));
  const unpricedOffers = priced.flatMap(({ offer, result }) =>
    'optionId' in result ? [] : [{ offerId: offer.offerId, problems: result }],
  );
  const problems: PricingProblem[] = option.offers.length === 0 ? [{ code: 'noOffers', at: null }] : [];
  if (candidates.length === 0) problems.push(...unpricedOffers.flatMap((offer) => offer.problems));
  return { option, candidates, problems, unpricedOffers };
}
