import type { CostRates, OptionCostTerms } from '../expected-cost/option-cost-terms.js';

const euro = (amount: string) => ({ amount, currency: 'EUR' });

/**
 * Invented price example of the trade (judgement): throttle housing with the shaft over its limit. It fixes the
 * arithmetic and is no model to inherit. The currency is any; EUR is taken.
 */
export const workedRates: CostRates = {
  labourPerHour: euro('80.00'),
  downtimePerDay: euro('60.00'),
  comebackHandling: euro('250.00'),
  followUpRepair: euro('654.00'),
};

export const workedOption = (
  optionId: string,
  parts: string,
  labourHours: string,
  downtimeDays: string,
  probabilityOfComeback: string,
  warranty = false,
  deposit: string | null = null,
): OptionCostTerms => ({
  optionId,
  parts: euro(parts),
  labourHours,
  downtimeDays,
  probabilityOfComeback,
  comebackConsequence: warranty ? 'handlingOnly' : 'handlingPlusFollowUpRepair',
  core: deposit === null ? null : { deposit: euro(deposit), probabilityOfLosing: '0' },
});

export const shaftOverLimit = {
  adjustOnly: workedOption('adjust-only', '0.00', '1.2', '0', '0.60'),
  reBush: workedOption('re-bush', '35.00', '4.0', '2', '0.10'),
  remanufactured: workedOption('remanufactured-exchange', '310.00', '1.8', '3', '0.08', true, '80.00'),
  usedMeasured: workedOption('used-measured', '120.00', '1.8', '4', '0.22'),
  newOldStock: workedOption('new-old-stock', '520.00', '1.8', '14', '0.04', true),
} as const;
