import { terminations, type Termination } from '@endfloat/statistics';
import {
  EnumField,
  IntegerField,
  KindField,
  ListField,
  NestedField,
  NumberField,
  TextField,
  UnionField,
} from '../fields/index.js';
import {
  AnswerUnitField,
  CalculationLimitsDto,
  CalculationNeedsMoreDto,
  CalculationNotConvergedDto,
  CalculationResponse,
  ColumnUnitField,
  LevelField,
  UsedLevelField,
  type UnitCode,
} from './calculation.dto.js';
import { mostNumbers, NumbersField } from './numbers.field.js';

const TerminationField = (): PropertyDecorator =>
  EnumField({
    description: 'Whether observation ended at a time fixed beforehand or with the last event.',
    values: terminations,
    enumName: 'Termination',
  });

export class ObservedSystemDto {
  @NumbersField({ description: 'Ages of the system at its events.', max: mostNumbers, from: 0 })
  eventAges!: number[];

  @NumberField({
    description: 'Age at the end of observation; may be left out where it ended with the last event.',
    min: 0,
    optional: true,
  })
  end?: number;

  @TerminationField()
  termination!: Termination;
}

export class ExactEventsDto extends ObservedSystemDto {
  @KindField('exact')
  kind!: 'exact';
}

export class GroupedEventsDto {
  @KindField('grouped')
  kind!: 'grouped';

  @NumbersField({ description: 'Ages at which the intervals begin.', max: mostNumbers, from: 0 })
  starts!: number[];

  @NumbersField({ description: 'Ages at which they end.', max: mostNumbers, from: 0 })
  ends!: number[];

  @ListField({ description: 'Events in each.', max: mostNumbers, integers: { min: 0, max: 1_000_000 } })
  counts!: number[];
}

export class PowerLawProcessRequest {
  @ColumnUnitField('Unit of the ages.')
  unit?: UnitCode;

  @UnionField({
    description: 'Exact ages of one system, or counts in intervals.',
    types: () => [ExactEventsDto, GroupedEventsDto],
  })
  data!: ExactEventsDto | GroupedEventsDto;

  @LevelField()
  level?: number;
}

export class UnbiasedMeanTimeDto {
  @NumberField({ description: 'Mean time between events at the end, in the unit.' })
  estimate!: number;

  @NumberField({ description: 'Lower limit, in the unit.' })
  lower!: number;

  @NumberField({
    description: 'Upper limit, in the unit; null where the approximation has none.',
    nullable: true,
  })
  upper!: number | null;
}

export class ProcessFromAgesDto {
  @KindField('estimatedFromAges')
  kind!: 'estimatedFromAges';

  @NumberField({ description: 'Above 1 the events come ever faster, below 1 ever slower.' })
  shape!: number;

  @NestedField({ description: 'Exact limits of the shape.', type: () => CalculationLimitsDto })
  shapeLimits!: CalculationLimitsDto;

  @NumberField({ description: 'Rate: events expected by age t are rate x t^shape, t in the unit.' })
  rate!: number;

  @NumberField({ description: 'Shape without bias; null with too few events.', nullable: true })
  unbiasedShape!: number | null;

  @NumberField({ description: 'Rate that goes with it.', nullable: true })
  unbiasedRate!: number | null;

  @NumberField({ description: 'Events per unit of age at the end.' })
  intensityAtEnd!: number;

  @NumberField({ description: 'Its inverse, in the unit.' })
  meanTimeAtEnd!: number;

  @NestedField({
    description: 'The same by the unbiased shape, with limits.',
    type: () => UnbiasedMeanTimeDto,
    nullable: true,
  })
  unbiasedMeanTime!: UnbiasedMeanTimeDto | null;

  @NumberField({ description: 'Cramer-von Mises statistic; grows with lack of fit.', nullable: true })
  cramerVonMises!: number | null;

  @IntegerField({ description: 'Events.' })
  events!: number;

  @NumberField({ description: 'Age at the end of observation, in the unit.' })
  end!: number;

  @TerminationField()
  termination!: Termination;

  @UsedLevelField()
  level!: number;
}

export class ProcessFromCountsDto {
  @KindField('estimatedFromCounts')
  kind!: 'estimatedFromCounts';

  @NumberField({ description: 'Above 1 the events come ever faster, below 1 ever slower.' })
  shape!: number;

