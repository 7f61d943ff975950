import type { ImportFleetHistoryRequest } from '@endfloat/contracts';
import type { ImportFleetHistoryCommand } from '@endfloat/workshop';

export function toImportFleetHistory(request: ImportFleetHistoryRequest): ImportFleetHistoryCommand {
  const { customerId, componentType, position, vehicles } = request;
  return {
    customerId,
    componentType,
    position,
    vehicles: vehicles.map((vehicle) => ({
      id: vehicle.id,
      label: vehicle.label,
      chassisNumber: vehicle.chassisNumber,
      plate: vehicle.plate,
      firstUsedOn: vehicle.firstUsedOn,
      observedFrom: vehicle.observedFrom,
      observedUntil: vehicle.observedUntil,
      replacements: vehicle.replacements.map(({ at, condition, supplier }) => ({ at, condition, supplier })),
    })),
  };
}
