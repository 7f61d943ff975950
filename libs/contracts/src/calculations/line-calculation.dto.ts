import {
  inverseTargets,
  lineModels,
  scatterSources,
  type InverseTarget,
  type LineModel,
  type ScatterSource,
} from '@endfloat/statistics';
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
  LevelField,
  UsedLevelField,
  type UnitCode,
} from './calculation.dto.js';
import { mostNumbers, NumbersField } from './numbers.field.js';
import { LineResponse, UnitOfX, UnitOfY } from './line-response.dto.js';

export class HeightToReachDto {
  @NumberField({ description: 'Height of the line that is asked for.' })
  y!: number;

  @EnumField({
    description: 'Whether y is one new observation or the line itself.',
    values: inverseTargets,
    enumName: 'InverseTarget',
    optional: true,
    default: 'observation',
  })
  target?: InverseTarget;
}

export class StraightLineRequest {
  @UnitOfX()
  xUnit?: UnitCode;

  @UnitOfY()
  yUnit?: UnitCode;

  @NumbersField({ description: 'Where each point lies.', max: mostNumbers })
  x!: number[];

  @NumbersField({ description: 'Its height.', max: mostNumbers })
  y!: number[];

  @NumbersField({
    description: 'Weights, each 1 / variance where the scatter is known; equal where left out.',
    max: mostNumbers,
    from: 1e-300,
    optional: true,
  })
  weights?: number[];

  @EnumField({
    description: 'With an intercept, or through the origin.',
    values: lineModels,
    enumName: 'LineModel',
    optional: true,
    default: 'interceptAndSlope',
  })
  model?: LineModel;

  @EnumField({
    description: 'Scatter estimated from the residuals, or known through the weights.',
    values: scatterSources,
    enumName: 'ScatterSource',
    optional: true,
    default: 'estimated',
  })
  scatter?: ScatterSource;

  @LevelField()
  level?: number;

  @NumbersField({ description: 'Where the line is to be predicted.', max: 100, optional: true })
  predictAt?: number[];

  @ListField({
    description: 'Heights whose x is asked for.',
    max: 100,
    type: () => HeightToReachDto,
    optional: true,
  })
  reach?: HeightToReachDto[];
}

export class SlopeIntervalDto extends CalculationLimitsDto {
  @NumberField({ description: 'Two-sided p-value of a slope of 0.', min: 0, max: 1 })
  pValue!: number;
}

export class LinePredictionDto {
  @NumberField({ description: 'Where, in the unit of x.' })
  x!: number;

  @NumberField({ description: 'Height of the line.' })
  fitted!: number;

  @NumberField({ description: 'Its standard error.' })
  standardError!: number;

  @NestedField({ description: 'Interval of the line.', type: () => CalculationLimitsDto })
  confidenceInterval!: CalculationLimitsDto;

  @NestedField({ description: 'Interval of one new observation.', type: () => CalculationLimitsDto })
  predictionInterval!: CalculationLimitsDto;
}

export class EstimatedInverseDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumberField({ description: 'Where the line reaches the height, in the unit of x.' })
  x!: number;

  @NestedField({ description: "Fieller's interval.", type: () => CalculationLimitsDto })
  interval!: CalculationLimitsDto;

  @NumberField({ description: '(t x standard error / slope)^2; from 1 on nothing is answered.' })
  g!: number;
}

export class SlopeNotSignificantDto {
  @KindField('slopeNotSignificant', 'the slope may be 0 at this level')
  kind!: 'slopeNotSignificant';

  @NumberField({ description: '(t x standard error / slope)^2; null for a slope of 0.', nullable: true })
  g!: number | null;
}

export class ReachedHeightDto {
  @NumberField({ description: 'Height asked for.' })
  y!: number;

  @EnumField({ description: 'What is at the height.', values: inverseTargets, enumName: 'InverseTarget' })
  target!: InverseTarget;

  @UnionField({
    description: 'Where, or why nothing is said.',
    types: () => [EstimatedInverseDto, SlopeNotSignificantDto],
  })
  outcome!: EstimatedInverseDto | SlopeNotSignificantDto;
}

export class EstimatedLineDto {
  @KindField('estimated')
  kind!: 'estimated';

  @EnumField({ description: 'Form of the line.', values: lineModels, enumName: 'LineModel' })
  model!: LineModel;

  @EnumField({
    description: 'Where the scatter comes from.',
    values: scatterSources,
    enumName: 'ScatterSource',
  })
  scatter!: ScatterSource;

  @NumberField({ description: 'Slope.' })
  slope!: number;

  @NumberField({ description: 'Intercept, in the unit of y.' })
  intercept!: number;

  @NumberField({ description: 'Standard error of the slope.' })
  slopeStandardError!: number;

  @NumberField({ description: 'Standard error of the intercept.' })
  interceptStandardError!: number;

  @NumberField({ description: 'Residual standard deviation (of unit weight).' })
  residualStandardDeviation!: number;

  @IntegerField({ description: 'Degrees of freedom; null where the scatter is known.', nullable: true })
  degreesOfFreedom!: number | null;

  @NumberField({ description: 'Coefficient of determination; null where it has no meaning.', nullable: true })
  rSquared!: number | null;

  @UsedLevelField()
  level!: number;

  @NestedField({ description: 'Interval of the slope.', type: () => SlopeIntervalDto })
  slopeInterval!: SlopeIntervalDto;

  @ListField({ description: 'Predictions asked for.', max: 100, type: () => LinePredictionDto })
  predictions!: readonly LinePredictionDto[];

  @ListField({ description: 'Heights asked for.', max: 100, type: () => ReachedHeightDto })
  reached!: readonly ReachedHeightDto[];
}

export class ExactlyDeterminedLineDto {
  @KindField('exactlyDetermined', 'as many parameters as points: no scatter, no interval')
  kind!: 'exactlyDetermined';

  @NumberField({ description: 'Slope.' })
  slope!: number;

  @NumberField({ description: 'Intercept.' })
  intercept!: number;
}

export class StraightLineResponse extends LineResponse {
  @UnionField({
    description: 'The line, or why there is none.',
    types: () => [EstimatedLineDto, ExactlyDeterminedLineDto, CalculationNeedsMoreDto],
  })
  result!: EstimatedLineDto | ExactlyDeterminedLineDto | CalculationNeedsMoreDto;
}
