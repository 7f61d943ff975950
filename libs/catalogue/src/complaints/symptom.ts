/** One coded complaint: what the driver notices, never what causes it. */
export interface Symptom {
  /** kebab-case, stable */
  readonly id: string;
  readonly name: string;
  readonly familyId: string;
  /** sentences as a customer might say them, for finding the symptom from the customer's words */
  readonly customerSays: readonly string[];
  /** questions the desk asks before the van is driven into the bay */
  readonly ask: readonly string[];
}
