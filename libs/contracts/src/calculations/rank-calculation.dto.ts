import { mannKendallMethods, type MannKendallMethod } from '@endfloat/statistics';
import { EnumField, IntegerField, KindField, NestedField, NumberField, UnionField } from '../fields/index.js';
import {
  CalculationLimitsDto,
  CalculationNeedsMoreDto,
  LevelField,
  UsedLevelField,
  type UnitCode,
} from './calculation.dto.js';
import { NumbersField } from './numbers.field.js';
import { LineResponse, UnitOfX, UnitOfY } from './line-response.dto.js';

/** Most points of which every pair is looked at. */
const mostPaired = 5000;

export class PairedPointsRequest {
  @UnitOfX()
  xUnit?: UnitCode;

  @UnitOfY()
  yUnit?: UnitCode;

  @NumbersField({ description: 'Where each point lies, such as its time.', max: mostPaired })
  x!: number[];

  @NumbersField({ description: 'Its value.', max: mostPaired })
  y!: number[];
}

export class TheilSenRequest extends PairedPointsRequest {
  @LevelField()
  level?: number;
}

export class EstimatedTheilSenDto {
  @KindField('estimated')
  kind!: 'estimated';

  @IntegerField({ description: 'Points.' })
  observations!: number;

  @IntegerField({ description: 'Pairs with different x.' })
  pairs!: number;

  @NumberField({ description: 'Median of the pair slopes.' })
  slope!: number;

  @NumberField({ description: 'median(y) - slope x median(x).' })
  intercept!: number;

  @NestedField({
    description: 'Interval of the slope; null where so few pairs reach no such level.',
    type: () => CalculationLimitsDto,
    nullable: true,
  })
  interval!: CalculationLimitsDto | null;

  @UsedLevelField()
  level!: number;
}

export class TheilSenResponse extends LineResponse {
  @UnionField({
    description: 'The slope, or why there is none.',
    types: () => [EstimatedTheilSenDto, CalculationNeedsMoreDto],
  })
  result!: EstimatedTheilSenDto | CalculationNeedsMoreDto;
}

export class EstimatedMannKendallDto {
  @KindField('estimated')
  kind!: 'estimated';

  @IntegerField({ description: 'Points.' })
  observations!: number;

  @IntegerField({ description: 'Pairs that rise less pairs that fall.', min: -(2 ** 31) })
  score!: number;

  @NumberField({ description: 'Its variance without a trend, ties counted.' })
  variance!: number;

  @NumberField({ description: 'Score over its standard deviation, with continuity correction.' })
  z!: number;

  @NumberField({ description: 'Score over the number of pairs.' })
  tauA!: number;

  @NumberField({ description: 'The same, corrected for ties.' })
  tauB!: number;

  @EnumField({
    description: 'How the p-values were made.',
    values: mannKendallMethods,
    enumName: 'MannKendallMethod',
  })
  method!: MannKendallMethod;

  @NumberField({ description: 'P(score at least this large) without a trend.', min: 0, max: 1 })
  pUpward!: number;

  @NumberField({ description: 'P(score at most this large) without a trend.', min: 0, max: 1 })
  pDownward!: number;

  @NumberField({ description: 'Two-sided p-value.', min: 0, max: 1 })
  pTwoSided!: number;
}

export class AllTiedDto {
  @KindField('allTied', 'no two points differ in both')
  kind!: 'allTied';

  @IntegerField({ description: 'Points.' })
  observations!: number;
}

export class MannKendallResponse extends LineResponse {
  @UnionField({
    description: 'The test, or why there is none.',
    types: () => [EstimatedMannKendallDto, AllTiedDto, CalculationNeedsMoreDto],
  })
  result!: EstimatedMannKendallDto | AllTiedDto | CalculationNeedsMoreDto;
}
