import type { JobEventKind, WorkAction } from './records/jobs.records.js';
import type { FittedCondition, ObservedSpan } from './records/vehicles.records.js';

/** One vehicle with what decides when it was watched, and whose it was. */
export interface FleetVehicle {
  readonly vehicleId: string;
  readonly label: string | null;
  readonly plate: string | null;
  readonly application: string | null;
  readonly firstUsedOn: string | null;
  readonly retiredOn: string | null;
  readonly expectedKmPerYear: string | null;
  readonly observedSpans: readonly ObservedSpan[];
  /** when the shop first recorded it */
  readonly knownSince: string;
  /** in order of the moment from which they owned it */
  readonly owners: readonly { readonly customerId: string; readonly fromAt: string }[];
}

/** Something that recurs on vehicles. */
export const fleetEventKinds = ['replacements', 'complaints', 'comebacks'] as const;
export type FleetEventKind = (typeof fleetEventKinds)[number];

export interface FleetEvent {
  readonly vehicleId: string;
  readonly at: string;
  /** of the part that came off; null for complaints */
  readonly supplier: string | null;
  readonly condition: FittedCondition | null;
}

/** A fitted part of one kind with its inspections that gave a verdict. */
export interface FleetPart {
  readonly partId: string;
  readonly vehicleId: string;
  readonly position: string;
  readonly condition: FittedCondition;
  readonly supplier: string | null;
  readonly fittedAt: string | null;
  readonly fittedKm: string | null;
  readonly removedAt: string | null;
  readonly removedKm: string | null;
  /** as found, by limits that are more than advisory; one an inspection */
  readonly inspections: readonly { readonly at: string; readonly isWorn: boolean }[];
}

/** A reliable distance of a vehicle; milliseconds since 1970. */
export interface FleetDistance {
  readonly at: number;
  readonly km: number;
}

/** When work of one kind was last done on one kind of part of a vehicle, or an item of the plan recorded as done. */
export interface LastDone {
  readonly vehicleId: string;
  readonly componentType: string | null;
  /** null: a part was fitted, or the item itself was recorded as done */
  readonly action: WorkAction | null;
  readonly planItemId: string | null;
  readonly doneAt: string;
  readonly distanceKm: string | null;
}

/** Work done on a vehicle in one year (UTC), priced in one currency; sums are decimal text. */
export interface YearOfWork {
  readonly vehicleId: string;
  readonly year: number;
  /** null: lines without a part that has a price */
  readonly currency: string | null;
  readonly lines: number;
  readonly minutes: number;
  readonly linesWithoutMinutes: number;
  readonly partsAmount: string;
  /** parts that went in without a price */
  readonly partsWithoutPrice: number;
}

/** A visit with what happened in it. */
export interface FleetVisit {
  readonly vehicleId: string;
  readonly jobId: string;
  readonly openedAt: string;
  /** released, handed over unrepaired or closed, whichever came first; null: still here */
  readonly leftAt: string | null;
  readonly events: readonly { readonly kind: JobEventKind; readonly at: string }[];
}

/** What is open on a vehicle, counted. */
export interface OpenMatters {
  readonly vehicleId: string;
  readonly dangerousFindings: number;
  readonly majorFindings: number;
  readonly otherFindings: number;
  /** confirmed, of complaints since the moment asked about */
  readonly comebacks: number;
  /** symptoms complained of twice or more since then */
  readonly repeatedSymptoms: number;
  /** most comebacks of any one job */
  readonly mostComebacksOfJob: number;
}

/** Which vehicles: all of the shop, or some. */
export interface FleetQuery {
  readonly only?: readonly string[] | undefined;
  readonly asOf?: string | undefined;
}

/** Reads that cross many vehicles, in one statement each, as known at `asOf`. */
export interface FleetHistoryQueries {
  /** Vehicles of the shop, or those that a customer ever owned. */
  vehicles(
    query: FleetQuery & { readonly customerId?: string | undefined },
  ): Promise<readonly FleetVehicle[]>;
  /** Whenever somebody of the shop met a vehicle, in order. */
  contacts(query: FleetQuery): Promise<ReadonlyMap<string, readonly string[]>>;
  /** Reliable distances in order of time. */
  distances(query: FleetQuery): Promise<ReadonlyMap<string, readonly FleetDistance[]>>;
  events(
    query: FleetQuery & {
      readonly of: FleetEventKind;
      readonly componentType?: string | undefined;
      readonly symptom?: string | undefined;
      readonly until: string;
    },
  ): Promise<readonly FleetEvent[]>;
  parts(
    query: FleetQuery & { readonly componentType: string; readonly until: string },
  ): Promise<readonly FleetPart[]>;
  lastDone(query: FleetQuery): Promise<readonly LastDone[]>;
  yearsOfWork(
    query: FleetQuery & { readonly from: string; readonly until: string },
  ): Promise<readonly YearOfWork[]>;
  visits(
    query: FleetQuery & { readonly from: string; readonly until: string },
  ): Promise<readonly FleetVisit[]>;
  openMatters(
    query: FleetQuery & { readonly since: string; readonly until: string },
  ): Promise<readonly OpenMatters[]>;
}
