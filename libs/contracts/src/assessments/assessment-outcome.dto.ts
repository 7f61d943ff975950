import {
  flipQuantities,
  guardCodes,
  reasonCodes,
  type FlipQuantity,
  type GuardCode,
  type ReasonCode,
} from '@endfloat/decision';
import { evidenceKinds, type EvidenceKind } from '@endfloat/workshop/ports';
import {
  EnumField,
  FlagField,
  IntegerField,
  KindField,
  ListField,
  MoneyField,
  NestedField,
  NumberField,
  TextField,
} from '../fields/index.js';
import { MoneyDto } from '../quantity/index.js';
import { ReportedValueDto } from './assessment-option.dto.js';

/** A record behind a reason. */
export class EvidenceLinkDto {
  @EnumField({ description: 'What it is.', values: evidenceKinds, enumName: 'EvidenceKind', open: true })
  kind!: EvidenceKind;

  @TextField({ description: 'Its id.', max: 120 })
  id!: string;
}

const EvidenceField = (): PropertyDecorator =>
  ListField({ description: 'Records it rests on.', max: 1000, type: () => EvidenceLinkDto });
const WordsField = (): PropertyDecorator => TextField({ description: 'The same in words.', max: 600 });
const OptionIdField = (nullable: boolean): PropertyDecorator =>
  TextField({ description: 'The option that is meant.', max: 64, nullable });

export class NamedValueDto extends ReportedValueDto {
  @TextField({ description: 'What it is a value of.', max: 64 })
  name!: string;
}

export class AssessmentReasonDto {
  @EnumField({ description: 'Stable code.', values: reasonCodes, enumName: 'ReasonCode', open: true })
  code!: ReasonCode;

  @OptionIdField(true)
  optionId!: string | null;

  @ListField({ description: 'The figures in it.', max: 20, type: () => NamedValueDto })
  values!: NamedValueDto[];

  @EvidenceField()
  evidence!: EvidenceLinkDto[];

  @WordsField()
  detail!: string;
}

/** A hard limit; it holds whatever an option costs. */
export class GuardDto {
  @EnumField({ description: 'Stable code.', values: guardCodes, enumName: 'GuardCode', open: true })
  code!: GuardCode;

  @OptionIdField(true)
  optionId!: string | null;

  @EvidenceField()
  evidence!: EvidenceLinkDto[];

  @WordsField()
  detail!: string;
}

export class RecommendedDto {
  @KindField('recommended')
  kind!: 'recommended';

  @OptionIdField(false)
  optionId!: string;

  @FlagField({ description: 'Whether the customer has still to consent to the amount.' })
  consentNeeded!: boolean;

  @WordsField()
  detail!: string;
}

export class CloseCallDto {
  @KindField('closeCall')
  kind!: 'closeCall';

  @ListField({ description: 'Options too close to tell apart, cheapest first.', max: 20, text: { max: 64 } })
  optionIds!: string[];

  @FlagField({ description: 'Whether the customer has still to consent to the amount.' })
  consentNeeded!: boolean;

  @WordsField()
  detail!: string;
}

export class MeasureFirstDto {
  @KindField('measureFirst')
  kind!: 'measureFirst';

  @OptionIdField(false)
  optionId!: string;

  @IntegerField({ description: 'Readings to take.', max: 1000 })
  readings!: number;

  @WordsField()
  detail!: string;
}

export const noRecommendationReasons = ['noOptions', 'nothingPriced', 'nothingAdmissible'] as const;

export class NoRecommendationDto {
  @KindField('none')
  kind!: 'none';

  @EnumField({
    description: 'Why.',
    values: noRecommendationReasons,
    enumName: 'NoRecommendationReason',
    open: true,
  })
  why!: (typeof noRecommendationReasons)[number];

  @WordsField()
  detail!: string;
}

export type RecommendationDto = RecommendedDto | CloseCallDto | MeasureFirstDto | NoRecommendationDto;

class FlipHead {
  @EnumField({ description: 'What is varied.', values: flipQuantities, enumName: 'FlipQuantity', open: true })
  quantity!: FlipQuantity;

  @OptionIdField(true)
  optionId!: string | null;

  @NestedField({ description: 'Its value now.', type: () => ReportedValueDto })
  now!: ReportedValueDto;

  @WordsField()
  detail!: string;
}

export class FlipsAtDto extends FlipHead {
  @KindField('flipsAt')
  kind!: 'flipsAt';

  @NestedField({
    description: 'Value at which another option becomes the cheapest.',
    type: () => ReportedValueDto,
  })
  at!: ReportedValueDto;

  @TextField({ description: 'That option.', max: 64 })
  toOptionId!: string;
}

export class NoFlipDto extends FlipHead {
  @KindField('noFlipWithin')
  kind!: 'noFlipWithin';

  @NestedField({ description: 'From here', type: () => ReportedValueDto })
  lower!: ReportedValueDto;

  @NestedField({ description: 'to here nothing changes.', type: () => ReportedValueDto })
  upper!: ReportedValueDto;
}

class ReadingsValue {
  @MoneyField({ description: 'Expected saving by one more set of readings.' })
  expectedGain!: MoneyDto;

  @MoneyField({ description: 'What it costs.' })
  cost!: MoneyDto;

  @IntegerField({ description: 'Readings in the set.', max: 1000 })
  readings!: number;

  @WordsField()
  detail!: string;
}

export class ReadingsWorthItDto extends ReadingsValue {
  @KindField('worthIt')
  kind!: 'worthIt';
}

export class ReadingsNotWorthItDto extends ReadingsValue {
  @KindField('notWorthIt')
  kind!: 'notWorthIt';
}

export const readingsValueUnknown = ['notAvailable', 'labourRateMissing', 'fewerThanTwoOptions'] as const;

export class ReadingsValueUnknownDto {
  @KindField('cannotBeSaid')
  kind!: 'cannotBeSaid';

  @EnumField({
    description: 'Why.',
    values: readingsValueUnknown,
    enumName: 'ReadingsValueUnknownReason',
    open: true,
  })
  why!: (typeof readingsValueUnknown)[number];

  @WordsField()
  detail!: string;
}

export type ReadingsValueDto = ReadingsWorthItDto | ReadingsNotWorthItDto | ReadingsValueUnknownDto;

export class WearNowBeliefDto {
  @NestedField({ description: 'Mean.', type: () => ReportedValueDto })
  mean!: ReportedValueDto;

  @NestedField({ description: '5 % point.', type: () => ReportedValueDto })
  lower!: ReportedValueDto;

  @NestedField({ description: '95 % point.', type: () => ReportedValueDto })
  upper!: ReportedValueDto;
}

/** What is believed about the part that is fitted now. */
export class PartBeliefDto {
  @NestedField({ description: 'Its wear.', type: () => WearNowBeliefDto })
  wearNow!: WearNowBeliefDto;

  @NumberField({ description: 'Chance that it is beyond the criterion.', min: 0, max: 1 })
  probabilityBeyondCriterion!: number;

  @NestedField({ description: 'Mean wear rate.', type: () => ReportedValueDto })
  ratePerThousandKm!: ReportedValueDto;
}
