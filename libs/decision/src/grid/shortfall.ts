import { log } from '../portable/elementary.js';
import { gammaKernel, gammaShare, normalDensity, normalShare } from '../portable/probability.js';

/** Expected shortfall below a point, E[max(0, t - X)], as a function of t. Its second differences are hat weights. */
export type Shortfall = (t: number) => number;

/**
 * Shortfall of a normal variable; with no spread that of a fixed value.
 *
 * @param mean  finite
 * @param sd    0 or more
 * @returns t => (t - mean) Φ(z) + sd φ(z)
 */
export function normalShortfall(mean: number, sd: number): Shortfall {
  if (!Number.isFinite(mean) || !(sd >= 0)) throw new RangeError(`normal of mean ${mean} and sd ${sd}`);
  if (sd === 0) return (t) => Math.max(0, t - mean);
  return (t) => {
    const z = (t - mean) / sd;
    return (t - mean) * normalShare(z) + sd * normalDensity(z);
  };
}

/**
 * Shortfall of a lognormal variable.
 *
 * @param median  positive
 * @param logSd   0 or more
 * @returns t => t Φ(d) - mean Φ(d - logSd), d = ln(t / median) / logSd
 */
export function logNormalShortfall(median: number, logSd: number, mean: number): Shortfall {
  if (!(median > 0) || !(logSd >= 0))
    throw new RangeError(`lognormal of median ${median} and log sd ${logSd}`);
  if (logSd === 0) return (t) => Math.max(0, t - median);
  return (t) => {
    if (t <= 0) return 0;
    const d = log(t / median) / logSd;
    return t * normalShare(d) - mean * normalShare(d - logSd);
  };
}

/**
 * Shortfall of an increment of a gamma process; with no scale that of the fixed mean.
 *
 * @param mean   0 or more
 * @param scale  variance / mean, 0 or more
 * @returns t => t F_a(t) - mean F_{a+1}(t), a = mean / scale
 * @source NIST DLMF 8.8.5: P(a + 1, x) = P(a, x) - x^a e^-x / Γ(a + 1)
 */
export function gammaShortfall(mean: number, scale: number): Shortfall {
  if (!(mean >= 0) || !(scale >= 0))
    throw new RangeError(`gamma increment of mean ${mean} and scale ${scale}`);
  const shape = mean / scale;
  // Without wear, without scale, or with a spread below a thousandth of the mean: the fixed mean.
  if (mean === 0 || !(shape < 1e6)) return (t) => Math.max(0, t - mean);
  return (t) => {
    if (t <= 0) return 0;
    const share = gammaShare(shape, t / scale);
    return t * share - mean * Math.max(0, share - gammaKernel(shape, t / scale));
  };
}
