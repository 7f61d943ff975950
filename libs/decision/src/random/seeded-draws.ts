import { log } from '../portable/elementary.js';

/** A stream of draws that depends on its seed alone. */
export interface SeededDraws {
  /** next 32-bit whole number */
  bits(): number;
  /** uniform on (0, 1), never an end */
  uniform(): number;
  /** standard normal */
  normal(): number;
}

const rotateLeft = (x: number, k: number): number => (x << k) | (x >>> (32 - k));

/**
 * Xoshiro128** from a given state; integer operations only, so the same stream on every machine.
 *
 * @param state  four whole numbers from 0 to 4294967295, not all zero
 * @returns the stream; normal draws by the polar method, two uniforms a trial
 * @throws RangeError on a state of zeros
 * @source Blackman & Vigna (2021), Scrambled linear pseudorandom number generators, ACM TOMS 47(4); Marsaglia & Bray (1964)
 * @oracle outputs of the authors' C code from one state, as published with edorfaus/xoshiro-6502
 */
export function drawsFromState(state: readonly [number, number, number, number]): SeededDraws {
  let [a, b, c, d] = state.map((word) => word | 0) as [number, number, number, number];
  if ((a | b | c | d) === 0) throw new RangeError('the state of the draws is all zeros');
  let spare: number | null = null;

  const bits = (): number => {
    const result = Math.imul(rotateLeft(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotateLeft(d, 11);
    return result;
  };
  const uniform = (): number => (bits() + 0.5) / 4294967296;
  const normal = (): number => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const s = u * u + v * v;
      if (s >= 1 || s === 0) continue;
      const factor = Math.sqrt((-2 * log(s)) / s);
      spare = v * factor;
      return u * factor;
    }
  };
  return { bits, uniform, normal };
}

/**
 * Stream of draws from one seed: four words by the 32-bit finaliser of MurmurHash3 over a Weyl sequence.
 *
 * @param seed  whole number from 0 to 4294967295
 * @returns the stream
 * @throws RangeError on any other seed
 * @source Steele, Lea & Flood (2014), Fast splittable pseudorandom number generators (the principle)
 */
export function seededDraws(seed: number): SeededDraws {
  if (!Number.isInteger(seed) || seed < 0 || seed > 4294967295) {
    throw new RangeError(`a seed is a whole number from 0 to 4294967295, got ${seed}`);
  }
  let weyl = seed | 0;
  const word = (): number => {
    weyl = (weyl + 0x9e3779b9) | 0;
    let z = weyl;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return (z ^ (z >>> 16)) >>> 0;
  };
  return drawsFromState([word(), word(), word(), word()]);
}
