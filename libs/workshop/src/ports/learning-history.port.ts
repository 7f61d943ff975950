import type { ComebackAttribution, PartCondition } from '@endfloat/catalogue';
import type { AssessmentInput, OptionAssessment, Recommendation } from '@endfloat/decision';
import type { Verdict } from './records/bench.records.js';
import type { AssessmentQuestion, DecisionChoice } from './records/decide.records.js';
import type { ComebackState, SymptomAnswer, WorkAction } from './records/jobs.records.js';

/** Work done on one component of a job. */
export interface RepairDone {
  readonly action: WorkAction;
  readonly componentType: string;
  readonly position: string;
  readonly condition: PartCondition | null;
}

/** One released job with what followed, as it is known now. */
export interface ReleasedJobHistory {
  readonly jobId: string;
  readonly vehicleId: string;
  /** confirmed cause; null: not established */
  readonly causeId: string | null;
  readonly releasedAt: string;
  readonly windowDays: number;
  readonly windowKm: string;
  readonly releasedKm: string | null;
  /** the vehicle after the release: distances inside the window, and when it was last here */
  readonly sightings: readonly { readonly seenAt: string; readonly km: string | null }[];
  /** answers of each complaint of the job */
  readonly symptoms: readonly Readonly<Record<string, SymptomAnswer>>[];
  /** later complaints tied to this job, and the jobs that dealt with them */
  readonly comebacks: readonly {
    readonly state: ComebackState;
    readonly attribution: ComebackAttribution | null;
    readonly repeatJobId: string | null;
  }[];
  /** earlier jobs of which this one is a confirmed comeback */
  readonly comebackOf: readonly string[];
  readonly repairs: readonly RepairDone[];
}

/** One check of a job as found, with its verdicts. */
export interface FoundCheck {
  readonly jobId: string;
  readonly inspectionId: string;
  readonly checkSheetId: string;
  readonly checkId: string;
  /** null where it was judged and no reading stands */
  readonly firstTakenAt: string | null;
  readonly verdicts: readonly Omit<Verdict, 'probabilityInside'>[];
}

/** The latest assessment of a component in a job before its release, with what was chosen after it. */
export interface AssessedRepair {
  readonly assessmentId: string;
  readonly jobId: string;
  readonly question: AssessmentQuestion;
  readonly modelVersion: string;
  readonly recordedAt: string;
  readonly characteristic: AssessmentInput['characteristic'];
  readonly evidence: AssessmentInput['evidence'];
  readonly recommendation: Recommendation;
  readonly options: readonly OptionAssessment[];
  /** null where nothing was decided */
  readonly chosen: DecisionChoice | null;
}

/** Reads for learning and back-testing that cross many jobs, in one statement each. */
export interface LearningHistoryQueries {
  /** Changes whenever something that could teach was recorded, or the days of a watch window have run out by `now`. */
  mark(now: string): Promise<string>;
  /** Jobs released at or before `until`, oldest first. */
  releasedJobs(until: string): Promise<readonly ReleasedJobHistory[]>;
  /** Checks of these jobs as found. */
  foundChecks(jobIds: readonly string[]): Promise<readonly FoundCheck[]>;
  /** Assessments of these jobs that were made before the release; options only where asked for. */
  assessedRepairs(jobIds: readonly string[], withOptions: boolean): Promise<readonly AssessedRepair[]>;
}
