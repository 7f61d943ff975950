import { lifeEnds, lifeGaps, type LifeEnd, type LifeGap } from '@endfloat/reliability';
import { noMaximumReasons } from '@endfloat/statistics';
import { fittedConditions, type FittedCondition } from '@endfloat/workshop/ports';
import {
  CalculationMethodDto,
  CalculationNeedsMoreDto,
  CalculationNotConvergedDto,
} from '../calculations/calculation.dto.js';
import {
  EnumField,
  FlagField,
  IdField,
  InstantField,
  IntegerField,
  KindField,
  ListField,
  NestedField,
  NumberField,
  TextField,
  textPatterns,
  UnionField,
} from '../fields/index.js';
import { WatchOddityDto } from './fleet-recurrence.dto.js';

const scales = ['days', 'km'] as const;
type Scale = (typeof scales)[number];

const EndsField = (options: { optional?: true } = {}): PropertyDecorator =>
  EnumField({
    description:
      'What ends a life: the part comes off (`replaced`, the usual), or it reaches its limit, known to lie between two inspections (`worn`).',
    values: lifeEnds,
    enumName: 'LifeEnd',
    ...options,
  });

const ScaleField = (options: { optional?: true } = {}): PropertyDecorator =>
  EnumField({
    description: 'Whether lives are counted in days (the usual) or in km.',
    values: scales,
    enumName: 'LifeScale',
    ...options,
  });

/** Which lives, counted how. */
export class LivesSubjectQuery {
  @TextField({ description: 'Kind of part.', max: 64, pattern: textPatterns.catalogueId })
  componentType!: string;

  @TextField({
    description: 'Where on the vehicle.',
    optional: true,
    max: 64,
    pattern: '^[A-Za-z][A-Za-z0-9-]*$',
  })
  position?: string;

  @EndsField({ optional: true })
  ends?: LifeEnd;

  @ScaleField({ optional: true })
  scale?: Scale;

  @InstantField({ description: 'End of the observation; now where absent.', optional: true })
  until?: string;

  @InstantField({ description: 'The answer as it was known at this moment.', optional: true })
  asOf?: string;
}

export class ComponentLivesQuery extends LivesSubjectQuery {
  @IdField({ description: 'Vehicles while this customer owned them.', optional: true })
  customerId?: string;

  @TextField({
    description: "Vehicles with this application, the shop's own word.",
    optional: true,
    max: 120,
  })
  application?: string;

  @TextField({ description: 'Parts of this supplier.', optional: true, max: 120 })
  supplier?: string;

  @EnumField({
    description: 'Parts in this condition when fitted.',
    values: fittedConditions,
    enumName: 'FittedCondition',
    optional: true,
  })
  condition?: FittedCondition;
}

export class LivesLeftOutDto {
  @EnumField({ description: 'Why parts say nothing.', values: lifeGaps, enumName: 'LifeGap', open: true })
  why!: LifeGap;

  @IntegerField({ description: 'How many.' })
  parts!: number;
}

export class LifeCountsDto {
  @IntegerField({ description: 'Parts that say something.' })
  parts!: number;

  @IntegerField({ description: 'Lives known exactly.' })
  exact!: number;

  @IntegerField({ description: 'Lives that ended between two inspections, or before the first.' })
  betweenInspections!: number;

  @IntegerField({ description: 'Parts that lasted still when last seen.' })
  lastingStill!: number;

  @IntegerField({ description: 'Parts that were observed only from an age above 0 on.' })
  lateEntries!: number;

  @ListField({ description: 'Parts that say nothing, by reason.', max: 10, type: () => LivesLeftOutDto })
  leftOut!: LivesLeftOutDto[];
}

export class SurvivorPointDto {
  @NumberField({ description: 'Age from which on the share holds, in the unit of the answer.', min: 0 })
  age!: number;

  @NumberField({
    description: 'Where the age is known to an interval only, its beginning; else the age.',
    min: 0,
  })
  fromAge!: number;

  @NumberField({ description: 'Share that lasts beyond the age.', min: 0, max: 1 })
  surviving!: number;

  @NumberField({ description: 'Standard error; null where it cannot be had.', nullable: true })
  standardError!: number | null;

  @NumberField({ description: 'Lower limit, pointwise, on the log-log scale.', nullable: true })
  lower!: number | null;

  @NumberField({ description: 'Upper limit.', nullable: true })
  upper!: number | null;

  @IntegerField({ description: 'Parts at risk just before; null for intervals.', nullable: true })
  atRisk!: number | null;
}

export class EstimatedSurvivorsDto {
  @KindField('estimated')
  kind!: 'estimated';

  @TextField({ description: 'Method.', max: 40, example: 'kaplanMeier' })
  method!: string;

