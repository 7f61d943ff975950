import { KindField, ListField, NumberField, UnionField } from '../fields/index.js';
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

export class WeibayesRequest {
  @ColumnUnitField('Unit of the ages.')
  unit?: UnitCode;

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
    description: 'How many like units each row stands for; 1 where left out.',
    max: mostNumbers,
    from: 0,
    optional: true,
  })
  weights?: number[];

  @NumberField({ description: 'Weibull shape, known from before.', min: 0.01, max: 100 })
  shape!: number;

  @LevelField()
  level?: number;
}

export class EstimatedWeibayesDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumberField({ description: 'Characteristic life, in the unit.' })
  characteristicLife!: number;

  @NumberField({ description: 'Lower limit, in the unit.' })
  lower!: number;

  @NumberField({ description: 'Upper limit, in the unit.' })
  upper!: number;

  @NumberField({ description: 'Events, by weight.' })
  events!: number;

  @NumberField({ description: 'Shape that was taken as known.' })
  shape!: number;

  @UsedLevelField()
  level!: number;
}

export class LifeAboveDto {
  @KindField('lowerLimitOnly', 'no event yet')
  kind!: 'lowerLimitOnly';

  @NumberField({
    description: 'The characteristic life is above this with one-sided confidence `level`, in the unit.',
  })
  lower!: number;

  @NumberField({ description: 'Shape that was taken as known.' })
  shape!: number;

  @NumberField({ description: 'One-sided confidence level.' })
  level!: number;
}

export class WeibayesResponse extends CalculationResponse {
  @AnswerUnitField('Unit of the ages.')
  unit!: UnitCode;

  @UnionField({
    description: 'The life, a lower limit, or why there is neither.',
    types: () => [EstimatedWeibayesDto, LifeAboveDto, CalculationNeedsMoreDto],
  })
  result!: EstimatedWeibayesDto | LifeAboveDto | CalculationNeedsMoreDto;
}
