/** Covariance of a line's level (its height at the centre) and its slope. */
export interface LineCovariance {
  readonly level: number;
  readonly cross: number;
  readonly slope: number;
}

/** A straight line in units v (of y) and u (of x), written about a centre so that no digits are lost far from x = 0. */
export interface UncertainLine {
  /** The x at which `level` is the height, in u. */
  readonly centre: number;
  readonly level: number;
  /** v per u. */
  readonly slope: number;
  readonly covariance: LineCovariance;
}

/** Covariance of the height at a distance from the centre and the slope. */
export function shiftedCovariance(covariance: LineCovariance, distance: number): LineCovariance {
  const cross = covariance.cross + distance * covariance.slope;
  return {
    level: Math.max(0, covariance.level + distance * (covariance.cross + cross)),
    cross,
    slope: covariance.slope,
  };
}
