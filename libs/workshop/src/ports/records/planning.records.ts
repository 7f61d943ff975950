import type { WorkAction } from './jobs.records.js';

/** Something the shop does at intervals. It is for all vehicles, for those of one application, or for one vehicle. */
export interface ServicePlanItem {
  readonly name: string;
  /** kind of part it is done to; null: to the vehicle as a whole */
  readonly componentType: string | null;
  /** work on such a part that counts as done; empty: only what is recorded as done, and a part newly fitted */
  readonly actions: readonly WorkAction[];
  /** days or distance, whichever is reached first; at least one of the two */
  readonly everyDays: number | null;
  readonly everyKm: string | null;
  readonly vehicleId: string | null;
  /** vehicles with this application; null: any */
  readonly application: string | null;
  /** false: kept, and no longer due */
  readonly inUse: boolean;
}

export interface ServiceRecordIdentity {
  readonly vehicleId: string;
  readonly planItemId: string;
}
/** An item of the plan that was done where no work line says so: before the shop knew the vehicle, or elsewhere. */
export interface ServiceRecord {
  readonly doneAt: string;
  /** distance then; null: read from the odometer of the vehicle where that can be */
  readonly distanceKm: string | null;
  readonly note: string | null;
}
