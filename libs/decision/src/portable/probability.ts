import { exp, log } from './elementary.js';

const HALF_LOG_TWO_PI = 0.91893853320467274178;
const TINY = 1e-300;

/**
 * Natural logarithm of the gamma function for a positive argument.
 *
 * @param a  positive
 * @returns ln Γ(a), to about 1e-14
 * @throws RangeError unless a is positive and finite
 * @source Stirling's series (NIST DLMF 5.11.1) above 15, the recurrence below
 * @oracle logGamma of the statistics room, to 1e-13
 * @example logGamma(1) // => 0
 */
export function logGamma(a: number): number {
  if (!(a > 0) || a === Infinity) throw new RangeError(`logGamma needs a positive number, got ${a}`);
  if (a === 1 || a === 2) return 0;
  let x = a;
  let product = 1;
  for (; x < 15; x += 1) product *= x;
  const square = 1 / (x * x);
  const series =
    (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - square * (1 / 1188))))) / x;
  return (x - 0.5) * log(x) - x + HALF_LOG_TWO_PI + series - log(product);
}

/**
 * x^a e^-x / Γ(a + 1), the step between the distribution functions of shapes a and a + 1.
 *
 * @param a  positive
 * @param x  0 or more
 * @returns a number from 0 to 1
 */
export function gammaKernel(a: number, x: number): number {
  return x <= 0 ? 0 : exp(a * log(x) - x - logGamma(a + 1));
}

/**
 * Regularised incomplete gamma function, lower tail: P(a, x).
 *
 * @param a  shape, positive
 * @param x  0 or more
 * @returns a probability, to about 1e-13 for shapes up to some hundreds
 * @throws RangeError outside these ranges
 * @source NIST DLMF 8.11.4 (series), 8.9.2 (continued fraction by Lentz's method)
 * @oracle gammaCdf of the statistics room, to 1e-12
 * @example gammaShare(1, 0) // => 0
 */
export function gammaShare(a: number, x: number): number {
  if (!(a > 0) || !(x >= 0)) throw new RangeError(`incomplete gamma of shape ${a} at ${x}`);
  if (x === 0) return 0;
  if (x === Infinity) return 1;
  const kernel = gammaKernel(a, x);
  if (x < a + 1) {
    let term = 1;
    let sum = 1;
    for (let k = 1; term > sum * 1e-17; k += 1) {
      term *= x / (a + k);
      sum += term;
    }
    return Math.min(1, kernel * sum);
  }
  if (kernel * (a + 1) < 1e-18) return 1;
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let fraction = d;
  for (let k = 1; k < 100_000; k += 1) {
    const numerator = -k * (k - a);
    b += 2;
    d = numerator * d + b;
    if (Math.abs(d) < TINY) d = TINY;
    c = b + numerator / c;
    if (Math.abs(c) < TINY) c = TINY;
    d = 1 / d;
    const change = d * c;
    fraction *= change;
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return Math.max(0, 1 - kernel * a * fraction);
}

/**
 * Standard normal distribution function.
 *
 * @param z  any number but NaN
 * @returns a probability, to about 1e-15 absolute
 * @throws RangeError on NaN
 * @source Φ(z) = ½ + ½ sign(z) P(½, z²/2)
 * @oracle normalCdf of the statistics room, to 1e-14 absolute
 * @example normalShare(0) // => 0.5
 */
export function normalShare(z: number): number {
  if (Number.isNaN(z)) throw new RangeError('normalShare needs a number');
  if (z > 8.5) return 1;
  if (z < -8.5) return 0;
  const half = 0.5 * gammaShare(0.5, 0.5 * z * z);
  return z < 0 ? 0.5 - half : 0.5 + half;
}

/**
 * Standard normal density.
 *
 * @param z  any number but NaN
 * @returns φ(z)
 * @throws RangeError on NaN
 */
export function normalDensity(z: number): number {
  return exp(-0.5 * z * z - HALF_LOG_TWO_PI);
}
