import type { FleetRecurrenceResponse, ImportFleetHistoryRequest } from '@endfloat/contracts';
import type { FleetRecurrence } from '@endfloat/reliability';
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

const source =
  'Nelson (1995), Technometrics 37:147-157; robust variance by Lawless & Nadeau (1995), Technometrics 37:158-168';

export function presentFleetRecurrence(found: FleetRecurrence): FleetRecurrenceResponse {
  switch (found.kind) {
    case 'insufficientData':
      return { recurrence: { kind: 'insufficientData', needed: found.needed, got: found.got } };
    case 'noEvents':
      return { recurrence: { kind: 'noEvents', ...basisOf(found) } };
    case 'estimated':
      return {
        recurrence: {
          kind: 'estimated',
          ...basisOf(found),
          method: found.method,
          source,
          level: found.level,
          events: found.events,
          points: found.points.map(({ age, atRisk, events, mean, standardError, plain, log }) => ({
            ageDays: age,
            atRisk,
            events,
            mean,
            standardError,
            plainLimits: plain,
            logLimits: log,
          })),
        },
      };
  }
}

function basisOf({
  units,
  observedAge,
  unobservedEvents,
}: Exclude<FleetRecurrence, { kind: 'insufficientData' }>) {
  return { vehicles: units, observedDays: observedAge, unobservedEvents };
}
