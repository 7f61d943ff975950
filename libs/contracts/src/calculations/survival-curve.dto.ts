import { curveLimitForms, type CurveLimitForm } from '@endfloat/statistics';
import {
  EnumField,
  FlagField,
  IntegerField,
  KindField,
  ListField,
  NumberField,
  UnionField,
} from '../fields/index.js';
import {
  AnswerUnitField,
  CalculationNeedsMoreDto,
  CalculationNotConvergedDto,
  CalculationResponse,
  ColumnUnitField,
  LevelField,
  UsedLevelField,
  type UnitCode,
} from './calculation.dto.js';
import { mostNumbers, NumbersField } from './numbers.field.js';

const LimitFormField = (isOptional: boolean): PropertyDecorator =>
  EnumField({
    description: 'Form of the limits: plain, on the logarithm, or on the logarithm of the logarithm.',
    values: curveLimitForms,
    enumName: 'CurveLimitForm',
    ...(isOptional ? { optional: true, default: 'logLog' } : {}),
  });

export class SurvivalCurveRequest {
  @ColumnUnitField('Unit of the ages.')
  unit?: UnitCode;

  @NumbersField({
    description: 'Age of each unit at its event or at the end of its observation.',
    max: mostNumbers,
    from: 0,
  })
  ages!: number[];

  @ListField({
    description: '1 where the age is that of an event, 0 where observation ended without one.',
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

  @LimitFormField(true)
  limitForm?: CurveLimitForm;

  @LevelField()
  level?: number;

  @NumbersField({ description: 'Ages at which the curve is read off.', max: 100, from: 0, optional: true })
  atAges?: number[];

  @NumbersField({
    description: 'Shares failed whose age is asked for.',
    max: 100,
    from: 1e-9,
    to: 1 - 1e-9,
    optional: true,
  })
  failedShares?: number[];
}

export class SurvivalAtAgeDto {
  @NumberField({ description: 'Age asked for, in the unit.' })
  age!: number;

  @NumberField({ description: 'Share surviving; null beyond the last age observed.', nullable: true })
  survival!: number | null;

  @NumberField({ description: 'Lower limit of the share.', nullable: true })
  lower!: number | null;

  @NumberField({ description: 'Upper limit of the share.', nullable: true })
  upper!: number | null;
}

export class SurvivalQuantileDto {
  @NumberField({ description: 'Share failed that was asked for.' })
  failedShare!: number;

  @NumberField({
    description: 'Age by which so many have failed, in the unit; null where the curve does not get there.',
    nullable: true,
  })
  age!: number | null;

  @NumberField({ description: 'Lower limit of the age.', nullable: true })
  lower!: number | null;

  @NumberField({ description: 'Upper limit of the age.', nullable: true })
  upper!: number | null;
}

/** A step curve, one entry of each column per event age. */
export class EstimatedSurvivalDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumbersField({ description: 'Event ages, rising, in the unit.', max: mostNumbers })
  ages!: readonly number[];

  @NumbersField({ description: 'Units at risk just before each age.', max: mostNumbers })
  atRisk!: readonly number[];

  @NumbersField({ description: 'Events at each age.', max: mostNumbers })
  events!: readonly number[];

  @NumbersField({ description: 'Share surviving from each age on.', max: mostNumbers })
  survival!: readonly number[];

  @NumbersField({
    description: "Greenwood's standard error of the share; null where the share is 0.",
    max: mostNumbers,
    holes: true,
  })
  standardErrors!: readonly (number | null)[];

  @NumbersField({ description: 'Lower limits of the share.', max: mostNumbers, holes: true })
  lower!: readonly (number | null)[];

  @NumbersField({ description: 'Upper limits of the share.', max: mostNumbers, holes: true })
  upper!: readonly (number | null)[];

  @LimitFormField(false)
  limitForm!: CurveLimitForm;

  @UsedLevelField()
  level!: number;

  @NumberField({ description: 'The curve says nothing beyond this age, in the unit.' })
  lastAge!: number;

  @NumberField({ description: 'Units observed, by weight.' })
  units!: number;

  @FlagField({
    description: 'The curve fell to 0 while older units were still to come: late entry left too few.',
  })
  exhaustedEarly!: boolean;

  @ListField({ description: 'The curve at the ages asked for.', max: 100, type: () => SurvivalAtAgeDto })
  at!: readonly SurvivalAtAgeDto[];

  @ListField({ description: 'Ages of the shares asked for.', max: 100, type: () => SurvivalQuantileDto })
  quantiles!: readonly SurvivalQuantileDto[];
}

/** No event: all survive as far as anybody looked. */
export class NoFailuresDto {
  @KindField('noEvents')
  kind!: 'noEvents';

