import type { OfferedCondition, OptionAction } from '../terms/option-actions.js';
import type { ArrivalWear, OptionWarranty } from '../terms/option-terms.js';
import type { ExpectedLeadTime } from './expected-lead-time.js';

/** One option with one of its offers, priced in plain numbers of one currency. */
export interface RepairCandidate {
  readonly optionId: string;
  readonly action: OptionAction;
  readonly offerId: string | null;
  readonly condition: OfferedCondition | null;
  readonly partPrice: number;
  readonly labour: number;
  readonly workshopDays: number;
  /** null where no part is needed */
  readonly leadTime: Extract<ExpectedLeadTime, { kind: 'known' }> | null;
  readonly coreDepositAtRisk: number;
  readonly arrivalWear: ArrivalWear;
  readonly warranty: OptionWarranty;
}

/** Prices common to all candidates, plain numbers of one currency. */
export interface CommonPrices {
  readonly labourPerHour: number;
  readonly downtimePerDay: number;
  readonly comebackHandling: number;
  readonly laterComplaintHours: number;
  readonly laterComplaintDays: number;
  readonly isUsableWhileWaiting: boolean;
}

/** A later complaint, before anything is repaired. */
export function laterComplaintCost(prices: CommonPrices): number {
  return (
    prices.laterComplaintHours * prices.labourPerHour + prices.laterComplaintDays * prices.downtimePerDay
  );
}

/** Days off the road: in the workshop, and waiting for the part where the vehicle stands still. */
export function downtimeDays(candidate: RepairCandidate, prices: CommonPrices, waitDays: number): number {
  return candidate.workshopDays + (prices.isUsableWhileWaiting ? 0 : waitDays);
}

/** Everything spent at once on a repair that is needed now. */
export function costNow(candidate: RepairCandidate, prices: CommonPrices): number {
  const days = downtimeDays(candidate, prices, candidate.leadTime?.meanDays ?? 0);
  return candidate.partPrice + candidate.labour + candidate.coreDepositAtRisk + days * prices.downtimePerDay;
}

/** The same at a planned visit: the part is ordered ahead and nobody waits. */
export function costPlanned(candidate: RepairCandidate, prices: CommonPrices): number {
  return (
    candidate.partPrice +
    candidate.labour +
    candidate.coreDepositAtRisk +
    candidate.workshopDays * prices.downtimePerDay
  );
}

/** Doing it again under its own warranty: what the giver bears is left out, the second downtime never. Null without. */
export function warrantyRepeatCost(candidate: RepairCandidate, prices: CommonPrices): number | null {
  if (!candidate.warranty.coversPart) return null;
  const days = downtimeDays(candidate, prices, candidate.leadTime?.meanDays ?? 0);
  return (candidate.warranty.coversLabour ? 0 : candidate.labour) + days * prices.downtimePerDay;
}
