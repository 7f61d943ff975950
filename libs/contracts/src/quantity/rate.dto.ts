import type { FieldOptions } from '../fields/field.js';
import { IntegerField } from '../fields/integer.field.js';
import { KindField } from '../fields/kind.field.js';
import { NestedField } from '../fields/nested.field.js';
import { NumberField } from '../fields/number.field.js';
import { UnionField } from '../fields/union.field.js';
import { IntervalDto } from './interval.dto.js';

/** A rate with its counts and its interval. */
export class EstimatedRateDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumberField({ description: 'Events divided by those at risk.', min: 0, max: 1, example: 0.042 })
  value!: number;

  @IntegerField({ description: 'How many events were seen.', example: 3 })
  events!: number;

  @IntegerField({ description: 'How many could have had one.', example: 71 })
  atRisk!: number;

  @NestedField({ description: 'How sure the rate is.', type: () => IntervalDto })
  interval!: IntervalDto;
}

/** Too few cases for a rate; the counts are given all the same. */
export class RateNeedsMoreDto {
  @KindField('insufficientData')
  kind!: 'insufficientData';

  @IntegerField({ description: 'How many events were seen.' })
  events!: number;

  @IntegerField({ description: 'How many could have had one.' })
  atRisk!: number;

  @IntegerField({ description: 'How many at risk are needed before a rate is given.', min: 1 })
  needed!: number;
}

/** A rate that may not exist: estimated, or too little data. Never a bare percentage. */
export type RateDto = EstimatedRateDto | RateNeedsMoreDto;

/** A member that holds a rate or says that there is too little data for one. */
export const RateField = (options: FieldOptions): PropertyDecorator =>
  UnionField({ ...options, types: () => [EstimatedRateDto, RateNeedsMoreDto] });
