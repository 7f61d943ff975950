import type { UnitCode } from '@endfloat/metrology';
import {
  predictOnUncertainLine,
  randomEffectsLine,
  recentreLine,
  type LineCovariance,
  type Point,
  type RandomEffectsLine,
  type UncertainLine,
} from '@endfloat/statistics';
import { calculated, type CalculationMethod } from './calculation-method.js';
import { refusing, requireColumns } from './refusing.js';

export const mixedLines: CalculationMethod = {
  id: 'mixed-lines',
  title:
    'Lines of several like units, each drawn towards the mean line as far as its own data leave it in doubt',
  name: 'randomEffectsLine',
  variant:
    'random intercept and slope with their covariance by restricted maximum likelihood (REML), common residual variance; intervals normal with the variances taken as known',
  source: 'Laird & Ware (1982), Biometrics 38:963-974; Pinheiro & Bates (2000), Mixed-Effects Models, ch. 2',
  caseIds: ['sleep-study'],
};

export interface MixedLineCommand {
  readonly xUnit?: UnitCode | undefined;
  readonly yUnit?: UnitCode | undefined;
  readonly units: readonly { readonly x: readonly number[]; readonly y: readonly number[] }[];
  readonly level?: number | undefined;
}

/** Mean line and the line of each unit. */
export function calculateMixedLine({ xUnit = '1', yUnit = '1', units, level = 0.95 }: MixedLineCommand) {
  units.forEach(({ x, y }, index) => requireColumns({ [`units/${index}/x`]: x, [`units/${index}/y`]: y }));
  const points = units.map(({ x, y }) => x.map((value, index): Point => [value, y[index]!]));
  const found = refusing(['units'], () => randomEffectsLine(points));
  const result = found.kind === 'estimated' ? linesOf(found, level) : found;
  const observations = points.reduce((sum, { length }) => sum + length, 0);
  return calculated(mixedLines, observations, { xUnit, yUnit, result });
}

function linesOf(fit: RandomEffectsLine, level: number) {
  const { kind, observations, betweenVariation, remlCriterion, residualVariance } = fit;
  return {
    kind,
    level,
    observations,
    betweenVariation,
    remlCriterion,
    residualVariance,
    mean: atOrigin(fit.mean, level),
    between: atZero({ ...fit.mean, covariance: fit.between }).covariance,
    unitLines: fit.unitLines.map((line) => atOrigin(line, level)),
  };
}

const atZero = (line: UncertainLine): UncertainLine => recentreLine(line, 0);

function atOrigin(line: UncertainLine, level: number) {
  const { level: intercept, slope, covariance } = atZero(line);
  const { interval } = predictOnUncertainLine(line, 0, level);
  return { intercept, slope, ...errorsOf(covariance), interceptInterval: interval };
}

function errorsOf({ level, cross, slope }: LineCovariance) {
  return {
    interceptStandardError: Math.sqrt(level),
    slopeStandardError: Math.sqrt(slope),
    covariance: cross,
  };
}
