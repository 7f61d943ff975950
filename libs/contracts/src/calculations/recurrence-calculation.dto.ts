import { recurrenceLimitForms, type RecurrenceLimitForm } from '@endfloat/statistics';
import { EnumField, KindField, ListField, NumberField, UnionField } from '../fields/index.js';
import {
  AnswerUnitField,
  CalculationNeedsMoreDto,
  CalculationResponse,
  ColumnUnitField,
  LevelField,
  UsedLevelField,
  type UnitCode,
} from './calculation.dto.js';
import { mostNumbers, NumbersField } from './numbers.field.js';

/** Unit numbers stand for rows of a table kept while the curve is walked. */
const unitNumbers = { min: 0, max: mostNumbers - 1 } as const;

const LimitFormField = (isOptional: boolean): PropertyDecorator =>
  EnumField({
    description: 'Form of the limits: plain, or on the logarithm.',
    values: recurrenceLimitForms,
    enumName: 'RecurrenceLimitForm',
    ...(isOptional ? { optional: true, default: 'log' } : {}),
  });

export class MeanCumulativeFunctionRequest {
  @ColumnUnitField('Unit of the ages.')
  unit?: UnitCode;

  @ListField({
    description: 'Number of the unit each event happened to, from 0.',
    max: mostNumbers,
    integers: unitNumbers,
  })
  eventUnits!: number[];

  @NumbersField({ description: 'Age of the unit at each event.', max: mostNumbers, from: 0 })
  eventAges!: number[];

  @NumbersField({
    description: 'Size of each event, such as its cost; 1 where left out.',
    max: mostNumbers,
    from: 0,
    optional: true,
  })
  eventSizes?: number[];

  @ListField({
    description: 'Number of the unit each span of observation belongs to.',
    max: mostNumbers,
    integers: unitNumbers,
  })
  spanUnits!: number[];

  @NumbersField({
    description: 'Age at which each span begins; 0 where left out.',
    max: mostNumbers,
    from: 0,
    optional: true,
  })
  spanStarts?: number[];

  @NumbersField({
    description: 'Age at which each span ends; an event at it counts.',
    max: mostNumbers,
    from: 0,
  })
  spanEnds!: number[];

  @LimitFormField(true)
  limitForm?: RecurrenceLimitForm;

  @LevelField()
  level?: number;

  @NumbersField({ description: 'Ages at which the curve is read off.', max: 100, from: 0, optional: true })
  atAges?: number[];
}

export class MeanAtAgeDto {
  @NumberField({ description: 'Age asked for, in the unit.' })
  age!: number;

  @NumberField({
    description: 'Mean events per unit by that age; null where nobody was observed.',
    nullable: true,
  })
  mean!: number | null;

  @NumberField({ description: 'Its robust standard error.', nullable: true })
  standardError!: number | null;

  @NumberField({ description: 'Lower limit.', nullable: true })
  lower!: number | null;

  @NumberField({ description: 'Upper limit.', nullable: true })
  upper!: number | null;
}

export class UnobservedAgesDto {
  @NumberField({ description: 'Age from which nobody was observed, in the unit.' })
  from!: number;

  @NumberField({ description: 'Age to which nobody was observed, in the unit.' })
  to!: number;
}

export class EstimatedMeanFunctionDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumbersField({ description: 'Event ages, rising, in the unit.', max: mostNumbers })
  ages!: readonly number[];

  @NumbersField({ description: 'Units at risk at each age.', max: mostNumbers })
  atRisk!: readonly number[];

  @NumbersField({ description: 'Events (or their sizes) at each age.', max: mostNumbers })
  events!: readonly number[];

  @NumbersField({ description: 'Mean events per unit by each age.', max: mostNumbers })
  mean!: readonly number[];

  @NumbersField({ description: 'Robust standard errors of the mean.', max: mostNumbers, holes: true })
  standardErrors!: readonly (number | null)[];

  @NumbersField({ description: 'Lower limits of the mean.', max: mostNumbers, holes: true })
  lower!: readonly (number | null)[];

  @NumbersField({ description: 'Upper limits of the mean.', max: mostNumbers, holes: true })
  upper!: readonly (number | null)[];

  @LimitFormField(false)
  limitForm!: RecurrenceLimitForm;

  @UsedLevelField()
  level!: number;

  @NumberField({ description: 'First age observed, in the unit.' })
  firstAge!: number;

  @NumberField({ description: 'Last age observed, in the unit.' })
  lastAge!: number;

  @ListField({
    description: 'Ages between at which nobody was observed.',
    max: mostNumbers,
    type: () => UnobservedAgesDto,
  })
  gaps!: readonly UnobservedAgesDto[];

  @NumberField({ description: 'Units observed.' })
  units!: number;

  @ListField({ description: 'The curve at the ages asked for.', max: 100, type: () => MeanAtAgeDto })
  at!: readonly MeanAtAgeDto[];
}

export class NoRecurrencesDto {
  @KindField('noEvents')
  kind!: 'noEvents';

  @NumberField({ description: 'Units observed.' })
  units!: number;

  @NumberField({ description: 'First age observed, in the unit.' })
  firstAge!: number;

  @NumberField({ description: 'Last age observed, in the unit.' })
  lastAge!: number;
}

export class MeanCumulativeFunctionResponse extends CalculationResponse {
  @AnswerUnitField('Unit of the ages.')
  unit!: UnitCode;

  @UnionField({
    description: 'The curve, or why there is none.',
    types: () => [EstimatedMeanFunctionDto, NoRecurrencesDto, CalculationNeedsMoreDto],
  })
  result!: EstimatedMeanFunctionDto | NoRecurrencesDto | CalculationNeedsMoreDto;
}
