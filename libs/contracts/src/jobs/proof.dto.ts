import { proofOutcomes, type ProofOutcome } from '@endfloat/workshop/ports';
import {
  DecimalField,
  EnumField,
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  ListField,
  LocalDateField,
  TextField,
  textPatterns,
} from '../fields/index.js';
import { RecordedResponse } from '../recording/index.js';

export class ProofPointContent {
  @TextField({
    description: 'Point by id of GET /v1/proof-points.',
    max: 64,
    pattern: textPatterns.catalogueId,
    example: 'ac-load-at-hot-idle',
  })
  point!: string;

  @EnumField({
    description: 'Result. A point not driven is "notTested", never "passed".',
    values: proofOutcomes,
    enumName: 'ProofOutcome',
  })
  outcome!: ProofOutcome;

  @InstantField({ description: 'When.' })
  testedAt!: string;

  @IdField({ description: 'Who tested.' })
  testedBy!: string;

  @TextField({ description: 'Why it was not tested.', nullable: true, max: 300 })
  notTestedBecause!: string | null;

  @LocalDateField({ description: 'When it will be looked at again.', nullable: true })
  recheckOn!: string | null;

  @TextField({ description: 'What was seen: speeds, settling time.', nullable: true, max: 500 })
  note!: string | null;
}

export class RecordProofPointRequest extends ProofPointContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

export class ProofPointResponse extends JoinTypes(RecordedResponse, ProofPointContent) {
  @IdField({ description: 'The job.' })
  jobId!: string;
}

export const missingProofReasons = [
  'notRecorded',
  'failed',
  'mandatoryNotTested',
  'noReason',
  'noRecheckDate',
] as const;

export class MissingProofResponse {
  @TextField({ description: 'The point.', max: 64 })
  point!: string;

  @TextField({ description: 'The point in words.', max: 200 })
  title!: string;

  @EnumField({ description: 'What is missing.', values: missingProofReasons, enumName: 'MissingProofReason' })
  why!: (typeof missingProofReasons)[number];
}

export class ProofResponse {
  @ListField({
    description: 'What was tested; the latest of each point counts.',
    max: 500,
    type: () => ProofPointResponse,
  })
  points!: ProofPointResponse[];

  @ListField({ description: 'Points this job wants before release.', max: 100, text: { max: 64 } })
  wanted!: string[];

  @ListField({ description: 'Points still missing.', max: 100, type: () => MissingProofResponse })
  missing!: MissingProofResponse[];
}

export class ReleaseJobRequest {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @InstantField({ description: 'When.' })
  releasedAt!: string;

  @IdField({ description: 'Who signs.' })
  releasedBy!: string;

  @TextField({ description: 'The signed statement.', min: 3, max: 1000 })
  statement!: string;
}

export class ReleaseResponse extends JoinTypes(RecordedResponse, ReleaseJobRequest) {
  @IdField({ description: 'The job.' })
  jobId!: string;

  @IntegerField({ description: 'Days the job is watched for comebacks.' })
  windowDays!: number;

  @DecimalField({ description: 'Distance it is watched for, in km; whichever is reached first.' })
  windowKm!: string;

  @DecimalField({
    description: 'Distance of the vehicle at release, in km; null where it cannot be relied on.',
    nullable: true,
  })
  distanceKm!: string | null;
}

export class HandOverUnrepairedRequest {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @InstantField({ description: 'When.' })
  handedOverAt!: string;

  @TextField({ description: 'To whom. Personal data.', max: 160 })
  name!: string;

  @TextField({ description: 'The warning that was given: not for the road, and why.', min: 10, max: 1000 })
  warningGiven!: string;
}

export class UnrepairedHandoverResponse extends RecordedResponse {
  @IdField({ description: 'The job.' })
  jobId!: string;

  @InstantField({ description: 'When.' })
  handedOverAt!: string;

  @ListField({ description: 'Dangerous findings open at that moment.', max: 50, text: { max: 200 } })
  dangerousFindings!: string[];

  @TextField({ description: 'The warning that was given.', max: 1000 })
  warningGiven!: string;
}
