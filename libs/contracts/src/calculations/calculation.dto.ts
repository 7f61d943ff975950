import { unitCodes, type UnitCode } from '@endfloat/metrology';
import {
  EnumField,
  IntegerField,
  KindField,
  NestedField,
  NumberField,
  TextField,
  type FieldOptions,
} from '../fields/index.js';

export class CalculationMethodDto {
  @TextField({ description: 'Name of the method.', max: 80, example: 'kaplanMeier' })
  name!: string;

  @TextField({ description: 'Which of the usual variants is computed, for a check by hand.', max: 800 })
  variant!: string;

  @TextField({ description: 'Where the formula stands.', max: 400 })
  source!: string;
}

/** What every calculation answers with beside its result. */
export class CalculationResponse {
  @NestedField({ description: 'How it was computed.', type: () => CalculationMethodDto })
  method!: CalculationMethodDto;

  @IntegerField({ description: 'Rows, trials or events the result rests on; 0 where nothing was observed.' })
  observations!: number;
}

/** Unit of a column; pure numbers where left out. */
export const ColumnUnitField = (description: string): PropertyDecorator =>
  EnumField({ description, values: unitCodes, enumName: 'AnyUnit', optional: true, default: '1' });

/** Unit a number is in. */
export const AnswerUnitField = (description: string): PropertyDecorator =>
  EnumField({ description, values: unitCodes, enumName: 'AnyUnit' });

export type { UnitCode };

/** Confidence level of limits. */
export const LevelField = (options: Partial<FieldOptions> = {}): PropertyDecorator =>
  NumberField({
    description: 'Two-sided confidence level, between 0 and 1.',
    min: 1e-6,
    max: 1 - 1e-9,
    optional: true,
    default: 0.95,
    ...options,
  });

/** Level that was used. */
export const UsedLevelField = (): PropertyDecorator =>
  NumberField({ description: 'Two-sided confidence level of the limits.', min: 0, max: 1 });

export class CalculationLimitsDto {
  @NumberField({ description: 'Lower limit.' })
  lower!: number;

  @NumberField({ description: 'Upper limit.' })
  upper!: number;
}

export class OpenLimitsDto {
  @NumberField({ description: 'Lower limit; null where there is none.', nullable: true })
  lower!: number | null;

  @NumberField({ description: 'Upper limit; null where there is none.', nullable: true })
  upper!: number | null;
}

/** Too little data for an estimate. */
export class CalculationNeedsMoreDto {
  @KindField('insufficientData')
  kind!: 'insufficientData';

  @TextField({ description: 'What there is too little of.', max: 80, example: 'events' })
  of!: string;

  @IntegerField({ description: 'How many are needed.' })
  needed!: number;

  @NumberField({ description: 'How many there are.' })
  got!: number;
}

/** A search that ended before its criterion was met. */
export class CalculationNotConvergedDto {
  @KindField('notConverged')
  kind!: 'notConverged';

  @IntegerField({ description: 'Steps that were taken.' })
  iterations!: number;

  @TextField({ description: 'Why it ended.', max: 200 })
  reason!: string;
}
