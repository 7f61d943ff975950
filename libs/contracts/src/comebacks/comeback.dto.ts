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
  MoneyField,
  NestedField,
  NumberField,
  TextField,
  TextMapField,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { IntervalDto, type MoneyDto } from '../quantity/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';

export class ComebackReasonResponse {
  @TextField({ description: 'Stable code of the reason.', max: 64, example: 'sameSymptoms' })
  code!: string;

  @TextMapField({ description: 'What it rests on.', maxEntries: 12, max: 400 })
  values!: Record<string, string>;

  @TextField({ description: 'The reason in words.', max: 600 })
  detail!: string;
}

export class ProposalProbabilityDto {
  @NumberField({ description: 'That a person would confirm it.', min: 0, max: 1 })
  value!: number;

  @NestedField({ description: 'How sure that is.', type: () => IntervalDto })
  interval!: IntervalDto;

  @NumberField({ description: 'Prior mean: the likeness; judgement.', min: 0, max: 1 })
  priorMean!: number;

  @IntegerField({ description: 'Settled proposals that the prior is worth; judgement.' })
  priorWeight!: number;

  @IntegerField({ description: 'Proposals of the same ground that the shop had confirmed.' })
  confirmed!: number;

  @IntegerField({ description: 'Proposals of the same ground that the shop had refused.' })
  refused!: number;
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

  @NestedField({
    description:
      "Probability when it was proposed, learned from the shop's own confirmed and refused proposals; null where a person linked it.",
    nullable: true,
    type: () => ProposalProbabilityDto,
  })
  probability!: ProposalProbabilityDto | null;

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

export class ComebackCostDto {
  @MoneyField({ description: "Minutes of the repeat at the shop's full rate." })
  labour!: MoneyDto;

  @MoneyField({ description: 'Parts used in the repeat.' })
  parts!: MoneyDto;

  @MoneyField({ description: 'Taking in, apologising, looking again.' })
  handling!: MoneyDto;

  @MoneyField({ description: 'All three.' })
  total!: MoneyDto;

  @IntegerField({ description: 'Lines without minutes or price, or in another currency: left out.' })
  gaps!: number;
}

/** One comeback with what it counts for and what it cost. */
export class ComebackDetailResponse extends ComebackResponse {
  @ListField({
    description: 'First jobs of the chain that it counts for; none while it does not count.',
    max: 100,
    ids: true,
  })
  originalJobIds!: string[];

  @IdField({ description: 'Job that took the complaint in; null: none yet.', nullable: true })
  repeatJobId!: string | null;

  @NestedField({
    description:
      'Cost at the full door rate; null where it does not count (not confirmed, outside the window) and for users of a customer.',
    nullable: true,
    type: () => ComebackCostDto,
  })
  cost!: ComebackCostDto | null;
}

export class ComebackRevisionsResponse {
  @ListField({ description: 'Every word on it, the oldest first.', max: 10000, type: () => ComebackResponse })
  items!: ComebackResponse[];
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
