import { customerKinds, type CustomerKind } from '@endfloat/workshop/ports';
import {
  DecimalField,
  EnumField,
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  NestedField,
  TextField,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';

/** Personal data: kept apart from the records and erased on request. */
export class ContactDto {
  @TextField({ description: 'Name of the person or firm.', max: 160 })
  name!: string;

  @TextField({ description: 'Telephone number as given.', optional: true, max: 60 })
  telephone?: string;

  @TextField({ description: 'Address for messages.', optional: true, max: 160 })
  email?: string;

  @TextField({ description: 'Postal address.', optional: true, max: 300 })
  address?: string;
}

class CustomerTerms {
  @EnumField({
    description: 'A person, or an operator of a fleet.',
    values: customerKinds,
    enumName: 'CustomerKind',
  })
  kind!: CustomerKind;

  @DecimalField({
    description:
      "What a day off the road costs this customer, in the shop's currency; null: the shop's setting.",
    nullable: true,
    integerDigits: 9,
    scale: 4,
    example: '95.00',
  })
  downtimeCostPerDay!: string | null;

  @DecimalField({
    description: "Distance this owner plans to keep a van for, in km; null: the shop's setting.",
    nullable: true,
    example: '80000',
  })
  planningDistanceKm!: string | null;
}

export class CustomerContent extends CustomerTerms {
  @NestedField({ description: 'How to reach the customer.', type: () => ContactDto })
  contact!: ContactDto;
}

export class RecordCustomerRequest extends CustomerContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

export class CorrectCustomerRequest extends CustomerContent {
  @ReasonField()
  reason!: string;
}

export class CustomerResponse extends JoinTypes(RecordedResponse, CustomerTerms) {
  @NestedField({
    description: 'How to reach the customer; null once it was erased.',
    nullable: true,
    type: () => ContactDto,
  })
  contact!: ContactDto | null;

  @InstantField({ description: 'When the personal data was erased; null: it was not.', nullable: true })
  erasedAt!: string | null;
}

export class CustomerPage extends pageOf(() => CustomerResponse) {}

export class ListCustomersQuery extends PageQuery {
  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class CustomerPath {
  @IdField({ description: 'Id of the customer.' })
  customerId!: string;
}

export class EraseCustomerRequest {
  @TextField({
    description: 'Why the personal data is erased, e.g. the wish of the person. Kept.',
    min: 3,
    max: 500,
  })
  reason!: string;
}

export class ErasureResponse {
  @IntegerField({ description: 'How many pieces of personal data were erased.' })
  erased!: number;

  @InstantField({ description: 'When.' })
  erasedAt!: string;
}
