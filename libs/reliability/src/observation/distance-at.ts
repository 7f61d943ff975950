/** A reliable distance at a moment (milliseconds since 1970). */
export interface DistancePoint {
  readonly at: number;
  readonly km: number;
}

export type DistanceAt =
  /** between two points by a straight line, or on a point */
  | { readonly kind: 'known'; readonly km: number }
  /** no point at or before the moment, or none at or after it: nothing is extended beyond what was read */
  | { readonly kind: 'unknown' };

/**
 * Distance of a vehicle at a moment by a straight line between the readings before and after.
 *
 * @param points  readings in order of time, distances in km
 * @param at      milliseconds since 1970
 * @returns the distance, of several readings at one moment the last; `unknown` outside the readings, also without any
 * @throws RangeError on a moment that is not finite, or where the two readings about it are out of order
 * @source linear interpolation
 * @oracle worked by hand in the spec
 * @example distanceAt([{ at: 0, km: 100 }, { at: 10, km: 200 }], 5) // => { kind: 'known', km: 150 }
 */
export function distanceAt(points: readonly DistancePoint[], at: number): DistanceAt {
  if (!Number.isFinite(at)) throw new RangeError(`the moment must be finite, got ${at}`);
  let [low, high] = [0, points.length - 1];
  if (high < 0 || at < points[0]!.at || at > points[high]!.at) return { kind: 'unknown' };
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (points[middle]!.at <= at) low = middle;
    else high = middle;
  }
  const [before, after] = [points[low]!, points[high]!];
  if (after.at < before.at) throw new RangeError('points must be in order of time');
  if (at >= after.at) return { kind: 'known', km: after.km };
  return {
    kind: 'known',
    km: before.km + ((after.km - before.km) * (at - before.at)) / (after.at - before.at),
  };
}
