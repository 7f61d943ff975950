import type { Numbers } from './checked-values.js';
import { mean } from './mean.js';
import { insufficientData, type InsufficientData } from './outcomes.js';

export type VarianceOutcome =
  | {
      readonly kind: 'estimated';
      readonly variance: number;
      readonly standardDeviation: number;
      readonly mean: number;
      readonly count: number;
    }
  | InsufficientData;

/**
 * Sample variance and standard deviation, divisor n − 1, by the two-pass method with correction.
 *
 * @param values  n ≥ 2, any order, finite
 * @returns variance (exactly 0 when all values are equal), or `insufficientData` for fewer than two
 * @throws RangeError on a number that is not finite
 * @complexity O(n) time, O(1) memory
 * @source NIST/SEMATECH e-Handbook 1.3.5.6; Chan, Golub & LeVeque (1983), Am. Stat. 37:242–247, eq. 1.7
 * @oracle GUM table 1 in the spec
 * @example sampleVariance([1, 3]) // => { kind: 'estimated', variance: 2, standardDeviation: 1.4142135623730951, mean: 2, count: 2 }
 */
export function sampleVariance(values: Numbers): VarianceOutcome {
  const centre = mean(values);
  if (centre.kind !== 'estimated' || centre.count < 2) return insufficientData('values', 2, values.length);
  let squares = 0;
  let residue = 0;
  for (let i = 0; i < values.length; i += 1) {
    const deviation = values[i]! - centre.mean;
    squares += deviation * deviation;
    residue += deviation;
  }
  const { count } = centre;
  const variance = Math.max(0, squares - (residue * residue) / count) / (count - 1);
  return { kind: 'estimated', variance, standardDeviation: Math.sqrt(variance), mean: centre.mean, count };
}
