/** A symptom nobody asked about is not absent. */
export const symptomStates = ['present', 'absent', 'notAsked'] as const;
export type SymptomState = (typeof symptomStates)[number];

/** 'corrected': the check was positive, the finding was put right, and the check was repeated with a good result. */
export const checkOutcomes = ['positive', 'negative', 'undecided', 'corrected'] as const;
export type CheckOutcome = (typeof checkOutcomes)[number];

/** One result of one check. */
export interface CheckResult {
  readonly checkId: string;
  readonly outcome: CheckOutcome;
  /**
   * For 'corrected' only. True: the complaint was tried again and is still there, so the finding was not (all of) the
   * cause and the repeated, negative check counts. Otherwise the positive result as found counts.
   */
  readonly complaintPersists?: boolean;
}

/** What is known about one van's complaint. */
export interface Evidence {
  /** symptom id to state; a symptom not named is not asked */
  readonly symptoms: Readonly<Record<string, SymptomState>>;
  /** in the order in which they were obtained */
  readonly results: readonly CheckResult[];
}
