/** Observation of one vehicle and the replacements seen in it; ages in days since the vehicle was first used. */
export interface VehicleHistory {
  readonly vehicleId: string;
  readonly spans: readonly { readonly from: number; readonly until: number }[];
  readonly eventAges: readonly number[];
}

/** Reads that cross many vehicles, in one statement each. */
export interface FleetHistoryQueries {
  /**
   * Replacements of one kind of part (removals followed by a fitting) in all vehicles of the shop, or of one
   * customer, as known at `asOf`; observation ends at `until`.
   */
  replacements(query: {
    readonly componentType: string;
    readonly customerId?: string | undefined;
    readonly until: string;
    readonly asOf?: string | undefined;
  }): Promise<readonly VehicleHistory[]>;
}
