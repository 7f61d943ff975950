import { partConditions, type PartCondition } from '@endfloat/catalogue';
import {
  orderReasonCodes,
  stockServiceMeasures,
  type OrderReasonCode,
  type StockServiceMeasure,
} from '@endfloat/stock';
import { CalculationNeedsMoreDto } from '../calculations/index.js';
import {
  EnumField,
  IdField,
  InstantField,
  IntegerField,
  KindField,
  ListField,
  LocalDateField,
  MoneyField,
  NestedField,
  NoMembers,
  NumberField,
  QueryIntegerField,
  TextField,
  TextMapField,
  textPatterns,
  UnionField,
} from '../fields/index.js';
import { MoneyDto } from '../quantity/index.js';
import { PartStockDto } from './part.dto.js';
import { LeadTimesDto, StockLevelDto, UnattainableLevelDto } from './stock-level.dto.js';
import { demandMethods, DemandSummaryDto, VanChanceDto, type DemandMethod } from './part-needs.dto.js';

export class OrderReasonDto {
  @EnumField({ description: 'Stable code.', values: orderReasonCodes, enumName: 'OrderReasonCode' })
  code!: OrderReasonCode;

  @TextMapField({ description: 'Values of the reason.', maxEntries: 10, max: 40, pattern: '^[0-9.e+-]*$' })
  values!: Record<string, string>;

  @TextField({ description: 'The reason in words.', max: 400 })
  text!: string;
}

export class NoDearerQuantityDto {
  @IntegerField({ description: 'So many pieces cost no more in all.', min: 1 })
  quantity!: number;

  @MoneyField({ description: 'A piece of them.' })
  unitPrice!: MoneyDto;

  @MoneyField({ description: 'All of them.' })
  total!: MoneyDto;
}

export class OrderPriceDto {
  @MoneyField({ description: 'A piece, at that number.' })
  unitPrice!: MoneyDto;

  @MoneyField({ description: 'All of them.' })
  total!: MoneyDto;

  @NestedField({
    description: 'The largest number beyond it that costs no more in all; null: none.',
    type: () => NoDearerQuantityDto,
    nullable: true,
  })
  noDearer!: NoDearerQuantityDto | null;
}

export class OfferProposalDto {
  @IdField({
    description: 'The offer; null: the question named a lead time and there is no offer.',
    nullable: true,
  })
  offerId!: string | null;

  @TextField({ description: 'Who offers it.', nullable: true, max: 120 })
  supplier!: string | null;

  @EnumField({
    description: 'In which condition.',
    values: partConditions,
    enumName: 'PartCondition',
    nullable: true,
  })
  condition!: PartCondition | null;

  @IntegerField({ description: 'Pieces to order now; 0: none.' })
  quantity!: number;

  @TextField({ description: 'The proposal in one sentence.', max: 400 })
  text!: string;

  @UnionField({ description: 'The level wanted.', types: () => [StockLevelDto, UnattainableLevelDto] })
  level!: StockLevelDto | UnattainableLevelDto;

  @NumberField({
    description: 'Service over the lead time if nothing is ordered; null where the level is out of reach.',
    nullable: true,
    min: 0,
    max: 1,
  })
  serviceWithout!: number | null;

  @NumberField({ description: 'Pieces missing on average if nothing is ordered.', nullable: true, min: 0 })
  shortWithout!: number | null;

  @NestedField({ description: 'Lead times.', type: () => LeadTimesDto })
  leadTimes!: LeadTimesDto;

  @NestedField({ description: 'Pieces asked for over the lead time.', type: () => DemandSummaryDto })
  demand!: DemandSummaryDto;

  @EnumField({
    description: 'How the demand was worked out.',
    values: demandMethods,
    enumName: 'DemandMethod',
  })
  method!: DemandMethod;

  @NestedField({
    description: 'What it costs; null: nothing to order, or not quoted.',
    type: () => OrderPriceDto,
    nullable: true,
  })
  price!: OrderPriceDto | null;

  @ListField({ description: 'Why.', max: 50, type: () => OrderReasonDto })
  reasons!: OrderReasonDto[];

  @ListField({
    description: 'Vans with their chances within the days that nine in ten orders keep, the likeliest first.',
    max: 5000,
    type: () => VanChanceDto,
  })
  vans!: VanChanceDto[];
}

