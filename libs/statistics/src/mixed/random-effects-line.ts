import { insufficientData, type InsufficientData, type NotConverged } from '../descriptive/outcomes.js';
import { countDistinct, requireFinitePoints, type Point } from '../regression/point.js';
import { minimiseReml, type BetweenVariation } from './minimise-reml.js';
import { remlState } from './reml-criterion.js';
import { shrunkenLine, type LinePopulation, type ShrunkenLine } from './shrunken-line.js';
import type { LineCovariance } from './uncertain-line.js';
import { summariseUnit, type UnitSummary } from './unit-summary.js';

export interface RandomEffectsLine extends LinePopulation {
  readonly kind: 'estimated';
  readonly observations: number;
  readonly betweenVariation: BetweenVariation;
  /** −2 ln of the restricted likelihood at the estimates. */
  readonly remlCriterion: number;
  /** Line of each unit in the order given. */
  readonly unitLines: readonly ShrunkenLine[];
}

export type RandomEffectsLineOutcome =
  | RandomEffectsLine
  /** Every unit's observations lie exactly on its own line: no residual variance to weigh them by. */
  | { readonly kind: 'noResidualScatter' }
  | InsufficientData
  | NotConverged;

/** Fewest units with a slope of their own for a spread of slopes to be estimated at all (judgement). */
const FEWEST_UNITS = 3;

const hasSlope = (points: readonly Point[]): boolean =>
  countDistinct(
    points.map(([x]) => x),
    2,
  ) === 2;

function obstacle(units: readonly (readonly Point[])[]): InsufficientData | undefined {
  const sloped = units.filter(hasSlope);
  if (sloped.length < FEWEST_UNITS) {
    return insufficientData('unitsWithTwoDistinctX', FEWEST_UNITS, sloped.length);
  }
  const freedom = units.reduce(
    (sum, points) => sum + Math.max(0, points.length - (hasSlope(points) ? 2 : 1)),
    0,
  );
  return freedom < 1 ? insufficientData('residualDegreesOfFreedom', 1, freedom) : undefined;
}

interface Scale {
  readonly mean: number;
  readonly deviation: number;
}

function scaleOf(values: readonly number[]): Scale {
  const n = values.length;
  const mean = values.reduce((sum, value) => sum + value / n, 0);
  const largest = values.reduce((most, value) => Math.max(most, Math.abs(value - mean)), 0);
  if (largest === 0) return { mean, deviation: 0 };
  return {
    mean,
    deviation: largest * Math.sqrt(values.reduce((sum, v) => sum + ((v - mean) / largest) ** 2, 0) / n),
  };
}

/** First guesses: how much the units' own levels and slopes differ, over the residual standard deviation. */
function startOf(units: readonly UnitSummary[], residual: number): readonly [number, number] {
  const sloped = units.filter(({ t }) => t > 0);
  const slopes = sloped.map(({ along, t }) => along[1] / t);
  const levels = sloped.map(({ along, r, s }, i) => along[0] / r - (slopes[i]! * s) / r);
  const guess = (values: readonly number[]): number => Math.max(0.1, scaleOf(values).deviation / residual);
  return [guess(levels), guess(slopes)];
}

/**
 * Straight lines of several units with random level and slope, y = (β₀ + b₀ᵢ) + (β₁ + b₁ᵢ)(x − centre) + e, by restricted
 * maximum likelihood (REML): mean line, spread of the units' lines with their correlation, residual variance, and each
 * unit's line drawn towards the mean as far as its own observations leave it in doubt.
 *
 * Errors within a unit are taken as independent, normal and of one variance for all units, the units' lines as normal.
 * Covariances of the lines leave out the doubt about the variances themselves: with fewer than about ten units intervals
 * come out too narrow.
 *
 * @param units  observations (x in u, y in v) per unit, any order; a unit may have one observation or none
 * @returns the fit about the mean x as centre (`recentreLine` gives the intercept); `betweenVariation` says when the
 *   estimate lies on the border (no spread in some direction). `insufficientData` with fewer than three units of two or
 *   more distinct x, or without any observation beyond what fixes the units' own lines; `noResidualScatter` when all
 *   units lie exactly on lines, also where all y are equal; `notConverged` when no search ended at a minimum
 * @throws RangeError on a non-finite number, or numbers whose squares leave double precision
 * @complexity O(observations) once, then O(units) for each of some hundreds of evaluations
 * @source Laird & Ware (1982), Biometrics 38:963–974; Patterson & Thompson (1971), Biometrika 58:545–554; criterion as
 *   Bates et al. (2015), J. Stat. Software 67(1), eq. 42
 * @oracle lme4 on the sleep study of Belenky et al. (2003), printed values;
 *   test/oracles/statistics-regression/random-effects-line.py
 * @example randomEffectsLine([[[0, 1], [1, 2]]]) // => { kind: 'insufficientData', of: 'unitsWithTwoDistinctX', needed: 3, got: 1 }
 */
export function randomEffectsLine(units: readonly (readonly Point[])[]): RandomEffectsLineOutcome {
  units.forEach(requireFinitePoints);
  const missing = obstacle(units);
  if (missing !== undefined) return missing;
  const all = units.flat();
  const x = scaleOf(all.map((point) => point[0]));
  const y = scaleOf(all.map((point) => point[1]));
  if (y.deviation === 0) return { kind: 'noResidualScatter' };
  const squares = [x.deviation ** 2, y.deviation ** 2];
  if (!squares.every((square) => square > 0 && square < Infinity)) {
    throw new RangeError(
      'units hold points too large or too close together to be squared in double precision',
    );
  }

  // Everything is computed for x and y of mean 0 and deviation 1, and turned back at the end.
  const scaledUnits = units.map((points) =>
    points.map(([px, py]): Point => [(px - x.mean) / x.deviation, (py - y.mean) / y.deviation]),
  );
  const summaries = scaledUnits
    .map((points) => summariseUnit(points, 0))
    .filter((unit) => unit.observations > 0);
  const residualSquares = summaries.reduce((sum, unit) => sum + unit.residualSumOfSquares, 0);
  if (residualSquares < 1e-24 * all.length) return { kind: 'noResidualScatter' };

  const found = minimiseReml(summaries, startOf(summaries, Math.sqrt(residualSquares / all.length)));
  if (found.kind !== 'found') return found;
  const state = remlState(summaries, found.relative);
  const unit = y.deviation / x.deviation;
  const covariance = (a: number, b: number, d: number): LineCovariance => ({
    level: state.residualVariance * y.deviation ** 2 * a,
    cross: state.residualVariance * y.deviation * unit * b,
    slope: state.residualVariance * unit ** 2 * d,
  });
  const { meanCovariance: ofMean } = state;
  const population: LinePopulation = {
    mean: {
      centre: x.mean,
      level: y.mean + y.deviation * state.mean[0],
      slope: unit * state.mean[1],
      covariance: covariance(ofMean.a, ofMean.b, ofMean.d),
    },
    between: covariance(found.relative.a, found.relative.b, found.relative.d),
    residualVariance: state.residualVariance * y.deviation ** 2,
  };
  return {
    kind: 'estimated',
    observations: all.length,
    ...population,
    betweenVariation: found.variation,
    remlCriterion: found.criterion + 2 * (all.length - 2) * Math.log(y.deviation) + 2 * Math.log(x.deviation),
    unitLines: units.map((points) => shrunkenLine(population, points)),
  };
}
