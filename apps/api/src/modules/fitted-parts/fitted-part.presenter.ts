import type { FittedPartContent, FittedPartResponse } from '@endfloat/contracts';
import type { FittedPartEntry, FittedPartRecord } from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

function membersOf(content: FittedPartContent | FittedPartEntry): FittedPartEntry {
  const { componentType, position, condition, fittedAt, fittedKm, removedAt, removedKm } = content;
  const { serial, batch, supplier, partNumber, removalReason } = content;
  return {
    componentType,
    position,
    condition,
    fittedAt,
    fittedKm,
    removedAt,
    removedKm,
    serial,
    batch,
    supplier,
    partNumber,
    removalReason,
  };
}

export function toFittedPartEntry(request: FittedPartContent): FittedPartEntry {
  return membersOf(request);
}

export function presentFittedPart(record: FittedPartRecord): FittedPartResponse {
  const { replacesPartId, workLineId } = record.content;
  return {
    ...presentRecorded(record),
    ...membersOf(record.content),
    vehicleId: record.identity.vehicleId,
    replacesPartId,
    workLineId,
  };
}
