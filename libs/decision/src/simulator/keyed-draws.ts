import { exp, log } from '../portable/elementary.js';
import type { SeededDraws } from '../random/seeded-draws.js';
import { seededDraws } from '../random/seeded-draws.js';

/**
 * Stream that belongs to a seed and some keys: whoever asks with the same keys gets the same draws, whatever was asked
 * before. That is what lets several policies meet the same vans.
 *
 * @param seed  whole number from 0 to 4294967295
 * @param keys  whole numbers
 * @returns stream
 * @source MurmurHash3 mixing of the keys, then `seededDraws`
 */
export function keyedDraws(seed: number, ...keys: readonly number[]): SeededDraws {
  let hash = seed | 0;
  for (const key of keys) {
    let k = Math.imul(key | 0, 0xcc9e2d51);
    k = (k << 15) | (k >>> 17);
    hash ^= Math.imul(k, 0x1b873593);
    hash = (hash << 13) | (hash >>> 19);
    hash = (Math.imul(hash, 5) + 0xe6546b64) | 0;
  }
  hash ^= hash >>> 16;
  hash = Math.imul(hash, 0x85ebca6b);
  hash ^= hash >>> 13;
  hash = Math.imul(hash, 0xc2b2ae35);
  return seededDraws((hash ^ (hash >>> 16)) >>> 0);
}

/**
 * Gamma draw.
 *
 * @param draws  stream
 * @param shape  0 or more
 * @param scale  0 or more
 * @returns a number of 0 or more; 0 at shape 0
 * @source Marsaglia & Tsang (2000), ACM TOMS 26:363-372; shapes below 1 by x U^(1/a)
 */
export function gammaDraw(draws: SeededDraws, shape: number, scale: number): number {
  if (!(shape >= 0) || !(scale >= 0)) throw new RangeError(`gamma of shape ${shape} and scale ${scale}`);
  if (shape === 0 || scale === 0) return 0;
  const boost = shape < 1 ? exp(log(draws.uniform()) / shape) : 1;
  const d = (shape < 1 ? shape + 1 : shape) - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const z = draws.normal();
    const v = (1 + c * z) ** 3;
    if (v <= 0) continue;
    if (log(draws.uniform()) < 0.5 * z * z + d - d * v + d * log(v)) return d * v * boost * scale;
  }
}
