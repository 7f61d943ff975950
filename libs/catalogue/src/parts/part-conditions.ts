/** Condition of a part as it must be declared on the estimate. */
export const partConditions = [
  'new',
  'newOldStock',
  'remanufactured',
  'rebuilt',
  'reconditioned',
  'used',
  'repairedOwnPart',
] as const;
export type PartCondition = (typeof partConditions)[number];

export interface PartConditionDefinition {
  readonly id: PartCondition;
  readonly meaning: string;
  /** measured on arrival with the same sheet before it is fitted */
  readonly inspectBeforeFitting: boolean;
  /** the word is restricted by a rule somewhere; the citation names one */
  readonly citation: string | null;
}

const FTC = '16 CFR 20.3; 79 FR 40623, 14 July 2014';

/** Words are regulated in the United States (16 CFR 20); elsewhere common practice. */
export const partConditionDefinitions: readonly PartConditionDefinition[] = [
  { id: 'new', meaning: 'unused and of current supply', inspectBeforeFitting: false, citation: null },
  {
    id: 'newOldStock',
    meaning: 'unused but stored for long; rubber parts may have aged',
    inspectBeforeFitting: true,
    citation: null,
  },
  {
    id: 'remanufactured',
    meaning: 'rebuilt at a factory that is generally engaged in rebuilding',
    inspectBeforeFitting: false,
    citation: FTC,
  },
  {
    id: 'rebuilt',
    meaning: 'dismantled, cleaned, worn parts restored or replaced, and in sound working condition',
    inspectBeforeFitting: true,
    citation: FTC,
  },
  {
    id: 'reconditioned',
    meaning: 'put back into working order to an extent that is stated',
    inspectBeforeFitting: true,
    citation: null,
  },
  {
    id: 'used',
    meaning: 'taken from another vehicle; its wear is unknown until it is measured',
    inspectBeforeFitting: true,
    citation: FTC,
  },
  {
    id: 'repairedOwnPart',
    meaning: 'the part of this vehicle, repaired and refitted',
    inspectBeforeFitting: true,
    citation: null,
  },
];