  @NestedField({ description: 'Wald limits of the shape.', type: () => CalculationLimitsDto })
  shapeLimits!: CalculationLimitsDto;

  @NumberField({ description: 'Rate: events expected by age t are rate x t^shape, t in the unit.' })
  rate!: number;

  @NumberField({ description: 'Logarithm of the likelihood.' })
  logLikelihood!: number;

  @IntegerField({ description: 'Events.' })
  events!: number;

  @UsedLevelField()
  level!: number;
}

export class ZeroAgeEventsDto {
  @KindField('zeroAgeEvents', 'events at age 0, which the process does not allow')
  kind!: 'zeroAgeEvents';

  @IntegerField({ description: 'How many.' })
  count!: number;
}

export class NoProcessMaximumDto {
  @KindField('noMaximum')
  kind!: 'noMaximum';

  @TextField({ description: 'Why the likelihood has no maximum.', max: 40, example: 'allEventsAtEnd' })
  reason!: string;
}

type PowerLawResultDto =
  | ProcessFromAgesDto
  | ProcessFromCountsDto
  | ZeroAgeEventsDto
  | NoProcessMaximumDto
  | CalculationNeedsMoreDto
  | CalculationNotConvergedDto;

export class PowerLawProcessResponse extends CalculationResponse {
  @AnswerUnitField('Unit of the ages.')
  unit!: UnitCode;

  @UnionField({
    description: 'The fit, or why there is none.',
    types: () => [
      ProcessFromAgesDto,
      ProcessFromCountsDto,
      ZeroAgeEventsDto,
      NoProcessMaximumDto,
      CalculationNeedsMoreDto,
      CalculationNotConvergedDto,
    ],
  })
  result!: PowerLawResultDto;
}

export class TrendTestRequest {
  @ColumnUnitField('Unit of the ages.')
  unit?: UnitCode;

  @ListField({ description: 'Systems, each observed from age 0.', max: 500, type: () => ObservedSystemDto })
  systems!: ObservedSystemDto[];
}

export class LaplaceTestDto {
  @KindField('tested')
  kind!: 'tested';

  @NumberField({ description: 'Standard normal under a steady rate; above 0 for deterioration.' })
  statistic!: number;

  @NumberField({ description: 'Two-sided p-value.', min: 0, max: 1 })
  pValue!: number;

  @IntegerField({ description: 'Events that count.' })
  events!: number;
}

export class ChiSquareTrendTestDto {
  @KindField('tested')
  kind!: 'tested';

  @NumberField({ description: 'The statistic.' })
  chiSquare!: number;

  @IntegerField({ description: 'Its degrees of freedom.' })
  degreesOfFreedom!: number;

  @NumberField({ description: 'Small where events come ever faster.', min: 0, max: 1 })
  lowerTail!: number;

  @NumberField({ description: 'Small where events come ever slower.', min: 0, max: 1 })
  upperTail!: number;

  @NumberField({ description: 'Two-sided p-value.', min: 0, max: 1 })
  pValue!: number;
}

export class ReverseArrangementsDto {
  @KindField('tested')
  kind!: 'tested';

  @IntegerField({ description: 'Gaps of which a later one is longer.' })
  reversals!: number;

  @IntegerField({ description: 'The most there can be.' })
  greatest!: number;

  @NumberField({ description: 'Expected at a steady rate.' })
  expected!: number;

  @NumberField({ description: 'Standard normal at a steady rate.' })
  statistic!: number;
}

export class TrendTestResponse extends CalculationResponse {
  @AnswerUnitField('Unit of the ages.')
  unit!: UnitCode;

  @UnionField({ description: 'Laplace test.', types: () => [LaplaceTestDto, CalculationNeedsMoreDto] })
  laplace!: LaplaceTestDto | CalculationNeedsMoreDto;

  @UnionField({
    description: 'Chi-square test of MIL-HDBK-189.',
    types: () => [ChiSquareTrendTestDto, ZeroAgeEventsDto, CalculationNeedsMoreDto],
  })
  chiSquare!: ChiSquareTrendTestDto | ZeroAgeEventsDto | CalculationNeedsMoreDto;

  @UnionField({
    description: 'Reverse arrangements of the first system.',
    types: () => [ReverseArrangementsDto, CalculationNeedsMoreDto],
  })
  reverseArrangements!: ReverseArrangementsDto | CalculationNeedsMoreDto;
}
