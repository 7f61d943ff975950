import { notFound, unknownReference } from '../errors/domain.errors.js';
import type { Recorded } from '../ports/record-store.port.js';
import type { NoReferences } from '../ports/records/shop.records.js';
import type { Vehicle } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';

/** Who owns a vehicle at a moment, as known at `asOf`: the latest ownership that had begun. */
export async function ownerOf(
  tx: ShopTransaction,
  vehicleId: string,
  at: string,
  asOf?: string,
): Promise<{ readonly customerId: string; readonly fromAt: string } | undefined> {
  const ownerships = await tx.ownerships.all({ vehicleId }, asOf);
  return ownerships
    .map((ownership) => ownership.content)
    .filter((ownership) => ownership.fromAt <= at)
    .reduce<{ customerId: string; fromAt: string } | undefined>(
      (latest, next) => (latest === undefined || next.fromAt >= latest.fromAt ? next : latest),
      undefined,
    );
}

/** Ids of the vehicles a customer owns at a moment. */
export async function vehiclesOf(
  tx: ShopTransaction,
  customerId: string,
  at: string,
): Promise<readonly string[]> {
  const own = await tx.ownerships.all({ customerId });
  const candidates = [...new Set(own.map((ownership) => ownership.identity.vehicleId))];
  const all = candidates.length === 0 ? [] : await tx.ownerships.all({ vehicleId: candidates });
  return candidates.filter((vehicleId) => {
    const begun = all.filter((o) => o.identity.vehicleId === vehicleId && o.content.fromAt <= at);
    const latest = begun.reduce<(typeof begun)[number] | undefined>(
      (best, next) => (best === undefined || next.content.fromAt >= best.content.fromAt ? next : best),
      undefined,
    );
    return latest?.content.customerId === customerId;
  });
}

/** True when this caller may know of the vehicle at all: staff always, a customer's user while the customer owns it. */
export async function mayKnowVehicle(
  tx: ShopTransaction,
  caller: Caller,
  vehicleId: string,
  now: string,
): Promise<boolean> {
  if (caller.customerId === undefined) return true;
  return (await ownerOf(tx, vehicleId, now))?.customerId === caller.customerId;
}

/** The vehicle in the path; somebody else's vehicle is answered exactly like one that does not exist. */
export async function visibleVehicle(
  tx: ShopTransaction,
  caller: Caller,
  vehicleId: string,
  now: string,
  asOf?: string,
): Promise<Recorded<NoReferences, Vehicle>> {
  const vehicle = await tx.vehicles.find(vehicleId, asOf);
  if (vehicle === undefined || !(await mayKnowVehicle(tx, caller, vehicleId, now))) throw notFound('vehicle');
  return vehicle;
}

/** The vehicle named inside a body. */
export async function referencedVehicle(
  tx: ShopTransaction,
  caller: Caller,
  vehicleId: string,
  now: string,
  pointer = '/vehicleId',
): Promise<Recorded<NoReferences, Vehicle>> {
  const vehicle = await tx.vehicles.find(vehicleId);
  if (vehicle === undefined || !(await mayKnowVehicle(tx, caller, vehicleId, now)))
    throw unknownReference(pointer, 'vehicle');
  return vehicle;
}
