import { KindField } from '../fields/index.js';
import { ComebackResponse } from '../comebacks/index.js';
import { ComplaintSummary } from '../complaints/index.js';
import { DecisionResponse } from '../decisions/index.js';
import { FittedPartResponse } from '../fitted-parts/index.js';
import { InspectionResponse } from '../inspections/index.js';
import {
  ConsentResponse,
  EstimateResponse,
  JobEventResponse,
  JobResponse,
  ProofPointResponse,
  ReleaseResponse,
  UnrepairedHandoverResponse,
  WorkLineResponse,
} from '../jobs/index.js';
import { OdometerEntryResponse, OdometerSegmentResponse } from '../odometer/index.js';
import { VerdictResponse } from '../readings/index.js';
import { OwnershipResponse } from '../vehicles/index.js';
import { AssessmentInHistory } from './assessment-in-history.dto.js';
import { HistoryMoment, OtherRevisionsField, RecordField } from './history-moment.dto.js';
import { ReadingInHistory } from './reading-in-history.dto.js';

export class OwnershipEntry extends HistoryMoment {
  @KindField('ownership')
  kind!: 'ownership';

  @RecordField('Who owned it from then on.', () => OwnershipResponse)
  record!: OwnershipResponse;

  @OtherRevisionsField(() => OwnershipResponse)
  otherRevisions!: OwnershipResponse[];
}

export class OdometerSegmentEntry extends HistoryMoment {
  @KindField('odometerSegment')
  kind!: 'odometerSegment';

  @RecordField('A stretch of the odometer began.', () => OdometerSegmentResponse)
  record!: OdometerSegmentResponse;

  @OtherRevisionsField(() => OdometerSegmentResponse)
  otherRevisions!: OdometerSegmentResponse[];
}

export class OdometerEntryEntry extends HistoryMoment {
  @KindField('odometerEntry')
  kind!: 'odometerEntry';

  @RecordField('What the odometer showed.', () => OdometerEntryResponse)
  record!: OdometerEntryResponse;

  @OtherRevisionsField(() => OdometerEntryResponse)
  otherRevisions!: OdometerEntryResponse[];
}

export class FittedPartEntry extends HistoryMoment {
  @KindField('fittedPart')
  kind!: 'fittedPart';

  @RecordField('A part, from its fitting to its removal.', () => FittedPartResponse)
  record!: FittedPartResponse;

  @OtherRevisionsField(() => FittedPartResponse)
  otherRevisions!: FittedPartResponse[];
}

export class ComplaintEntry extends HistoryMoment {
  @KindField('complaint')
  kind!: 'complaint';

  @RecordField(
    'A complaint; `words` are null where the caller may not read them or they were erased.',
    () => ComplaintSummary,
  )
  record!: ComplaintSummary;

  @OtherRevisionsField(() => ComplaintSummary)
  otherRevisions!: ComplaintSummary[];
}

export class JobEntry extends HistoryMoment {
  @KindField('job')
  kind!: 'job';

  @RecordField('A visit, with its state as known then.', () => JobResponse)
  record!: JobResponse;

  @OtherRevisionsField(() => JobResponse)
  otherRevisions!: JobResponse[];
}

export class JobEventEntry extends HistoryMoment {
  @KindField('jobEvent')
  kind!: 'jobEvent';

  @RecordField('A job waited, went on, was finished or closed.', () => JobEventResponse)
  record!: JobEventResponse;

  @OtherRevisionsField(() => JobEventResponse)
  otherRevisions!: JobEventResponse[];
}

export class InspectionEntry extends HistoryMoment {
  @KindField('inspection')
  kind!: 'inspection';

  @RecordField('An inspection was begun.', () => InspectionResponse)
  record!: InspectionResponse;

  @OtherRevisionsField(() => InspectionResponse)
  otherRevisions!: InspectionResponse[];
}

export class ReadingEntry extends HistoryMoment {
  @KindField('reading')
  kind!: 'reading';

  @RecordField('Who measured what, when, with which instrument.', () => ReadingInHistory)
  record!: ReadingInHistory;

  @OtherRevisionsField(() => ReadingInHistory)
  otherRevisions!: ReadingInHistory[];
}

