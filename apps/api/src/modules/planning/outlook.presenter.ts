import type { DueServiceResponse, FleetVehicleDto, VehicleOutlookResponse } from '@endfloat/contracts';
import type { DueService, FleetVehicle, VehicleOutlook } from '@endfloat/workshop';

const msPerDay = 86_400_000;

/** Local day of a day counted from 1970; far beyond any calendar there is none. */
function dateOf(day: number | null): string | null {
  if (day === null || Math.abs(day) > 2_900_000 || day < -719_000) return null;
  return new Date(Math.floor(day) * msPerDay).toISOString().slice(0, 10);
}

/** Computed figures to a thousandth: nobody reads an odometer more finely. */
const rounded = (value: number | null): number | null =>
  value === null ? null : Math.round(value * 1000) / 1000;

export const presentFleetVehicle = ({ vehicleId, label, plate }: FleetVehicle): FleetVehicleDto => ({
  vehicleId,
  label,
  plate,
});

export function presentDueService({
  vehicle,
  planItemId,
  item,
  due,
  last,
  read,
}: DueService): DueServiceResponse {
  return {
    ...presentFleetVehicle(vehicle),
    planItemId,
    name: item.name,
    standing: due.standing,
    basis: due.basis,
    lastDoneAt: last?.doneAt ?? null,
    lastDoneKm: rounded(last?.km ?? null),
    dueOn: dateOf(due.dueDay),
    dueKm: rounded(due.dueKm),
    daysLeft: rounded(due.daysLeft),
    kmLeft: rounded(due.kmLeft),
    expectedOn: dateOf(due.expectedDay),
    reachedFirst: due.reachedFirst,
    isDistanceUnknown: due.isDistanceUnknown,
    readKm: rounded(read?.km ?? null),
    readAt: read === null ? null : new Date(read.at).toISOString(),
  };
}

export function presentVehicleOutlook({ rank, vehicle, attention }: VehicleOutlook): VehicleOutlookResponse {
  return {
    ...presentFleetVehicle(vehicle),
    rank,
    reasons: attention.reasons.map(({ reason, count }) => ({ reason, count })),
    daysToService: rounded(attention.daysToService),
  };
}

export const outlookMethod =
  'Reasons are compared one by one, the most pressing first (a dangerous finding before any number of overdue services), then the days to the next service. There is no score. Findings: the latest verdict of each check and limit. The order of reasons is judgement.';
