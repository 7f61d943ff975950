/** Zones of a value near a limit with a guard band. */
export const guardBandZones = ['pass', 'conditionalPass', 'conditionalFail', 'fail'] as const;

/** A zone of `guardBandZones`. */
export type GuardBandZone = (typeof guardBandZones)[number];

/**
 * Zone of a value by the guard-band rule with two bands about the limit.
 *
 * The source leaves the edges to the user. Here each edge belongs to the clear side: exactly at the limit less the
 * guard band is `pass`, exactly at the limit plus the guard band is `fail`; exactly at the limit itself is
 * `conditionalPass` (`pass` with a band of 0). Edges are compared with a tolerance of 1e-9 of the largest number
 * involved, because 0.30 + 0.04 is not 0.34 in binary.
 *
 * @param value      measured value
 * @param limit      upper or lower limit, same unit
 * @param guardBand  width of the band, not negative (0: simple acceptance; usually the expanded uncertainty)
 * @param side       whether the limit is an upper or a lower one
 * @returns the zone
 * @throws RangeError on a non-finite number or a negative guard band
 * @source ILAC-G8:09/2019, 4.2.3
 * @example guardBandZone(0.34, 0.3, 0.04, 'upper') // => 'fail'
 */
export function guardBandZone(
  value: number,
  limit: number,
  guardBand: number,
  side: 'upper' | 'lower',
): GuardBandZone {
  if (![value, limit, guardBand].every(Number.isFinite) || guardBand < 0) {
    throw new RangeError('value, limit and guard band are finite, the guard band not below zero');
  }
  const tolerance = 1e-9 * Math.max(Math.abs(value), Math.abs(limit), guardBand);
  const beyond = side === 'upper' ? value - limit : limit - value;
  if (beyond <= -guardBand + tolerance) return 'pass';
  if (beyond <= tolerance) return 'conditionalPass';
  return beyond < guardBand - tolerance ? 'conditionalFail' : 'fail';
}
