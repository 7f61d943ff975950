import type {
  RecordServiceRequest,
  ServicePlanItemContent,
  ServicePlanItemResponse,
  ServiceRecordContent,
  ServiceRecordResponse,
} from '@endfloat/contracts';
import type {
  ServicePlanItem,
  ServicePlanItemRecord,
  ServiceRecord,
  ServiceRecordIdentity,
  ServiceRecordRecord,
} from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

function itemMembers(content: ServicePlanItemContent | ServicePlanItem) {
  const { name, componentType, actions, everyDays, everyKm, vehicleId, application, inUse } = content;
  return { name, componentType, actions: [...actions], everyDays, everyKm, vehicleId, application, inUse };
}

export const toServicePlanItem = (request: ServicePlanItemContent): ServicePlanItem => itemMembers(request);

export function presentServicePlanItem(record: ServicePlanItemRecord): ServicePlanItemResponse {
  return { ...presentRecorded(record), ...itemMembers(record.content) };
}

export const toServiceRecord = ({ doneAt, distanceKm, note }: ServiceRecordContent): ServiceRecord => ({
  doneAt,
  distanceKm,
  note,
});

export const toServiceIdentity = ({
  vehicleId,
  planItemId,
}: RecordServiceRequest): ServiceRecordIdentity => ({
  vehicleId,
  planItemId,
});

export function presentServiceRecord(record: ServiceRecordRecord): ServiceRecordResponse {
  const { doneAt, distanceKm, note } = record.content;
  const { vehicleId, planItemId } = record.identity;
  return { ...presentRecorded(record), vehicleId, planItemId, doneAt, distanceKm, note };
}
