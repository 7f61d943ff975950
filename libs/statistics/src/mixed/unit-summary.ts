import type { Point } from '../regression/point.js';
import type { Symmetric, Vector } from './symmetric-matrix.js';

/**
 * All a unit's observations say about its line, by an orthogonal factorisation of [1, x − centre]:
 * R = [[r, s], [0, t]], the observations along its two directions, and the squares left over. No normal equations, so
 * small residuals keep their digits.
 */
export interface UnitSummary {
  readonly observations: number;
  readonly r: number;
  readonly s: number;
  /** 0 when all x are equal. */
  readonly t: number;
  readonly along: Vector;
  readonly residualSumOfSquares: number;
}

/** Factorises a unit's points, which are finite; zeros throughout for none. */
export function summariseUnit(points: readonly Point[], centre: number): UnitSummary {
  const n = points.length;
  if (n === 0) return { observations: 0, r: 0, s: 0, t: 0, along: [0, 0], residualSumOfSquares: 0 };
  const meanX = points.reduce((sum, [x]) => sum + (x - centre) / n, 0);
  const meanY = points.reduce((sum, [, y]) => sum + y / n, 0);
  let sxx = 0;
  let sxy = 0;
  for (const [x, y] of points) {
    const dx = x - centre - meanX;
    sxx += dx * dx;
    sxy += dx * (y - meanY);
  }
  const level = points.every(([x]) => x === points[0]![0]);
  const slope = level ? 0 : sxy / sxx;
  const residualSumOfSquares = points.reduce(
    (sum, [x, y]) => sum + (y - meanY - slope * (x - centre - meanX)) ** 2,
    0,
  );
  const root = Math.sqrt(n);
  const t = level ? 0 : Math.sqrt(sxx);
  return {
    observations: n,
    r: root,
    s: root * meanX,
    t,
    along: [root * meanY, slope * t],
    residualSumOfSquares,
  };
}

/** R D Rᵀ. */
export function throughFactor({ r, s, t }: UnitSummary, { a, b, d }: Symmetric): Symmetric {
  return { a: r * r * a + 2 * r * s * b + s * s * d, b: t * (r * b + s * d), d: t * t * d };
}

/** Rᵀ W R. */
export function backThroughFactor({ r, s, t }: UnitSummary, { a, b, d }: Symmetric): Symmetric {
  return { a: r * r * a, b: r * (s * a + t * b), d: s * s * a + 2 * s * t * b + t * t * d };
}

/** Rᵀ v. */
export const transposed = ({ r, s, t }: UnitSummary, [x, y]: Vector): Vector => [r * x, s * x + t * y];

/** What the observations along the two directions differ by from a line: c − R β. */
export const deviation = ({ r, s, t, along }: UnitSummary, [level, slope]: Vector): Vector => [
  along[0] - r * level - s * slope,
  along[1] - t * slope,
];
