import type { InsufficientData, NotConverged } from '@endfloat/statistics';
import { maximiseByNewton } from '@endfloat/statistics';
import { fleetObjective, fromParameters, toParameters } from './fleet-objective.js';
import { leastSquaresLine } from './least-squares-line.js';
import type { OrientedPart } from './level-given-rate.js';
import { orientedPart } from './level-given-rate.js';
import type { LearnedFrom, WearModel } from './wear-model.js';
import { knownPrior } from './wear-model.js';
import type { WearDirection, WearPoint } from './wear-point.js';
import { distinctDistances, requireWearPoints } from './wear-point.js';
import { wearPosterior } from './wear-posterior.js';

/** Parts of one kind with two distances at least, below which a fleet lends no strength; judgement. */
export const fewestPartsForFleet = 5;

/** Greatest doubt of the mean logarithm of the rate (a factor of 20 either way) at which a fleet still lends; judgement. */
const greatestRateDoubt = 1.5;

/** Readings of one fitted part. */
export interface PartHistory {
  readonly points: readonly WearPoint[];
}

export type FleetWearFit =
  | {
      readonly kind: 'estimated';
      readonly method: 'empiricalBayes';
      readonly model: WearModel;
      readonly direction: WearDirection;
      readonly points: number;
      readonly logEvidence: number;
      readonly iterations: number;
    }
  | InsufficientData
  | {
      /** the readings do not tell the fleet's wear from none: nothing can be lent */
      readonly kind: 'wearWithinUncertainty';
      readonly parts: number;
      readonly points: number;
    }
  | NotConverged;

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

/** Straight lines through the parts with two distances give the first guess. */
function firstGuess(parts: readonly OrientedPart[]): WearModel {
  const lines = parts.flatMap((part) => leastSquaresLine(part) ?? []);
  const u = Math.sqrt(median(parts.flatMap((part) => [...part.variance])));
  const longest = Math.max(...parts.map(({ km }) => km.at(-1)!));
  const rate = Math.max(median(lines.map(({ slope }) => slope)), (0.1 * u) / longest);
  return {
    start: { mean: median(lines.map(({ intercept }) => intercept)), sd: u },
    logRate: { mean: Math.log(rate), sd: 0.5 },
    scale: 0.05 * rate * longest,
    learned: null,
  };
}

/** Doubt about the model, from the curvature at the maximum. */
function learnedFrom(parts: number, unit: number, covariance: readonly (readonly number[])[]): LearnedFrom {
  const [ofSpread, ofScale] = [Math.sqrt(covariance[3]![3]!), Math.sqrt(covariance[4]![4]!)];
  const correlation = Math.max(-1, Math.min(1, covariance[3]![4]! / (ofSpread * ofScale)));
  return {
    parts,
    startMeanU: unit * Math.sqrt(covariance[0]![0]!),
    logRateMeanU: Math.sqrt(covariance[2]![2]!),
    logSpreadDoubt: ofSpread,
    logScaleDoubt: ofScale,
    correlation,
  };
}

/**
 * Wear of one kind of part over a fleet: what the start, the rate and the unevenness of wear are like, so that parts with
 * few readings can borrow from the others (empirical Bayes).
 *
 * Greatest marginal likelihood: a part's rate is summed over numerically, the rest is normal and exact. Weak priors keep
 * the spreads and the scale of a small fleet from collapsing to nothing or running off: density proportional to sd for the
 * start, to sd x exp(-sd / 0.5) for the logarithm of the rate, to sqrt(scale) x exp(-scale / wear seen) for the scale.
 * Parts with one point count too. Bias that one instrument brings to several parts is treated as if it were drawn anew for
 * each part.
 *
 * @param histories  one a fitted part, points in any order
 * @param direction  which way the characteristic wears
 * @returns the model, in levels turned so that wear rises; `insufficientData` below five parts with two distances;
 *   `wearWithinUncertainty` where the fleet's mean rate is not known to within a factor of 20, because the readings do not
 *   tell wear from none; `notConverged` where no maximum was found
 * @throws RangeError on a negative km or biasU, a u that is not positive, a number that is not finite
 * @complexity O(parts x points³) a step
 * @source Lawless & Crowder (2004), Lifetime Data Analysis 10:213-227 (gamma processes with random effects); van Noortwijk
 *   (2009), Reliab. Eng. Syst. Saf. 94:2-21; Chung et al. (2013), Psychometrika 78:685-709 (spreads away from 0)
 * @oracle fleets simulated with known parameters, in the spec
 */
export function fitFleetWear(histories: readonly PartHistory[], direction: WearDirection): FleetWearFit {
  for (const { points } of histories) requireWearPoints(points);
  const usable = histories.filter(({ points }) => points.length > 0);
  const withTwo = usable.filter(({ points }) => distinctDistances(points) >= 2).length;
  if (withTwo < fewestPartsForFleet) {
    return {
      kind: 'insufficientData',
      of: 'partsWithTwoDistances',
      needed: fewestPartsForFleet,
      got: withTwo,
    };
  }
  const parts = usable.map(({ points }) => orientedPart(points, direction === 'rising' ? 1 : -1));
  const guess = firstGuess(parts);
  const found = maximiseByNewton(
    fleetObjective(parts, guess.start.sd, 20 * guess.scale),
    toParameters(guess, guess.start.sd),
    {
      tolerance: 1e-11,
      maxStep: 1,
    },
  );
  if (found.kind !== 'found') return found;
  const points = parts.reduce((sum, { km }) => sum + km.length, 0);
  const learned = learnedFrom(parts.length, guess.start.sd, found.inverseCurvature);
  if (!(learned.logRateMeanU <= greatestRateDoubt)) {
    return { kind: 'wearWithinUncertainty', parts: parts.length, points };
  }
  const model = { ...fromParameters(found.at, guess.start.sd), learned };
  return {
    kind: 'estimated',
    method: 'empiricalBayes',
    model,
    direction,
    points,
    logEvidence: parts.reduce((sum, part) => sum + wearPosterior(part, knownPrior(model)).logEvidence, 0),
    iterations: found.convergence.iterations,
  };
}
