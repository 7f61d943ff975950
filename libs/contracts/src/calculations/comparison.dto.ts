import { expectationFindings, type ExpectationFinding } from '@endfloat/statistics';
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

/** Lives of one group. */
export class GroupOfLivesDto {
  @NumbersField({
    description: 'Age of each unit at its event or at the end of its observation.',
    max: mostNumbers,
    from: 0,
  })
  ages!: number[];

  @ListField({
    description: '1 where the age is that of an event.',
    max: mostNumbers,
    integers: { min: 0, max: 1 },
  })
  events!: number[];

  @NumbersField({
    description: 'Age from which each unit was observed; 0 where left out.',
    max: mostNumbers,
    from: 0,
    optional: true,
  })
  entryAges?: number[];

  @NumbersField({
    description: 'How many like units each row stands for; 1 where left out.',
    max: mostNumbers,
    from: 0,
    optional: true,
  })
  weights?: number[];
}

export class LogRankTestRequest {
  @ColumnUnitField('Unit of the ages.')
  unit?: UnitCode;

  @NestedField({ description: 'First group.', type: () => GroupOfLivesDto })
  first!: GroupOfLivesDto;

  @NestedField({ description: 'Second group.', type: () => GroupOfLivesDto })
  second!: GroupOfLivesDto;
}

export class TestedGroupsDto {
  @KindField('tested')
  kind!: 'tested';

  @NumbersField({ description: 'Events seen in the first and in the second group.', min: 2, max: 2 })
  observed!: readonly number[];

  @NumbersField({ description: 'Events to be expected in each were the hazards equal.', min: 2, max: 2 })
  expected!: readonly number[];

  @NumberField({ description: 'Variance of observed minus expected.' })
  variance!: number;

  @NumberField({ description: 'Chi-square with 1 degree of freedom.', min: 0 })
  chiSquare!: number;

  @NumberField({ description: 'Its upper tail.', min: 0, max: 1 })
  pValue!: number;
}

export class GroupsNotComparableDto {
  @KindField('notComparable', 'at no age with an event are both groups at risk with a choice left')
  kind!: 'notComparable';
}

export class LogRankTestResponse extends CalculationResponse {
  @AnswerUnitField('Unit of the ages.')
  unit!: UnitCode;

  @UnionField({
    description: 'The test, or why there is none.',
    types: () => [TestedGroupsDto, GroupsNotComparableDto, CalculationNeedsMoreDto],
  })
  result!: TestedGroupsDto | GroupsNotComparableDto | CalculationNeedsMoreDto;
}

export class ObservedToExpectedRequest {
  @IntegerField({ description: 'Events that were seen.', max: 1_000_000_000 })
  observed!: number;

  @NumberField({ description: 'Events that were to be expected.', min: 0, max: 1e9 })
  expected!: number;

  @LevelField()
  level?: number;
}

export class EstimatedExpectationRatioDto {
  @KindField('estimated')
  kind!: 'estimated';

  @IntegerField({ description: 'Events that were seen.' })
  observed!: number;

  @NumberField({ description: 'Events that were to be expected.' })
  expected!: number;

  @NumberField({ description: 'Observed over expected.', min: 0 })
  ratio!: number;

  @NestedField({ description: 'Its exact limits.', type: () => CalculationLimitsDto })
  interval!: CalculationLimitsDto;

  @EnumField({
    description: 'Whether 1 lies inside the limits.',
    values: expectationFindings,
    enumName: 'ExpectationFinding',
  })
  finding!: ExpectationFinding;

  @UsedLevelField()
  level!: number;
}

export class NothingExpectedDto {
  @KindField('nothingExpected', 'events where there could be none: no ratio')
  kind!: 'nothingExpected';

  @IntegerField({ description: 'Events that were seen.' })
  observed!: number;
}

export class ObservedToExpectedResponse extends CalculationResponse {
  @UnionField({
    description: 'The ratio, or why there is none.',
    types: () => [EstimatedExpectationRatioDto, NothingExpectedDto, CalculationNeedsMoreDto],
  })
  result!: EstimatedExpectationRatioDto | NothingExpectedDto | CalculationNeedsMoreDto;
}
