import type { InsufficientData } from '@endfloat/statistics';
import { normalSurvival } from '@endfloat/statistics';
import { dot, whiten } from './covariance-factor.js';
import type { OrientedPart } from './level-given-rate.js';
import { givenRate } from './level-given-rate.js';

/** Whether wear gets faster with distance, beyond what its own unevenness explains. */
export type AccelerationTest =
  | {
      readonly kind: 'tested';
      /** curvature over its standard error; positive: faster and faster */
      readonly z: number;
      /** P(z at least this large) under a steady rate */
      readonly pAccelerating: number;
      readonly pTwoSided: number;
      /** pAccelerating below 0.05: a steady rate is too hopeful */
      readonly accelerating: boolean;
    }
  | InsufficientData;

const fewest = 4;

/**
 * Tests a straight mean against a curved one, with the covariance of the wear model at one rate: generalised least squares
 * of the level on 1, x and x², no prior on the start. Variances are taken as known, so the quotient is normal.
 *
 * @param part   oriented points
 * @param rate   the part's rate, units per km
 * @param scale  variance of wear over its mean
 * @returns z and p-values, or `insufficientData` below four distances
 * @source generalised least squares: Draper & Smith (1998), Applied Regression Analysis, 3rd ed., 9.2
 */
export function accelerationTest(part: OrientedPart, rate: number, scale: number): AccelerationTest {
  const distances = new Set(part.km).size;
  if (distances < fewest)
    return { kind: 'insufficientData', of: 'distances', needed: fewest, got: distances };
  const { factor } = givenRate(part, { mean: 0, sd: 0 }, rate, scale);
  const longest = part.km.at(-1)!;
  const columns = [0, 1, 2].map((power) =>
    whiten(
      factor,
      part.km.map((x) => (x / longest) ** power),
    ),
  );
  const level = whiten(factor, part.level);
  // Gram-Schmidt: what is left of x² once 1 and x are taken out carries the curvature.
  const [constant, linear, curved] = columns as [Float64Array, Float64Array, Float64Array];
  const straight = without(linear, constant);
  const rest = without(without(curved, constant), straight);
  const z = dot(rest, level) / Math.sqrt(dot(rest, rest));
  const pAccelerating = normalSurvival(z);
  const pTwoSided = 2 * normalSurvival(Math.abs(z));
  return { kind: 'tested', z, pAccelerating, pTwoSided, accelerating: pAccelerating < 0.05 };
}

function without(vector: Float64Array, direction: Float64Array): Float64Array {
  const share = dot(vector, direction) / dot(direction, direction);
  return vector.map((value, index) => value - share * direction[index]!);
}
