import type { UnitCode } from '@endfloat/metrology';
import {
  inversePrediction,
  leastSquaresThroughOrigin,
  mannKendall,
  ordinaryLeastSquares,
  predictOnLine,
  slopeInterval,
  theilSenSlope,
  weightedLeastSquares,
  type InverseTarget,
  type LineFit,
  type LineModel,
  type Point,
  type ScatterSource,
} from '@endfloat/statistics';
import { calculated, type CalculationMethod } from './calculation-method.js';
import { refusing, requireColumns } from './refusing.js';

interface Columns {
  readonly xUnit?: UnitCode | undefined;
  readonly yUnit?: UnitCode | undefined;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly level?: number | undefined;
}

function pointsOf({ x, y }: Columns): readonly Point[] {
  requireColumns({ x, y });
  return x.map((value, index): Point => [value, y[index]!]);
}

export const straightLines: CalculationMethod = {
  id: 'straight-lines',
  title: 'Straight line by least squares, with prediction and inverse prediction',
  name: 'leastSquares',
  variant:
    "ordinary, weighted or through the origin; scatter from the residuals (Student's t) or known through the weights (normal); inverse prediction by Fieller's interval, refused where the slope may be 0",
  source:
    'Draper & Smith (1998), Applied Regression Analysis, 3rd ed., 1.4 and 3.1; Fieller (1954), J. R. Statist. Soc. B 16:175-185',
  caseIds: ['nist-norris', 'thermostat-inverse-prediction'],
};

export interface StraightLineCommand extends Columns {
  readonly weights?: readonly number[] | undefined;
  readonly model?: LineModel | undefined;
  readonly scatter?: ScatterSource | undefined;
  readonly predictAt?: readonly number[] | undefined;
  readonly reach?: readonly { readonly y: number; readonly target?: InverseTarget | undefined }[] | undefined;
}

/** Least-squares line. */
export function calculateStraightLine(command: StraightLineCommand) {
  const { xUnit = '1', yUnit = '1', weights, level = 0.95 } = command;
  const { model = 'interceptAndSlope', scatter = 'estimated' } = command;
  requireColumns({ x: command.x, weights });
  const points = pointsOf(command);
  const weighted = points.map((point, index) => ({ point, weight: weights?.[index] ?? 1 }));
  const fit = refusing(['x', 'y', 'weights'], () => {
    if (model === 'throughOrigin') return leastSquaresThroughOrigin(weighted, scatter);
    return weights === undefined && scatter === 'estimated'
      ? ordinaryLeastSquares(points)
      : weightedLeastSquares(weighted, scatter);
  });
  const result = fit.kind === 'estimated' ? lineResult(fit, command, level) : fit;
  return calculated(straightLines, points.length, { xUnit, yUnit, result });
}

function lineResult(fit: LineFit, { predictAt = [], reach = [] }: StraightLineCommand, level: number) {
  return {
    kind: fit.kind,
    model: fit.model,
    scatter: fit.scatter,
    slope: fit.slope,
    intercept: fit.intercept,
    slopeStandardError: fit.slopeStandardError,
    interceptStandardError: fit.interceptStandardError,
    residualStandardDeviation: fit.residualStandardDeviation,
    degreesOfFreedom: fit.degreesOfFreedom,
    rSquared: fit.rSquared,
    level,
    slopeInterval: slopeInterval(fit, level),
    predictions: predictAt.map((x) => ({ x, ...predictOnLine(fit, x, { confidence: level }) })),
    reached: reach.map(({ y, target = 'observation' }) => ({
      y,
      target,
      outcome: inversePrediction(fit, y, { confidence: level, target }),
    })),
  };
}

export const theilSenSlopes: CalculationMethod = {
  id: 'theil-sen-slopes',
  title: 'Median of the slopes between all pairs of points',
  name: 'theilSen',
  variant:
    'limits by ranks (N - C)/2 and (N + C)/2 + 1 of the pair slopes with linear interpolation, C with the tie correction; intercept from the medians of x and y',
  source:
    'Sen (1968), JASA 63:1379-1389; Gilbert (1987), Statistical Methods for Environmental Pollution Monitoring, 16.5',
  caseIds: ['epa-sulfate-theil-sen'],
};

/** Theil-Sen slope with its limits. */
export function calculateTheilSenSlope(command: Columns) {
  const { xUnit = '1', yUnit = '1', level = 0.95 } = command;
  const points = pointsOf(command);
  const found = refusing(['x', 'y'], () => theilSenSlope(points, level));
  const result = found.kind === 'estimated' ? { ...found, level } : found;
  return calculated(theilSenSlopes, points.length, { xUnit, yUnit, result });
}

export const mannKendallTests: CalculationMethod = {
  id: 'mann-kendall-tests',
  title: 'Does y rise or fall with x, whatever the form?',
  name: 'mannKendall',
  variant:
    'score over all pairs, variance with ties; exact p up to 10 points, else normal with continuity correction',
  source: 'Mann (1945), Econometrica 13:245-259; Kendall (1975); Gilbert (1987), 16.4',
  caseIds: ['epa-sulfate-mann-kendall', 'gilbert-four-points'],
};

/** Mann-Kendall test. */
export function calculateMannKendallTest(command: Columns) {
  const { xUnit = '1', yUnit = '1' } = command;
  const points = pointsOf(command);
  const result = refusing(['x', 'y'], () => mannKendall(points));
  return calculated(mannKendallTests, points.length, { xUnit, yUnit, result });
}
