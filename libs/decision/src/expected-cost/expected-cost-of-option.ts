import type { Money } from '@endfloat/metrology';
import { multiplyMoney, parseDecimalText, sumMoney } from '@endfloat/metrology';
import type {
  CostedOption,
  CostRates,
  CostRefusal,
  OptionCostTerms,
  UncostedOption,
} from './option-cost-terms.js';

type Refusal = { readonly reason: CostRefusal; readonly members: readonly string[] };

const isDecimal = (text: string): boolean => parseDecimalText(text).kind === 'decimal';
const isNegative = (text: string): boolean => text.startsWith('-') && /[1-9]/.test(text);

function firstRefusal(terms: OptionCostTerms, rates: CostRates): Refusal | null {
  const amounts: [string, Money][] = [
    ['parts', terms.parts],
    ...(Object.entries(rates) as [string, Money][]),
  ];
  if (terms.core !== null) amounts.push(['core.deposit', terms.core.deposit]);
  const numbers: [string, string][] = [
    ['labourHours', terms.labourHours],
    ['downtimeDays', terms.downtimeDays],
  ];
  const probabilities: [string, string][] = [['probabilityOfComeback', terms.probabilityOfComeback]];
  if (terms.core !== null) probabilities.push(['core.probabilityOfLosing', terms.core.probabilityOfLosing]);

  const texts = [
    ...amounts.map(([name, money]): [string, string] => [name, money.amount]),
    ...numbers,
    ...probabilities,
  ];
  const members = (entries: readonly (readonly [string, unknown])[]) => entries.map(([name]) => name).sort();

  const unread = texts.filter(([, text]) => !isDecimal(text));
  if (unread.length > 0) return { reason: 'notDecimal', members: members(unread) };
  const outOfRange = probabilities.filter(([, text]) => isNegative(text) || Number(text) > 1);
  if (outOfRange.length > 0) return { reason: 'probabilityOutOfRange', members: members(outOfRange) };
  const negative = texts.filter(([, text]) => isNegative(text));
  if (negative.length > 0) return { reason: 'negativeAmount', members: members(negative) };
  const foreign = amounts.filter(([, money]) => money.currency !== rates.labourPerHour.currency);
  if (foreign.length > 0) return { reason: 'currenciesDiffer', members: members(foreign) };
  return null;
}

function sum(currency: string, ...amounts: readonly Money[]): Money {
  const total = sumMoney(amounts, currency);
  if (total.kind !== 'money') throw new RangeError(`amounts of one currency do not add: ${total.kind}`);
  return total.money;
}

/**
 * Expected cost of one option, by the arithmetic of the estimate:
 * parts + labour + downtime + deposit at risk + P(comeback) x cost of a comeback.
 *
 * A comeback costs the handling, and where the part is not replaced under its own warranty the repair that then becomes
 * necessary. At most one comeback; no discounting; the downtime of a comeback is inside the follow-up repair. This is the
 * plain arithmetic that a person can check; `assessRepairOrReplace` is the model behind a recommendation.
 *
 * @param terms  the option; amounts, hours and days as decimal text, not negative
 * @param rates  prices common to all options, one currency
 * @returns `costed` with each component rounded half to even at the currency's decimals and the total as their sum, or
 *   `cannotBePriced` with the reason and the members it was found in
 * @source judgement; common practice of the trade
 */
export function expectedCostOfOption(
  terms: OptionCostTerms,
  rates: CostRates,
): CostedOption | UncostedOption {
  const refusal = firstRefusal(terms, rates);
  if (refusal !== null) return { kind: 'cannotBePriced', optionId: terms.optionId, ...refusal };
  const { currency } = rates.labourPerHour;
  const partsAndLabour = sum(currency, terms.parts, multiplyMoney(rates.labourPerHour, terms.labourHours));
  const downtime = multiplyMoney(rates.downtimePerDay, terms.downtimeDays);
  const coreDepositAtRisk =
    terms.core === null ? sum(currency) : multiplyMoney(terms.core.deposit, terms.core.probabilityOfLosing);
  const costIfComeback =
    terms.comebackConsequence === 'handlingOnly'
      ? sum(currency, rates.comebackHandling)
      : sum(currency, rates.comebackHandling, rates.followUpRepair);
  const expectedComeback = multiplyMoney(costIfComeback, terms.probabilityOfComeback);
  return {
    kind: 'costed',
    optionId: terms.optionId,
    partsAndLabour,
    downtime,
    coreDepositAtRisk,
    costIfComeback,
    expectedComeback,
    expectedTotal: sum(currency, partsAndLabour, downtime, coreDepositAtRisk, expectedComeback),
  };
}
