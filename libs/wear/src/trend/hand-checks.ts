import type { InversePrediction, LineFitOutcome } from '@endfloat/statistics';
import { inversePrediction, mannKendall, theilSenSlope, weightedLeastSquares } from '@endfloat/statistics';
import type { WearPoint } from './wear-point.js';

/** What a person would check beside the model: none of it is the answer, a straight-line interval covers too little. */
export interface HandChecks {
  readonly leastSquares: LineFitOutcome;
  /** km since fitting at which the line meets the limit, less the present distance */
  readonly leastSquaresToLimit: InversePrediction | { readonly kind: 'noLine' };
  readonly theilSen: ReturnType<typeof theilSenSlope>;
  readonly mannKendall: ReturnType<typeof mannKendall>;
}

/**
 * Weighted least squares with known variances, Theil-Sen slope and Mann-Kendall test of the points as they are.
 *
 * @param points      of one part
 * @param limit       in the characteristic's unit
 * @param nowKm       km since fitting
 * @param confidence  two-sided level
 * @returns each with its own outcome
 * @source see the functions of the statistics room
 */
export function handChecks(
  points: readonly WearPoint[],
  limit: number,
  nowKm: number,
  confidence: number,
): HandChecks {
  const pairs = points.map(({ km, value }) => [km, value] as const);
  const leastSquares = weightedLeastSquares(
    points.map(({ km, value, u, biasU }) => ({
      point: [km, value] as const,
      weight: 1 / (u ** 2 + biasU ** 2),
    })),
    'known',
  );
  return {
    leastSquares,
    leastSquaresToLimit:
      leastSquares.kind === 'estimated'
        ? fromNow(leastSquares, limit, nowKm, confidence)
        : { kind: 'noLine' },
    theilSen: theilSenSlope(pairs, confidence),
    mannKendall: mannKendall(pairs),
  };
}

function fromNow(
  line: Extract<LineFitOutcome, { kind: 'estimated' }>,
  limit: number,
  nowKm: number,
  confidence: number,
): InversePrediction {
  const found = inversePrediction(line, limit, { confidence, target: 'line' });
  if (found.kind !== 'estimated') return found;
  const { lower, upper } = found.interval;
  return { ...found, x: found.x - nowKm, interval: { lower: lower - nowKm, upper: upper - nowKm } };
}
