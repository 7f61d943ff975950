import { reliabilityFindings, type ReliabilityFinding } from '@endfloat/statistics';
import {
  EnumField,
  InstantField,
  IntegerField,
  KindField,
  ListField,
  MoneyField,
  NestedField,
  NumberField,
  TextField,
  textPatterns,
  UnionField,
} from '../fields/index.js';
import { IntervalDto, MoneyDto } from '../quantity/index.js';

export class BackTestQueryDto {
  @TextField({
    description: 'Kind of part; absent: all.',
    optional: true,
    max: 64,
    pattern: textPatterns.catalogueId,
  })
  componentType?: string;

  @InstantField({ description: 'Jobs released from this moment on.', optional: true })
  releasedFrom?: string;

  @InstantField({ description: 'Jobs released before this moment.', optional: true })
  releasedBefore?: string;
}

/** Too little to say, and how much would be needed. */
export class TooFewDecisionsDto {
  @KindField('insufficientData')
  kind!: 'insufficientData';

  @IntegerField({ description: 'Settled decisions needed.' })
  needed!: number;

  @IntegerField({ description: 'Settled decisions there are.' })
  got!: number;
}

/** Decisions that cannot be looked at, or not yet. */
export class OmittedDecisionsDto {
  @TextField({ description: 'Stable code.', max: 64, example: 'pending' })
  reason!: string;

  @IntegerField({ description: 'How many.' })
  count!: number;

  @TextField({ description: 'In words.', max: 500 })
  detail!: string;
}

export class BrierScoreDto {
  @KindField('estimated')
  kind!: 'estimated';

  @NumberField({
    description: 'Mean squared difference of predicted chance and outcome; 0 is perfect.',
    min: 0,
    max: 1,
  })
  score!: number;

  @NumberField({ description: 'Share that came back.', min: 0, max: 1 })
  baseRate!: number;

  @NumberField({ description: 'Score of always saying the base rate.', min: 0, max: 1 })
  referenceScore!: number;

  @NumberField({
    description: 'Above 0: better than the base rate; null where all came back, or none.',
    nullable: true,
    max: 1,
  })
  skill!: number | null;

  @IntegerField({ description: 'Decisions.' })
  decisions!: number;
}

export class ReliabilityClassDto {
  @NumberField({ description: 'Predicted chances from here.', min: 0, max: 1 })
  from!: number;

  @NumberField({ description: 'To there.', min: 0, max: 1 })
  to!: number;

  @IntegerField({ description: 'Decisions.' })
  decisions!: number;

  @IntegerField({ description: 'Came back.' })
  comebacks!: number;

  @NumberField({
    description: 'Mean predicted chance; null in an empty class.',
    nullable: true,
    min: 0,
    max: 1,
  })
  meanPredicted!: number | null;

  @NumberField({
    description: 'Share that came back; null in an empty class.',
    nullable: true,
    min: 0,
    max: 1,
  })
  observed!: number | null;

  @NestedField({ description: 'Interval of that share.', nullable: true, type: () => IntervalDto })
  interval!: IntervalDto | null;

  @EnumField({
    description: 'How the prediction stands to the interval.',
    values: reliabilityFindings,
    enumName: 'ReliabilityFinding',
    nullable: true,
    open: true,
  })
  finding!: ReliabilityFinding | null;
}

export class ReliabilityTableDto {
  @KindField('estimated')
  kind!: 'estimated';

  @ListField({ description: 'Classes of predicted chance.', max: 50, type: () => ReliabilityClassDto })
  classes!: ReliabilityClassDto[];
}

export class CostDifferenceDto {
  @KindField('estimated')
  kind!: 'estimated';

  @MoneyField({ description: 'Mean of rule less chosen; above zero the rule would have been dearer.' })
  mean!: MoneyDto;

  @MoneyField({ description: 'Its standard error.' })
  standardError!: MoneyDto;

  @MoneyField({ description: '5 % point.' })
  lower!: MoneyDto;

  @MoneyField({ description: '95 % point.' })
  upper!: MoneyDto;

  @IntegerField({ description: 'Pairs.' })
  decisions!: number;
}

export class RuleCostsDto {
  @TextField({ description: 'Stable code.', max: 64, example: 'alwaysAdjust' })
  rule!: string;

  @TextField({ description: 'In words.', max: 500 })
  title!: string;

  @IntegerField({ description: 'Decisions in which it could be priced.' })
  decisions!: number;

  @MoneyField({
    description: 'Mean expected cost by the model of then; null without a decision.',
    nullable: true,
  })
  meanExpectedCost!: MoneyDto | null;

  @UnionField({
    description: 'Rule less chosen, decision by decision.',
    types: () => [CostDifferenceDto, TooFewDecisionsDto],
  })
  dearerThanChosen!: CostDifferenceDto | TooFewDecisionsDto;

  @IntegerField({
    description: 'Decisions in which it would have done the same: only there its outcome was seen.',
  })
  sameAsChosen!: number;

  @IntegerField({
    description: 'Decisions in which a guard or a missing price turned it to the cheapest option left.',
  })
  turnedAside!: number;
}

export class BackTestResponse {
  @InstantField({ description: 'Moment looked back from.' })
  at!: string;

  @IntegerField({ description: 'Decisions whose window elapsed, or that came back.' })
  settled!: number;

  @IntegerField({ description: 'Of these, confirmed comebacks.' })
  comebacks!: number;

  @ListField({
    description: 'Decisions left out, pending ones among them.',
    max: 50,
    type: () => OmittedDecisionsDto,
  })
  omitted!: OmittedDecisionsDto[];

  @UnionField({
    description: 'Brier score of the predicted comebacks.',
    types: () => [BrierScoreDto, TooFewDecisionsDto],
  })
  brier!: BrierScoreDto | TooFewDecisionsDto;

  @UnionField({
    description: 'Predicted against observed comebacks by class.',
    types: () => [ReliabilityTableDto, TooFewDecisionsDto],
  })
  reliability!: ReliabilityTableDto | TooFewDecisionsDto;

  @MoneyField({
    description: 'Mean expected cost of what was chosen; null without a decision.',
    nullable: true,
  })
  chosenMeanExpectedCost!: MoneyDto | null;

  @MoneyField({
    description: 'Mean of what it came to: with its comeback where it came back, without where it held.',
    nullable: true,
  })
  chosenMeanRealisedCost!: MoneyDto | null;

  @ListField({ description: 'What each fixed rule would have cost.', max: 50, type: () => RuleCostsDto })
  rules!: RuleCostsDto[];

  @ListField({ description: 'How it is reckoned and what it cannot say.', max: 20, text: { max: 500 } })
  method!: string[];
}
