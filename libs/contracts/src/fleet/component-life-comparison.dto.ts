import { lifeEnds, type LifeEnd } from '@endfloat/reliability';
import { CalculationMethodDto, CalculationNeedsMoreDto } from '../calculations/calculation.dto.js';
import {
  EnumField,
  IntegerField,
  KindField,
  NestedField,
  NumberField,
  TextField,
  UnionField,
} from '../fields/index.js';
import { ComponentLivesDto, LivesSubjectQuery } from './component-lives.dto.js';

const groupings = ['supplier', 'condition', 'customer', 'application'] as const;

export class LivesComparisonQuery extends LivesSubjectQuery {
  @EnumField({
    description: 'By what the two groups of parts are told apart.',
    values: groupings,
    enumName: 'LifeGrouping',
  })
  by!: (typeof groupings)[number];

  @TextField({
    description: 'First group: supplier, condition, id of the customer, or application.',
    max: 120,
  })
  first!: string;

  @TextField({ description: 'Second group.', max: 120 })
  second!: string;
}

export class LogRankDto {
  @KindField('tested')
  kind!: 'tested';

  @NumberField({ description: 'Lives of the first group that ended.' })
  observedFirst!: number;

  @NumberField({ description: 'How many would have ended were the groups alike.' })
  expectedFirst!: number;

  @NumberField({ description: 'Chi-square with 1 degree of freedom.' })
  chiSquare!: number;

  @NumberField({ description: 'p-value.', min: 0, max: 1 })
  pValue!: number;
}

export class LivesNotComparableDto {
  @KindField('notComparable', 'no age at which a life ended with both groups at risk')
  kind!: 'notComparable';
}

export class LogRankNotTakenDto {
  @KindField('intervalsOnly', 'lives are known to intervals, which this test does not take')
  kind!: 'intervalsOnly';
}

export class LikelihoodRatioDto {
  @KindField('tested')
  kind!: 'tested';

  @NumberField({ description: 'Chi-square with 2 degrees of freedom: scale and shape.' })
  chiSquare!: number;

  @IntegerField({ description: 'Degrees of freedom.' })
  degreesOfFreedom!: number;

  @NumberField({ description: 'p-value.', min: 0, max: 1 })
  pValue!: number;

  @NumberField({ description: 'Characteristic life of the first group over that of the second.' })
  scaleRatio!: number;
}

export class LifeNotEstimatedDto {
  @KindField('notEstimated')
  kind!: 'notEstimated';

  @EnumField({
    description: 'Group whose distribution cannot be had.',
    values: ['first', 'second', 'both'],
    enumName: 'ComparedGroup',
  })
  group!: 'first' | 'second' | 'both';
}

export class LivesComparisonResponse {
  @EnumField({ description: 'What ends a life.', values: lifeEnds, enumName: 'LifeEnd' })
  ends!: LifeEnd;

  @EnumField({ description: 'Unit of all ages.', values: ['days', 'km'], enumName: 'LifeScale' })
  scale!: 'days' | 'km';

  @NestedField({ description: 'Lives of the first group.', type: () => ComponentLivesDto })
  first!: ComponentLivesDto;

  @NestedField({ description: 'Lives of the second group.', type: () => ComponentLivesDto })
  second!: ComponentLivesDto;

  @UnionField({
    description: 'Log-rank test of equal hazards.',
    types: () => [LogRankDto, LivesNotComparableDto, LogRankNotTakenDto, CalculationNeedsMoreDto],
  })
  logRank!: LogRankDto | LivesNotComparableDto | LogRankNotTakenDto | CalculationNeedsMoreDto;

  @UnionField({
    description: 'Two Weibull distributions against one common to both.',
    types: () => [LikelihoodRatioDto, LifeNotEstimatedDto, CalculationNeedsMoreDto],
  })
  likelihoodRatio!: LikelihoodRatioDto | LifeNotEstimatedDto | CalculationNeedsMoreDto;

  @NestedField({ description: 'How it was computed.', type: () => CalculationMethodDto })
  method!: CalculationMethodDto;
}
