import { partConditions } from '@endfloat/catalogue';
import type { OdometerProposal, OdometerSegment as Segment, OdometerUnit } from '@endfloat/wear';

/** Number as stamped, its history is the history of the record. */
export interface Vehicle {
  /** vehicle identification or chassis number as read; null when none is legible */
  readonly chassisNumber: string | null;
  /** upper case, letters and digits only: derived from `chassisNumber`, for search */
  readonly numberSearch: string | null;
  readonly plate: string | null;
  /** derived from `plate`, for search */
  readonly plateSearch: string | null;
  /** what the shop calls it, e.g. "Van 14" */
  readonly label: string | null;
  /** local date; decides which limits apply */
  readonly firstUsedOn: string | null;
  /** which throttle housing, switch window and so on apply: the shop's own word */
  readonly application: string | null;
  /** what limits ask for: jurisdiction, category, grossMassKg, steeringType, wheelDiameterMm ... */
  readonly attributes: Readonly<Record<string, string>>;
  /** distance a year the owner expects, decimal text in km */
  readonly expectedKmPerYear: string | null;
  /** stretches of time in which the shop would have seen what happened to it; empty: since it was recorded */
  readonly observedSpans: readonly ObservedSpan[];
  readonly retiredOn: string | null;
}

export interface ObservedSpan {
  readonly from: string;
  readonly until: string | null;
}

export interface OfVehicle {
  readonly vehicleId: string;
}

export interface VehicleOwnership {
  readonly customerId: string;
  readonly fromAt: string;
}

/** A stretch of the odometer with one unit, offset and display, as `wear` computes with it. */
export interface OdometerSegment extends Segment {
  readonly note: string | null;
}

/** What looked odd about an odometer entry, a number or a date; a warning never refuses anything. */
export interface Warning {
  readonly code: string;
  readonly pointer: string;
  readonly values: Readonly<Record<string, string>>;
}

export interface OdometerEntry {
  /** digits as displayed */
  readonly shown: string;
  readonly unit: OdometerUnit;
  readonly readAt: string;
  /** derived by the segment; null for hours and where the segment cannot say */
  readonly distanceKm: string | null;
  /** false until a person settled a contradiction */
  readonly reliable: boolean;
  /** what a person said about its reliability; absent or null: nobody has, it goes by the rules */
  readonly settledReliable?: boolean | null;
  readonly readBy: string | null;
  /** read by hours where the display counts hours */
  readonly operatingHours: string | null;
  readonly warnings: readonly OdometerWarningRecord[];
  readonly note: string | null;
}

/** A warning about an odometer entry with what could set it right. */
export interface OdometerWarningRecord extends Warning {
  readonly proposals: readonly OdometerProposal[];
}

/** Condition of a fitted part; `original`: on the vehicle when the shop first saw it. */
export const fittedConditions = ['original', ...partConditions] as const;
export type FittedCondition = (typeof fittedConditions)[number];

/** One physical part from fitting to removal. */
export interface FittedPart {
  readonly componentType: string;
  readonly position: string;
  readonly condition: FittedCondition;
  /** null: fitted before the shop knew the vehicle */
  readonly fittedAt: string | null;
  readonly fittedKm: string | null;
  readonly removedAt: string | null;
  readonly removedKm: string | null;
  readonly serial: string | null;
  readonly batch: string | null;
  readonly supplier: string | null;
  readonly partNumber: string | null;
  readonly removalReason: string | null;
  readonly replacesPartId: string | null;
  readonly workLineId: string | null;
}