export class ProposedOrderDto {
  @KindField('proposed')
  kind!: 'proposed';

  @NestedField({
    description:
      'By the offer with the cheapest piece in the currency of the shop; of equal ones the quicker.',
    type: () => OfferProposalDto,
  })
  best!: OfferProposalDto;

  @ListField({ description: 'By the other offers.', max: 200, type: () => OfferProposalDto })
  others!: OfferProposalDto[];
}

@NoMembers()
export class LeadTimeUnknownDto {
  @KindField('leadTimeUnknown')
  kind!: 'leadTimeUnknown';
}

export class GroupProposalDto {
  @TextField({ description: 'Kind of part.', max: 64 })
  componentType!: string;

  @IdField({ description: 'The number that is ordered now.' })
  partId!: string;

  @TextField({ description: 'It.', max: 80 })
  partNumber!: string;

  @ListField({ description: 'All numbers that stand in for each other.', max: 1000, ids: true })
  partIds!: string[];

  @ListField({ description: 'What is ordered with it.', max: 50, ids: true })
  alsoOrder!: string[];

  @IntegerField({ description: 'Pieces on the shelf.' })
  onHand!: number;

  @IntegerField({ description: 'Of them kept for jobs.' })
  reserved!: number;

  @IntegerField({ description: 'Pieces ordered and not yet there.' })
  onOrder!: number;

  @IntegerField({ description: 'Of them, promised for a day that has passed.' })
  overdue!: number;

  @ListField({ description: 'What lies there.', max: 5000, type: () => PartStockDto })
  stock!: PartStockDto[];

  @IntegerField({ description: 'Vans that it fits.' })
  vans!: number;

  @IntegerField({ description: 'Of them, vans about which nothing can be said; they are not reckoned with.' })
  vansWithoutAnswer!: number;

  @UnionField({
    description: 'What to order now.',
    types: () => [ProposedOrderDto, LeadTimeUnknownDto, CalculationNeedsMoreDto],
  })
  outcome!: ProposedOrderDto | LeadTimeUnknownDto | CalculationNeedsMoreDto;
}

export class UnfittedVansDto {
  @TextField({ description: 'Kind of part.', max: 64 })
  componentType!: string;

  @ListField({ description: 'Vans for whose application no number is recorded.', max: 5000, ids: true })
  vehicleIds!: string[];
}

export class OrderProposalList {
  @LocalDateField({ description: 'Today in the shop.' })
  today!: string;

  @EnumField({
    description: 'The measure used.',
    values: stockServiceMeasures,
    enumName: 'StockServiceMeasure',
  })
  measure!: StockServiceMeasure;

  @NumberField({ description: 'The service wanted.', min: 0, max: 1 })
  target!: number;

  @ListField({ description: 'The most pieces first.', max: 5000, type: () => GroupProposalDto })
  items!: GroupProposalDto[];

  @ListField({ description: 'Vans that no recorded number fits.', max: 200, type: () => UnfittedVansDto })
  unfitted!: UnfittedVansDto[];
}

export class ListOrderProposalsQuery {
  @TextField({
    description: 'One kind of part; every kind in the list of parts where left out.',
    optional: true,
    max: 64,
    pattern: textPatterns.catalogueId,
  })
  componentType?: string;

  @EnumField({
    description: 'Stock and offers in this condition only.',
    values: partConditions,
    enumName: 'PartCondition',
    optional: true,
  })
  condition?: PartCondition;

  @EnumField({
    description: 'What is promised over one lead time.',
    values: stockServiceMeasures,
    enumName: 'StockServiceMeasure',
    optional: true,
    default: 'cycleService',
  })
  measure?: StockServiceMeasure;

  @TextField({
    description: 'The service wanted, below 1.',
    optional: true,
    default: '0.95',
    max: 6,
    pattern: '^0(?:\\.[0-9]{1,4})?$',
  })
  target?: string;

  @QueryIntegerField({
    description: 'What if an order took so many days, whoever delivers.',
    digits: 4,
    optional: true,
  })
  leadTimeDays?: string;

  @InstantField({ description: 'As it was known at this moment.', optional: true })
  asOf?: string;
}
