import {
  offerOmissions,
  wearOmissions,
  type OfferOmission,
  type WearOmission,
} from '@endfloat/workshop/ports';
import {
  EnumField,
  FlagField,
  IdField,
  IntegerField,
  JoinTypes,
  ListField,
  NestedField,
  TextField,
  UnionField,
} from '../fields/index.js';
import { pageOf } from '../paging/index.js';
import { RecordedResponse } from '../recording/index.js';
import { PricedOptionDto, UnpricedOptionDto } from './assessment-option.dto.js';
import {
  AssessmentReasonDto,
  CloseCallDto,
  FlipsAtDto,
  GuardDto,
  MeasureFirstDto,
  NoFlipDto,
  NoRecommendationDto,
  PartBeliefDto,
  ReadingsNotWorthItDto,
  ReadingsValueUnknownDto,
  ReadingsWorthItDto,
  RecommendedDto,
  type ReadingsValueDto,
  type RecommendationDto,
} from './assessment-outcome.dto.js';
import {
  FurtherCheckNotWorthItDto,
  FurtherCheckUnknownDto,
  FurtherCheckWorthItDto,
  type FurtherCheckDto,
} from './further-check.dto.js';
import { PreventiveAdviceDto } from './preventive-advice.dto.js';

const hash = { max: 64, pattern: '^[0-9a-f]{64}$' };

/** How many observations an answer rests on. */
export class ObservationCountsDto {
  @IntegerField({ description: 'Readings of the wear of this part.' })
  readings!: number;

  @IntegerField({ description: 'Inspections the wear rate is drawn through.' })
  wearPoints!: number;

  @IntegerField({ description: 'Deliveries behind the lead times.' })
  deliveries!: number;
}

export class OfferLeftOutDto {
  @TextField({ description: 'The offer.', max: 64 })
  offerId!: string;

  @EnumField({ description: 'Why.', values: offerOmissions, enumName: 'OfferOmission', open: true })
  why!: OfferOmission;
}

/** The answer: what every option costs in the end, what to do, why, and what would change it. */
export class AssessmentAnswer {
  @TextField({ description: 'Version of the model; another version may answer otherwise.', max: 64 })
  modelVersion!: string;

  @TextField({ description: 'Version of the learned tables.', max: 64 })
  tablesVersion!: string;

  @TextField({ description: 'SHA-256 of the learned tables.', ...hash })
  tablesHash!: string;

  @TextField({ description: 'SHA-256 of the canonical input.', ...hash })
  inputHash!: string;

  @IntegerField({ description: 'Start of the draws behind intervals.', max: 4294967295 })
  seed!: number;

  @IntegerField({ description: 'How many draws.' })
  draws!: number;

  @UnionField({
    description: 'What to do.',
    types: () => [RecommendedDto, CloseCallDto, MeasureFirstDto, NoRecommendationDto],
  })
  recommendation!: RecommendationDto;

  @ListField({
    description: 'Every option, cheapest first; then those that cannot be priced.',
    max: 100,
    union: { types: () => [PricedOptionDto, UnpricedOptionDto] },
  })
  options!: (PricedOptionDto | UnpricedOptionDto)[];

  @ListField({ description: 'Hard limits that bear on it.', max: 200, type: () => GuardDto })
  guards!: GuardDto[];

  @ListField({ description: 'Reasons, the deciding ones first.', max: 200, type: () => AssessmentReasonDto })
  reasons!: AssessmentReasonDto[];

  @ListField({
    description: 'Where the answer would flip.',
    max: 200,
    union: { types: () => [FlipsAtDto, NoFlipDto] },
  })
  flipPoints!: (FlipsAtDto | NoFlipDto)[];

  @UnionField({
    description: 'Whether one more set of readings is worth its cost.',
    types: () => [ReadingsWorthItDto, ReadingsNotWorthItDto, ReadingsValueUnknownDto],
  })
  furtherReadings!: ReadingsValueDto;

  @UnionField({
    description:
      'Whether one more check is worth its cost before anything is repaired; null: not told, as in a preview.',
    nullable: true,
    types: () => [FurtherCheckWorthItDto, FurtherCheckNotWorthItDto, FurtherCheckUnknownDto],
  })
  furtherCheck!: FurtherCheckDto | null;

  @NestedField({
    description: 'What to do ahead of the next complaint; null: nothing is recommended, or not told yet.',
    nullable: true,
    type: () => PreventiveAdviceDto,
  })
  advice!: PreventiveAdviceDto | null;

  @NestedField({ description: 'What is believed about the part fitted now.', type: () => PartBeliefDto })
  belief!: PartBeliefDto;

  @NestedField({ description: 'Observations behind the answer.', type: () => ObservationCountsDto })
  observations!: ObservationCountsDto;

  @EnumField({
    description: 'Why readings of the wear say nothing here; null: they do.',
    values: wearOmissions,
    enumName: 'WearOmission',
    open: true,
    nullable: true,
  })
  wearLeftOut!: WearOmission | null;

  @ListField({ description: 'Offers that were not considered.', max: 1000, type: () => OfferLeftOutDto })
  offersLeftOut!: OfferLeftOutDto[];

  @ListField({
    description:
      'Verdicts of open dangerous findings on other components. They block the release whatever is decided here.',
    max: 200,
    text: { max: 64 },
  })
  otherDangerousFindings!: string[];

  @ListField({
    description:
      'Instruments that were not in calibration on the day a reading of the answer was taken: the answer rests on them all the same.',
    max: 100,
    ids: true,
  })
  overdueInstrumentIds!: string[];

  @TextField({ description: 'Caution that goes with the answer.', max: 300 })
  caution!: string;
}

export class AssessmentResponse extends JoinTypes(RecordedResponse, AssessmentAnswer) {
  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @IdField({ description: 'The job it was asked for.', nullable: true })
  jobId!: string | null;

  @IdField({ description: 'The part fitted then; null: nobody had recorded one.', nullable: true })
  fittedPartId!: string | null;

  @TextField({ description: 'Kind of part.', max: 64 })
  componentType!: string;

  @TextField({ description: 'Where on the vehicle.', max: 64 })
  position!: string;
}

export class AssessmentPage extends pageOf(() => AssessmentResponse) {}

export class ReplayResponse {
  @IdField({ description: 'The assessment.' })
  assessmentId!: string;

  @FlagField({ description: 'Whether every reported digit is the one of then.' })
  isEqual!: boolean;

  @FlagField({ description: 'Whether the stored input still has the hash of then.' })
  isInputUnchanged!: boolean;

  @TextField({ description: 'SHA-256 of the stored input.', ...hash })
  inputHash!: string;

  @TextField({ description: 'Version of the model then.', max: 64 })
  modelVersion!: string;

  @TextField({ description: 'Version of the model that ran it again.', max: 64 })
  replayedModelVersion!: string;

  @NestedField({ description: 'The answer as it comes out now.', type: () => AssessmentAnswer })
  answer!: AssessmentAnswer;
}