  @NumberField({ description: 'Two-sided level of the limits.', min: 0, max: 1 })
  level!: number;

  @ListField({ description: 'The curve, ages rising.', max: 100000, type: () => SurvivorPointDto })
  points!: SurvivorPointDto[];
}

export class NoLifeEndedDto {
  @KindField('noEvents', 'no life has ended')
  kind!: 'noEvents';
}

export class IntervalsWithLateEntryDto {
  @KindField(
    'intervalsWithLateEntry',
    'lives between inspections together with late entries: the estimate need not exist',
  )
  kind!: 'intervalsWithLateEntry';
}

export class LifeLimitsDto {
  @NumberField({ description: 'Estimate.' })
  estimate!: number;

  @NumberField({ description: 'Lower limit, Wald, on the logarithm.' })
  lower!: number;

  @NumberField({ description: 'Upper limit.' })
  upper!: number;
}

export class BLifeDto extends LifeLimitsDto {
  @NumberField({ description: 'Share of the parts whose life has ended by then.', min: 0, max: 1 })
  share!: number;
}

export class FittedLivesDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NestedField({
    description: 'Shape of a Weibull distribution: above 1 parts wear; null for a lognormal one.',
    nullable: true,
    type: () => LifeLimitsDto,
  })
  shape!: LifeLimitsDto | null;

  @NestedField({
    description: 'Characteristic life of a Weibull distribution, median of a lognormal one.',
    type: () => LifeLimitsDto,
  })
  scale!: LifeLimitsDto;

  @NumberField({ description: 'Mean life.' })
  mean!: number;

  @ListField({ description: 'Lives by which shares have ended: B10, B50.', max: 10, type: () => BLifeDto })
  bLives!: BLifeDto[];

  @NumberField({ description: 'Log-likelihood.' })
  logLikelihood!: number;

  @NumberField({ description: "Akaike's criterion." })
  akaike!: number;

  @NumberField({ description: 'Two-sided level of the limits.', min: 0, max: 1 })
  level!: number;

  @IntegerField({ description: 'Lives that have ended.' })
  events!: number;

  @FlagField({ description: 'A B-life lies beyond the greatest age at which a part was seen.' })
  isBeyondData!: boolean;
}

export class NoBestLifeDto {
  @KindField('noMaximum')
  kind!: 'noMaximum';

  @EnumField({
    description: 'Why no distribution fits best.',
    values: noMaximumReasons,
    enumName: 'NoMaximumReason',
  })
  reason!: (typeof noMaximumReasons)[number];
}

export class ComponentLivesDto {
  @NestedField({ description: 'What the parts tell.', type: () => LifeCountsDto })
  counts!: LifeCountsDto;

  @NumberField({ description: 'Greatest age at which a part was seen.', min: 0 })
  greatestAge!: number;

  @UnionField({
    description: 'Share of parts still going, by age.',
    types: () => [
      EstimatedSurvivorsDto,
      NoLifeEndedDto,
      IntervalsWithLateEntryDto,
      CalculationNeedsMoreDto,
      CalculationNotConvergedDto,
    ],
  })
  curve!:
    | EstimatedSurvivorsDto
    | NoLifeEndedDto
    | IntervalsWithLateEntryDto
    | CalculationNeedsMoreDto
    | CalculationNotConvergedDto;

  @UnionField({
    description: 'Weibull distribution.',
    types: () => [FittedLivesDto, NoBestLifeDto, CalculationNeedsMoreDto, CalculationNotConvergedDto],
  })
  weibull!: FittedLivesDto | NoBestLifeDto | CalculationNeedsMoreDto | CalculationNotConvergedDto;

  @UnionField({
    description: 'Lognormal distribution.',
    types: () => [FittedLivesDto, NoBestLifeDto, CalculationNeedsMoreDto, CalculationNotConvergedDto],
  })
  lognormal!: FittedLivesDto | NoBestLifeDto | CalculationNeedsMoreDto | CalculationNotConvergedDto;

  @EnumField({
    description: 'The family with the lower criterion; null where not both were estimated.',
    values: ['weibull', 'lognormal'],
    enumName: 'CloserFamily',
    nullable: true,
  })
  closer!: 'weibull' | 'lognormal' | null;
}

export class ComponentLivesResponse extends ComponentLivesDto {
  @EndsField()
  ends!: LifeEnd;

  @ScaleField()
  scale!: Scale;

  @ListField({ description: 'What looks odd about the observation.', max: 10, type: () => WatchOddityDto })
  oddities!: WatchOddityDto[];

  @NestedField({ description: 'How it was computed.', type: () => CalculationMethodDto })
  method!: CalculationMethodDto;
}
