import { optionActions, type OptionAction } from '@endfloat/decision';

/** Hours of work and days in the workshop of one option; waiting for the part is not counted. */
export interface RepairTariff {
  readonly labourHours: number;
  readonly workshopDays: number;
}

/**
 * Usual tariffs by kind of part; JUDGEMENT throughout: cleaning and setting 1.2 h, re-bushing 4.0 h and two days because it
 * is often done elsewhere, fitting another housing 1.8 h and half a day.
 */
const usualTariffs: Readonly<Record<string, Readonly<Record<OptionAction, RepairTariff>>>> = {
  'throttle-housing': {
    leave: { labourHours: 0, workshopDays: 0 },
    adjust: { labourHours: 1.2, workshopDays: 0 },
    reBush: { labourHours: 4, workshopDays: 2 },
    fitUsed: { labourHours: 1.8, workshopDays: 0.5 },
    fitRemanufactured: { labourHours: 1.8, workshopDays: 0.5 },
    fitNew: { labourHours: 1.8, workshopDays: 0.5 },
  },
};

/** Kinds of part whose tariffs are known. */
export const kindsWithTariffs: readonly string[] = Object.keys(usualTariffs);

/** The usual tariff; leaving takes nothing on any part, everything else only where somebody knows it. */
export function usualTariff(componentType: string, action: OptionAction): RepairTariff | null {
  const known = usualTariffs[componentType]?.[action];
  if (known !== undefined) return known;
  return action === 'leave' ? { labourHours: 0, workshopDays: 0 } : null;
}

/** What is considered where nobody says: everything, on a part whose tariffs are known. */
export function usualActions(componentType: string): readonly OptionAction[] | null {
  return usualTariffs[componentType] === undefined ? null : optionActions;
}

/** A later complaint before anything is repaired: an hour of diagnosis and a day; JUDGEMENT. */
export const laterComplaint = { labourHours: 1, downtimeDays: 1 } as const;

/** Chance that a supplier refuses the old part, unless somebody says otherwise; JUDGEMENT. */
export const usualCoreLossChance = 0.1;

/** The draws behind intervals start here, so that the same inputs give the same answer. */
export const assessmentSeed = 1;