  @NumberField({ description: 'Units observed, by weight.' })
  units!: number;

  @NumberField({ description: 'Last age observed, in the unit.' })
  lastAge!: number;
}

export class SurvivalCurveResponse extends CalculationResponse {
  @AnswerUnitField('Unit of the ages.')
  unit!: UnitCode;

  @UnionField({
    description: 'The curve, or why there is none.',
    types: () => [EstimatedSurvivalDto, NoFailuresDto, CalculationNeedsMoreDto],
  })
  result!: EstimatedSurvivalDto | NoFailuresDto | CalculationNeedsMoreDto;
}

/** Most rows of inspection data: the search works over all of them many times. */
const mostInspected = 5000;

export class TurnbullEstimateRequest {
  @ColumnUnitField('Unit of the ages.')
  unit?: UnitCode;

  @NumbersField({
    description: 'Last age at which each unit was known to be good; 0 where it never was.',
    max: mostInspected,
    from: 0,
  })
  lower!: number[];

  @NumbersField({
    description: 'First age at which it was known to have failed; null while it is still good.',
    max: mostInspected,
    from: 0,
    holes: true,
  })
  upper!: (number | null)[];

  @NumbersField({
    description: 'How many like units each row stands for; 1 where left out.',
    max: mostInspected,
    from: 0,
    optional: true,
  })
  weights?: number[];

  @LimitFormField(true)
  limitForm?: CurveLimitForm;

  @LevelField()
  level?: number;
}

export class EstimatedTurnbullDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumbersField({
    description: 'Lower ends of the intervals that hold failures, in the unit.',
    max: mostInspected,
  })
  lowerAges!: readonly number[];

  @NumbersField({ description: 'Upper ends; null for the last survivors.', max: mostInspected, holes: true })
  upperAges!: readonly (number | null)[];

  @NumbersField({ description: 'Share that fails in each interval.', max: mostInspected })
  masses!: readonly number[];

  @NumbersField({ description: 'Share surviving from the upper end on.', max: mostInspected })
  survival!: readonly number[];

  @NumbersField({
    description: 'Standard error of the share; null where there is none.',
    max: mostInspected,
    holes: true,
  })
  standardErrors!: readonly (number | null)[];

  @NumbersField({ description: 'Lower limits of the share.', max: mostInspected, holes: true })
  lower!: readonly (number | null)[];

  @NumbersField({ description: 'Upper limits of the share.', max: mostInspected, holes: true })
  upper!: readonly (number | null)[];

  @LimitFormField(false)
  limitForm!: CurveLimitForm;

  @UsedLevelField()
  level!: number;

  @NumberField({ description: 'Units observed, by weight.' })
  units!: number;

  @NumberField({ description: 'Logarithm of the likelihood.' })
  logLikelihood!: number;

  @IntegerField({ description: 'Steps of the search.' })
  iterations!: number;
}

export class TurnbullEstimateResponse extends CalculationResponse {
  @AnswerUnitField('Unit of the ages.')
  unit!: UnitCode;

  @UnionField({
    description: 'The curve, or why there is none.',
    types: () => [EstimatedTurnbullDto, CalculationNeedsMoreDto, CalculationNotConvergedDto],
  })
  result!: EstimatedTurnbullDto | CalculationNeedsMoreDto | CalculationNotConvergedDto;
}
