import { quantityKinds, type QuantityKind } from '@endfloat/metrology';
import {
  EnumField,
  IntegerField,
  KindField,
  NestedField,
  NumberField,
  QuantityField,
  UnionField,
  type QuantityDto,
} from '../fields/index.js';
import {
  AccuracyClassOfSpanDto,
  BladeSetDto,
  ExpandedUncertaintyDto,
  MaximumPermissibleErrorDto,
  PercentOfReadingPlusDigitsDto,
  UnknownErrorDto,
  type ErrorModelDto,
} from '../instruments/instrument.dto.js';
import {
  FurtherReadingsNeededDto,
  NoFurtherReadingsDto,
  NoNumberSettlesDto,
  type FurtherReadingsDto,
} from '../readings/verdict.dto.js';
import {
  AnswerUnitField,
  CalculationResponse,
  ColumnUnitField,
  OpenLimitsDto,
  type UnitCode,
} from './calculation.dto.js';

/** Why the uncertainty of an instrument is not known. */
export const instrumentUnknownReasons = ['errorModelUnknown', 'scaleNotLinear'] as const;
export type InstrumentUnknownReason = (typeof instrumentUnknownReasons)[number];

export class InstrumentUncertaintyRequest {
  @EnumField({
    description: 'What is measured.',
    values: quantityKinds,
    enumName: 'QuantityKind',
    open: true,
  })
  quantityKind!: QuantityKind;

  @QuantityField({ description: 'Reading at which the error is asked for.', kind: 'any' })
  reading!: QuantityDto;

  @UnionField({
    description: 'What is known about the error.',
    types: () => [
      MaximumPermissibleErrorDto,
      PercentOfReadingPlusDigitsDto,
      AccuracyClassOfSpanDto,
      BladeSetDto,
      ExpandedUncertaintyDto,
      UnknownErrorDto,
    ],
  })
  errorModel!: ErrorModelDto;

  @QuantityField({
    description: 'Smallest step that can be read; left out or null: not counted.',
    kind: 'any',
    nullable: true,
    optional: true,
  })
  resolution?: QuantityDto | null;
}

export class KnownInstrumentUncertaintyDto {
  @KindField('known')
  kind!: 'known';

  @NumberField({ description: 'Standard uncertainty of error and resolution together.', min: 0 })
  standardUncertainty!: number;

  @NumberField({ description: 'That of the error alone.', min: 0 })
  ofError!: number;

  @NumberField({ description: 'That of the resolution; null where none was given.', nullable: true })
  ofResolution!: number | null;

  @NumberField({
    description: 'Half-width of the rectangular distribution; null for a certificate.',
    nullable: true,
  })
  halfWidth!: number | null;

  @NumberField({ description: 'Degrees of freedom of the error; null: as good as known.', nullable: true })
  degreesOfFreedom!: number | null;
}

export class UnknownInstrumentUncertaintyDto {
  @KindField('unknown')
  kind!: 'unknown';

  @EnumField({
    description: 'Why it is not known.',
    values: instrumentUnknownReasons,
    enumName: 'InstrumentUnknownReason',
  })
  why!: InstrumentUnknownReason;
}

export class InstrumentUncertaintyResponse extends CalculationResponse {
  @AnswerUnitField('Unit of every figure: that of the reading.')
  unit!: UnitCode;

  @UnionField({
    description: 'The uncertainty, or why it is not known.',
    types: () => [KnownInstrumentUncertaintyDto, UnknownInstrumentUncertaintyDto],
  })
  result!: KnownInstrumentUncertaintyDto | UnknownInstrumentUncertaintyDto;
}

export class FurtherReadingCountRequest {
  @ColumnUnitField('Unit of every value.')
  unit?: UnitCode;

  @NumberField({ description: 'Mean of the readings so far.', min: -1e12, max: 1e12 })
  mean!: number;

  @IntegerField({ description: 'Readings so far.', min: 1, max: 1_000_000 })
  count!: number;

  @NumberField({ description: 'Standard deviation of single readings.', min: 0, max: 1e12 })
  standardDeviation!: number;

  @NumberField({
    description: 'Degrees of freedom of that standard deviation; left out or null: known.',
    min: 1,
    max: 1e9,
    nullable: true,
    optional: true,
  })
  degreesOfFreedom?: number | null;

  @NumberField({
    description: 'Standard uncertainty that further readings do not lessen; 0 where left out.',
    min: 0,
    max: 1e12,
    optional: true,
  })
  otherStandardUncertainty?: number;

  @NestedField({ description: 'What is permitted.', type: () => OpenLimitsDto })
  permitted!: OpenLimitsDto;

  @NumberField({
    description: 'Inside from this probability on.',
    min: 0.5,
    max: 1,
    optional: true,
    default: 0.95,
  })
  insideFrom?: number;

  @NumberField({
    description: 'Outside up to this probability.',
    min: 0,
    max: 0.5,
    optional: true,
    default: 0.05,
  })
  outsideTo?: number;
}

export class FurtherReadingCountResponse extends CalculationResponse {
  @AnswerUnitField('Unit of every value.')
  unit!: UnitCode;

  @UnionField({
    description: 'How many more, or that none are needed or would help.',
    types: () => [NoFurtherReadingsDto, FurtherReadingsNeededDto, NoNumberSettlesDto],
  })
  result!: FurtherReadingsDto;
}
