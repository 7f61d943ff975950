import type { CovarianceFactor } from './covariance-factor.js';
import { dot, factorInPlace, whiten, whitenInPlace } from './covariance-factor.js';
import type { WearPoint } from './wear-point.js';

/** Points of one part in order of km, levels counted in the direction of wear. */
export interface OrientedPart {
  readonly km: Float64Array;
  readonly level: Float64Array;
  readonly variance: Float64Array;
  /** shared variance of the instruments' bias, row by row */
  readonly bias: Float64Array;
  readonly instruments: readonly string[];
}

/** Turns points so that wear always rises. */
export function orientedPart(points: readonly WearPoint[], sign: 1 | -1): OrientedPart {
  const sorted = [...points].sort((a, b) => a.km - b.km);
  const bias = new Float64Array(sorted.length ** 2);
  for (const [i, one] of sorted.entries()) {
    for (const [j, other] of sorted.entries()) {
      if (one.instrumentId === other.instrumentId) bias[i * sorted.length + j] = one.biasU * other.biasU;
    }
  }
  return {
    km: Float64Array.from(sorted, ({ km }) => km),
    level: Float64Array.from(sorted, ({ value }) => sign * value),
    variance: Float64Array.from(sorted, ({ u }) => u ** 2),
    bias,
    instruments: sorted.map(({ instrumentId }) => instrumentId),
  };
}

/** Readings of a part under one rate and scale: everything is normal then. */
export interface GivenRate {
  readonly rate: number;
  readonly scale: number;
  readonly factor: CovarianceFactor;
  /** whitened readings minus their expectation */
  readonly surprise: Float64Array;
  readonly logLikelihood: number;
}

const logTwoPi = Math.log(2 * Math.PI);

/** Arrays that one evaluation after the other may use; what was made of them before is then void. */
export interface Workspace {
  readonly covariance: Float64Array;
  readonly residual: Float64Array;
  readonly column: Float64Array;
}

/** Fresh arrays for a part. */
export const workspaceFor = ({ km }: OrientedPart): Workspace => ({
  covariance: new Float64Array(km.length ** 2),
  residual: new Float64Array(km.length),
  column: new Float64Array(km.length),
});

/**
 * Likelihood of a part's readings when its rate is known: mean start + rate x km, covariance of two readings = variance of
 * the start + scale x rate x the lesser km + the bias they share + (for one reading with itself) its own variance.
 *
 * @param part       oriented points
 * @param start      mean and standard deviation of the level at fitting
 * @param rate       positive, units per km
 * @param scale      variance of wear over its mean, not negative
 * @param workspace  arrays to work in; default: fresh ones, so that the answer stays valid
 * @returns factor, whitened readings and log-likelihood
 */
export function givenRate(
  part: OrientedPart,
  start: { readonly mean: number; readonly sd: number },
  rate: number,
  scale: number,
  workspace: Workspace = workspaceFor(part),
): GivenRate {
  const { km, level, variance, bias } = part;
  const { covariance, residual } = workspace;
  const size = km.length;
  const startVariance = start.sd * start.sd;
  const growth = scale * rate;
  for (let i = 0; i < size; i += 1) {
    const row = i * size;
    residual[i] = level[i]! - start.mean - rate * km[i]!;
    for (let j = 0; j <= i; j += 1) covariance[row + j] = startVariance + growth * km[j]! + bias[row + j]!;
    covariance[row + i]! += variance[i]!;
  }
  const factor = factorInPlace(size, covariance);
  const surprise = whitenInPlace(factor, residual);
  const logLikelihood = -0.5 * (dot(surprise, surprise) + factor.logDeterminant + size * logTwoPi);
  return { rate, scale, factor, surprise, logLikelihood };
}

/** Mean and variance of a normal quantity. */
export interface NormalState {
  readonly mean: number;
  readonly variance: number;
}

/**
 * A normal quantity once the readings are known.
 *
 * @param given       readings under the rate
 * @param before      mean and variance without readings
 * @param covariance  with each reading, in their order
 * @returns mean and variance; the latter not below 0
 */
export function conditioned(
  given: GivenRate,
  before: NormalState,
  covariance: ArrayLike<number>,
): NormalState {
  const whitened = whiten(given.factor, covariance);
  return {
    mean: before.mean + dot(whitened, given.surprise),
    variance: Math.max(0, before.variance - dot(whitened, whitened)),
  };
}

/** Level at a distance not below the last point's. */
export function levelAt(
  part: OrientedPart,
  start: { readonly mean: number; readonly sd: number },
  given: GivenRate,
  km: number,
): NormalState {
  const growth = given.scale * given.rate;
  const startVariance = start.sd ** 2;
  const before = { mean: start.mean + given.rate * km, variance: startVariance + growth * km };
  return conditioned(
    given,
    before,
    part.km.map((x) => startVariance + growth * Math.min(x, km)),
  );
}
