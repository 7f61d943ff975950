import { CalculationMethodDto } from '../calculations/calculation.dto.js';
import {
  DecimalField,
  EnumField,
  FlagField,
  IntegerField,
  KindField,
  ListField,
  MoneyField,
  NestedField,
  NumberField,
  TextField,
  UnionField,
} from '../fields/index.js';
import { MoneyDto } from '../quantity/index.js';

export class ChallengerYearDto {
  @DecimalField({ description: 'What running it costs in that year, in the currency of the price.' })
  running!: string;

  @DecimalField({ description: 'What selling it brings at the end of that year.' })
  resale!: string;
}

export class ChallengerDto {
  @MoneyField({ description: 'What it costs to get.' })
  price!: MoneyDto;

  @ListField({ description: 'Its years in order.', min: 1, max: 40, type: () => ChallengerYearDto })
  years!: ChallengerYearDto[];
}

export class PreviewKeepingRequest {
  @MoneyField({ description: 'What selling the vehicle now would bring.' })
  resaleNow!: MoneyDto;

  @DecimalField({ description: 'Share of its value that it loses in a year, 0 to 1.', example: '0.15' })
  resaleFallPerYear!: string;

  @IntegerField({ description: 'Further years to look at.', min: 1, max: 20 })
  furtherYears!: number;

  @ListField({
    description:
      'Running cost of each further year as you expect it; null: told from the full calendar years of the vehicle itself, three or more.',
    nullable: true,
    max: 20,
    type: () => ExpectedYearDto,
  })
  expectedRunning!: ExpectedYearDto[] | null;

  @NestedField({ description: 'What would take its place.', type: () => ChallengerDto })
  challenger!: ChallengerDto;

  @DecimalField({ description: 'Interest a year as a share, such as 0.05; null: none.', nullable: true })
  discountRate!: string | null;
}

export class ExpectedYearDto {
  @DecimalField({ description: 'Running cost of the year.' })
  running!: string;
}

export class OwnYearDto {
  @IntegerField({ description: 'Calendar year (UTC).' })
  year!: number;

  @NumberField({ description: 'Work, parts and days off the road, at present rates.' })
  running!: number;
}

export class FurtherYearDto {
  @NumberField({ description: 'Running cost that is expected.' })
  expected!: number;

  @NumberField({
    description: 'Lower limit for one such year, level 0.95; null where it was stated.',
    nullable: true,
  })
  lower!: number | null;

  @NumberField({ description: 'Upper limit.', nullable: true })
  upper!: number | null;
}

const decisions = ['replaceNow', 'keep', 'keepThroughout'] as const;
type Decision = (typeof decisions)[number];

const DecisionField = (description: string, options: { nullable?: true } = {}): PropertyDecorator =>
  EnumField({ description, values: decisions, enumName: 'KeepingDecision', ...options });

export class KeepingDecidedDto {
  @KindField('decided')
  kind!: 'decided';

  @EnumField({
    description: 'Whether running costs were told from the own years of the vehicle or stated.',
    values: ['ownYears', 'stated'],
    enumName: 'RunningBasis',
  })
  basis!: 'ownYears' | 'stated';

  @DecisionField('`keepThroughout`: beyond the last year listed the figures cannot say.')
  decision!: Decision;

  @IntegerField({ description: 'Years to keep it; 0 when replaced now.' })
  keepYears!: number;

  @DecisionField('With every year at its lower limit; null where costs were stated.', { nullable: true })
  ifLower!: Decision | null;

  @DecisionField('With every year at its upper limit.', { nullable: true })
  ifUpper!: Decision | null;

  @FlagField({ description: 'The decision is the same at both limits; false also where there are none.' })
  isSettled!: boolean;

  @ListField({ description: 'Running cost of the further years.', max: 20, type: () => FurtherYearDto })
  running!: FurtherYearDto[];

  @ListField({
    description: 'Cost a year of the vehicle if kept for 1, 2, ... years.',
    max: 20,
    type: () => YearCostDto,
  })
  costs!: YearCostDto[];

  @IntegerField({ description: 'Years after which the challenger is cheapest.' })
  challengerYears!: number;

  @NumberField({ description: 'Its cost a year over them.' })
  challengerCost!: number;

  @FlagField({
    description: 'The list of its years ends before the cost has turned: its economic life may be longer.',
  })
  isChallengerOpen!: boolean;
}

export class YearCostDto {
  @IntegerField({ description: 'Years kept.' })
  years!: number;

  @NumberField({ description: 'Cost a year over them.' })
  cost!: number;

  @NumberField({ description: 'Cost of the last of them alone.' })
  marginalCost!: number;
}

export class KeepingNeedsMoreDto {
  @KindField('insufficientData')
  kind!: 'insufficientData';

  @TextField({ description: 'What there is too little of.', max: 80 })
  of!: string;

  @IntegerField({ description: 'How many are needed.' })
  needed!: number;

  @IntegerField({ description: 'How many there are.' })
  got!: number;
}

export class KeepingPreviewResponse {
  @TextField({ description: 'Currency of all amounts.', max: 3 })
  currency!: string;

  @ListField({ description: 'Full years of the vehicle itself.', max: 200, type: () => OwnYearDto })
  ownYears!: OwnYearDto[];

  @UnionField({
    description: 'Keep or replace, or what is missing to tell.',
    types: () => [KeepingDecidedDto, KeepingNeedsMoreDto],
  })
  outcome!: KeepingDecidedDto | KeepingNeedsMoreDto;

  @NestedField({ description: 'How it was computed.', type: () => CalculationMethodDto })
  method!: CalculationMethodDto;
}
