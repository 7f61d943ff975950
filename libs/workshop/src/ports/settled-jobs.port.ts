import type { ComebackAttribution, ComebackCountsAgainst } from '@endfloat/catalogue';
import type { WindowClosing } from '@endfloat/reliability';

/** What a rate is told by. A job without a value stands under `null`: it is never lost. */
export const rateDimensions = [
  'symptom',
  'symptomFamily',
  'action',
  'partCondition',
  'supplier',
  'component',
  'customer',
  'fleet',
  'vehicleAge',
  'diagnosedBy',
  'fittedBy',
  'month',
  'quarter',
  'year',
] as const;
export type RateDimension = (typeof rateDimensions)[number];

/** Years of age that stand together. */
export const ageBandYears = 5;

/** One confirmed comeback of a settled job with what its repeat cost. */
export interface SettledRepeat {
  readonly comebackId: string;
  readonly complaintId: string;
  readonly repeatJobId: string | null;
  readonly receivedAt: string;
  readonly attribution: ComebackAttribution | null;
  /** decimal text in the currency of the shop, this job's share */
  readonly labour: string;
  readonly parts: string;
  readonly handling: string;
  readonly total: string;
  /** lines without minutes or price, or priced in another currency: what the cost leaves out */
  readonly gaps: number;
}

/** A released job with everything rates ask of it. */
export interface SettledJobRow {
  readonly jobId: string;
  readonly vehicleId: string;
  /** owner when it was released */
  readonly customerId: string | null;
  readonly releasedAt: string;
  readonly closesAt: string;
  readonly closedBy: WindowClosing;
  /** counted with the first job of its chain, not by itself */
  readonly isRepeat: boolean;
  readonly comebackAt: string | null;
  readonly anyComebackAt: string | null;
  readonly firstSeenAt: string | null;
  readonly seenAfterClosingAt: string | null;
  readonly lastSeenAt: string | null;
  readonly diagnosedBy: string | null;
  /** whole years since first use, when it was released */
  readonly ageYears: number | null;
  /** kind of job that a fair comparison takes as like */
  readonly mix: string;
  readonly fittedBy: readonly string[];
  readonly symptoms: readonly string[];
  readonly symptomFamilies: readonly string[];
  readonly actions: readonly string[];
  readonly components: readonly string[];
  readonly partConditions: readonly string[];
  readonly suppliers: readonly string[];
  /** whose process its comebacks were attributed to */
  readonly countsAgainst: readonly ComebackCountsAgainst[];
  /** a comeback of it is not attributed yet */
  readonly unattributed: boolean;
  readonly comebacks: number;
  /** decimal text in the currency of the shop */
  readonly cost: string;
  readonly costGaps: number;
  readonly repeats: readonly SettledRepeat[];
}

/** Which jobs, looked at when. */
export interface RateQuestion {
  /** windows and comebacks as they stood at this instant, by what is known now */
  readonly at: string;
  readonly timeZone: string;
  /** released from this instant on */
  readonly from?: string | undefined;
  /** released before this instant */
  readonly until?: string | undefined;
  readonly customerId?: string | undefined;
  /** jobs of these vehicles only */
  readonly vehicleIds?: readonly string[] | undefined;
  readonly symptom?: string | undefined;
  readonly component?: string | undefined;
  readonly action?: string | undefined;
  /** comebacks attributed to this process only; absent: every confirmed one, as the customer sees it */
  readonly against?: ComebackCountsAgainst | undefined;
  /** jobs of one value of a dimension; `null`: those without a value */
  readonly group?: { readonly by: RateDimension; readonly value: string | null } | undefined;
}

export interface RateTally {
  readonly value: string | null;
  readonly events: number;
  readonly atRisk: number;
  readonly pending: number;
  readonly pendingComebacks: number;
  readonly notSeenSince: number;
  readonly seenOnlyInsideWindow: number;
  /** came back, but to whom that counts is not settled: in neither number of an attributed rate */
  readonly notAttributed: number;
  /** comebacks of all these jobs, those of comebacks included */
  readonly comebacks: number;
  readonly cost: string;
  readonly costGaps: number;
}

/** `value` undefined: the whole stratum, each job once. */
export interface MixTally {
  readonly value: string | null | undefined;
  readonly mix: string;
  readonly events: number;
  readonly atRisk: number;
}

/** Jobs by the day since release on which they came back, or were last seen; day null: never seen again. */
export interface AgeTally {
  readonly day: number | null;
  readonly comebacks: number;
  readonly lastSeen: number;
}

export const jobOutcomeFilters = [
  'comeback',
  'noComeback',
  'pending',
  'notSeenSince',
  'notAttributed',
] as const;
export type JobOutcomeFilter = (typeof jobOutcomeFilters)[number];

/** Place of a job in a list by release, the latest first. */
export interface SettledJobPosition {
  readonly sortValue: string;
  readonly id: string;
}

export const costDimensions = ['attribution', 'month', 'quarter', 'year'] as const;
export type CostDimension = (typeof costDimensions)[number];

export interface CostTally {
  readonly value: string | null;
  readonly comebacks: number;
  readonly labour: string;
  readonly parts: string;
  readonly handling: string;
  readonly total: string;
  readonly gaps: number;
}

/** What rates ask. Answered by SQL over the projection, or over rows in memory as of an earlier moment: with one answer. */
export interface SettledJobReads {
  /** by one dimension, in the order of its values */
  tally(question: RateQuestion, by: RateDimension): Promise<readonly RateTally[]>;
  /** all jobs of the question as one group, each once */
  total(question: RateQuestion): Promise<RateTally>;
  /** by value and kind of job, with the kinds as a whole */
  tallyByMix(question: RateQuestion, by: RateDimension): Promise<readonly MixTally[]>;
  ages(question: RateQuestion): Promise<readonly AgeTally[]>;
  /** numbers of the jobs at risk, in order of release from 1 on, that came back; the latest `most` */
  eventPlaces(
    question: RateQuestion,
    most: number,
  ): Promise<readonly { readonly place: number; readonly jobId: string; readonly releasedAt: string }[]>;
  /** when comebacks were received, one a complaint, in their order; the latest `most` */
  comebackTimes(question: RateQuestion, most: number): Promise<readonly string[]>;
  /** comebacks received in the period of the question, by what they cost */
  costs(question: RateQuestion, by: CostDimension): Promise<readonly CostTally[]>;
  list(
    question: RateQuestion,
    page: {
      readonly outcome?: JobOutcomeFilter | undefined;
      readonly after?: SettledJobPosition | undefined;
      readonly limit: number;
    },
  ): Promise<{ readonly items: readonly SettledJobRow[]; readonly next?: SettledJobPosition | undefined }>;
}

/** The projection itself. */
export interface SettledJobStore extends SettledJobReads {
  /** vehicles whose latest records are not in it by this method yet, counted up to `most` */
  unsettled(version: number, most: number): Promise<number>;
  /** released jobs of the shop in it */
  count(): Promise<number>;
  /** Takes vehicles to settle again and drops their rows; to be added again in the same transaction. */
  takeUnsettled(most: number): Promise<readonly string[]>;
  /** Marks every vehicle that has a row of another method than this. Answers how many rows there were. */
  markOtherMethod(version: number): Promise<number>;
  /** Marks every vehicle with a job. */
  markAll(): Promise<void>;
  add(rows: readonly SettledJobRow[], version: number): Promise<void>;
  /** proposals like one, that persons have settled */
  settledProposals(ground: string): Promise<{ readonly confirmed: number; readonly refused: number }>;
}
