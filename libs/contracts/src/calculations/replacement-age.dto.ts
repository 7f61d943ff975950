import { runToFailureReasons, type RunToFailureReason } from '@endfloat/statistics';
import { EnumField, IntegerField, KindField, ListField, NumberField, UnionField } from '../fields/index.js';
import {
  AnswerUnitField,
  CalculationNeedsMoreDto,
  CalculationNotConvergedDto,
  CalculationResponse,
  ColumnUnitField,
  type UnitCode,
} from './calculation.dto.js';
import { NumbersField } from './numbers.field.js';

export class WeibullLifeDto {
  @KindField('weibull')
  kind!: 'weibull';

  @NumberField({ description: 'Shape.', min: 0.01, max: 100 })
  shape!: number;

  @NumberField({ description: 'Characteristic life, in the unit.', min: 1e-9, max: 1e12 })
  scale!: number;
}

export class UniformLifeDto {
  @KindField('uniform')
  kind!: 'uniform';

  @NumberField({ description: 'Least life, in the unit.', min: 0, max: 1e12 })
  from!: number;

  @NumberField({ description: 'Greatest life, in the unit.', min: 1e-9, max: 1e12 })
  to!: number;
}

export class AgeReplacementRequest {
  @ColumnUnitField('Unit of the ages.')
  unit?: UnitCode;

  @UnionField({ description: 'How long the part lasts.', types: () => [WeibullLifeDto, UniformLifeDto] })
  life!: WeibullLifeDto | UniformLifeDto;

  @NumberField({ description: 'Cost of a planned replacement, in any one currency.', min: 1e-9, max: 1e12 })
  plannedCost!: number;

  @NumberField({
    description: 'Cost of a failure with its replacement, in the same currency.',
    min: 0,
    max: 1e12,
  })
  failureCost!: number;

  @NumbersField({ description: 'Ages whose cost rate is asked for.', max: 100, from: 1e-9, optional: true })
  atAges?: number[];
}

export class OptimalAgeDto {
  @KindField('optimum')
  kind!: 'optimum';

  @NumberField({ description: 'Age at which to replace, in the unit.' })
  age!: number;

  @NumberField({ description: 'Cost per unit of age there.' })
  costRate!: number;

  @NumberField({ description: 'Cost per unit of age when run to failure.' })
  runToFailureCostRate!: number;

  @NumberField({ description: 'Share saved against running to failure.' })
  saving!: number;

  @NumberField({ description: 'Mean age at replacement, in the unit.' })
  meanCycle!: number;

  @NumberField({ description: 'Share that fails before.', min: 0, max: 1 })
  failureShare!: number;
}

export class RunToFailureDto {
  @KindField('runToFailure', 'no finite age is cheaper')
  kind!: 'runToFailure';

  @EnumField({ description: 'Why.', values: runToFailureReasons, enumName: 'RunToFailureReason' })
  reason!: RunToFailureReason;

  @NumberField({ description: 'Cost per unit of age when run to failure.' })
  costRate!: number;

  @NumberField({ description: 'Mean life, in the unit.' })
  meanLife!: number;
}

export class CostRateAtAgeDto {
  @NumberField({ description: 'Age, in the unit.' })
  age!: number;

  @NumberField({ description: 'Cost per unit of age when replaced then.' })
  costRate!: number;
}

export class AgeReplacementResponse extends CalculationResponse {
  @AnswerUnitField('Unit of the ages.')
  unit!: UnitCode;

  @UnionField({
    description: 'The age, or that there is none.',
    types: () => [OptimalAgeDto, RunToFailureDto, CalculationNotConvergedDto],
  })
  result!: OptimalAgeDto | RunToFailureDto | CalculationNotConvergedDto;

  @ListField({ description: 'Cost rates of the ages asked for.', max: 100, type: () => CostRateAtAgeDto })
  costRates!: readonly CostRateAtAgeDto[];
}

export class HoldingPeriodDto {
  @NumberField({ description: 'Running cost of the period, in any one currency.', min: -1e12, max: 1e12 })
  running!: number;

  @NumberField({ description: 'Value at its end.', min: -1e12, max: 1e12 })
  resale!: number;
}

export class EconomicLifeRequest {
  @NumberField({
    description: 'What it costs to get, or what selling it now would bring.',
    min: -1e12,
    max: 1e12,
  })
  price!: number;

  @ListField({ description: 'Equal periods in order.', max: 200, type: () => HoldingPeriodDto })
  periods!: HoldingPeriodDto[];

  @NumberField({
    description: 'Interest per period; no discounting where left out.',
    min: 1e-9,
    max: 10,
    optional: true,
  })
  discountRate?: number;

  @NumberField({
    description:
      'Cost per period of what would take its place; price is then what selling it now would bring.',
    min: -1e12,
    max: 1e12,
    optional: true,
  })
  challengerCost?: number;
}

class HoldingCostsDto {
  @IntegerField({ description: 'Periods to hold.' })
  periods!: number;

  @NumbersField({ description: 'Cost per period when held for 1, 2, ... periods.', max: 200 })
  costs!: readonly number[];
}

export class MinimumInsideDto extends HoldingCostsDto {
  @KindField('minimumInside')
  kind!: 'minimumInside';

  @NumberField({ description: 'Cost per period of the best.' })
  cost!: number;
}

export class LowestAtLastPeriodDto extends HoldingCostsDto {
  @KindField('lowestAtLastPeriod', 'the list ends before the cost has turned')
  kind!: 'lowestAtLastPeriod';

  @NumberField({ description: 'Cost per period of the last.' })
  cost!: number;
}

class ChallengedDto extends HoldingCostsDto {
  @NumbersField({ description: 'Cost of each period alone.', max: 200 })
  marginalCosts!: readonly number[];
}

export class ReplaceNowDto extends ChallengedDto {
  @KindField('replaceNow')
  kind!: 'replaceNow';
}

export class KeepForPeriodsDto extends ChallengedDto {
  @KindField('keep')
  kind!: 'keep';
}

export class KeepThroughoutDto extends ChallengedDto {
  @KindField('keepThroughout')
  kind!: 'keepThroughout';
}

const challengerCases = () => [ReplaceNowDto, KeepForPeriodsDto, KeepThroughoutDto, CalculationNeedsMoreDto];

export class EconomicLifeResponse extends CalculationResponse {
  @UnionField({
    description: 'The economic life, or why there is none.',
    types: () => [MinimumInsideDto, LowestAtLastPeriodDto, CalculationNeedsMoreDto],
  })
  result!: MinimumInsideDto | LowestAtLastPeriodDto | CalculationNeedsMoreDto;

  @UnionField({
    description: 'What a challenger means for it; null where none was given.',
    types: challengerCases,
    nullable: true,
  })
  challenger!: InstanceType<ReturnType<typeof challengerCases>[number]> | null;
}
