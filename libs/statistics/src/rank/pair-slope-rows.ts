/** The slopes from one point to all later ones with another x, and the same memory as pairs of 32-bit words. */
export interface SlopeRow {
  readonly slopes: Float64Array;
  readonly words: Uint32Array;
  readonly length: number;
}

/** Place of the high word of a double within its pair: 1 where the low word comes first in memory. */
export const highWord = new Uint8Array(new Uint32Array([1]).buffer)[0] === 1 ? 1 : 0;

/** Calls back with one row of slopes after the other, in the same memory every time; x ascending. */
export function eachSlopeRow(x: Float64Array, y: Float64Array, visit: (row: SlopeRow) => void): void {
  const n = x.length;
  const slopes = new Float64Array(n);
  const words = new Uint32Array(slopes.buffer);
  for (let i = 0; i < n - 1; i += 1) {
    const xi = x[i]!;
    const yi = y[i]!;
    let length = 0;
    for (let j = i + 1; j < n; j += 1) {
      const dx = x[j]! - xi;
      if (dx > 0) {
        // `+ 0` turns −0 into 0, which would otherwise be two values to the bit patterns.
        slopes[length] = (y[j]! - yi) / dx + 0;
        length += 1;
      }
    }
    visit({ slopes, words, length });
  }
}
