import type {
  ListVehiclesQuery as ListVehiclesRequest,
  RecordVehicleRequest,
  VehicleContent,
} from '@endfloat/contracts';
import type { ListVehiclesQuery, RecordVehicleCommand, VehicleEntry } from '@endfloat/workshop';
import type { PageRequest } from '../../http/answers/pager.js';

export function toRecordVehicleCommand(request: RecordVehicleRequest): RecordVehicleCommand {
  return {
    id: request.id,
    vehicle: toVehicleEntry(request),
    customerId: request.customerId,
    ownedFrom: request.ownedFrom,
  };
}

export function toVehicleEntry(content: VehicleContent): VehicleEntry {
  return {
    chassisNumber: content.chassisNumber,
    plate: content.plate,
    label: content.label,
    firstUsedOn: content.firstUsedOn,
    application: content.application,
    attributes: content.attributes,
    expectedKmPerYear: content.expectedKmPerYear,
    observedSpans: content.observedSpans.map(({ from, until }) => ({ from, until })),
    retiredOn: content.retiredOn,
  };
}

export function toListVehiclesQuery(request: ListVehiclesRequest, page: PageRequest): ListVehiclesQuery {
  return {
    customerId: request.customerId,
    chassisNumber: request.chassisNumber,
    plate: request.plate,
    asOf: request.asOf,
    ...page,
  };
}
