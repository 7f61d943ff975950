import { checkStates, readingPhases, type CheckState, type ReadingPhase } from '@endfloat/workshop/ports';
import {
  EnumField,
  FlagField,
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  ListField,
  TextField,
  textPatterns,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';
import { VerdictResponse } from '../readings/index.js';

export class CheckRemarkDto {
  @TextField({ description: 'The check.', max: 128, pattern: textPatterns.catalogueId })
  checkId!: string;

  @TextField({ description: 'Why.', min: 3, max: 300, example: 'somebody else had turned the screw' })
  reason!: string;
}

export class InspectionContent {
  @InstantField({ description: 'When it was begun.' })
  startedAt!: string;

  @IdField({ description: 'Technician.', nullable: true })
  technicianId!: string | null;

  @ListField({
    description: 'Checks whose state before any work nobody can know any more.',
    max: 200,
    type: () => CheckRemarkDto,
  })
  asFoundNotTaken!: CheckRemarkDto[];

  @ListField({
    description: 'Checks left out on purpose: not fitted, not possible today.',
    max: 200,
    type: () => CheckRemarkDto,
  })
  notDone!: CheckRemarkDto[];

  @TextField({ description: 'Remark.', nullable: true, max: 1000 })
  note!: string | null;
}

export class RecordInspectionRequest {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @IdField({ description: 'Job it belongs to; null: none.', nullable: true })
  jobId!: string | null;

  @IdField({ description: 'Version of the check sheet it follows.' })
  checkSheetId!: string;

  @InstantField({ description: 'When it was begun.' })
  startedAt!: string;

  @IdField({ description: 'Technician.', nullable: true })
  technicianId!: string | null;

  @ListField({
    description: 'Checks whose state before any work nobody can know any more; none where absent.',
    optional: true,
    max: 200,
    type: () => CheckRemarkDto,
  })
  asFoundNotTaken?: CheckRemarkDto[];

  @ListField({
    description: 'Checks left out on purpose; none where absent.',
    optional: true,
    max: 200,
    type: () => CheckRemarkDto,
  })
  notDone?: CheckRemarkDto[];

  @TextField({ description: 'Remark.', optional: true, nullable: true, max: 1000 })
  note?: string | null;
}

export class CorrectInspectionRequest extends InspectionContent {
  @ReasonField()
  reason!: string;
}

export class InspectionResponse extends JoinTypes(RecordedResponse, InspectionContent) {
  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @IdField({ description: 'Its job.', nullable: true })
  jobId!: string | null;

  @IdField({ description: 'Version of the check sheet.' })
  checkSheetId!: string;
}

export class InspectionRevisions {
  @ListField({ description: 'Revisions, oldest first.', max: 1000, type: () => InspectionResponse })
  items!: InspectionResponse[];
}

export class InspectionPage extends pageOf(() => InspectionResponse) {}

export class ListInspectionsQuery extends PageQuery {
  @IdField({ description: 'Inspections of this vehicle.', optional: true })
  vehicleId?: string;

  @IdField({ description: 'Inspections of this job.', optional: true })
  jobId?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class InspectionPath {
  @IdField({ description: 'Id of the inspection.' })
  inspectionId!: string;
}

export class PhaseProgressDto {
  @EnumField({ description: 'Before or after work.', values: readingPhases, enumName: 'ReadingPhase' })
  phase!: ReadingPhase;

  @TextField({ description: 'Where on the vehicle.', max: 64 })
  position!: string;

  @EnumField({ description: 'Where it stands.', values: checkStates, enumName: 'CheckState', open: true })
  state!: CheckState;

  @ListField({ description: 'Readings, by the time they were taken.', max: 1000, ids: true })
  readingIds!: string[];

  @InstantField({ description: 'When the last was taken.' })
  lastTakenAt!: string;

  @ListField({ description: 'Verdicts, one for each limit.', max: 200, type: () => VerdictResponse })
  verdicts!: VerdictResponse[];
}

export class CheckProgressDto {
  @TextField({ description: 'The check.', max: 128 })
  checkId!: string;

  @TextField({ description: 'In words.', max: 2000 })
  title!: string;

  @EnumField({
    description: 'Where it stands: as left where it was read after work, else as found.',
    values: checkStates,
    enumName: 'CheckState',
    open: true,
  })
  state!: CheckState;

  @ListField({
    description: 'Checks that have to be passed before this one is judged.',
    max: 100,
    text: { max: 128 },
  })
  openPrerequisites!: string[];

  @TextField({
    description: 'Check whose functional answer outranks the numbers of this one.',
    nullable: true,
    max: 128,
  })
  outrankedBy!: string | null;

  @FlagField({ description: 'To be read as left: it, or what comes before it, was worked on since.' })
  asLeftDue!: boolean;

  @TextField({ description: 'Why as found was never taken.', nullable: true, max: 300 })
  asFoundNotTaken!: string | null;

  @TextField({ description: 'Why it was left out.', nullable: true, max: 300 })
  notDone!: string | null;

  @ListField({ description: 'What was read, by phase and position.', max: 100, type: () => PhaseProgressDto })
  phases!: PhaseProgressDto[];
}

/** Where every check of an inspection stands. */
export class InspectionProgressResponse {
  @IdField({ description: 'The inspection.' })
  inspectionId!: string;

  @TextField({ description: 'Id of the sheet.', max: 128 })
  checkSheetCode!: string;

  @IntegerField({ description: 'Version of the sheet.', min: 1 })
  checkSheetVersion!: number;

  @ListField({ description: 'Checks in the order of the sheet.', max: 500, type: () => CheckProgressDto })
  checks!: CheckProgressDto[];

  @TextField({ description: 'What comes before the sheet.', max: 2000 })
  precedence!: string;
}
