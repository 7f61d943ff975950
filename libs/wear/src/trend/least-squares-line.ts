import { weightedLeastSquares } from '@endfloat/statistics';
import type { OrientedPart } from './level-given-rate.js';

/** Straight line through a part's points by their own variances; null with fewer than two distances. */
export function leastSquaresLine(part: OrientedPart): { slope: number; intercept: number } | null {
  const observations = [...part.km].map((km, index) => ({
    point: [km, part.level[index]!] as const,
    weight: 1 / part.variance[index]!,
  }));
  const line = weightedLeastSquares(observations, 'known');
  return line.kind === 'insufficientData' ? null : { slope: line.slope, intercept: line.intercept };
}
