import { instrumentKinds, type InstrumentKind } from '@endfloat/catalogue';
import { calibrationStandingKinds, type CalibrationStandingKind } from '@endfloat/workshop/ports';
import {
  DecimalField,
  EnumField,
  FlagField,
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  KindField,
  ListField,
  LocalDateField,
  NestedField,
  NumberField,
  quantityClass,
  QuantityField,
  TextField,
  UnionField,
  type QuantityDto,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';

export class MaximumPermissibleErrorDto {
  @KindField('maximumPermissibleError')
  kind!: 'maximumPermissibleError';

  @QuantityField({ description: 'The error is within plus or minus this.', kind: 'any' })
  limit!: QuantityDto;
}

export class PercentOfReadingPlusDigitsDto {
  @KindField('percentOfReadingPlusDigits')
  kind!: 'percentOfReadingPlusDigits';

  @DecimalField({ description: 'Per cent of the reading.', example: '0.5' })
  percent!: string;

  @IntegerField({ description: 'Number of last digits.', max: 1000 })
  digits!: number;

  @QuantityField({ description: 'What one last digit is.', kind: 'any' })
  digit!: QuantityDto;
}

export class AccuracyClassOfSpanDto {
  @KindField('accuracyClassOfSpan')
  kind!: 'accuracyClassOfSpan';

  @DecimalField({ description: 'Class: per cent of the span.', example: '1.6' })
  accuracyClass!: string;

  @QuantityField({ description: 'Span of the scale.', kind: 'any' })
  span!: QuantityDto;
}

export class BladeSetDto {
  @KindField('bladeSet')
  kind!: 'bladeSet';

  @ListField({ description: 'Blades of the set.', max: 100, type: () => quantityClass('any') })
  blades!: QuantityDto[];

  @QuantityField({ description: 'Each blade is within plus or minus this of its marking.', kind: 'any' })
  permissibleError!: QuantityDto;
}

export class ExpandedUncertaintyDto {
  @KindField('expandedUncertainty')
  kind!: 'expandedUncertainty';

  @QuantityField({ description: 'Expanded uncertainty on the certificate.', kind: 'any' })
  expanded!: QuantityDto;

  @NumberField({ description: 'Coverage factor.', min: 0.1, max: 20, example: 2 })
  coverageFactor!: number;

  @IntegerField({ description: 'Degrees of freedom; null: as good as known.', nullable: true, min: 1 })
  degreesOfFreedom!: number | null;
}

export class UnknownErrorDto {
  @KindField('unknown')
  kind!: 'unknown';
}

export type ErrorModelDto =
  | MaximumPermissibleErrorDto
  | PercentOfReadingPlusDigitsDto
  | AccuracyClassOfSpanDto
  | BladeSetDto
  | ExpandedUncertaintyDto
  | UnknownErrorDto;

/** What computing needs to know about an instrument. */
export class InstrumentPropertiesDto {
  @UnionField({
    description: 'What is known about its error; unknown: its readings are compared at face value only.',
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
    description: 'Smallest step that can be read; null: not known.',
    kind: 'any',
    nullable: true,
  })
  resolution!: QuantityDto | null;
}

export class InstrumentContent extends InstrumentPropertiesDto {
  @EnumField({ description: 'What it is.', values: instrumentKinds, enumName: 'InstrumentKind', open: true })
  kind!: InstrumentKind;

  @TextField({ description: 'Name in the shop.', max: 120, example: 'dial 3 on magnetic base' })
  name!: string;

  @TextField({ description: 'Serial number.', nullable: true, max: 80 })
  serial!: string | null;

  @LocalDateField({ description: 'Day it was taken out of use.', nullable: true })
  retiredOn!: string | null;
}

export class RecordInstrumentRequest extends InstrumentContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

export class CorrectInstrumentRequest extends InstrumentContent {
  @ReasonField()
  reason!: string;
}

/** State of calibration on the day asked about. */
export class CalibrationStandingDto {
  @EnumField({
    description: 'Whether the calibration holds; failed: the last one was not passed.',
    values: calibrationStandingKinds,
    enumName: 'CalibrationStandingKind',
    open: true,
  })
  kind!: CalibrationStandingKind;

  @LocalDateField({ description: 'Day the next one is due.', nullable: true })
  dueOn!: string | null;

  @IntegerField({ description: 'Days left; negative once overdue.', nullable: true, min: -1000000 })
  daysLeft!: number | null;
}

export class InstrumentResponse extends JoinTypes(RecordedResponse, InstrumentContent) {}

/** An instrument with the state of its calibration. */
export class InstrumentListItem extends InstrumentResponse {
  @NestedField({ description: 'State of its calibration.', type: () => CalibrationStandingDto })
  standing!: CalibrationStandingDto;
}

export class InstrumentRevisions {
  @ListField({ description: 'Revisions, oldest first.', max: 1000, type: () => InstrumentResponse })
  items!: InstrumentResponse[];
}

export class InstrumentPage extends pageOf(() => InstrumentListItem) {}

export class ListInstrumentsQuery extends PageQuery {
  @EnumField({
    description: 'Instruments of this kind.',
    optional: true,
    values: instrumentKinds,
    enumName: 'InstrumentKind',
    open: true,
  })
  kind?: InstrumentKind;

  @InstantField({ description: 'As known, and as it stood, at this moment.', optional: true })
  asOf?: string;
}

export class InstrumentPath {
  @IdField({ description: 'Id of the instrument.' })
  instrumentId!: string;
}

export class CalibrationContent {
  @LocalDateField({ description: 'Day it was calibrated.' })
  calibratedOn!: string;

  @LocalDateField({ description: 'Day the next one is due; null: no interval is set.', nullable: true })
  dueOn!: string | null;

  @FlagField({ description: 'The instrument was found good, or was made good.' })
  passed!: boolean;

  @TextField({ description: 'Number of the certificate.', nullable: true, max: 120 })
  certificate!: string | null;

  @TextField({ description: 'Remark.', nullable: true, max: 500 })
  note!: string | null;
}

export class RecordCalibrationRequest extends CalibrationContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

export class CalibrationResponse extends JoinTypes(RecordedResponse, CalibrationContent) {
  @IdField({ description: 'The instrument.' })
  instrumentId!: string;
}

export class CalibrationList {
  @NestedField({ description: 'State of the calibration.', type: () => CalibrationStandingDto })
  standing!: CalibrationStandingDto;

  @ListField({ description: 'Calibrations, latest first.', max: 1000, type: () => CalibrationResponse })
  items!: CalibrationResponse[];
}
