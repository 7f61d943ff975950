import { KindField, ListField, NestedField, NumberField, UnionField } from '../fields/index.js';
import {
  AnswerUnitField,
  CalculationLimitsDto,
  CalculationNeedsMoreDto,
  CalculationResponse,
  ColumnUnitField,
  LevelField,
  UsedLevelField,
  type UnitCode,
} from './calculation.dto.js';
import { mostNumbers, NumbersField } from './numbers.field.js';

export class SampleSummaryRequest {
  @ColumnUnitField('Unit of the values.')
  unit?: UnitCode;

  @NumbersField({ description: 'Values, in any order.', max: mostNumbers })
  values!: number[];

  @NumbersField({
    description: 'Shares whose quantiles are asked for.',
    max: 20,
    from: 0,
    to: 1,
    optional: true,
  })
  probabilities?: number[];

  @LevelField()
  level?: number;
}

export class SampleQuantileDto {
  @NumberField({ description: 'Share of the values at or below.', min: 0, max: 1 })
  probability!: number;

  @NumberField({ description: 'Quantile, in the unit.' })
  quantile!: number;
}

export class EstimatedSummaryDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumberField({ description: 'Mean, in the unit.' })
  mean!: number;

  @NumberField({
    description: 'Variance, in the square of the unit; null for a single value.',
    nullable: true,
  })
  variance!: number | null;

  @NumberField({ description: 'Standard deviation, in the unit; null for a single value.', nullable: true })
  standardDeviation!: number | null;

  @NumberField({ description: 'Standard error of the mean; null for a single value.', nullable: true })
  standardError!: number | null;

  @NestedField({
    description: "Student's interval of the mean; null for a single value.",
    type: () => CalculationLimitsDto,
    nullable: true,
  })
  meanInterval!: CalculationLimitsDto | null;

  @UsedLevelField()
  level!: number;

  @NumberField({ description: 'Least value.' })
  least!: number;

  @NumberField({ description: 'Median.' })
  median!: number;

  @NumberField({ description: 'Greatest value.' })
  greatest!: number;

  @ListField({ description: 'Quantiles asked for.', max: 20, type: () => SampleQuantileDto })
  quantiles!: readonly SampleQuantileDto[];
}

export class SampleSummaryResponse extends CalculationResponse {
  @AnswerUnitField('Unit of the values.')
  unit!: UnitCode;

  @UnionField({
    description: 'The values in short, or why there is nothing to say.',
    types: () => [EstimatedSummaryDto, CalculationNeedsMoreDto],
  })
  result!: EstimatedSummaryDto | CalculationNeedsMoreDto;
}
