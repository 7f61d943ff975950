import { requireNumber, requirePositive, requireProbability } from './checked-arguments.js';

function requireWeibull(scale: number, shape: number): void {
  requirePositive('scale', scale);
  requirePositive('shape', shape);
}

/** Cumulative hazard (x / scale)^shape, 0 at or below 0. */
function cumulativeHazard(x: number, scale: number, shape: number): number {
  requireNumber('x', x);
  requireWeibull(scale, shape);
  return x <= 0 ? 0 : Math.pow(x / scale, shape);
}

/**
 * Weibull distribution function, F(x) = 1 − exp(−(x / scale)^shape).
 *
 * @param x  any number; 0 or less gives 0
 * @param scale  characteristic life, positive
 * @param shape  positive
 * @returns a probability; small values keep their digits
 * @throws RangeError on NaN or a parameter that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.8
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example weibullCdf(0, 10, 2) // => 0
 */
export function weibullCdf(x: number, scale: number, shape: number): number {
  return -Math.expm1(-cumulativeHazard(x, scale, shape)) + 0;
}

/**
 * Weibull survival function, S(x) = exp(−(x / scale)^shape).
 *
 * @param x  any number; 0 or less gives 1
 * @param scale  characteristic life, positive
 * @param shape  positive
 * @returns a probability
 * @throws RangeError on NaN or a parameter that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.8
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example weibullSurvival(0, 10, 2) // => 1
 */
export function weibullSurvival(x: number, scale: number, shape: number): number {
  return Math.exp(-cumulativeHazard(x, scale, shape));
}

/**
 * Quantile of the Weibull distribution: the life by which the given share has failed (B-life).
 *
 * @param probability  between 0 and 1
 * @param scale  characteristic life, positive
 * @param shape  positive
 * @returns scale · (−ln(1 − p))^(1 / shape); 0 at 0, Infinity at 1
 * @throws RangeError on arguments outside these ranges
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.8
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example weibullQuantile(0, 10, 2) // => 0
 */
export function weibullQuantile(probability: number, scale: number, shape: number): number {
  requireProbability('probability', probability);
  requireWeibull(scale, shape);
  return scale * Math.pow(-Math.log1p(-probability), 1 / shape);
}

/**
 * Logarithm of the Weibull density.
 *
 * @param x  any number; −Infinity below 0; at 0 the limit (Infinity for a shape under 1)
 * @param scale  characteristic life, positive
 * @param shape  positive
 * @returns ln f(x)
 * @throws RangeError on NaN or a parameter that is not positive
 * @source NIST/SEMATECH e-Handbook 1.3.6.6.8
 * @oracle test/oracles/statistics-survival/distribution-values.ts
 * @example weibullLogPdf(1, 1, 1) // => -1
 */
export function weibullLogPdf(x: number, scale: number, shape: number): number {
  requireNumber('x', x);
  requireWeibull(scale, shape);
  if (x < 0 || x === Infinity) return -Infinity;
  if (x === 0) return shape === 1 ? -Math.log(scale) : shape < 1 ? Infinity : -Infinity;
  const logRatio = Math.log(x / scale);
  return Math.log(shape / scale) + (shape - 1) * logRatio - Math.exp(shape * logRatio);
}
