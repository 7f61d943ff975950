import type * as records from '@endfloat/workshop/ports';
import type { RecordTable } from './record-table.js';

/** Where the service plan and what was done by it lie. */
export const planningTables = {
  servicePlanItems: {
    name: 'service_plan_item',
    identity: {},
    columns: { componentType: 'text' },
    sort: { by: 'firstRecordedAt', descending: true },
  } satisfies RecordTable<records.NoReferences, records.ServicePlanItem>,
  serviceRecords: {
    name: 'service_record',
    identity: { vehicleId: 'uuid', planItemId: 'uuid' },
    columns: { doneAt: 'timestamptz', distanceKm: 'numeric' },
    sort: { by: 'doneAt', descending: true },
  } satisfies RecordTable<records.ServiceRecordIdentity, records.ServiceRecord>,
};
