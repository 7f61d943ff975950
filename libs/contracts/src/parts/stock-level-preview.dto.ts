import { intermittentMethods, type IntermittentMethod } from '@endfloat/statistics';
import { stockServiceMeasures, type StockServiceMeasure } from '@endfloat/stock';
import { CalculationNeedsMoreDto } from '../calculations/index.js';
import {
  EnumField,
  IntegerField,
  KindField,
  ListField,
  NestedField,
  NumberField,
  UnionField,
} from '../fields/index.js';
import { DemandPointDto, DemandSummaryDto } from './part-needs.dto.js';
import { StockLevelDto, UnattainableLevelDto } from './stock-level.dto.js';

export class RateDemandDto {
  @KindField('rate')
  kind!: 'rate';

  @NumberField({ description: 'Pieces a day, Poisson.', min: 0, max: 1000 })
  perDay!: number;
}

export class ChanceDto {
  @NumberField({ description: 'Chance that this van needs one in the lead time.', min: 0, max: 1 })
  chance!: number;
}

export class ChancesDemandDto {
  @KindField('chances')
  kind!: 'chances';

  @ListField({ description: 'One a van.', max: 2000, type: () => ChanceDto })
  vans!: ChanceDto[];
}

export class SeriesDemandDto {
  @KindField('series')
  kind!: 'series';

  @ListField({
    description: 'Pieces used in each period, in order.',
    min: 1,
    max: 1200,
    integers: { min: 0, max: 100_000 },
  })
  pieces!: number[];

  @NumberField({ description: 'Days of a period.', min: 1, max: 3653 })
  periodDays!: number;

  @NumberField({ description: 'Weight of the latest demand.', min: 0.001, max: 1 })
  smoothing!: number;

  @EnumField({
    description: 'Croston’s forecast, or the one without its bias.',
    values: intermittentMethods,
    enumName: 'IntermittentMethod',
  })
  form!: IntermittentMethod;
}

export class ServiceAimDto {
  @KindField('service')
  kind!: 'service';

  @EnumField({
    description: 'What is promised.',
    values: stockServiceMeasures,
    enumName: 'StockServiceMeasure',
  })
  measure!: StockServiceMeasure;

  @NumberField({ description: 'The service wanted.', min: 0, max: 1 })
  target!: number;
}

export class CostAimDto {
  @KindField('costs')
  kind!: 'costs';

  @NumberField({ description: 'What a piece too many costs over the lead time.', min: 0.000001, max: 1e9 })
  over!: number;

  @NumberField({ description: 'What a piece too few costs, in the same currency.', min: 0.000001, max: 1e9 })
  under!: number;
}

export class StockLevelPreviewRequest {
  @UnionField({
    description: 'What is asked for.',
    types: () => [RateDemandDto, ChancesDemandDto, SeriesDemandDto],
  })
  demand!: RateDemandDto | ChancesDemandDto | SeriesDemandDto;

  @ListField({
    description: 'Lead times that occur, days, each as often as the others; empty with chances.',
    max: 100,
    integers: { min: 0, max: 3653 },
  })
  leadTimeDays!: number[];

  @UnionField({
    description: 'A service to keep, or costs to keep low.',
    types: () => [ServiceAimDto, CostAimDto],
  })
  aim!: ServiceAimDto | CostAimDto;
}

export class IntermittentPreviewDto {
  @EnumField({ description: 'Method.', values: intermittentMethods, enumName: 'IntermittentMethod' })
  form!: IntermittentMethod;

  @NumberField({ description: 'Pieces a period.', min: 0 })
  perPeriod!: number;

  @NumberField({ description: 'Smoothed size of a demand.', min: 0 })
  size!: number;

  @NumberField({ description: 'Smoothed periods from one demand to the next.', min: 0 })
  interval!: number;

  @IntegerField({ description: 'Periods with a demand.' })
  demands!: number;
}

export class CheapestLevelDto {
  @IntegerField({ description: 'Pieces.' })
  level!: number;

  @NumberField({ description: 'Expected cost over the lead time, in the currency of the costs.', min: 0 })
  expectedCost!: number;

  @NumberField({ description: 'under / (under + over).', min: 0, max: 1 })
  criticalRatio!: number;
}

export class StockLevelPreviewDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NestedField({ description: 'Pieces asked for over the lead time.', type: () => DemandSummaryDto })
  demand!: DemandSummaryDto;

  @ListField({ description: 'Chance of each number of pieces.', max: 12_000, type: () => DemandPointDto })
  points!: DemandPointDto[];

  @NestedField({
    description: 'Forecast from a series; null without one.',
    type: () => IntermittentPreviewDto,
    nullable: true,
  })
  forecast!: IntermittentPreviewDto | null;

  @UnionField({
    description: 'The level for the service; null where costs were named.',
    types: () => [StockLevelDto, UnattainableLevelDto],
    nullable: true,
  })
  level!: StockLevelDto | UnattainableLevelDto | null;

  @NestedField({
    description: 'The cheapest level; null where a service was named.',
    type: () => CheapestLevelDto,
    nullable: true,
  })
  cheapest!: CheapestLevelDto | null;
}

export class StockLevelPreviewResponse {
  @UnionField({
    description: 'The level, or what is missing.',
    types: () => [StockLevelPreviewDto, CalculationNeedsMoreDto],
  })
  outcome!: StockLevelPreviewDto | CalculationNeedsMoreDto;
}
