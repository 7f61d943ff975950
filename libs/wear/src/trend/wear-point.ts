/** Which way a characteristic goes as the part wears: play rises, a lining gets thinner. */
export const wearDirections = ['rising', 'falling'] as const;
export type WearDirection = (typeof wearDirections)[number];

/** One inspection of a fitted part, as it enters a trend. */
export interface WearPoint {
  /** km since the part was fitted, not negative */
  readonly km: number;
  /** mean of the inspection's as-found readings, in the characteristic's unit */
  readonly value: number;
  /** standard uncertainty of that mean without the instrument's bias, more than 0, same unit */
  readonly u: number;
  readonly instrumentId: string;
  /** standard uncertainty of the instrument's bias, common to all its readings; 0: none known */
  readonly biasU: number;
  /** its calibration had run out, failed or never happened then: told, and not computed with */
  readonly instrumentOverdue?: boolean | undefined;
}

/** Refuses points no trend can be made of; these are faults of the caller, not of the data. */
export function requireWearPoints(points: readonly WearPoint[]): void {
  for (const [index, { km, value, u, biasU }] of points.entries()) {
    if (!(km >= 0 && Number.isFinite(km)))
      throw new RangeError(`km of point ${index} is not negative and finite: ${km}`);
    if (!Number.isFinite(value)) throw new RangeError(`value of point ${index} must be finite: ${value}`);
    if (!(u > 0 && Number.isFinite(u))) throw new RangeError(`u of point ${index} must be more than 0: ${u}`);
    if (!(biasU >= 0 && Number.isFinite(biasU)))
      throw new RangeError(`biasU of point ${index} is not negative: ${biasU}`);
  }
}

/** Distances at which there is a point. */
export const distinctDistances = (points: readonly WearPoint[]): number =>
  new Set(points.map(({ km }) => km)).size;
