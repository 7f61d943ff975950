import { seededDraws } from '../random/seeded-draws.js';
import type { SeededDraws } from '../random/seeded-draws.js';
import type { ComebackTable } from '../tables/learned-tables.js';
import { comebackCoefficients } from '../tables/comeback-coefficients.js';
import { risingCoefficients } from './comeback-predictor.js';

const DESIGN_PAIRS = 64;
const DESIGN_SEED = 20;

/** Designs already made; tables are never changed in place, so the same table has the same design. */
const designs = new WeakMap<ComebackTable, readonly Float64Array[]>();

/**
 * Lower triangle L with L L' = the matrix.
 *
 * @param matrix  symmetric, positive semi-definite (a variance of 0 is a coefficient that is known)
 * @returns rows of L
 * @throws RangeError on a matrix that is not square or has a negative pivot
 * @source Cholesky's decomposition
 */
export function cholesky(matrix: readonly (readonly number[])[]): readonly Float64Array[] {
  const size = matrix.length;
  const rows: Float64Array[] = [];
  for (let i = 0; i < size; i += 1) {
    if (matrix[i]!.length !== size) throw new RangeError('a covariance is square');
    const row = new Float64Array(size);
    for (let j = 0; j <= i; j += 1) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k += 1) sum -= row[k]! * (j === i ? row[k]! : rows[j]![k]!);
      if (j === i) {
        if (!(sum > -1e-12)) throw new RangeError('a covariance has no negative direction');
        row[i] = Math.sqrt(Math.max(0, sum));
      } else {
        const pivot = rows[j]![j]!;
        row[j] = pivot === 0 ? 0 : sum / pivot;
      }
    }
    rows.push(row);
  }
  return rows;
}

function requireTable({ mean, covariance }: ComebackTable): void {
  const size = comebackCoefficients.length;
  if (mean.length !== size || covariance.length !== size) {
    throw new RangeError(`a comeback table has ${size} coefficients, got ${mean.length}`);
  }
  if (![...mean, ...covariance.flat()].every(Number.isFinite))
    throw new RangeError('a comeback table holds finite numbers');
}

/**
 * Draws of the coefficients, in pairs mirrored at the mean; the steps of wear are cut off at zero, so that more wear never
 * makes a repair that keeps it look better.
 *
 * @param table  belief over the coefficients
 * @param pairs  number of pairs, at least one
 * @param draws  stream
 * @returns 2 x pairs vectors in the order of `comebackCoefficients`
 * @throws RangeError on a table of another size, with numbers that are not finite or no covariance
 */
export function drawCoefficients(
  table: ComebackTable,
  pairs: number,
  draws: SeededDraws,
): readonly Float64Array[] {
  requireTable(table);
  const triangle = cholesky(table.covariance);
  const size = triangle.length;
  const vectors: Float64Array[] = [];
  const z = new Float64Array(size);
  for (let pair = 0; pair < pairs; pair += 1) {
    for (let i = 0; i < size; i += 1) z[i] = draws.normal();
    const up = Float64Array.from(table.mean);
    const down = Float64Array.from(table.mean);
    for (let i = 0; i < size; i += 1) {
      const row = triangle[i]!;
      let moved = 0;
      for (let k = 0; k <= i; k += 1) moved += row[k]! * z[k]!;
      up[i] = up[i]! + moved;
      down[i] = down[i]! - moved;
    }
    for (const k of risingCoefficients) {
      up[k] = Math.max(0, up[k]!);
      down[k] = Math.max(0, down[k]!);
    }
    vectors.push(up, down);
  }
  return vectors;
}

/**
 * The fixed set of coefficients over which expected chances are averaged: one set for all assessments, so that expected
 * costs do not depend on an assessment's seed.
 *
 * @param table  belief over the coefficients
 * @returns 128 vectors
 */
export function coefficientDesign(table: ComebackTable): readonly Float64Array[] {
  const known = designs.get(table);
  if (known !== undefined) return known;
  const design = drawCoefficients(table, DESIGN_PAIRS, seededDraws(DESIGN_SEED));
  designs.set(table, design);
  return design;
}
