import {
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  ListField,
  LocalDateField,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';

export class DeliveryContent {
  @LocalDateField({ description: 'Day it was ordered.' })
  orderedOn!: string;

  @LocalDateField({ description: 'Day it was promised for; null: none was named.', nullable: true })
  promisedOn!: string | null;

  @LocalDateField({ description: 'Day it arrived; null: not yet.', nullable: true })
  arrivedOn!: string | null;

  @IntegerField({
    description: 'Pieces ordered; null: one.',
    nullable: true,
    optional: true,
    min: 1,
    max: 100_000,
  })
  quantity?: number | null;
}

export class RecordDeliveryRequest extends DeliveryContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

export class CorrectDeliveryRequest extends DeliveryContent {
  @ReasonField()
  reason!: string;
}

export class DeliveryResponse extends JoinTypes(RecordedResponse, DeliveryContent) {
  @IdField({ description: 'The offer it was ordered on.' })
  offerId!: string;
}

export class DeliveryPage extends pageOf(() => DeliveryResponse) {}

export class DeliveryRevisions {
  @ListField({ description: 'Every revision, oldest first.', max: 1000, type: () => DeliveryResponse })
  items!: DeliveryResponse[];
}

export class ListDeliveriesQuery extends PageQuery {
  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}

export class DeliveryPath {
  @IdField({ description: 'Id of the delivery.' })
  deliveryId!: string;
}
