import {
  guardCodes,
  optionActions,
  pricingProblems,
  type GuardCode,
  type OptionAction,
  type PricingProblemCode,
} from '@endfloat/decision';
import {
  EnumField,
  FlagField,
  KindField,
  ListField,
  MoneyField,
  NestedField,
  NumberField,
  TextField,
} from '../fields/index.js';
import { IntervalDto, MoneyDto } from '../quantity/index.js';

const optionId = { description: 'Id of the option.', max: 64 };

/** A computed size with its unit; `1` for a pure number. */
export class ReportedValueDto {
  @TextField({ description: 'Decimal text.', max: 40, example: '0.21' })
  value!: string;

  @TextField({ description: 'Unit (UCUM), a currency, or 1.', max: 40, example: 'mm' })
  unit!: string;
}

export class PricingProblemDto {
  @EnumField({
    description: 'What is missing or wrong.',
    values: pricingProblems,
    enumName: 'PricingProblemCode',
    open: true,
  })
  code!: PricingProblemCode;

  @TextField({
    description: 'Offer or member it was found in; null: the option itself.',
    nullable: true,
    max: 120,
  })
  at!: string | null;

  @TextField({ description: 'The same in words.', max: 300 })
  detail!: string;
}

/** Components of an expected cost; they add up to it. */
export class CostComponentsDto {
  @MoneyField({ description: 'The part.' })
  parts!: MoneyDto;

  @MoneyField({ description: 'Labour.' })
  labour!: MoneyDto;

  @MoneyField({ description: 'Days off the road: in the workshop, and waiting for the part.' })
  downtime!: MoneyDto;

  @MoneyField({ description: 'Deposit times the chance of losing it.' })
  coreDepositAtRisk!: MoneyDto;

  @MoneyField({
    description:
      'Chance of a comeback times handling, second downtime and the repair that then becomes necessary.',
  })
  comeback!: MoneyDto;

  @MoneyField({ description: 'Complaints and repairs after the watch window, up to the planning distance.' })
  wearToCome!: MoneyDto;
}

export class MoneyIntervalDto {
  @MoneyField({ description: 'Lower end.' })
  lower!: MoneyDto;

  @MoneyField({ description: 'Upper end.' })
  upper!: MoneyDto;

  @NumberField({ description: 'Level of the interval.', min: 0, max: 1, example: 0.9 })
  level!: number;

  @TextField({ description: 'Name of the method.', max: 80 })
  method!: string;
}

/** Spread of what single vehicles will cost, apart from the doubt about the expected cost. */
export class OutcomeSpreadDto {
  @MoneyField({ description: 'Standard deviation around the expected cost.' })
  standardDeviation!: MoneyDto;

  @MoneyField({ description: 'Mean cost where it holds.' })
  withoutComeback!: MoneyDto;

  @MoneyField({ description: 'Mean cost where it comes back.' })
  withComeback!: MoneyDto;
}

export class ComebackChanceDto {
  @NumberField({ description: 'Chance of a comeback inside the watch window.', min: 0, max: 1 })
  probability!: number;

  @NestedField({ description: 'How sure that is.', type: () => IntervalDto })
  interval!: IntervalDto;
}

export class OptionWearDto {
  @NestedField({ description: 'Mean size just after the work.', type: () => ReportedValueDto })
  startSize!: ReportedValueDto;

  @NestedField({ description: 'Mean wear rate.', type: () => ReportedValueDto })
  meanRate!: ReportedValueDto;

  @NumberField({
    description: 'Chance that the criterion is reached within the plan, nothing more being done.',
    min: 0,
    max: 1,
  })
  probabilityOfReachingCriterion!: number;
}

export class PricedOtherOfferDto {
  @KindField('priced')
  kind!: 'priced';

  @TextField({ description: 'Id of the offer.', max: 64 })
  offerId!: string;

  @MoneyField({ description: 'Expected cost with it.' })
  expectedCost!: MoneyDto;
}

export class UnpricedOtherOfferDto {
  @KindField('cannotBePriced')
  kind!: 'cannotBePriced';

  @TextField({ description: 'Id of the offer.', max: 64 })
  offerId!: string;

  @ListField({ description: 'Why.', max: 20, type: () => PricingProblemDto })
  problems!: PricingProblemDto[];
}

class OptionHead {
  @TextField(optionId)
  optionId!: string;

  @EnumField({ description: 'What is done.', values: optionActions, enumName: 'OptionAction' })
  action!: OptionAction;

  @TextField({ description: 'The same in words.', max: 200 })
  title!: string;

  @ListField({
    description: 'Guards that take it out of the offer, whatever it costs.',
    max: 10,
    choice: { values: guardCodes, enumName: 'GuardCode', open: true },
  })
  removedBy!: GuardCode[];
}

/** An option with its cost in the end. */
export class PricedOptionDto extends OptionHead {
  @KindField('priced')
  kind!: 'priced';

  @FlagField({ description: 'False where a guard removes it; its cost is shown all the same.' })
  isAdmissible!: boolean;

  @TextField({
    description: 'The offer taken, the cheapest in the end; null: no part.',
    nullable: true,
    max: 64,
  })
  offerId!: string | null;

  @MoneyField({ description: 'Expected cost to the end of the plan, comebacks included.' })
  expectedCost!: MoneyDto;

  @NestedField({ description: 'What it is made of.', type: () => CostComponentsDto })
  components!: CostComponentsDto;

  @NestedField({ description: 'Doubt about the expected cost.', type: () => MoneyIntervalDto })
  expectedCostInterval!: MoneyIntervalDto;

  @NumberField({
    description:
      'Chance of having the least expected cost of the admissible ones; null where it is not admissible.',
    nullable: true,
    min: 0,
    max: 1,
  })
  probabilityOfBeingCheapest!: number | null;

  @NestedField({ description: 'Spread of outcomes.', type: () => OutcomeSpreadDto })
  outcomes!: OutcomeSpreadDto;

  @NestedField({ description: 'Comeback inside the watch window.', type: () => ComebackChanceDto })
  comeback!: ComebackChanceDto;

  @NestedField({
    description: 'Mean days from order to arrival; null where nothing is ordered.',
    nullable: true,
    type: () => ReportedValueDto,
  })
  leadTime!: ReportedValueDto | null;

  @NestedField({ description: 'Wear after the work.', type: () => OptionWearDto })
  wear!: OptionWearDto;

  @ListField({
    description: 'Other offers of the same option.',
    max: 200,
    union: { types: () => [PricedOtherOfferDto, UnpricedOtherOfferDto] },
  })
  otherOffers!: (PricedOtherOfferDto | UnpricedOtherOfferDto)[];
}

/** An option that has no cost, and why. Nothing is ever taken for zero. */
export class UnpricedOptionDto extends OptionHead {
  @KindField('cannotBePriced')
  kind!: 'cannotBePriced';

  @ListField({ description: 'Why.', max: 200, type: () => PricingProblemDto })
  problems!: PricingProblemDto[];
}
