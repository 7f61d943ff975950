import { jobEventKinds, jobStates, type JobEventKind, type JobState } from '@endfloat/workshop/ports';
import {
  EnumField,
  IdField,
  InstantField,
  JoinTypes,
  ListField,
  NestedField,
  TextField,
  textPatterns,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';
import { OdometerShownDto } from '../odometer/index.js';

export class JobContent {
  @InstantField({ description: 'When the visit began.' })
  openedAt!: string;

  @IdField({ description: 'User it is assigned to; null: nobody yet.', nullable: true })
  assignedTo!: string | null;

  @IdField({ description: 'Technician who diagnosed; who fitted stands on the work line.', nullable: true })
  diagnosedBy!: string | null;

  @TextField({
    description:
      'Cause established by a check and by the cure, by id of GET /v1/causes; null: not established.',
    nullable: true,
    max: 64,
    pattern: textPatterns.catalogueId,
  })
  causeId!: string | null;

  @TextField({ description: 'Remark.', nullable: true, max: 2000 })
  note!: string | null;
}

export class OpenJobRequest extends JobContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @ListField({ description: 'Complaints this job deals with.', max: 20, ids: true, unique: true })
  complaintIds!: string[];

  @NestedField({
    description: 'What the odometer showed on arrival; null: not read.',
    nullable: true,
    type: () => OdometerShownDto,
  })
  odometer!: OdometerShownDto | null;
}

export class CorrectJobRequest extends JobContent {
  @ReasonField()
  reason!: string;
}

export class JobEventContent {
  @EnumField({ description: 'What happened to the job.', values: jobEventKinds, enumName: 'JobEventKind' })
  kind!: JobEventKind;

  @InstantField({ description: 'When.' })
  happenedAt!: string;

  @TextField({ description: 'Remark, e.g. which part is awaited.', nullable: true, max: 500 })
  note!: string | null;
}

export class RecordJobEventRequest extends JobEventContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

export class JobEventResponse extends JoinTypes(RecordedResponse, JobEventContent) {
  @IdField({ description: 'The job.' })
  jobId!: string;
}

export class JobResponse extends JoinTypes(RecordedResponse, JobContent) {
  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @EnumField({
    description: 'Where the job stands, derived from what happened.',
    values: jobStates,
    enumName: 'JobState',
  })
  state!: JobState;

  @ListField({ description: 'What happened to it, in order.', max: 200, type: () => JobEventContent })
  events!: JobEventContent[];

  @ListField({ description: 'Complaints it deals with.', max: 100, ids: true })
  complaintIds!: string[];

  @ListField({ description: 'Its inspections.', max: 100, ids: true })
  inspectionIds!: string[];
}

export class JobPage extends pageOf(() => JobResponse) {}

export class ListJobsQuery extends PageQuery {
  @IdField({ description: 'Jobs of this vehicle.', optional: true })
  vehicleId?: string;

  @IdField({ description: 'Jobs assigned to this user.', optional: true })
  assignedTo?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class JobPath {
  @IdField({ description: 'Id of the job.' })
  jobId!: string;
}
