/** A cause with its weight before anything is known about the van. */
export interface CauseRow {
  readonly id: string;
  /** weights of all causes add up to one */
  readonly prior: number;
}

/** How often a symptom shows under each cause. */
export interface SymptomRow {
  readonly id: string;
  /** cause id to probability that the symptom is present */
  readonly presentGivenCause: Readonly<Record<string, number>>;
}

/** How often a check is positive under each cause, and what it takes. */
export interface CheckRow {
  readonly id: string;
  readonly minutes: number;
  /** a safe and cheap check that is done anyway, before any ranking */
  readonly openingMove: boolean;
  /** checks that must have a result before this one is judged */
  readonly prerequisites: readonly string[];
  /** cause id to probability that the check is positive */
  readonly positiveGivenCause: Readonly<Record<string, number>>;
}

/** Everything the diagnosis computes from; rows in sheet order. */
export interface DiagnosisTables {
  /** names the tables in every answer, for instance 'shipped-1' */
  readonly version: string;
  readonly causes: readonly CauseRow[];
  readonly symptoms: readonly SymptomRow[];
  readonly checks: readonly CheckRow[];
}
