import { betweenVariations, type BetweenVariation } from '@endfloat/statistics';
import {
  EnumField,
  IntegerField,
  KindField,
  ListField,
  NestedField,
  NumberField,
  UnionField,
} from '../fields/index.js';
import {
  CalculationLimitsDto,
  CalculationNeedsMoreDto,
  CalculationNotConvergedDto,
  LevelField,
  UsedLevelField,
  type UnitCode,
} from './calculation.dto.js';
import { NumbersField } from './numbers.field.js';
import { LineResponse, UnitOfX, UnitOfY } from './line-response.dto.js';

export class UnitPointsDto {
  @NumbersField({ description: 'Where each point of the unit lies.', max: 200 })
  x!: number[];

  @NumbersField({ description: 'Its height.', max: 200 })
  y!: number[];
}

export class MixedLineRequest {
  @UnitOfX()
  xUnit?: UnitCode;

  @UnitOfY()
  yUnit?: UnitCode;

  @ListField({ description: 'Units, each with its points.', max: 500, type: () => UnitPointsDto })
  units!: UnitPointsDto[];

  @LevelField()
  level?: number;
}

export class LineOfUnitDto {
  @NumberField({ description: 'Height at x = 0, in the unit of y.' })
  intercept!: number;

  @NumberField({ description: 'Slope.' })
  slope!: number;

  @NumberField({ description: 'Standard error of the intercept.' })
  interceptStandardError!: number;

  @NumberField({ description: 'Standard error of the slope.' })
  slopeStandardError!: number;

  @NumberField({ description: 'Covariance of the two.' })
  covariance!: number;

  @NestedField({ description: 'Interval of the intercept.', type: () => CalculationLimitsDto })
  interceptInterval!: CalculationLimitsDto;
}

export class BetweenUnitsDto {
  @NumberField({ description: 'Variance of the intercepts between units.' })
  level!: number;

  @NumberField({ description: 'Covariance of intercepts and slopes.' })
  cross!: number;

  @NumberField({ description: 'Variance of the slopes.' })
  slope!: number;
}

export class EstimatedMixedLineDto {
  @KindField('estimated')
  kind!: 'estimated';

  @UsedLevelField()
  level!: number;

  @IntegerField({ description: 'Points.' })
  observations!: number;

  @EnumField({
    description: 'How the units differ.',
    values: betweenVariations,
    enumName: 'BetweenVariation',
  })
  betweenVariation!: BetweenVariation;

  @NumberField({ description: 'Criterion of restricted maximum likelihood at its minimum.' })
  remlCriterion!: number;

  @NumberField({ description: 'Variance about each line.' })
  residualVariance!: number;

  @NestedField({ description: 'The mean line.', type: () => LineOfUnitDto })
  mean!: LineOfUnitDto;

  @NestedField({ description: 'How lines differ from unit to unit.', type: () => BetweenUnitsDto })
  between!: BetweenUnitsDto;

  @ListField({
    description: 'The line of each unit, drawn towards the mean.',
    max: 500,
    type: () => LineOfUnitDto,
  })
  unitLines!: readonly LineOfUnitDto[];
}

export class NoResidualScatterDto {
  @KindField('noResidualScatter', 'every point lies on its unit’s line: nothing to weigh by')
  kind!: 'noResidualScatter';
}

export class MixedLineResponse extends LineResponse {
  @UnionField({
    description: 'The lines, or why there are none.',
    types: () => [
      EstimatedMixedLineDto,
      NoResidualScatterDto,
      CalculationNeedsMoreDto,
      CalculationNotConvergedDto,
    ],
  })
  result!:
    EstimatedMixedLineDto | NoResidualScatterDto | CalculationNeedsMoreDto | CalculationNotConvergedDto;
}
