/**
 * Shannon entropy of a distribution over causes.
 *
 * @param probabilities  non-negative, adding up to one; zeros add nothing
 * @returns bits, 0 for certainty, log2(n) for n equal weights
 * @throws RangeError on a negative or non-finite weight
 * @source Shannon (1948), Bell System Technical Journal 27:379-423
 * @example entropyBits([0.5, 0.5]) // => 1
 */
export function entropyBits(probabilities: readonly number[]): number {
  let bits = 0;
  for (const p of probabilities) {
    if (!(p >= 0 && Number.isFinite(p))) throw new RangeError('a weight must be finite and not negative');
    if (p > 0) bits -= p * Math.log2(p);
  }
  return Math.max(0, bits);
}
