import type { DegreesOfFreedom } from '../instruments/instrument.js';

/** A standard deviation of single readings and the degrees of freedom behind it. */
export interface Repeatability {
  readonly standardDeviation: number;
  readonly degreesOfFreedom: DegreesOfFreedom;
}

/**
 * One standard deviation from several estimates of the same one, weighted by degrees of freedom:
 * s^2 = sum(nu_i s_i^2) / sum(nu_i). An estimate with infinite degrees of freedom is taken as known and alone counts.
 *
 * @param estimates  at least one
 * @returns pooled standard deviation and the sum of the degrees of freedom
 * @throws RangeError on an empty list, a negative number, degrees of freedom that are not positive, or two different
 *   values both said to be known
 * @source JCGM 100:2008, H.3.6 (pooled variance); NIST/SEMATECH e-Handbook 1.3.5.3
 * @example poolStandardDeviations([
 *   { standardDeviation: 3, degreesOfFreedom: 2 },
 *   { standardDeviation: 1, degreesOfFreedom: 6 },
 * ]) // => { standardDeviation: 1.7320508075688772, degreesOfFreedom: 8 }
 */
export function poolStandardDeviations(estimates: readonly Repeatability[]): Repeatability {
  const known: number[] = [];
  let sum = 0;
  let degrees = 0;
  for (const { standardDeviation, degreesOfFreedom } of estimates) {
    if (!(standardDeviation >= 0) || !Number.isFinite(standardDeviation)) {
      throw new RangeError('a standard deviation is a finite number not below zero');
    }
    if (degreesOfFreedom === 'infinite') {
      known.push(standardDeviation);
    } else if (degreesOfFreedom > 0 && Number.isFinite(degreesOfFreedom)) {
      sum += degreesOfFreedom * standardDeviation ** 2;
      degrees += degreesOfFreedom;
    } else {
      throw new RangeError("degrees of freedom are positive, or 'infinite'");
    }
  }
  if (known.length > 0) {
    if (new Set(known).size > 1)
      throw new RangeError('two different standard deviations cannot both be known');
    return { standardDeviation: known[0]!, degreesOfFreedom: 'infinite' };
  }
  if (degrees === 0) throw new RangeError('pooling needs at least one estimate');
  return { standardDeviation: Math.sqrt(sum / degrees), degreesOfFreedom: degrees };
}
