import {
  comebackConsequences,
  costRefusals,
  type ComebackConsequence,
  type CostRefusal,
} from '@endfloat/decision';
import {
  DecimalField,
  EnumField,
  KindField,
  ListField,
  MoneyField,
  NestedField,
  NumberField,
  TextField,
  UnionField,
} from '../fields/index.js';
import { MoneyDto } from '../quantity/index.js';

const chance = { integerDigits: 1, scale: 6 };

export class CostRatesDto {
  @MoneyField({ description: 'An hour of labour.' })
  labourPerHour!: MoneyDto;

  @MoneyField({ description: 'A day off the road.' })
  downtimePerDay!: MoneyDto;

  @MoneyField({ description: 'Handling of a comeback.' })
  comebackHandling!: MoneyDto;

  @MoneyField({ description: 'The repair that becomes necessary after a comeback, downtime included.' })
  followUpRepair!: MoneyDto;
}

export class CostCoreDto {
  @MoneyField({ description: 'Deposit.' })
  deposit!: MoneyDto;

  @DecimalField({ description: 'Chance of losing it, 0 to 1.', ...chance })
  probabilityOfLosing!: string;
}

export class CostOptionDto {
  @TextField({ description: 'Id of the option.', max: 64 })
  optionId!: string;

  @MoneyField({ description: 'Parts.' })
  parts!: MoneyDto;

  @DecimalField({ description: 'Hours of labour.', integerDigits: 4, scale: 2 })
  labourHours!: string;

  @DecimalField({ description: 'Days off the road.', integerDigits: 4, scale: 2 })
  downtimeDays!: string;

  @DecimalField({ description: 'Chance of a comeback, 0 to 1.', ...chance })
  probabilityOfComeback!: string;

  @EnumField({
    description: 'What a comeback leads to.',
    values: comebackConsequences,
    enumName: 'ComebackConsequence',
  })
  comebackConsequence!: ComebackConsequence;

  @NestedField({ description: 'Refundable deposit; null: none.', nullable: true, type: () => CostCoreDto })
  core!: CostCoreDto | null;
}

export class BreakEvenQuestionDto {
  @TextField({ description: 'Option whose comeback probability is varied.', max: 64 })
  optionId!: string;

  @TextField({ description: 'Option it is compared with.', max: 64 })
  againstOptionId!: string;
}

export class ExpectedCostsRequest {
  @NestedField({ description: 'Prices common to all options, in one currency.', type: () => CostRatesDto })
  rates!: CostRatesDto;

  @ListField({ description: 'The options.', min: 1, max: 50, type: () => CostOptionDto })
  options!: CostOptionDto[];

  @NestedField({
    description: 'Where two options cost the same.',
    optional: true,
    type: () => BreakEvenQuestionDto,
  })
  breakEven?: BreakEvenQuestionDto;
}

export class CostedOptionDto {
  @TextField({ description: 'Id of the option.', max: 64 })
  optionId!: string;

  @MoneyField({ description: 'Parts and labour.' })
  partsAndLabour!: MoneyDto;

  @MoneyField({ description: 'Days off the road.' })
  downtime!: MoneyDto;

  @MoneyField({ description: 'Deposit times the chance of losing it.' })
  coreDepositAtRisk!: MoneyDto;

  @MoneyField({ description: 'What a comeback would cost.' })
  costIfComeback!: MoneyDto;

  @MoneyField({ description: 'That times its chance.' })
  expectedComeback!: MoneyDto;

  @MoneyField({ description: 'Sum.' })
  expectedTotal!: MoneyDto;
}

export class UncostedOptionDto {
  @TextField({ description: 'Id of the option.', max: 64 })
  optionId!: string;

  @EnumField({
    description: 'Why it has no cost.',
    values: costRefusals,
    enumName: 'CostRefusal',
    open: true,
  })
  reason!: CostRefusal;

  @ListField({ description: 'Members it was found in.', max: 20, text: { max: 64 } })
  members!: string[];
}

export class BreakEvenAtDto {
  @KindField('at')
  kind!: 'at';

  @NumberField({ description: 'Comeback probability at which both cost the same.', min: 0, max: 1 })
  probabilityOfComeback!: number;
}
export class AlwaysCheaperDto {
  @KindField('alwaysCheaper', 'cheaper whatever its comeback probability')
  kind!: 'alwaysCheaper';
}
export class NeverCheaperDto {
  @KindField('neverCheaper', 'dearer whatever its comeback probability')
  kind!: 'neverCheaper';
}
export class AlwaysEqualDto {
  @KindField('alwaysEqual', 'both cost the same, and a comeback costs nothing')
  kind!: 'alwaysEqual';
}
export class BreakEvenUnpricedDto {
  @KindField('cannotBePriced', 'one of the two has no cost')
  kind!: 'cannotBePriced';
}

export type BreakEvenDto =
  BreakEvenAtDto | AlwaysCheaperDto | NeverCheaperDto | AlwaysEqualDto | BreakEvenUnpricedDto;

export class ExpectedCostsResponse {
  @ListField({ description: 'Options with a cost, cheapest first.', max: 50, type: () => CostedOptionDto })
  cheapestFirst!: CostedOptionDto[];

  @ListField({ description: 'Options without a cost, by id.', max: 50, type: () => UncostedOptionDto })
  cannotBePriced!: UncostedOptionDto[];

  @UnionField({
    description: 'Where the two options asked about cost the same; null: nobody asked.',
    nullable: true,
    types: () => [BreakEvenAtDto, AlwaysCheaperDto, NeverCheaperDto, AlwaysEqualDto, BreakEvenUnpricedDto],
  })
  breakEven!: BreakEvenDto | null;

  @TextField({ description: 'How it was reckoned.', max: 200 })
  method!: string;

  @TextField({ description: 'Caution that goes with the answer.', max: 300 })
  caution!: string;
}
