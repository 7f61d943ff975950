import {
  normalCdf,
  normalLogPdf,
  normalSurvival,
  studentTCdf,
  studentTLogPdf,
  studentTSurvival,
} from '@endfloat/statistics';
import type { DegreesOfFreedom } from '../instruments/instrument.js';
import { integratePiecewise } from './integrate-piecewise.js';

/** An interval; null where it is open to that side. */
export interface OpenInterval {
  readonly lower: number | null;
  readonly upper: number | null;
}

/** A measured value, what doubt it has, what is permitted and what is possible. All numbers in one unit. */
export interface ConformanceInput {
  readonly value: number;
  /** Combined standard uncertainty, above zero. */
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: DegreesOfFreedom;
  readonly permitted: OpenInterval;
  /** What the quantity can be at all (a clearance is not negative). */
  readonly possible: OpenInterval;
  /** What was known before measuring, as a normal distribution; null for nothing. */
  readonly prior: { readonly mean: number; readonly standardDeviation: number } | null;
}

/** Probability that the true value is permitted, or that the reading contradicts what is possible. */
export type ConformanceResult =
  | { readonly kind: 'probability'; readonly inside: number; readonly method: string }
  | { readonly kind: 'contradictsPhysicalBound'; readonly possibleProbability: number };

/** A reading that leaves less than this probability to the possible values is contradictory (judgement). */
export const leastPossibleProbability = 0.001;

/**
 * Probability that the true value lies within a limit, given a reading.
 *
 * Without prior knowledge the true value is distributed about the reading as Student's t with the budget's effective
 * degrees of freedom (normal where they are infinite), cut off at the physical bounds and rescaled. With a normal prior
 * the two densities are multiplied and rescaled: exact for a normal measurement, numerically integrated for Student's t.
 *
 * @param input  numbers in one unit
 * @returns `probability` with the method used (1 where nothing is asked, 0 where nothing permitted is possible), or
 *   `contradictsPhysicalBound` where less than 0.001 would be possible
 * @throws RangeError on non-finite numbers, an uncertainty, degrees of freedom or prior standard deviation that are not
 *   positive, an interval with its ends exchanged
 * @source JCGM 106:2012, 7.2 to 7.4 and 6.3 (truncation)
 * @oracle libs/metrology/src/published-cases (JCGM 106 clause 7 examples)
 * @example conformanceProbability({ value: 0, standardUncertainty: 1, degreesOfFreedom: 'infinite',
 *   permitted: { lower: null, upper: 0 }, possible: { lower: null, upper: null }, prior: null })
 *   // => { kind: 'probability', inside: 0.5, method: 'normal' }
 */
export function conformanceProbability(input: ConformanceInput): ConformanceResult {
  requireInput(input);
  const { permitted, possible } = input;
  const possibleEnds = ends(possible);
  const permittedEnds = {
    lower: Math.max(ends(permitted).lower, possibleEnds.lower),
    upper: Math.min(ends(permitted).upper, possibleEnds.upper),
  };
  const { mass, method } = distributionOf(input);
  const isTruncated = possible.lower !== null || possible.upper !== null;
  const possibleProbability = isTruncated ? mass(possibleEnds.lower, possibleEnds.upper) : 1;
  if (!(possibleProbability >= leastPossibleProbability)) {
    return { kind: 'contradictsPhysicalBound', possibleProbability };
  }
  const share = mass(permittedEnds.lower, permittedEnds.upper) / possibleProbability;
  return {
    kind: 'probability',
    inside: Math.min(1, Math.max(0, share)),
    method: isTruncated ? `${method}, cut off at physical bounds` : method,
  };
}

interface Distribution {
  /** Probability between two ends, 0 where they are exchanged. */
  readonly mass: (lower: number, upper: number) => number;
  readonly method: string;
}

