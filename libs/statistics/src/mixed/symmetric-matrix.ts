/** Symmetric 2 × 2 matrix [[a, b], [b, d]]. */
export interface Symmetric {
  readonly a: number;
  readonly b: number;
  readonly d: number;
}

export type Vector = readonly [number, number];

/** a d − b². */
export const determinant = ({ a, b, d }: Symmetric): number => a * d - b * b;

/** Inverse of a matrix whose determinant is not 0; that is not checked. */
export function inverse(matrix: Symmetric): Symmetric {
  const det = determinant(matrix);
  return { a: matrix.d / det, b: -matrix.b / det, d: matrix.a / det };
}

/** p + q. */
export const plus = (p: Symmetric, q: Symmetric): Symmetric => ({ a: p.a + q.a, b: p.b + q.b, d: p.d + q.d });

/** p times a number. */
export const scaled = (p: Symmetric, factor: number): Symmetric => ({
  a: factor * p.a,
  b: factor * p.b,
  d: factor * p.d,
});

/** p v. */
export const apply = (p: Symmetric, [x, y]: Vector): Vector => [p.a * x + p.b * y, p.b * x + p.d * y];

/** v vᵀ. */
export const outer = ([x, y]: Vector): Symmetric => ({ a: x * x, b: x * y, d: y * y });

/** p q p for symmetric p and q, which is symmetric again. */
export function sandwich(p: Symmetric, q: Symmetric): Symmetric {
  const left = apply(q, [p.a, p.b]);
  const right = apply(q, [p.b, p.d]);
  return {
    a: p.a * left[0] + p.b * left[1],
    b: p.a * right[0] + p.b * right[1],
    d: p.b * right[0] + p.d * right[1],
  };
}
