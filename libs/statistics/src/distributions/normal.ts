import normal from '@stdlib/stats-base-dists-normal';
import { requireFinite, requireNumber, requirePositive, requireProbability } from './checked-arguments.js';

function requireNormal(mean: number, standardDeviation: number): void {
  requireFinite('mean', mean);
  requirePositive('standardDeviation', standardDeviation);
}

/**
 * Normal distribution function, P(X ≤ x).
 *
 * @param x  any number, infinities included
 * @param mean  finite; 0 when left out
 * @param standardDeviation  positive; 1 when left out
 * @returns a probability, with full relative precision in the lower tail
 * @throws RangeError on NaN or a standard deviation that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.1
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example normalCdf(0) // => 0.5
 */
export function normalCdf(x: number, mean = 0, standardDeviation = 1): number {
  requireNumber('x', x);
  requireNormal(mean, standardDeviation);
  return normal.cdf((x - mean) / standardDeviation, 0, 1);
}

/**
 * Upper tail of the normal distribution, P(X > x), with full relative precision for large x.
 *
 * @param x  any number, infinities included
 * @param mean  finite; 0 when left out
 * @param standardDeviation  positive; 1 when left out
 * @returns a probability
 * @throws RangeError on NaN or a standard deviation that is not positive
 * @source symmetry of the normal distribution
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example normalSurvival(0) // => 0.5
 */
export function normalSurvival(x: number, mean = 0, standardDeviation = 1): number {
  requireNumber('x', x);
  requireNormal(mean, standardDeviation);
  return normal.cdf((mean - x) / standardDeviation, 0, 1);
}

/**
 * Logarithm of the normal distribution function, finite far out in the lower tail where the plain form underflows.
 *
 * @param x  any number; −Infinity gives −Infinity
 * @param mean  finite; 0 when left out
 * @param standardDeviation  positive; 1 when left out
 * @returns ln P(X ≤ x); the upper tail is `normalLogCdf(-x)` of the standardised value
 * @throws RangeError on NaN or a standard deviation that is not positive
 * @source NIST DLMF 7.12.1 for the tail
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example normalLogCdf(Infinity) // => 0
 */
export function normalLogCdf(x: number, mean = 0, standardDeviation = 1): number {
  requireNumber('x', x);
  requireNormal(mean, standardDeviation);
  const z = (x - mean) / standardDeviation;
  if (z === Infinity) return 0;
  if (z === -Infinity) return -Infinity;
  // Above zero the tail is subtracted, so that small differences from 1 are kept.
  return z > 0 ? Math.log1p(-normal.cdf(-z, 0, 1)) : normal.logcdf(z, 0, 1);
}

/**
 * Logarithm of the normal density.
 *
 * @param x  any number; ±Infinity gives −Infinity
 * @param mean  finite; 0 when left out
 * @param standardDeviation  positive; 1 when left out
 * @returns ln f(x)
 * @throws RangeError on NaN or a standard deviation that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.1
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example normalLogPdf(0) // => -0.9189385332046727
 */
export function normalLogPdf(x: number, mean = 0, standardDeviation = 1): number {
  requireNumber('x', x);
  requireNormal(mean, standardDeviation);
  const z = (x - mean) / standardDeviation;
  return -0.5 * z * z - 0.5 * Math.log(2 * Math.PI) - Math.log(standardDeviation);
}

/**
 * Normal density.
 *
 * @param x  any number; ±Infinity gives 0
 * @param mean  finite; 0 when left out
 * @param standardDeviation  positive; 1 when left out
 * @returns f(x)
 * @throws RangeError on NaN or a standard deviation that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.1
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example normalPdf(Infinity) // => 0
 */
export function normalPdf(x: number, mean = 0, standardDeviation = 1): number {
  return Math.exp(normalLogPdf(x, mean, standardDeviation));
}

/**
 * Quantile of the normal distribution.
 *
 * @param probability  between 0 and 1
 * @param mean  finite; 0 when left out
 * @param standardDeviation  positive; 1 when left out
 * @returns the x with P(X ≤ x) = probability; ∓Infinity at 0 and 1
 * @throws RangeError on a probability outside [0, 1] or a standard deviation that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.1; the library's value polished by two Halley steps, since it is only
 *   good to 4e-7 at 1e-12 and infinite below 3e-17: tails under 1e-12 are found from the logarithm of the tail
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example normalQuantile(0.5) // => 0
 */
export function normalQuantile(probability: number, mean = 0, standardDeviation = 1): number {
  requireProbability('probability', probability);
  requireNormal(mean, standardDeviation);
  return mean + standardDeviation * standardNormalQuantile(probability);
}

function standardNormalQuantile(probability: number): number {
  if (probability === 0) return -Infinity;
  if (probability === 1) return Infinity;
  if (probability === 0.5) return 0;
  // The smaller tail is inverted: 1 − p is exact for p ≥ ½.
  const tail = Math.min(probability, 1 - probability);
  const z = tail < 1e-12 ? farQuantile(tail) : nearQuantile(tail);
  return probability < 0.5 ? z : -z;
}

function nearQuantile(tail: number): number {
  let z = normal.quantile(tail, 0, 1);
  for (let step = 0; step < 2; step += 1) {
    const newton = (normal.cdf(z, 0, 1) - tail) / normalPdf(z);
    z -= newton / (1 + 0.5 * z * newton);
  }
  return z;
}

/** Quantile so far out that tails are lost in rounding or leave the range of numbers: Newton's method on their logarithm. */
function farQuantile(tail: number): number {
  const wanted = Math.log(tail);
  let z = -Math.sqrt(-2 * wanted);
  for (let step = 0; step < 6; step += 1) {
    const reached = normalLogCdf(z);
    z -= (reached - wanted) / Math.exp(normalLogPdf(z) - reached);
  }
  return z;
}
