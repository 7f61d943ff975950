/** Increments of one step, a row a rate, with the share that is longer than each number of nodes. */
export interface StepIncrements {
  readonly weights: Float64Array;
  readonly longer: Float64Array;
}

/** Share of the increments that are longer than each number of nodes. */
export function stepIncrements(weights: Float64Array): StepIncrements {
  const longer = new Float64Array(weights.length + 1);
  for (let j = weights.length - 1; j >= 0; j -= 1) longer[j] = longer[j + 1]! + weights[j]!;
  return { weights, longer };
}

/**
 * Means of two fields over the increments of one step, both at once; what goes beyond the last node stays on it.
 *
 * @param increments  a row a rate
 * @param nodes       of wear
 * @param one         field over rate x node
 * @param other       another
 * @param oneAfter    receives the mean of the first
 * @param otherAfter  receives the mean of the second
 */
export function stepFields(
  increments: readonly StepIncrements[],
  nodes: number,
  one: Float64Array,
  other: Float64Array,
  oneAfter: Float64Array,
  otherAfter: Float64Array,
): void {
  for (let r = 0; r < increments.length; r += 1) {
    const { weights, longer } = increments[r]!;
    const length = weights.length;
    const row = r * nodes;
    const last = row + nodes - 1;
    const oneBeyond = one[last]!;
    const otherBeyond = other[last]!;
    let i = row;
    // Two nodes a turn where no increment goes beyond the last one: the same sums in the same order, in half the time.
    for (; i + 1 + length <= last; i += 2) {
      const left = longer[length]!;
      let a = left * oneBeyond;
      let b = left * otherBeyond;
      let aNext = a;
      let bNext = b;
      let oneHere = one[i]!;
      let otherHere = other[i]!;
      for (let j = 0; j < length; j += 1) {
        const weight = weights[j]!;
        const oneThere = one[i + j + 1]!;
        const otherThere = other[i + j + 1]!;
        a += weight * oneHere;
        b += weight * otherHere;
        aNext += weight * oneThere;
        bNext += weight * otherThere;
        oneHere = oneThere;
        otherHere = otherThere;
      }
      oneAfter[i] = a;
      otherAfter[i] = b;
      oneAfter[i + 1] = aNext;
      otherAfter[i + 1] = bNext;
    }
    for (; i <= last; i += 1) {
      const inside = length < last - i ? length : last - i;
      const left = longer[inside]!;
      let a = left * oneBeyond;
      let b = left * otherBeyond;
      for (let j = 0; j < inside; j += 1) {
        const weight = weights[j]!;
        a += weight * one[i + j]!;
        b += weight * other[i + j]!;
      }
      oneAfter[i] = a;
      otherAfter[i] = b;
    }
  }
}
