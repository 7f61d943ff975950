import { comebackAttributions, type ComebackAttribution } from '@endfloat/catalogue';
import { comebackStates, type ComebackState } from '@endfloat/workshop/ports';
import {
  DecimalField,
  EnumField,
  FlagField,
  IdField,
  InstantField,
  IntegerField,
  ListField,
  NumberField,
  TextField,
  TextMapField,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';

export class ComebackReasonResponse {
  @TextField({ description: 'Stable code of the reason.', max: 64, example: 'sameSymptoms' })
  code!: string;

  @TextMapField({ description: 'What it rests on.', maxEntries: 12, max: 400 })
  values!: Record<string, string>;

  @TextField({ description: 'The reason in words.', max: 600 })
  detail!: string;
}

export class ComebackResponse extends RecordedResponse {
  @IdField({ description: 'The later complaint.' })
  complaintId!: string;

  @IdField({ description: 'The earlier released job.' })
  jobId!: string;

  @EnumField({
    description: 'Proposed by rule, confirmed or refused by a person.',
    values: comebackStates,
    enumName: 'ComebackState',
  })
  state!: ComebackState;

  @EnumField({
    description: 'What a confirmed comeback is put down to; null: not attributed yet.',
    values: comebackAttributions,
    enumName: 'ComebackAttribution',
    nullable: true,
  })
  attribution!: ComebackAttribution | null;

  @ListField({ description: 'Why it is proposed.', max: 20, type: () => ComebackReasonResponse })
  reasons!: ComebackReasonResponse[];

  @NumberField({
    description: 'How alike, 0 to 1: an order of likelihood, not a probability.',
    min: 0,
    max: 1,
  })
  likeness!: number;

  @IntegerField({ description: 'Whole days from the release to the complaint.' })
  daysSinceRelease!: number;

  @DecimalField({
    description: 'Distance from the release to the complaint, in km; null where it cannot be relied on.',
    nullable: true,
  })
  kmSinceRelease!: string | null;

  @FlagField({ description: "Whether the complaint came inside the job's watch window." })
  insideWindow!: boolean;

  @TextField({ description: 'Remark.', nullable: true, max: 500 })
  note!: string | null;
}

export class ComebackPage extends pageOf(() => ComebackResponse) {}

export class ListComebacksQuery extends PageQuery {
  @IdField({ description: 'Links of this complaint.', optional: true })
  complaintId?: string;

  @IdField({ description: 'Links to this earlier job.', optional: true })
  jobId?: string;

  @IdField({ description: 'Links of this vehicle.', optional: true })
  vehicleId?: string;

  @EnumField({
    description: 'Links in this state.',
    values: comebackStates,
    enumName: 'ComebackState',
    optional: true,
  })
  state?: ComebackState;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class LinkComebackRequest {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @IdField({ description: 'The later complaint.' })
  complaintId!: string;

  @IdField({ description: 'The earlier released job of the same vehicle.' })
  jobId!: string;

  @TextField({ description: 'Remark.', nullable: true, max: 500 })
  note!: string | null;
}

export const settledStates = ['confirmed', 'refused'] as const;

export class SettleComebackRequest {
  @EnumField({
    description: 'The word of a person.',
    values: settledStates,
    enumName: 'SettledComebackState',
  })
  state!: (typeof settledStates)[number];

  @EnumField({
    description: 'What a confirmed comeback is put down to; null: later.',
    values: comebackAttributions,
    enumName: 'ComebackAttribution',
    nullable: true,
  })
  attribution!: ComebackAttribution | null;

  @TextField({ description: 'Remark.', nullable: true, max: 500 })
  note!: string | null;

  @ReasonField()
  reason!: string;
}

export class ComebackPath {
  @IdField({ description: 'Id of the link.' })
  comebackId!: string;
}
