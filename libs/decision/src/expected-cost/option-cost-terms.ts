import type { Money } from '@endfloat/metrology';

/** What a comeback leads to: the handling alone (the part is replaced under its own warranty), or the next repair too. */
export const comebackConsequences = ['handlingOnly', 'handlingPlusFollowUpRepair'] as const;

/** A consequence of `comebackConsequences`. */
export type ComebackConsequence = (typeof comebackConsequences)[number];

/** One option as it stands on the estimate. Numbers are decimal text, so that the sum is exact. */
export interface OptionCostTerms {
  readonly optionId: string;
  readonly parts: Money;
  readonly labourHours: string;
  readonly downtimeDays: string;
  /** 0 to 1 */
  readonly probabilityOfComeback: string;
  readonly comebackConsequence: ComebackConsequence;
  /** A refundable deposit is cash flow; only the chance of losing it is a cost. */
  readonly core: { readonly deposit: Money; readonly probabilityOfLosing: string } | null;
}

/** Prices that all options of one comparison have in common. */
export interface CostRates {
  readonly labourPerHour: Money;
  readonly downtimePerDay: Money;
  readonly comebackHandling: Money;
  /** The repair that becomes necessary after a comeback, downtime included. */
  readonly followUpRepair: Money;
}

/** Why an option has no cost. */
export const costRefusals = [
  'currenciesDiffer',
  'negativeAmount',
  'notDecimal',
  'probabilityOutOfRange',
] as const;

/** A reason of `costRefusals`. */
export type CostRefusal = (typeof costRefusals)[number];

/** Expected cost of one option, by component; the total is the sum of the components as written. */
export interface CostedOption {
  readonly kind: 'costed';
  readonly optionId: string;
  readonly partsAndLabour: Money;
  readonly downtime: Money;
  readonly coreDepositAtRisk: Money;
  readonly costIfComeback: Money;
  readonly expectedComeback: Money;
  readonly expectedTotal: Money;
}

/** An option that has no cost, with the reason and the member it was found in. */
export interface UncostedOption {
  readonly kind: 'cannotBePriced';
  readonly optionId: string;
  readonly reason: CostRefusal;
  readonly members: readonly string[];
}
