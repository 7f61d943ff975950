import type { DiagnosisTables } from '../tables/diagnosis-tables.js';

/** How much a starting number is worth: as if it had been counted in this many jobs. Judgement. */
export const priorWorthJobs = 20;

/** Where one number comes from: the starting value, what was counted, and what follows. */
export interface LearnedNumber {
  readonly startingValue: number;
  readonly startingWorthJobs: number;
  /** jobs in which it was so */
  readonly yes: number;
  /** jobs in which it was asked or done, and was not so */
  readonly no: number;
  /** mean of the distribution after counting */
  readonly current: number;
  /** counted jobs in which the check was chosen because of earlier results; 0 for symptoms and causes */
  readonly fromSelectedChecks: number;
  /** all counts come from checks chosen because of earlier results: the number may be biased */
  readonly fedOnlyBySelectedChecks: boolean;
}

/** Tables with the provenance of every number. Keys: row id, then cause id. */
export interface LearnedTables {
  readonly method: 'dirichletCausesBetaCells';
  readonly startingTables: DiagnosisTables;
  readonly version: string;
  readonly jobsCounted: number;
  readonly causes: Readonly<Record<string, LearnedNumber>>;
  readonly symptoms: Readonly<Record<string, Readonly<Record<string, LearnedNumber>>>>;
  readonly checks: Readonly<Record<string, Readonly<Record<string, LearnedNumber>>>>;
}
