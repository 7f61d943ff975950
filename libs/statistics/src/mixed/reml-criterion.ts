import {
  apply,
  determinant,
  inverse,
  outer,
  plus,
  sandwich,
  scaled,
  type Symmetric,
  type Vector,
} from './symmetric-matrix.js';
import { backThroughFactor, deviation, throughFactor, transposed, type UnitSummary } from './unit-summary.js';

const ZERO: Symmetric = { a: 0, b: 0, d: 0 };

export interface RemlState {
  /** −2 ln of the restricted likelihood, residual variance profiled out. */
  readonly criterion: number;
  /** Derivative of the criterion with respect to the relative covariance, as the symmetric matrix G in tr(G dD). */
  readonly gradient: Symmetric;
  readonly mean: Vector;
  /** Inverse of the information of the mean, to be multiplied by the residual variance. */
  readonly meanCovariance: Symmetric;
  readonly residualVariance: number;
}

/**
 * Restricted likelihood of a line with random level and slope per unit, at a relative covariance D (covariance of the
 * units' lines over the residual variance). Level and slope of the population and the residual variance are at their best
 * for this D.
 *
 * With the factor R of a unit, its observations along R have covariance σ²(I + R D Rᵀ) and the squares left over are pure
 * residual, so each unit costs the same few operations whatever its size.
 */
export function remlState(units: readonly UnitSummary[], relative: Symmetric): RemlState {
  const weights = units.map((unit) => inverse(plus({ a: 1, b: 0, d: 1 }, throughFactor(unit, relative))));
  const infos = units.map((unit, i) => backThroughFactor(unit, weights[i]!));
  const information = infos.reduce(plus, ZERO);
  const meanCovariance = inverse(information);
  const score = units.reduce<Vector>(
    (sum, unit, i) => {
      const own = transposed(unit, apply(weights[i]!, unit.along));
      return [sum[0] + own[0], sum[1] + own[1]];
    },
    [0, 0],
  );
  const mean = apply(meanCovariance, score);

  let squares = 0;
  let logDeterminants = Math.log(determinant(information));
  let gradient = ZERO;
  let pulls = ZERO;
  let observations = 0;
  units.forEach((unit, i) => {
    const apart = deviation(unit, mean);
    const weighted = apply(weights[i]!, apart);
    squares += unit.residualSumOfSquares + apart[0] * weighted[0] + apart[1] * weighted[1];
    logDeterminants -= Math.log(determinant(weights[i]!));
    gradient = plus(gradient, plus(infos[i]!, scaled(sandwich(infos[i]!, meanCovariance), -1)));
    pulls = plus(pulls, outer(transposed(unit, weighted)));
    observations += unit.observations;
  });
  const freedom = observations - 2;
  const residualVariance = squares / freedom;
  return {
    criterion: freedom * (1 + Math.log(2 * Math.PI * residualVariance)) + logDeterminants,
    gradient: plus(gradient, scaled(pulls, -1 / residualVariance)),
    mean,
    meanCovariance,
    residualVariance,
  };
}
