import type { CoveredRange } from './innermost-intervals.js';

/**
 * Standard errors of the survival after each interval, by the inverse of the observed information of all masses but the
 * last; the survival after the last interval is fixed at 0. Null when the information cannot be inverted: the data do
 * not tell the masses apart.
 */
export function massStandardErrors(
  ranges: readonly CoveredRange[],
  masses: readonly number[],
): number[] | null {
  const size = masses.length - 1;
  // In the survivals s₁ … (after interval 1 …) the mass covered by a range is s(first − 1) − s(last), so each row adds
  // to at most four entries of the information.
  const information = Array.from({ length: size }, () => new Float64Array(size));
  for (const { first, last, weight } of ranges) {
    const covered = masses.slice(first, last + 1).reduce((sum, mass) => sum + mass, 0);
    const share = weight / (covered * covered);
    for (const [i, one] of [
      [first - 1, 1],
      [last, -1],
    ] as const) {
      for (const [j, other] of [
        [first - 1, 1],
        [last, -1],
      ] as const) {
        if (i >= 0 && j >= 0 && i < size && j < size) information[i]![j]! += share * one * other;
      }
    }
  }
  const variances = diagonalOfInverse(information);
  return variances === null ? null : [...variances.map((variance) => Math.sqrt(variance)), 0];
}

/** Diagonal of the inverse of a positive definite matrix through its Cholesky factor; null when it is not. */
function diagonalOfInverse(matrix: readonly Float64Array[]): number[] | null {
  const size = matrix.length;
  const factor = matrix.map((row) => Float64Array.from(row));
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = factor[i]![j]!;
      for (let k = 0; k < j; k += 1) sum -= factor[i]![k]! * factor[j]![k]!;
      if (i !== j) factor[i]![j] = sum / factor[j]![j]!;
      else if (sum > 1e-12 * matrix[i]![i]!) factor[i]![i] = Math.sqrt(sum);
      else return null;
    }
  }
  const diagonal = new Array<number>(size).fill(0);
  for (let column = 0; column < size; column += 1) {
    const solution = new Float64Array(size);
    for (let i = column; i < size; i += 1) {
      let sum = i === column ? 1 : 0;
      for (let k = column; k < i; k += 1) sum -= factor[i]![k]! * solution[k]!;
      solution[i] = sum / factor[i]![i]!;
    }
    // Column of L⁻¹; its square adds to the entry of (L Lᵀ)⁻¹ = L⁻ᵀ L⁻¹ on the diagonal.
    diagonal[column] = solution.reduce((sum, x) => sum + x * x, 0);
  }
  return diagonal;
}
