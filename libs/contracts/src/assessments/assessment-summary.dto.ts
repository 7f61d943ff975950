import { guardCodes, optionActions, type GuardCode, type OptionAction } from '@endfloat/decision';
import {
  EnumField,
  FlagField,
  IdField,
  InstantField,
  ListField,
  NestedField,
  TextField,
  UnionField,
} from '../fields/index.js';
import { pageOf } from '../paging/index.js';
import { ComebackChanceDto, ReportedValueDto } from './assessment-option.dto.js';
import {
  AssessmentReasonDto,
  CloseCallDto,
  GuardDto,
  MeasureFirstDto,
  NoRecommendationDto,
  PartBeliefDto,
  RecommendedDto,
  type RecommendationDto,
} from './assessment-outcome.dto.js';
import { PreventiveAdviceDto } from './preventive-advice.dto.js';

/** One option without what it costs the shop: prices reach a customer in an estimate. */
export class SummaryOptionDto {
  @TextField({ description: 'The option.', max: 64 })
  optionId!: string;

  @EnumField({ description: 'What is done.', values: optionActions, enumName: 'OptionAction' })
  action!: OptionAction;

  @TextField({ description: 'In words.', max: 200 })
  title!: string;

  @FlagField({ description: 'Whether it could be priced, so that it could be weighed.' })
  isPriced!: boolean;

  @ListField({
    description: 'Guards that take it out of the offer.',
    max: 10,
    choice: { values: guardCodes, enumName: 'GuardCode', open: true },
  })
  removedBy!: GuardCode[];

  @NestedField({
    description: 'Chance of a comeback; null: not weighed.',
    nullable: true,
    type: () => ComebackChanceDto,
  })
  comeback!: ComebackChanceDto | null;

  @NestedField({
    description: 'Days until the part is here; null: no part is ordered, or not weighed.',
    nullable: true,
    type: () => ReportedValueDto,
  })
  leadTime!: ReportedValueDto | null;
}

/** An assessment as the owner of the van may see it: what to do and why, without the costs and suppliers of the shop. */
export class AssessmentSummary {
  @IdField({ description: 'The assessment.' })
  id!: string;

  @InstantField({ description: 'When it was made.' })
  recordedAt!: string;

  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @IdField({ description: 'The job it was asked for.', nullable: true })
  jobId!: string | null;

  @TextField({ description: 'Kind of part.', max: 64 })
  componentType!: string;

  @TextField({ description: 'Where on the vehicle.', max: 64 })
  position!: string;

  @UnionField({
    description: 'What to do.',
    types: () => [RecommendedDto, CloseCallDto, MeasureFirstDto, NoRecommendationDto],
  })
  recommendation!: RecommendationDto;

  @ListField({ description: 'Options that were weighed.', max: 100, type: () => SummaryOptionDto })
  options!: SummaryOptionDto[];

  @ListField({ description: 'Hard limits that bear on it.', max: 200, type: () => GuardDto })
  guards!: GuardDto[];

  @ListField({ description: 'Reasons that name no amount.', max: 200, type: () => AssessmentReasonDto })
  reasons!: AssessmentReasonDto[];

  @NestedField({
    description: 'What to do ahead of the next complaint.',
    nullable: true,
    type: () => PreventiveAdviceDto,
  })
  advice!: PreventiveAdviceDto | null;

  @NestedField({ description: 'What is believed about the part fitted now.', type: () => PartBeliefDto })
  belief!: PartBeliefDto;

  @TextField({ description: 'What comes before any answer about safety.', max: 600 })
  caution!: string;
}

export class AssessmentSummaryPage extends pageOf(() => AssessmentSummary) {}
