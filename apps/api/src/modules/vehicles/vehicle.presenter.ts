import type { OwnershipResponse, VehicleResponse } from '@endfloat/contracts';
import type {
  NoReferences,
  OwnershipRecord,
  Recorded,
  Vehicle,
  VehicleOutcome,
  VehicleWithOwner,
} from '@endfloat/workshop';
import { presentRecorded, presentWarning } from '../../http/answers/recorded.presenter.js';

export function presentVehicle(record: Recorded<NoReferences, Vehicle>): VehicleResponse {
  const { content } = record;
  return {
    ...presentRecorded(record),
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

export function presentVehicleOutcome({ record, warnings }: VehicleOutcome): VehicleResponse {
  return { ...presentVehicle(record), warnings: warnings.map(presentWarning) };
}

export function presentVehicleWithOwner({ record, owner }: VehicleWithOwner): VehicleResponse {
  return { ...presentVehicle(record), owner: owner ?? null };
}

export function presentOwnership(record: OwnershipRecord): OwnershipResponse {
  return {
    ...presentRecorded(record),
    vehicleId: record.identity.vehicleId,
    customerId: record.content.customerId,
    fromAt: record.content.fromAt,
  };
}
