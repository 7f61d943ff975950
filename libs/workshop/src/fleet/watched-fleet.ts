import { observedSpans, type Stretch, type WatchWarning } from '@endfloat/reliability';
import { invalidInput, notFound } from '../errors/domain.errors.js';
import type { FleetVehicle } from '../ports/fleet-history.port.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { requiredRecord } from '../recording/required-record.js';

/**
 * Days after a visit or an odometer entry during which a vehicle without stated observation would have come if it had
 * needed something; a longer silence is time in which it may have been looked after elsewhere. Judgement.
 */
export const watchedAfterContactDays = 365;

export interface FleetScope {
  readonly customerId: string | undefined;
  readonly application?: string | undefined;
  readonly until: string;
  readonly asOf: string | undefined;
}

export interface WatchedVehicle {
  readonly vehicle: FleetVehicle;
  /** milliseconds since 1970 */
  readonly spans: readonly Stretch[];
}

/** What looked odd about how vehicles were watched, with the vehicles. */
export interface WatchOddity {
  readonly code: WatchWarning;
  readonly vehicleIds: readonly string[];
}

export interface WatchedFleet {
  readonly vehicles: readonly WatchedVehicle[];
  /** vehicles that were not watched at all */
  readonly neverWatched: number;
  readonly oddities: readonly WatchOddity[];
}

/** Midnight (UTC) of a local day; ages are counted from it. */
export const midnightOf = (day: string): string => `${day}T00:00:00.000Z`;

/** The customer whose vehicles are asked for; a customer's user is asked about their own only. */
export async function customerOf(
  tx: ShopTransaction,
  caller: Caller,
  asked: string | undefined,
): Promise<string | undefined> {
  if (caller.customerId !== undefined) {
    if (asked !== undefined && asked !== caller.customerId) throw notFound('customer');
    return caller.customerId;
  }
  if (asked !== undefined) await requiredRecord(tx.customers, 'customer', asked);
  return asked;
}

const looksLikeId = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

/** A customer named in a query as one of two groups. */
export async function comparedCustomer(tx: ShopTransaction, given: string, pointer: string): Promise<string> {
  if (!looksLikeId.test(given)) throw invalidInput(pointer, 'id', 'Give the id of a customer.');
  await requiredRecord(tx.customers, 'customer', given);
  return given;
}

/**
 * The vehicles of a fleet with the stretches in which they were watched. A customer's fleet is every vehicle they ever owned,
 * while they owned it: to leave out those they sold would leave out the ones that were worth selling.
 */
export async function watchedFleet(tx: ShopTransaction, scope: FleetScope): Promise<WatchedFleet> {
  const { customerId, application, asOf, until } = scope;
  const all = await tx.fleetHistory.vehicles({ customerId, asOf });
  const vehicles = all.filter((each) => application === undefined || each.application === application);
  const only = customerId === undefined ? undefined : vehicles.map(({ vehicleId }) => vehicleId);
  const contacts = await tx.fleetHistory.contacts({ only, asOf });
  const found: WatchedVehicle[] = [];
  const oddities = new Map<WatchWarning, string[]>();
  for (const vehicle of vehicles) {
    const { spans, warnings } = observedSpans(
      {
        stated: vehicle.observedSpans,
        knownSince: vehicle.knownSince,
        contacts: contacts.get(vehicle.vehicleId) ?? [],
        firstUsedAt: vehicle.firstUsedOn === null ? null : midnightOf(vehicle.firstUsedOn),
        retiredAt: vehicle.retiredOn === null ? null : midnightOf(vehicle.retiredOn),
        owners: vehicle.owners,
      },
      { until, customerId, watchedAfterContactDays },
    );
    for (const code of warnings) oddities.set(code, [...(oddities.get(code) ?? []), vehicle.vehicleId]);
    if (spans.length > 0) found.push({ vehicle, spans });
  }
  return {
    vehicles: found,
    neverWatched: vehicles.length - found.length,
    oddities: [...oddities].map(([code, vehicleIds]) => ({ code, vehicleIds })),
  };
}
