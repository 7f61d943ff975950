import {
  jamesSteinForms,
  proportionIntervalMethods,
  type JamesSteinForm,
  type ProportionIntervalMethod,
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
import {
  CalculationLimitsDto,
  CalculationNeedsMoreDto,
  CalculationNotConvergedDto,
  CalculationResponse,
  LevelField,
  UsedLevelField,
} from './calculation.dto.js';
import { NumbersField } from './numbers.field.js';

export class BinomialCountDto {
  @IntegerField({ description: 'Successes.' })
  successes!: number;

  @IntegerField({ description: 'Trials.' })
  trials!: number;
}

export class ProportionRequest extends BinomialCountDto {
  @EnumField({
    description: 'Which interval.',
    values: proportionIntervalMethods,
    enumName: 'ProportionIntervalMethod',
    optional: true,
    default: 'wilson',
  })
  interval?: ProportionIntervalMethod;

  @LevelField()
  level?: number;
}

export class EstimatedProportionDto extends CalculationLimitsDto {
  @KindField('estimated')
  kind!: 'estimated';

  @EnumField({
    description: 'Which interval.',
    values: proportionIntervalMethods,
    enumName: 'ProportionIntervalMethod',
  })
  method!: ProportionIntervalMethod;

  @NumberField({ description: 'Successes over trials.', min: 0, max: 1 })
  proportion!: number;

  @NumberField({ description: 'Two-sided confidence level.', min: 0, max: 1 })
  confidence!: number;
}

export class ProportionResponse extends CalculationResponse {
  @UnionField({
    description: 'The share, or why there is none.',
    types: () => [EstimatedProportionDto, CalculationNeedsMoreDto],
  })
  result!: EstimatedProportionDto | CalculationNeedsMoreDto;
}

export class ProportionDifferenceRequest {
  @NestedField({ description: 'First group.', type: () => BinomialCountDto })
  first!: BinomialCountDto;

  @NestedField({ description: 'Second group, of other units.', type: () => BinomialCountDto })
  second!: BinomialCountDto;

  @LevelField()
  level?: number;
}

export class EstimatedProportionDifferenceDto extends CalculationLimitsDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumberField({ description: 'First share minus second.', min: -1, max: 1 })
  difference!: number;

  @NumberField({ description: 'Two-sided confidence level.', min: 0, max: 1 })
  confidence!: number;
}

export class ProportionDifferenceResponse extends CalculationResponse {
  @UnionField({
    description: 'The difference, or why there is none.',
    types: () => [EstimatedProportionDifferenceDto, CalculationNeedsMoreDto],
  })
  result!: EstimatedProportionDifferenceDto | CalculationNeedsMoreDto;
}

export const shrinkageForms = ['betaBinomial', ...jamesSteinForms] as const;

/** The work of a beta-binomial fit, and its memory, grow with the largest number of trials. */
const mostTrials = 10_000;

export class LikeGroupDto {
  @IntegerField({ description: 'Successes.', max: mostTrials })
  successes!: number;

  @IntegerField({ description: 'Trials.', max: mostTrials })
  trials!: number;
}

export class ShrinkageRequest {
  @EnumField({
    description: 'How the shares are drawn together.',
    values: shrinkageForms,
    enumName: 'ShrinkageForm',
    optional: true,
    default: 'betaBinomial',
  })
  form?: (typeof shrinkageForms)[number];

  @ListField({ description: 'Like groups.', max: 2000, type: () => LikeGroupDto })
  groups!: LikeGroupDto[];

  @LevelField()
  level?: number;
}

export class ShrunkenGroupDto extends LikeGroupDto {
  @NumberField({ description: 'Share drawn towards the others.', min: 0, max: 1 })
  mean!: number;

  @NestedField({ description: 'Equal-tailed interval of it.', type: () => CalculationLimitsDto })
  interval!: CalculationLimitsDto;
}

export class BetaBinomialDto {
  @KindField('betaBinomial')
  kind!: 'betaBinomial';

  @NumberField({ description: 'First parameter of the common beta distribution.' })
  alpha!: number;

  @NumberField({ description: 'Second parameter.' })
  beta!: number;

  @NumberField({ description: 'Its mean.', min: 0, max: 1 })
  mean!: number;

  @NumberField({ description: 'Correlation of two trials of one group.' })
  correlation!: number;

  @NumberField({ description: 'Logarithm of the likelihood, without the binomial coefficients.' })
  logLikelihood!: number;

  @UsedLevelField()
  level!: number;

  @ListField({ description: 'Each group, in the order given.', max: 2000, type: () => ShrunkenGroupDto })
  groups!: readonly ShrunkenGroupDto[];
}

export class JamesSteinDto {
  @KindField('jamesStein')
  kind!: 'jamesStein';

  @EnumField({ description: 'Scale of the drawing in.', values: jamesSteinForms, enumName: 'JamesSteinForm' })
  form!: JamesSteinForm;

  @NumberField({ description: 'Centre on that scale.' })
  centre!: number;

  @NumberField({ description: 'Sum of squares about it.' })
  spread!: number;

  @NumberField({ description: 'Share of a distance from the centre that is kept.' })
  factor!: number;

  @NumbersField({ description: 'Shares drawn in, in the order given.', max: 2000 })
  proportions!: readonly number[];
}

export class NoExtraVariationDto {
  @KindField('noExtraVariation', 'the groups differ no more than by chance')
  kind!: 'noExtraVariation';

  @NumberField({ description: 'Common share.', min: 0, max: 1 })
  proportion!: number;
}

export class AllOrNothingDto {
  @KindField('allOrNothing', 'every group is all successes or none')
  kind!: 'allOrNothing';

  @NumberField({ description: 'Common share.', min: 0, max: 1 })
  proportion!: number;
}

export class AllAlikeDto {
  @KindField('allAlike', 'not one success, or not one failure, in any group')
  kind!: 'allAlike';

  @NumberField({ description: 'Common share.', min: 0, max: 1 })
  proportion!: number;
}

export class UnequalTrialsDto {
  @KindField('unequalTrials', 'these forms hold for equal numbers of trials')
  kind!: 'unequalTrials';

  @IntegerField({ description: 'Fewest trials of a group.' })
  fewest!: number;

  @IntegerField({ description: 'Most trials of a group.' })
  most!: number;
}

const shrinkageResults = () => [
  BetaBinomialDto,
  JamesSteinDto,
  NoExtraVariationDto,
  AllOrNothingDto,
  AllAlikeDto,
  UnequalTrialsDto,
  CalculationNeedsMoreDto,
  CalculationNotConvergedDto,
];

export class ShrinkageResponse extends CalculationResponse {
  @UnionField({ description: 'Shares drawn together, or why they are not.', types: shrinkageResults })
  result!: InstanceType<ReturnType<typeof shrinkageResults>[number]>;
}
