import { insufficientData } from '../descriptive/outcomes.js';
import type { LineFit, LineFitOutcome, LineModel, ScatterSource } from './line-fit.js';
import { countDistinct, requireFinitePoints, type Point } from './point.js';

interface Moments {
  readonly sumOfWeights: number;
  readonly centreX: number;
  readonly centreY: number;
  readonly sxx: number;
  readonly sxy: number;
  readonly syy: number;
}

/** Weighted mean in two passes: the second adds the mean of what the first left over. */
function weightedMean(values: readonly number[], weights: readonly number[], sumOfWeights: number): number {
  const scaled = (about: number): number =>
    values.reduce((sum, value, i) => sum + (weights[i]! / sumOfWeights) * (value - about), 0);
  const first = scaled(0);
  return first + scaled(first);
}

/** Sums of squares about the centre, so that no difference of large sums is taken. */
function momentsOf(points: readonly Point[], weights: readonly number[], model: LineModel): Moments {
  const sumOfWeights = weights.reduce((sum, weight) => sum + weight, 0);
  const about = (values: readonly number[]): number =>
    model === 'throughOrigin' ? 0 : weightedMean(values, weights, sumOfWeights);
  const centreX = about(points.map(([x]) => x));
  const centreY = about(points.map(([, y]) => y));
  let sxx = 0;
  let sxy = 0;
  let syy = 0;
  points.forEach(([x, y], i) => {
    const dx = x - centreX;
    const dy = y - centreY;
    sxx += weights[i]! * dx * dx;
    sxy += weights[i]! * dx * dy;
    syy += weights[i]! * dy * dy;
  });
  return { sumOfWeights, centreX, centreY, sxx, sxy, syy };
}

function requireRepresentable(moments: Moments): void {
  const { sxx, sxy, syy, sumOfWeights } = moments;
  if (![sxx, sxy, syy, sumOfWeights].every(Number.isFinite) || sxx === 0) {
    throw new RangeError('points are too large or too close together to be squared in double precision');
  }
}

/** What stands in the way of a line, or nothing. */
function obstacle(points: readonly Point[], model: LineModel): LineFitOutcome | undefined {
  if (model === 'throughOrigin') {
    if (points.length < 1) return insufficientData('points', 1, 0);
    if (points.every(([x]) => x === 0)) return insufficientData('nonZeroX', 1, 0);
    return undefined;
  }
  if (points.length < 2) return insufficientData('points', 2, points.length);
  const distinct = countDistinct(
    points.map(([x]) => x),
    2,
  );
  return distinct < 2 ? insufficientData('distinctX', 2, distinct) : undefined;
}

/**
 * Least squares line for given positive weights; the one computation behind the public fits.
 * `known` scatter means weight = 1 / variance of the observation.
 */
export function fitLine(
  points: readonly Point[],
  weights: readonly number[],
  model: LineModel,
  scatter: ScatterSource,
): LineFitOutcome {
  requireFinitePoints(points);
  const missing = obstacle(points, model);
  if (missing !== undefined) return missing;
  const moments = momentsOf(points, weights, model);
  requireRepresentable(moments);
  const { centreX, centreY, sxx, syy, sumOfWeights } = moments;
  const slope = moments.sxy / sxx;
  const coefficients = model === 'throughOrigin' ? 1 : 2;
  const intercept = model === 'throughOrigin' ? 0 : centreY - slope * centreX;
  const freedom = points.length - coefficients;
  if (freedom === 0 && scatter === 'estimated') return { kind: 'exactlyDetermined', slope, intercept };

  const residualSumOfSquares = points.reduce((sum, [x, y], i) => {
    const residual = y - centreY - slope * (x - centreX);
    return sum + weights[i]! * residual * residual;
  }, 0);
  const residualVariance = scatter === 'known' ? 1 : residualSumOfSquares / freedom;
  const slopeVariance = residualVariance / sxx;
  const centreVariance = model === 'throughOrigin' ? 0 : residualVariance / sumOfWeights;
  const interceptVariance =
    model === 'throughOrigin' ? 0 : centreVariance + centreX * centreX * slopeVariance;
  return {
    kind: 'estimated',
    model,
    scatter,
    observations: points.length,
    slope,
    intercept,
    slopeStandardError: Math.sqrt(slopeVariance),
    interceptStandardError: Math.sqrt(interceptVariance),
    centre: { x: centreX, y: centreY },
    centreVariance,
    slopeVariance,
    residualVariance,
    residualStandardDeviation: Math.sqrt(residualVariance),
    residualSumOfSquares,
    degreesOfFreedom: scatter === 'known' ? null : freedom,
    rSquared: syy === 0 ? null : 1 - residualSumOfSquares / syy,
  } satisfies LineFit;
}
