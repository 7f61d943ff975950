import { partConditions, type PartCondition } from '@endfloat/catalogue';
import {
  DecimalField,
  EnumField,
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  ListField,
  LocalDateField,
  MoneyField,
  TextField,
  textPatterns,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { MoneyDto } from '../quantity/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';

export class PriceBreakDto {
  @IntegerField({ description: 'From so many pieces on.', min: 2, max: 100_000 })
  fromQuantity!: number;

  @MoneyField({ description: 'A piece costs this, in the currency of the price.' })
  price!: MoneyDto;
}

export class OfferContent {
  @TextField({
    description: 'Kind of part offered.',
    max: 64,
    pattern: textPatterns.catalogueId,
    example: 'throttle-housing',
  })
  componentType!: string;

  @EnumField({
    description:
      'Condition, as it must be declared. `repairedOwnPart`: what is needed to repair the part of the vehicle itself, such as bushes.',
    values: partConditions,
    enumName: 'PartCondition',
  })
  condition!: PartCondition;

  @TextField({ description: 'Who offers it.', max: 120, example: 'Birchmoor Castings' })
  supplier!: string;

  @TextField({ description: 'Number of the part.', nullable: true, max: 80 })
  partNumber!: string | null;

  @MoneyField({ description: 'Price; null: not quoted, which is never taken for free.', nullable: true })
  price!: MoneyDto | null;

  @MoneyField({
    description: 'Deposit held until the old part is accepted, in the currency of the price; null: none.',
    nullable: true,
  })
  coreDeposit!: MoneyDto | null;

  @IntegerField({
    description: 'Days from order to arrival as promised; 0: it is on the shelf; null: nothing was promised.',
    nullable: true,
    min: 0,
    max: 3650,
  })
  promisedLeadDays!: number | null;

  @IntegerField({
    description: 'Months of warranty on the part; null: none.',
    nullable: true,
    min: 0,
    max: 1200,
  })
  warrantyMonths!: number | null;

  @LocalDateField({ description: 'Last day it holds; null: until further notice.', nullable: true })
  validUntil!: string | null;

  @IdField({
    description: 'Number of the shop’s list that is offered; null: it goes by the number of the part.',
    nullable: true,
    optional: true,
  })
  partId?: string | null;

  @ListField({
    description: 'Price of a piece from a number of pieces on; null: one price for any number.',
    nullable: true,
    optional: true,
    max: 50,
    type: () => PriceBreakDto,
  })
  priceBreaks?: PriceBreakDto[] | null;

  @DecimalField({
    description: 'Kilometres of warranty on the part; null: not bound by distance.',
    nullable: true,
    optional: true,
    scale: 3,
  })
  warrantyKm?: string | null;

  @IntegerField({
    description: 'Days after arrival within which the old part has to be back; null: none were named.',
    nullable: true,
    optional: true,
    max: 3650,
  })
  coreReturnDays?: number | null;
}

export class RecordOfferRequest extends OfferContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

export class CorrectOfferRequest extends OfferContent {
  @ReasonField()
  reason!: string;
}

export class OfferResponse extends JoinTypes(RecordedResponse, OfferContent) {}

export class OfferPage extends pageOf(() => OfferResponse) {}

export class OfferRevisions {
  @ListField({ description: 'Every revision, oldest first.', max: 1000, type: () => OfferResponse })
  items!: OfferResponse[];
}

export class ListOffersQuery extends PageQuery {
  @TextField({
    description: 'Offers for this kind of part.',
    optional: true,
    max: 64,
    pattern: textPatterns.catalogueId,
  })
  componentType?: string;

  @TextField({ description: 'Offers of this supplier.', optional: true, max: 120 })
  supplier?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class OfferPath {
  @IdField({ description: 'Id of the offer.' })
  offerId!: string;
}
