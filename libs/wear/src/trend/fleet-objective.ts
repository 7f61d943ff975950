import type { SecondOrder } from '@endfloat/statistics';
import { dot, whitenInPlace } from './covariance-factor.js';
import type { OrientedPart, Workspace } from './level-given-rate.js';
import { givenRate, workspaceFor } from './level-given-rate.js';
import type { WearModel } from './wear-model.js';
import { knownPrior } from './wear-model.js';
import { fineForFitting, wearPosterior } from './wear-posterior.js';

/** Parameters a fleet is fitted in: mean start (in the unit), log of its spread, mean and log spread of log rate, log scale. */
export const toParameters = ({ start, logRate, scale }: WearModel, unit: number): number[] => [
  start.mean / unit,
  Math.log(start.sd),
  logRate.mean,
  Math.log(logRate.sd),
  Math.log(scale),
];

/** The model of parameters. */
export function fromParameters(parameters: readonly number[], unit: number): WearModel {
  const [mean, logSd, rateMean, rateLogSd, logScale] = parameters as [number, number, number, number, number];
  return {
    start: { mean: mean * unit, sd: Math.exp(logSd) },
    logRate: { mean: rateMean, sd: Math.exp(rateLogSd) },
    scale: Math.exp(logScale),
    learned: null,
  };
}

/** Mean over one possible rate of (start - mean)² and of squared departures of wear from its mean over that mean. */
interface Moments {
  readonly start: number;
  readonly startSquare: number;
  readonly scaled: number;
  readonly increments: number;
}

function momentsGivenRate(part: OrientedPart, model: WearModel, rate: number, workspace: Workspace): Moments {
  const given = givenRate(part, model.start, rate, model.scale, workspace);
  const { km } = part;
  const { column } = workspace;
  const startVariance = model.start.sd ** 2;
  whitenInPlace(given.factor, column.fill(startVariance));
  const start = dot(column, given.surprise);
  const startSquare = start ** 2 + startVariance - dot(column, column);
  let scaled = 0;
  let increments = 0;
  let before = 0;
  for (let j = 0; j < km.length; j += 1) {
    const expected = rate * (km[j]! - before);
    before = km[j]!;
    if (expected <= 0) continue;
    const variance = model.scale * expected;
    column.fill(0, 0, j).fill(variance, j);
    whitenInPlace(given.factor, column, j);
    scaled += (dot(column, given.surprise) ** 2 + variance - dot(column, column)) / expected;
    increments += 1;
  }
  return { start, startSquare, scaled, increments };
}

/** Log evidence of a part and its derivatives by mean start, log spread, mean log rate, log spread, log scale. */
function partGradient(
  part: OrientedPart,
  model: WearModel,
  workspace: Workspace,
): { value: number; gradient: number[] } {
  const posterior = wearPosterior(part, knownPrior(model), fineForFitting, workspace);
  const gradient = [0, 0, 0, 0, 0];
  for (const { rate, weight } of posterior.nodes) {
    const moments = momentsGivenRate(part, model, rate, workspace);
    const away = (Math.log(rate) - model.logRate.mean) / model.logRate.sd;
    gradient[0]! += (weight * moments.start) / model.start.sd ** 2;
    gradient[1]! += weight * (moments.startSquare / model.start.sd ** 2 - 1);
    gradient[2]! += (weight * away) / model.logRate.sd;
    gradient[3]! += weight * (away ** 2 - 1);
    gradient[4]! += 0.5 * weight * (moments.scaled / model.scale - moments.increments);
  }
  return { value: posterior.logEvidence, gradient };
}

/** Rates of parts of one kind usually differ by a factor of about exp(0.5): judgement, and a weak one. */
const usualRateSpread = 0.5;

const step = 1e-4;

/**
 * Penalised log evidence of a fleet (a gamma prior of shape 2 for the spreads, of shape 3/2 for the scale, so that a
 * small fleet neither loses nor overstates them) for `maximiseByNewton`: value and gradient exact up to the sum over
 * rates (the gradient by Fisher's identity, as mean of the complete data's), curvature by differences of the gradient.
 *
 * @param parts  oriented points
 * @param unit   the mean start is counted in
 * @param greatestScale  scale at which wear would be as uneven as it is large: larger ones are discouraged
 * @returns function of the five parameters
 * @source Fisher's identity: Dempster, Laird & Rubin (1977), JRSS B 39:1-38
 */
export function fleetObjective(
  parts: readonly OrientedPart[],
  unit: number,
  greatestScale: number,
): (parameters: readonly number[]) => SecondOrder {
  const workspaces = parts.map(workspaceFor);
  const firstOrder = (parameters: readonly number[]): { value: number; gradient: number[] } => {
    const model = fromParameters(parameters, unit);
    const spread = model.logRate.sd / usualRateSpread;
    const uneven = model.scale / greatestScale;
    let value = parameters[1]! + parameters[3]! - spread + 0.5 * parameters[4]! - uneven;
    const gradient = [0, 1, 0, 1 - spread, 0.5 - uneven];
    for (const [index, part] of parts.entries()) {
      const one = partGradient(part, model, workspaces[index]!);
      value += one.value;
      for (let i = 0; i < gradient.length; i += 1) gradient[i]! += one.gradient[i]!;
    }
    gradient[0]! *= unit;
    return { value, gradient };
  };
  return (parameters) => {
    const here = firstOrder(parameters);
    const slopes = parameters.map((_, i) => {
      const there = firstOrder(parameters.map((value, j) => (i === j ? value + step : value)));
      return there.gradient.map((value, j) => (value - here.gradient[j]!) / step);
    });
    const hessian = slopes.map((row, i) => row.map((value, j) => 0.5 * (value + slopes[j]![i]!)));
    return { ...here, hessian };
  };
}
