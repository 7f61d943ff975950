import { requireFinite, requirePositive } from '../distributions/checked-arguments.js';
import { requireFinitePoints, type Point } from '../regression/point.js';
import { apply, inverse, plus, scaled, type Symmetric } from './symmetric-matrix.js';
import type { LineCovariance, UncertainLine } from './uncertain-line.js';
import { backThroughFactor, deviation, summariseUnit, transposed, type UnitSummary } from './unit-summary.js';

/** What is known of a unit's line before its own observations: mean line, spread of the units' lines, residual variance. */
export interface LinePopulation {
  /** Mean line with the covariance of its estimate. */
  readonly mean: UncertainLine;
  /** Covariance of the units' true lines about the mean line, about the same centre. */
  readonly between: LineCovariance;
  /** Variance of an observation about the line of its unit, in v². */
  readonly residualVariance: number;
}

export interface ShrunkenLine extends UncertainLine {
  /** Covariance of the error of the line, the doubt about the mean line included. */
  readonly covariance: LineCovariance;
  /** Covariance given the mean line, as if that were known. */
  readonly conditionalCovariance: LineCovariance;
}

const matrixOf = ({ level, cross, slope }: LineCovariance): Symmetric => ({ a: level, b: cross, d: slope });
const covarianceOf = ({ a, b, d }: Symmetric): LineCovariance => ({
  level: Math.max(0, a),
  cross: b,
  slope: Math.max(0, d),
});

function requirePopulation({ mean, between, residualVariance }: LinePopulation): void {
  requirePositive('residualVariance', residualVariance);
  [mean.centre, mean.level, mean.slope].forEach((value) => requireFinite('mean line', value));
  for (const { level, cross, slope } of [mean.covariance, between]) {
    const fits = level >= 0 && slope >= 0 && cross * cross <= level * slope * (1 + 1e-9);
    if (!fits)
      throw new RangeError('covariances need variances of 0 or more and a correlation within -1 and 1');
  }
}

const ONE: Symmetric = { a: 1, b: 0, d: 1 };

/**
 * Covariance of a unit's line given its observations: L (I + Lᵀ RᵀR L / σ²)⁻¹ Lᵀ with D = L Lᵀ. Nothing is subtracted, so
 * it keeps its digits for a wide spread and stays a covariance for a spread in one direction only.
 */
function conditionalCovariance(between: Symmetric, unit: UnitSummary, residualVariance: number): Symmetric {
  const p = Math.sqrt(between.a);
  const q = p === 0 ? 0 : between.b / p;
  const w = Math.sqrt(Math.max(0, between.d - q * q));
  const info = scaled(backThroughFactor(unit, ONE), 1 / residualVariance);
  const [alongFirst, alongSecond] = apply(info, [p, q]);
  const middle = inverse({
    a: 1 + p * alongFirst + q * alongSecond,
    b: w * alongSecond,
    d: 1 + w * w * info.d,
  });
  const [x, y] = apply(middle, [q, w]);
  return { a: p * p * middle.a, b: p * x, d: q * x + w * y };
}

/**
 * Line of one unit from its own observations and from the population of its like (best linear unbiased prediction): the
 * fewer and more scattered its observations, the closer it stays to the mean line.
 *
 * The error covariance is (I − K) V (I − K)ᵀ + the conditional covariance, with V that of the mean line and K the share the
 * unit's own line gets; it holds for a unit that helped to estimate the population and for a new one alike. The variances
 * of the population count as known.
 *
 * @param population  as `randomEffectsLine` gives it, or any mean line, spread and residual variance
 * @param points  the unit's observations, any order; none gives the mean line with the full spread
 * @returns level, slope and covariances about the centre of the population
 * @throws RangeError on a non-finite number, a residual variance that is not positive, or a matrix that is no covariance
 * @source Robinson (1991), Statistical Science 6:15–32; Laird & Ware (1982), Biometrics 38:963–974
 * @oracle lme4 values for a published data set in the spec of `randomEffectsLine`; cases worked by hand
 * @example shrunkenLine({ mean: { centre: 0, level: 0, slope: 0, covariance: { level: 0, cross: 0, slope: 0 } }, between: { level: 1, cross: 0, slope: 0 }, residualVariance: 1 }, [[0, 4]]).level // => 2
 */
export function shrunkenLine(population: LinePopulation, points: readonly Point[]): ShrunkenLine {
  requireFinitePoints(points);
  requirePopulation(population);
  const { mean, residualVariance } = population;
  const unit = summariseUnit(points, mean.centre);
  const conditional = conditionalCovariance(matrixOf(population.between), unit, residualVariance);
  const pull = transposed(unit, deviation(unit, [mean.level, mean.slope]));
  const [level, slope] = apply(conditional, [pull[0] / residualVariance, pull[1] / residualVariance]);

  // I − K, row by row, with K = C RᵀR / σ².
  const info = scaled(backThroughFactor(unit, ONE), 1 / residualVariance);
  const first = apply(info, [conditional.a, conditional.b]);
  const second = apply(info, [conditional.b, conditional.d]);
  const kept = [
    [1 - first[0], -first[1]],
    [-second[0], 1 - second[1]],
  ] as const;
  const meanMatrix = matrixOf(mean.covariance);
  const firstMean = apply(meanMatrix, kept[0]);
  const secondMean = apply(meanMatrix, kept[1]);
  const ofMean: Symmetric = {
    a: firstMean[0] * kept[0][0] + firstMean[1] * kept[0][1],
    b: firstMean[0] * kept[1][0] + firstMean[1] * kept[1][1],
    d: secondMean[0] * kept[1][0] + secondMean[1] * kept[1][1],
  };
  return {
    centre: mean.centre,
    level: mean.level + level,
    slope: mean.slope + slope,
    covariance: covarianceOf(plus(conditional, ofMean)),
    conditionalCovariance: covarianceOf(conditional),
  };
}
