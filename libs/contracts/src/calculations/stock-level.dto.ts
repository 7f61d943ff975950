import {
  intermittentMethods,
  serviceMeasures,
  type IntermittentMethod,
  type ServiceMeasure,
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
import { CalculationNeedsMoreDto, CalculationResponse } from './calculation.dto.js';
import { NumbersField } from './numbers.field.js';

export class BaseStockRequest {
  @NumberField({ description: 'Mean demand over the lead time, pieces.', min: 0, max: 1e5 })
  leadTimeDemand!: number;

  @NumberField({ description: 'Service aimed at.', min: 0, max: 1 })
  target!: number;

  @EnumField({ description: 'Which service is meant.', values: serviceMeasures, enumName: 'ServiceMeasure' })
  measure!: ServiceMeasure;
}

export class FoundBaseStockDto {
  @KindField('found')
  kind!: 'found';

  @EnumField({ description: 'Which service is meant.', values: serviceMeasures, enumName: 'ServiceMeasure' })
  measure!: ServiceMeasure;

  @IntegerField({ description: 'Smallest level that keeps the target, pieces.' })
  level!: number;

  @NumberField({ description: 'Service at that level.', min: 0, max: 1 })
  service!: number;

  @NumberField({ description: 'Expected backorders at that level, pieces.' })
  expectedBackorders!: number;

  @NumberField({ description: 'The same one piece below, pieces.' })
  backordersBelow!: number;
}

export class UnattainableServiceDto {
  @KindField('unattainable', 'no finite level keeps it')
  kind!: 'unattainable';

  @NumberField({ description: 'Service aimed at.' })
  target!: number;
}

export class BaseStockResponse extends CalculationResponse {
  @UnionField({
    description: 'The level, or that there is none.',
    types: () => [FoundBaseStockDto, UnattainableServiceDto],
  })
  result!: FoundBaseStockDto | UnattainableServiceDto;
}

export class NormalDemandDto {
  @KindField('normal')
  kind!: 'normal';

  @NumberField({ description: 'Mean demand, pieces.', min: -1e9, max: 1e9 })
  mean!: number;

  @NumberField({ description: 'Standard deviation, pieces.', min: 1e-9, max: 1e9 })
  standardDeviation!: number;
}

export class PoissonDemandDto {
  @KindField('poisson')
  kind!: 'poisson';

  @NumberField({ description: 'Mean demand, pieces.', min: 0, max: 1e5 })
  mean!: number;
}

export class NewsvendorRequest {
  @NumberField({ description: 'Cost of a piece too many, in any one currency.', min: 1e-9, max: 1e12 })
  over!: number;

  @NumberField({ description: 'Cost of a piece too few, in the same currency.', min: 1e-9, max: 1e12 })
  under!: number;

  @UnionField({ description: 'Demand of the period.', types: () => [NormalDemandDto, PoissonDemandDto] })
  demand!: NormalDemandDto | PoissonDemandDto;

  @ListField({
    description: 'Levels whose expected cost is asked for (Poisson demand).',
    max: 100,
    integers: { min: 0, max: 1_000_000 },
    optional: true,
  })
  atLevels?: number[];
}

export class NewsvendorLevelDto {
  @NumberField({ description: 'Level to stock, pieces.' })
  level!: number;

  @NumberField({ description: 'Expected cost of that level.' })
  expectedCost!: number;

  @NumberField({ description: 'under / (under + over).', min: 0, max: 1 })
  criticalRatio!: number;
}

export class CostOfLevelDto {
  @IntegerField({ description: 'Level, pieces.' })
  level!: number;

  @NumberField({ description: 'Its expected cost.' })
  expectedCost!: number;
}

export class NewsvendorResponse extends CalculationResponse {
  @NestedField({ description: 'The level that costs least.', type: () => NewsvendorLevelDto })
  result!: NewsvendorLevelDto;

  @ListField({ description: 'Costs of the levels asked for.', max: 100, type: () => CostOfLevelDto })
  costs!: readonly CostOfLevelDto[];
}

export class IntermittentForecastRequest {
  @NumbersField({ description: 'Demand of each period in order, pieces.', max: 10_000, from: 0 })
  series!: number[];

  @NumberField({ description: 'Smoothing constant.', min: 1e-9, max: 1 })
  smoothing!: number;

  @EnumField({
    description: 'Plain, or corrected for bias.',
    values: intermittentMethods,
    enumName: 'IntermittentMethod',
    optional: true,
    default: 'croston',
  })
  form?: IntermittentMethod;
}

export class EstimatedForecastDto {
  @KindField('estimated')
  kind!: 'estimated';

  @EnumField({
    description: 'Plain, or corrected for bias.',
    values: intermittentMethods,
    enumName: 'IntermittentMethod',
  })
  method!: IntermittentMethod;

  @NumberField({ description: 'Demand per period, pieces.' })
  perPeriod!: number;

  @NumberField({ description: 'Smoothed size of a demand, pieces.' })
  size!: number;

  @NumberField({ description: 'Smoothed interval between demands, periods.' })
  interval!: number;

  @IntegerField({ description: 'Periods with demand.' })
  demands!: number;
}

export class IntermittentForecastResponse extends CalculationResponse {
  @UnionField({
    description: 'The forecast, or why there is none.',
    types: () => [EstimatedForecastDto, CalculationNeedsMoreDto],
  })
  result!: EstimatedForecastDto | CalculationNeedsMoreDto;
}
