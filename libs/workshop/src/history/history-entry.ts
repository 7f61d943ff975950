import type { CalibrationStanding } from '../bench/calibration-standing.js';
import type { InstrumentRecord } from '../bench/instruments.use-case.js';
import type { ReadingRecord } from '../bench/judging/bench-case.js';
import type { InspectionRecord } from '../bench/judging/gather-bench-case.js';
import type { VerdictView } from '../bench/reading-view.js';
import type { ComebackRecord } from '../comeback/propose-comebacks.js';
import type { AssessmentRecord } from '../decide/assess.use-case.js';
import type { DecisionRecord } from '../decide/decide.use-case.js';
import type { FittedPartRecord } from '../intake/fitted-parts.use-case.js';
import type { OdometerEntryRecord, OdometerSegmentRecord } from '../intake/odometer.use-case.js';
import type { OwnershipRecord } from '../intake/transfer-vehicle.use-case.js';
import type { ConsentRecord, EstimateRecord } from '../jobs/estimates.use-case.js';
import type { JobEventRecord, JobView } from '../jobs/open-job.use-case.js';
import type { ProofPointRecord } from '../jobs/record-proof.use-case.js';
import type { ReleaseRecord, UnsafeHandoverRecord } from '../jobs/release-job.use-case.js';
import type { ComplaintRecord } from '../jobs/take-complaint.use-case.js';
import type { WorkLineRecord } from '../jobs/work-lines.use-case.js';
import type { Recorded } from '../ports/record-store.port.js';
import type { NoReferences } from '../ports/records/shop.records.js';
import type { Vehicle } from '../ports/records/vehicles.records.js';

/** A complaint with its words, where the caller may read them and they were not erased. */
export interface ComplaintInHistory {
  readonly record: ComplaintRecord;
  readonly words: string | null;
}

/** A reading with the instrument as known at the moment asked about, and its calibration on the day of the reading. */
export interface ReadingInHistory {
  readonly record: ReadingRecord;
  readonly instrument: { readonly record: InstrumentRecord; readonly standing: CalibrationStanding } | null;
}

/** An assessment; its reasons speak of the shop's money and are for the shop's own people. */
export interface AssessmentInHistory {
  readonly record: AssessmentRecord;
  readonly isWithReasons: boolean;
}

/** What the history of a vehicle is made of, by kind. */
export interface HistoryKinds {
  readonly ownership: OwnershipRecord;
  readonly odometerSegment: OdometerSegmentRecord;
  readonly odometerEntry: OdometerEntryRecord;
  readonly fittedPart: FittedPartRecord;
  readonly complaint: ComplaintInHistory;
  readonly job: JobView;
  readonly jobEvent: JobEventRecord;
  readonly inspection: InspectionRecord;
  readonly reading: ReadingInHistory;
  readonly verdict: VerdictView;
  readonly assessment: AssessmentInHistory;
  readonly decision: DecisionRecord;
  readonly estimate: EstimateRecord;
  readonly consent: ConsentRecord;
  readonly workLine: WorkLineRecord;
  readonly proofPoint: ProofPointRecord;
  readonly release: ReleaseRecord;
  readonly unrepairedHandover: UnsafeHandoverRecord;
  readonly comeback: ComebackRecord;
}
export type HistoryKind = keyof HistoryKinds;

/** Order of things that happened at the same moment: what comes about first in a visit stands first. */
export const historyKinds = [
  'ownership',
  'odometerSegment',
  'odometerEntry',
  'fittedPart',
  'complaint',
  'comeback',
  'job',
  'jobEvent',
  'inspection',
  'reading',
  'verdict',
  'assessment',
  'decision',
  'estimate',
  'consent',
  'workLine',
  'proofPoint',
  'release',
  'unrepairedHandover',
] as const satisfies readonly HistoryKind[];

/** One record of the history: as it was known, and its other revisions where they were asked for. */
export interface HistoryEntryOf<K extends HistoryKind> {
  readonly kind: K;
  /** null: before the shop knew the vehicle */
  readonly happenedAt: string | null;
  /** the visit it belongs to */
  readonly jobId: string | null;
  readonly record: HistoryKinds[K];
  /** oldest first: earlier ones, and those recorded after the moment asked about */
  readonly otherRevisions: readonly HistoryKinds[K][];
}
export type HistoryEntry = { [K in HistoryKind]: HistoryEntryOf<K> }[HistoryKind];

export interface HistoryOfVehicle {
  /** the moment as of which everything is told */
  readonly asOf: string;
  readonly vehicle: {
    readonly record: Recorded<NoReferences, Vehicle>;
    readonly otherRevisions: readonly Recorded<NoReferences, Vehicle>[];
  };
  readonly entries: readonly HistoryEntry[];
  /** names of the shop's people who stand in it; empty for a customer's user */
  readonly people: readonly { readonly userId: string; readonly displayName: string }[];
  /** kinds of which only the latest are told */
  readonly cut: readonly { readonly kind: HistoryKind; readonly kept: number }[];
  /** there were more corrected records than revisions are read of */
  readonly areRevisionsCut: boolean;
}

/** Most records of each kind in one history; the latest are kept. */
export const historyLimits: Readonly<Record<HistoryKind, number>> = {
  ownership: 200,
  odometerSegment: 200,
  odometerEntry: 500,
  fittedPart: 500,
  complaint: 200,
  job: 200,
  jobEvent: 1000,
  inspection: 200,
  reading: 2000,
  verdict: 2000,
  assessment: 200,
  decision: 200,
  estimate: 400,
  consent: 400,
  workLine: 1000,
  proofPoint: 1000,
  release: 200,
  unrepairedHandover: 200,
  comeback: 400,
};

/** Most records of which all revisions are read. */
export const mostRevisedRecords = 1000;
