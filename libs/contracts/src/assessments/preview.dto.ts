import {
  assessmentOccasions,
  optionActions,
  wearDirections,
  type AssessmentOccasion,
  type OptionAction,
} from '@endfloat/decision';
import { currencyCodes, unitCodes, type UnitCode } from '@endfloat/metrology';
import { previewTables, type PreviewTables } from '@endfloat/workshop/ports';
import {
  DecimalField,
  EnumField,
  FlagField,
  IntegerField,
  KindField,
  ListField,
  MoneyField,
  NestedField,
  TextField,
  UnionField,
} from '../fields/index.js';
import { MoneyDto } from '../quantity/index.js';
import { PreviewOptionDto } from './preview-option.dto.js';

const km = { integerDigits: 7, scale: 3 };
const size = { integerDigits: 6, scale: 9 };

export class PreviewCharacteristicDto {
  @TextField({ description: 'Its id.', max: 64, example: 'shaft-radial-play-lower' })
  characteristicId!: string;

  @EnumField({
    description: 'Unit of all sizes in the request.',
    values: unitCodes,
    enumName: 'UnitCode',
    open: true,
    example: 'mm',
  })
  unit!: UnitCode;

  @EnumField({
    description: 'Which way it goes as it wears.',
    values: wearDirections,
    enumName: 'DecisionWearDirection',
  })
  direction!: (typeof wearDirections)[number];

  @DecimalField({ description: 'Size without wear.', ...size })
  unwornSize!: string;

  @DecimalField({ description: 'Size at which the part no longer does its work.', ...size })
  criterionSize!: string;
}

/** Standard uncertainties in the unit of the characteristic. All three zero counts as not known. */
export class ReadingDoubtDto {
  @DecimalField({ description: 'Of one reading by repeats; averages out.', ...size })
  repeat!: string;

  @DecimalField({ description: 'Shared by repeats of one inspection: set-up, resolution.', ...size })
  setUp!: string;

  @DecimalField({ description: "Of the instrument's bias, common to all its readings.", ...size })
  bias!: string;
}

export class PreviewInspectionDto {
  @DecimalField({
    description: 'Distance since the part was fitted, in km; null: not reliable.',
    nullable: true,
    ...km,
  })
  kmSinceFitted!: string | null;

  @TextField({ description: 'Which instrument.', max: 64 })
  instrument!: string;

  @ListField({
    description: 'As-found readings.',
    min: 1,
    max: 100,
    text: { max: 16, pattern: '^(?:0|[1-9][0-9]{0,5})(?:\\.[0-9]{1,9})?$' },
  })
  values!: string[];

  @NestedField({
    description: 'Their doubt; null: not known. Such readings are never taken for exact.',
    nullable: true,
    type: () => ReadingDoubtDto,
  })
  doubt!: ReadingDoubtDto | null;

  @TextField({ description: 'Id that comes back with the reasons.', optional: true, max: 64 })
  id?: string;
}

export class PreviewFurtherReadingsDto {
  @IntegerField({ description: 'Readings in the set.', min: 1, max: 100 })
  count!: number;

  @IntegerField({ description: 'Minutes they take.', max: 10000 })
  minutes!: number;

  @FlagField({ description: 'They were offered already.' })
  wereOffered!: boolean;

  @NestedField({
    description: 'Doubt of readings on a part that was not measured yet; null: not known.',
    nullable: true,
    type: () => ReadingDoubtDto,
  })
  doubt!: ReadingDoubtDto | null;
}

class FunctionalAnswer {
  @FlagField({ description: 'Whether it was validly judged.' })
  isValid!: boolean;

  @TextField({ description: 'Id that comes back with the reasons.', optional: true, max: 64 })
  id?: string;
}
export class FunctionalPositiveDto extends FunctionalAnswer {
  @KindField('positive')
  kind!: 'positive';
}
export class FunctionalNegativeDto extends FunctionalAnswer {
  @KindField('negative')
  kind!: 'negative';
}
export class FunctionalNotDoneDto {
  @KindField('notDone')
  kind!: 'notDone';
}

export class PreviewSafetyFindingDto {
  @TextField({ description: 'Id that comes back with the guards.', max: 64 })
  findingId!: string;

  @ListField({
    description: 'What removes it.',
    max: 6,
    unique: true,
    choice: { values: optionActions, enumName: 'OptionAction' },
  })
  curedBy!: OptionAction[];
}

