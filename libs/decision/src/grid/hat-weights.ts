import type { Shortfall } from './shortfall.js';

/**
 * Spreads a distribution over nodes so that the mean of every function that is straight between nodes, and with it the
 * mean of the variable itself, stays exact: weight of a node = E[hat function of the node]. What lies outside the first
 * and last node goes to that node.
 *
 * @param nodes      two or more, rising
 * @param shortfall  of the distribution
 * @returns weights that are not negative and add up to one
 * @throws RangeError with fewer than two nodes
 */
export function hatWeights(nodes: ArrayLike<number>, shortfall: Shortfall): Float64Array {
  const count = nodes.length;
  if (count < 2) throw new RangeError('hat weights need two nodes');
  const slopes = new Float64Array(count + 1);
  let before = shortfall(nodes[0]!);
  for (let i = 1; i < count; i += 1) {
    const here = shortfall(nodes[i]!);
    slopes[i] = Math.min(1, Math.max(0, (here - before) / (nodes[i]! - nodes[i - 1]!)));
    before = here;
  }
  slopes[count] = 1;
  const weights = new Float64Array(count);
  for (let i = 0; i < count; i += 1) weights[i] = Math.max(0, slopes[i + 1]! - slopes[i]!);
  return normalised(weights);
}

/**
 * Weights divided by their sum.
 *
 * @param weights  not negative, changed in place
 * @returns the same array
 * @throws RangeError where the sum is not positive
 */
export function normalised(weights: Float64Array): Float64Array {
  let sum = 0;
  for (const weight of weights) sum += weight;
  if (!(sum > 0)) throw new RangeError('weights add up to nothing');
  for (let i = 0; i < weights.length; i += 1) weights[i] = weights[i]! / sum;
  return weights;
}

const FAINT = 1e-9;

/**
 * Weights without the faint ones (below 1e-9 of the whole), which cost time and change no reported digit.
 *
 * @param weights  add up to one; changed in place
 * @returns the same array
 */
export function withoutFaint(weights: Float64Array): Float64Array {
  for (let i = 0; i < weights.length; i += 1) if (weights[i]! < FAINT) weights[i] = 0;
  return normalised(weights);
}