export class VerdictEntry extends HistoryMoment {
  @KindField('verdict')
  kind!: 'verdict';

  @RecordField(
    'What readings said against one limit, in its edition; stands at the last of its readings.',
    () => VerdictResponse,
  )
  record!: VerdictResponse;

  @OtherRevisionsField(() => VerdictResponse)
  otherRevisions!: VerdictResponse[];
}

export class EstimateEntry extends HistoryMoment {
  @KindField('estimate')
  kind!: 'estimate';

  @RecordField('A version of an estimate.', () => EstimateResponse)
  record!: EstimateResponse;

  @OtherRevisionsField(() => EstimateResponse)
  otherRevisions!: EstimateResponse[];
}

export class ConsentEntry extends HistoryMoment {
  @KindField('consent')
  kind!: 'consent';

  @RecordField('An answer to one version of an estimate.', () => ConsentResponse)
  record!: ConsentResponse;

  @OtherRevisionsField(() => ConsentResponse)
  otherRevisions!: ConsentResponse[];
}

export class WorkLineEntry extends HistoryMoment {
  @KindField('workLine')
  kind!: 'workLine';

  @RecordField('Work on one component; stands at its doing, or at its planning.', () => WorkLineResponse)
  record!: WorkLineResponse;

  @OtherRevisionsField(() => WorkLineResponse)
  otherRevisions!: WorkLineResponse[];
}

export class ProofPointEntry extends HistoryMoment {
  @KindField('proofPoint')
  kind!: 'proofPoint';

  @RecordField('A point of the proof was tested.', () => ProofPointResponse)
  record!: ProofPointResponse;

  @OtherRevisionsField(() => ProofPointResponse)
  otherRevisions!: ProofPointResponse[];
}

export class ReleaseEntry extends HistoryMoment {
  @KindField('release')
  kind!: 'release';

  @RecordField('The van was released.', () => ReleaseResponse)
  record!: ReleaseResponse;

  @OtherRevisionsField(() => ReleaseResponse)
  otherRevisions!: ReleaseResponse[];
}

export class UnrepairedHandoverEntry extends HistoryMoment {
  @KindField('unrepairedHandover')
  kind!: 'unrepairedHandover';

  @RecordField('The van was handed over unrepaired, not for the road.', () => UnrepairedHandoverResponse)
  record!: UnrepairedHandoverResponse;

  @OtherRevisionsField(() => UnrepairedHandoverResponse)
  otherRevisions!: UnrepairedHandoverResponse[];
}

export class ComebackEntry extends HistoryMoment {
  @KindField('comeback')
  kind!: 'comeback';

  @RecordField('A complaint was tied to an earlier job: `jobId` is the earlier one.', () => ComebackResponse)
  record!: ComebackResponse;

  @OtherRevisionsField(() => ComebackResponse)
  otherRevisions!: ComebackResponse[];
}

export class AssessmentEntry extends HistoryMoment {
  @KindField('assessment')
  kind!: 'assessment';

  @RecordField('What was recommended.', () => AssessmentInHistory)
  record!: AssessmentInHistory;

  @OtherRevisionsField(() => AssessmentInHistory)
  otherRevisions!: AssessmentInHistory[];
}

export class DecisionEntry extends HistoryMoment {
  @KindField('decision')
  kind!: 'decision';

  @RecordField('What was chosen, and why.', () => DecisionResponse)
  record!: DecisionResponse;

  @OtherRevisionsField(() => DecisionResponse)
  otherRevisions!: DecisionResponse[];
}

/** Everything that can stand in a history. */
export const historyEntries = [
  OwnershipEntry,
  OdometerSegmentEntry,
  OdometerEntryEntry,
  FittedPartEntry,
  ComplaintEntry,
  JobEntry,
  JobEventEntry,
  InspectionEntry,
  ReadingEntry,
  VerdictEntry,
  EstimateEntry,
  ConsentEntry,
  WorkLineEntry,
  ProofPointEntry,
  ReleaseEntry,
  UnrepairedHandoverEntry,
  ComebackEntry,
  AssessmentEntry,
  DecisionEntry,
] as const;
export type HistoryEntryDto = InstanceType<(typeof historyEntries)[number]>;
