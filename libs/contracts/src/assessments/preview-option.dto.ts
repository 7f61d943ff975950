import { optionActions, type OptionAction } from '@endfloat/decision';
import { partConditions, type PartCondition } from '@endfloat/catalogue';
import {
  DecimalField,
  EnumField,
  FlagField,
  KindField,
  ListField,
  MoneyField,
  NestedField,
  TextField,
  UnionField,
} from '../fields/index.js';
import { MoneyDto } from '../quantity/index.js';

const days = { integerDigits: 5, scale: 2 };
const size = { integerDigits: 6, scale: 9 };

export class InStockDto {
  @KindField('inStock')
  kind!: 'inStock';
}

export class DeliveredDto {
  @DecimalField({ description: 'Days promised; null: none.', nullable: true, ...days })
  promisedDays!: string | null;

  @DecimalField({ description: 'Days it took.', ...days })
  actualDays!: string;
}

export class ToOrderDto {
  @KindField('toOrder')
  kind!: 'toOrder';

  @DecimalField({ description: 'Days promised; null: none.', nullable: true, ...days })
  promisedDays!: string | null;

  @ListField({ description: 'What this supplier delivered before.', max: 200, type: () => DeliveredDto })
  delivered!: DeliveredDto[];
}

export class PreviewCoreDto {
  @MoneyField({ description: 'Deposit held until the old part is accepted.' })
  deposit!: MoneyDto;

  @DecimalField({ description: 'Chance of losing it, 0 to 1.', integerDigits: 1, scale: 6 })
  probabilityOfLosing!: string;
}

export class ArrivalWearDto {
  @DecimalField({ description: 'Size measured before fitting.', ...size })
  value!: string;

  @DecimalField({ description: 'Its standard uncertainty.', ...size })
  standardUncertainty!: string;
}

export class PreviewOfferDto {
  @TextField({ description: 'Id of the offer.', max: 64 })
  offerId!: string;

  @TextField({ description: 'Supplier.', max: 120 })
  supplier!: string;

  @EnumField({ description: 'Condition.', values: partConditions, enumName: 'PartCondition' })
  condition!: PartCondition;

  @MoneyField({ description: 'Price; null: not quoted.', nullable: true })
  price!: MoneyDto | null;

  @UnionField({ description: 'When the part is here.', types: () => [InStockDto, ToOrderDto] })
  leadTime!: InStockDto | ToOrderDto;

  @NestedField({ description: 'Deposit; absent: none.', optional: true, type: () => PreviewCoreDto })
  core?: PreviewCoreDto;

  @NestedField({
    description: 'Wear as measured on arrival; absent: not measured.',
    optional: true,
    type: () => ArrivalWearDto,
  })
  arrivalWear?: ArrivalWearDto;

  @FlagField({
    description: 'Its giver replaces the part in the watch window.',
    optional: true,
    default: false,
  })
  warrantyCoversPart?: boolean;

  @FlagField({ description: 'Its giver pays the labour too.', optional: true, default: false })
  warrantyCoversLabour?: boolean;
}

export class PreviewOptionDto {
  @TextField({ description: 'Id of the option.', max: 64 })
  optionId!: string;

  @EnumField({ description: 'What is done.', values: optionActions, enumName: 'OptionAction' })
  action!: OptionAction;

  @DecimalField({ description: 'Hours of work.', integerDigits: 3, scale: 2 })
  labourHours!: string;

  @DecimalField({ description: 'Days in the workshop, waiting not counted.', integerDigits: 3, scale: 2 })
  workshopDays!: string;

  @ListField({ description: 'Offers; none for leaving and adjusting.', max: 50, type: () => PreviewOfferDto })
  offers!: PreviewOfferDto[];
}