function distributionOf({
  value,
  standardUncertainty,
  degreesOfFreedom,
  prior,
}: ConformanceInput): Distribution {
  if (prior === null) {
    const method = degreesOfFreedom === 'infinite' ? 'normal' : "Student's t";
    return { mass: locationScaleMass(value, standardUncertainty, degreesOfFreedom), method };
  }
  if (degreesOfFreedom === 'infinite') {
    const weight = 1 / standardUncertainty ** 2;
    const priorWeight = 1 / prior.standardDeviation ** 2;
    const mean = (weight * value + priorWeight * prior.mean) / (weight + priorWeight);
    return {
      mass: locationScaleMass(mean, 1 / Math.sqrt(weight + priorWeight), 'infinite'),
      method: 'normal with normal prior',
    };
  }
  const logDensity = (x: number): number =>
    normalLogPdf(x, prior.mean, prior.standardDeviation) +
    studentTLogPdf((x - value) / standardUncertainty, degreesOfFreedom);
  const low = prior.mean - 9 * prior.standardDeviation;
  const high = prior.mean + 9 * prior.standardDeviation;
  const breaks = [
    ...priorMarks.map((k) => prior.mean + k * prior.standardDeviation),
    ...tailMarks.map((k) => value + k * standardUncertainty),
  ];
  const peak = Math.max(...breaks.map(logDensity));
  const density = (x: number): number => Math.exp(logDensity(x) - peak);
  const total = integratePiecewise(density, low, high, breaks);
  return {
    mass: (lower, upper) => {
      const [from, to] = [Math.max(lower, low), Math.min(upper, high)];
      return from < to ? integratePiecewise(density, from, to, breaks) / total : 0;
    },
    method: "Student's t with normal prior",
  };
}

/** Where the product of a normal prior and Student's t bends; t has long tails, so its marks go far out in equal ratios. */
const priorMarks = [-9, -6, -4, -3, -2, -1, 0, 1, 2, 3, 4, 6, 9];
const tailMarks = [0, ...Array.from({ length: 22 }, (_, step) => 0.5 * 2 ** step).flatMap((k) => [-k, k])];

/** Differences are taken in the tail the interval lies in, so that small probabilities keep their digits. */
function locationScaleMass(
  centre: number,
  scale: number,
  degreesOfFreedom: DegreesOfFreedom,
): Distribution['mass'] {
  const below = (z: number): number =>
    degreesOfFreedom === 'infinite' ? normalCdf(z) : studentTCdf(z, degreesOfFreedom);
  const above = (z: number): number =>
    degreesOfFreedom === 'infinite' ? normalSurvival(z) : studentTSurvival(z, degreesOfFreedom);
  return (lower, upper) => {
    if (!(lower < upper)) return 0;
    const from = (lower - centre) / scale;
    const to = (upper - centre) / scale;
    return from > 0 ? above(from) - above(to) : below(to) - below(from);
  };
}

const ends = ({ lower, upper }: OpenInterval): { lower: number; upper: number } => ({
  lower: lower ?? -Infinity,
  upper: upper ?? Infinity,
});

function requireInput({
  value,
  standardUncertainty,
  degreesOfFreedom,
  permitted,
  possible,
  prior,
}: ConformanceInput): void {
  const numbers = [
    value,
    permitted.lower,
    permitted.upper,
    possible.lower,
    possible.upper,
    prior?.mean ?? null,
  ];
  if (!numbers.every((number) => number === null || Number.isFinite(number))) {
    throw new RangeError('value, ends and prior mean are finite numbers');
  }
  const positive = [
    standardUncertainty,
    degreesOfFreedom === 'infinite' ? 1 : degreesOfFreedom,
    prior?.standardDeviation ?? 1,
  ];
  if (!positive.every((number) => number > 0 && Number.isFinite(number))) {
    throw new RangeError(
      'standard uncertainty, degrees of freedom and prior standard deviation are above zero',
    );
  }
  for (const interval of [ends(permitted), ends(possible)]) {
    if (interval.lower > interval.upper) throw new RangeError('the lower end is above the upper end');
  }
}
