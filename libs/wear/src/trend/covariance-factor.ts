/** Lower triangle L of a positive definite matrix S = L Lᵀ, row by row in one array. */
export interface CovarianceFactor {
  readonly size: number;
  readonly lower: Float64Array;
  readonly logDeterminant: number;
}

/**
 * Cholesky factor of a covariance, written over it.
 *
 * @param size        rows
 * @param covariance  row by row, symmetric; only the lower triangle is read, and replaced by the factor
 * @returns the factor
 * @throws RangeError where the matrix is not positive definite
 * @source Golub & Van Loan (2013), Matrix Computations, 4.2
 */
export function factorInPlace(size: number, covariance: Float64Array): CovarianceFactor {
  let logDeterminant = 0;
  for (let i = 0; i < size; i += 1) {
    const row = i * size;
    for (let j = 0; j < i; j += 1) {
      const other = j * size;
      let sum = covariance[row + j]!;
      for (let k = 0; k < j; k += 1) sum -= covariance[row + k]! * covariance[other + k]!;
      covariance[row + j] = sum / covariance[other + j]!;
    }
    let left = covariance[row + i]!;
    for (let k = 0; k < i; k += 1) left -= covariance[row + k]! ** 2;
    if (!(left > 0)) throw new RangeError('the covariance is not positive definite');
    covariance[row + i] = Math.sqrt(left);
    logDeterminant += Math.log(left);
  }
  return { size, lower: covariance, logDeterminant };
}

/**
 * L⁻¹ v, written over v, so that vᵀ S⁻¹ w is the product of two whitened vectors.
 *
 * @param factor  of S
 * @param vector  replaced
 * @param from    first entry that is not 0, where that is known
 * @returns the same array
 */
export function whitenInPlace(factor: CovarianceFactor, vector: Float64Array, from = 0): Float64Array {
  const { size, lower } = factor;
  for (let i = from; i < size; i += 1) {
    let sum = vector[i]!;
    for (let k = from; k < i; k += 1) sum -= lower[i * size + k]! * vector[k]!;
    vector[i] = sum / lower[i * size + i]!;
  }
  return vector;
}

/** L⁻¹ v in an array of its own. */
export const whiten = (factor: CovarianceFactor, vector: ArrayLike<number>): Float64Array =>
  whitenInPlace(factor, Float64Array.from(vector));

/** Sum of products. */
export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += a[i]! * b[i]!;
  return sum;
}
