/** What makes a vehicle need attention, the most pressing first. */
export const attentionReasons = [
  'dangerousFinding',
  'repeatedComeback',
  'majorFinding',
  'overdueService',
  'comeback',
  'repeatedComplaint',
  'otherFinding',
  'serviceDueSoon',
] as const;
export type AttentionReason = (typeof attentionReasons)[number];

/** One reason with how many things lie behind it. */
export interface Attention {
  readonly reason: AttentionReason;
  readonly count: number;
}

export interface VehicleAttention {
  readonly vehicleId: string;
  readonly reasons: readonly Attention[];
  /** days until the first service is expected to be due, below 0 when past; null: none is known */
  readonly daysToService: number | null;
}

const orderOf = (reason: AttentionReason): number => attentionReasons.indexOf(reason);

function requireCounts({ reasons }: VehicleAttention): void {
  for (const { reason, count } of reasons) {
    if (!Number.isInteger(count) || count < 1)
      throw new RangeError(`a reason stands for one thing or more, got ${count} of ${reason}`);
  }
}

/** How often each reason stands, in the order of the reasons: compared from the front, more of the more pressing first. */
const countsOf = ({ reasons }: VehicleAttention): readonly number[] =>
  attentionReasons.map((reason) =>
    reasons.filter((each) => each.reason === reason).reduce((sum, { count }) => sum + count, 0),
  );

/**
 * Vehicles in the order in which they need attention. There is no score: reasons are compared one by one, the most
 * pressing first, then the day of the next service, then the id. Two vehicles change places only for a reason that can be
 * named.
 *
 * @param vehicles  any order, each once
 * @returns those with a reason first, their reasons in order of urgency; others by their next service
 * @throws RangeError on a count that is not a whole number above 0
 * @source order of the reasons is judgement: safety, then what was promised and failed, then what is late
 * @oracle worked by hand in the spec
 * @example rankVehicles([{ vehicleId: 'a', reasons: [], daysToService: null }]).length // => 1
 */
export function rankVehicles(vehicles: readonly VehicleAttention[]): readonly VehicleAttention[] {
  vehicles.forEach(requireCounts);
  const counted = vehicles.map((vehicle) => ({ vehicle, counts: countsOf(vehicle) }));
  counted.sort((a, b) => {
    const place = a.counts.findIndex((count, at) => count !== b.counts[at]);
    if (place >= 0) return b.counts[place]! - a.counts[place]!;
    const days = (a.vehicle.daysToService ?? Infinity) - (b.vehicle.daysToService ?? Infinity);
    if (days !== 0 && !Number.isNaN(days)) return days;
    return a.vehicle.vehicleId < b.vehicle.vehicleId ? -1 : 1;
  });
  return counted.map(({ vehicle }) => ({
    ...vehicle,
    reasons: [...vehicle.reasons].sort((a, b) => orderOf(a.reason) - orderOf(b.reason)),
  }));
}