export class PreviewRatesDto {
  @MoneyField({ description: 'An hour of labour; null: not known.', nullable: true })
  labourPerHour!: MoneyDto | null;

  @MoneyField({ description: 'A day off the road; null: not known.', nullable: true })
  downtimePerDay!: MoneyDto | null;

  @MoneyField({ description: 'Handling of any comeback; null: not known.', nullable: true })
  comebackHandling!: MoneyDto | null;

  @DecimalField({
    description: 'Hours of a later complaint, before anything is repaired.',
    integerDigits: 3,
    scale: 2,
  })
  laterComplaintHours!: string;

  @DecimalField({ description: 'Days it takes.', integerDigits: 3, scale: 2 })
  laterComplaintDays!: string;
}

/** Everything an assessment depends on but the tables: nothing is read from the records and nothing is kept. */
export class PreviewAssessmentRequest {
  @NestedField({ description: 'The characteristic that wears.', type: () => PreviewCharacteristicDto })
  characteristic!: PreviewCharacteristicDto;

  @EnumField({ description: 'Why it is asked.', values: assessmentOccasions, enumName: 'AssessmentOccasion' })
  occasion!: AssessmentOccasion;

  @EnumField({
    description: 'Currency reckoned in; a price in another one cannot be priced.',
    values: currencyCodes,
    enumName: 'Currency',
    open: true,
  })
  currency!: string;

  @DecimalField({ description: 'Distance the owner still wants, in km; 0: the present repair only.', ...km })
  planningDistanceKm!: string;

  @DecimalField({ description: 'Distance without comeback after which a repair has held, in km.', ...km })
  watchWindowKm!: string;

  @DecimalField({ description: 'Distance between planned visits, in km; null: none.', nullable: true, ...km })
  serviceIntervalKm!: string | null;

  @FlagField({ description: 'Whether the vehicle can be used until the part has come.' })
  isUsableWhileWaiting!: boolean;

  @ListField({
    description: 'The whole history of readings of the part fitted now, oldest first.',
    max: 200,
    type: () => PreviewInspectionDto,
  })
  inspections!: PreviewInspectionDto[];

  @UnionField({
    description: 'The behaviour that outranks any number.',
    types: () => [FunctionalPositiveDto, FunctionalNegativeDto, FunctionalNotDoneDto],
  })
  functionalCriterion!: FunctionalPositiveDto | FunctionalNegativeDto | FunctionalNotDoneDto;

  @IntegerField({ description: 'Earlier comebacks of this complaint on this part.', max: 1000 })
  earlierComebacks!: number;

  @ListField({ description: 'Open dangerous findings.', max: 50, type: () => PreviewSafetyFindingDto })
  safetyFindings!: PreviewSafetyFindingDto[];

  @NestedField({ description: 'Prices common to all options.', type: () => PreviewRatesDto })
  rates!: PreviewRatesDto;

  @ListField({ description: 'Options with their offers.', max: 20, type: () => PreviewOptionDto })
  options!: PreviewOptionDto[];

  @NestedField({
    description: 'One more set of readings; null: none can be had.',
    nullable: true,
    type: () => PreviewFurtherReadingsDto,
  })
  furtherReadings!: PreviewFurtherReadingsDto | null;

  @ListField({
    description: 'What the customer has said no to.',
    max: 6,
    unique: true,
    choice: { values: optionActions, enumName: 'OptionAction' },
  })
  declinedActions!: OptionAction[];

  @MoneyField({ description: 'Amount agreed, not to be exceeded; null: none.', nullable: true })
  consentCeiling!: MoneyDto | null;

  @FlagField({
    description: 'Leave out where the answer would flip: everything else is the same, some ten times faster.',
    optional: true,
    default: false,
  })
  omitFlipPoints?: boolean;

  @EnumField({
    description:
      'Tables to reckon with: judgement, before anything was learned, or those the shop decides by; absent: judgement.',
    values: previewTables,
    enumName: 'PreviewTables',
    optional: true,
    default: 'judgement',
  })
  tables?: PreviewTables;

  @IntegerField({
    description: 'Start of the draws behind intervals; absent: 1.',
    optional: true,
    max: 4294967295,
    default: 1,
  })
  seed?: number;
}
