import { DecimalField, IdField, InstantField, JoinTypes, ListField, TextField } from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { ReasonField, RecordedResponse } from '../recording/index.js';

export class ServiceRecordContent {
  @InstantField({ description: 'When it was done.' })
  doneAt!: string;

  @DecimalField({
    description:
      'Distance in km then; null: told from the odometer entries before and after, where there are some.',
    nullable: true,
  })
  distanceKm!: string | null;

  @TextField({ description: 'Note.', nullable: true, max: 500 })
  note!: string | null;
}

export class RecordServiceRequest extends ServiceRecordContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;

  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @IdField({ description: 'The item of the plan that was done.' })
  planItemId!: string;
}

export class CorrectServiceRequest extends ServiceRecordContent {
  @ReasonField()
  reason!: string;
}

export class ServiceRecordResponse extends JoinTypes(RecordedResponse, ServiceRecordContent) {
  @IdField({ description: 'The vehicle.' })
  vehicleId!: string;

  @IdField({ description: 'The item of the plan that was done.' })
  planItemId!: string;
}

export class ServiceRecordPage extends pageOf(() => ServiceRecordResponse) {}

export class ServiceRecordRevisions {
  @ListField({ description: 'Every revision, oldest first.', max: 1000, type: () => ServiceRecordResponse })
  items!: ServiceRecordResponse[];
}

export class ServiceRecordPath {
  @IdField({ description: 'Id of the record.' })
  serviceRecordId!: string;
}

export class ListServiceRecordsQuery extends PageQuery {
  @IdField({ description: 'Services of this vehicle.', optional: true })
  vehicleId?: string;

  @IdField({ description: 'Services by this item of the plan.', optional: true })
  planItemId?: string;

  @InstantField({ description: 'The list as it was known at this moment.', optional: true })
  asOf?: string;
}
