import type { CheckOutcome, SymptomState } from '../evidence/evidence.js';

/** Why a check was done. Checks chosen because of earlier results see a selected group of vans. */
export const checkChoices = ['routine', 'becauseOfEarlierResults'] as const;
export type CheckChoice = (typeof checkChoices)[number];

/** One check of a closed job, as found. */
export interface CaseCheck {
  readonly checkId: string;
  readonly outcome: CheckOutcome;
  /** judged before its prerequisites were passed: never teaches */
  readonly provisional: boolean;
  readonly choice: CheckChoice;
}

/** Where the watch window of a job stands. A van never seen again is not a success. */
export const windowStandings = ['running', 'elapsed', 'notSeenSince'] as const;
export type WindowStanding = (typeof windowStandings)[number];

export type CaseComeback =
  | { readonly kind: 'none' }
  /** proposed by rule, not yet confirmed or refused by a person */
  | { readonly kind: 'proposed' }
  | {
      readonly kind: 'confirmed';
      /** cause that the comeback established; null while it established none */
      readonly establishedCauseId: string | null;
      /** window of the comeback's own repair */
      readonly window: WindowStanding;
    };

/** A closed job as the learning sees it. */
export interface ClosedCase {
  readonly caseId: string;
  /** a symptom not named was not asked */
  readonly symptoms: Readonly<Record<string, SymptomState>>;
  readonly checks: readonly CaseCheck[];
  /** null: cause not established */
  readonly confirmedCauseId: string | null;
  readonly window: WindowStanding;
  readonly comeback: CaseComeback;
  /** the case whose comeback this job is; it is counted there, with the original symptoms */
  readonly comebackOf: string | null;
}
