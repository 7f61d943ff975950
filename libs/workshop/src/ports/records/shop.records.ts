import type { ShopRole } from '../roles.js';

/** A record whose identity is its id alone. */
// eslint-disable-next-line @typescript-eslint/no-generated-empty-object-type -- there is nothing beyond the id
export type NoReferences = Record<never, never>;

/** A watch window of its own for complaints of one family. */
export interface FamilyWindow {
  readonly familyId: string;
  readonly days: number;
  readonly km: string;
}

/** Rates, windows and thresholds of one shop; money as decimal text in the shop's currency. */
export interface ShopSettings {
  readonly name: string;
  /** IANA time zone, e.g. Europe/Lisbon */
  readonly timeZone: string;
  /** ISO 4217 */
  readonly currency: string;
  readonly labourRatePerHour: string;
  /** what a day off the road costs a customer who has not said otherwise */
  readonly downtimeCostPerDay: string;
  /** cost of taking in, apologising, looking again: what any comeback costs before its repair */
  readonly comebackHandling: string;
  readonly comebackWindowDays: number;
  readonly comebackWindowKm: string;
  /** families whose window differs; absent in settings written before it could */
  readonly comebackFamilyWindows?: readonly FamilyWindow[];
  /** distance an owner still wants from a van when nothing else is known */
  readonly planningDistanceKm: string;
  /** no ranking of people, parts or suppliers under this number of closed jobs */
  readonly rankingMinimumJobs: number;
}

/** Staff of the shop, or a user of one customer (`fleetManager`). */
export interface ShopUser {
  readonly displayName: string;
  readonly roles: readonly ShopRole[];
  readonly customerId: string | null;
  readonly active: boolean;
}

export const customerKinds = ['person', 'fleetOperator'] as const;
export type CustomerKind = (typeof customerKinds)[number];

export interface Customer {
  readonly kind: CustomerKind;
  /** name, telephone, address: a personal record that may be erased */
  readonly personalRecordId: string | null;
  /** downtime cost of this customer, decimal text in the shop's currency; null: the shop's setting */
  readonly downtimeCostPerDay: string | null;
  /** distance this owner plans to keep a vehicle for; null: the shop's setting */
  readonly planningDistanceKm: string | null;
}

export const personalRecordKinds = [
  'customerContact',
  'complaintWords',
  'consentName',
  'handoverName',
] as const;
export type PersonalRecordKind = (typeof personalRecordKinds)[number];

/** What may be erased; `content` is null once it was. */
export interface PersonalRecord {
  readonly id: string;
  readonly customerId: string | null;
  readonly kind: PersonalRecordKind;
  readonly content: Readonly<Record<string, string>> | null;
  readonly recordedAt: string;
  readonly erasedAt: string | null;
}
