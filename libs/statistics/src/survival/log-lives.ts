import type { SecondOrder } from '../optimise/maximise-by-newton.js';
import type { LifeSample } from './life-sample.js';
import type { StandardFamily } from './standard-family.js';

const EXACT = 0;
const RIGHT = 1;
const LEFT = 2;
const BETWEEN = 3;

/** The rows that carry information, on the logarithmic axis, in typed columns for the hot loop. */
export interface LogLives {
  readonly kinds: Uint8Array;
  /** ln of the exact life, of the right-censoring age, or of the lower end. */
  readonly low: Float64Array;
  /** ln of the upper end, for left and interval censoring. */
  readonly high: Float64Array;
  /** ln of the entry age; −Infinity for none. */
  readonly entry: Float64Array;
  readonly weights: Float64Array;
  readonly units: number;
  readonly events: number;
  /** Exactly known lives of 0, which no continuous life distribution allows. */
  readonly zeroLives: number;
  /** All rows can be met by one and the same life. */
  readonly oneLifeFitsAll: boolean;
  /** Some unit is known to have lived on after its entry, or its life is known exactly. */
  readonly outlived: boolean;
  /** Total of the observed ages over the number of events: an exponential mean, as a start. */
  readonly roughMean: number;
}

function kindOf(lower: number, upper: number): number {
  if (upper === Infinity) return RIGHT;
  return lower === 0 ? LEFT : BETWEEN;
}

/** What a row tells beyond its entry: its age at the end, or the middle of its interval, less the entry age. */
const roughTime = (lower: number, upper: number, entryAge: number): number =>
  (upper === Infinity ? lower : (lower + upper) / 2) - entryAge;

/** Logarithmic form of a sample that has been checked; rows of weight 0 and rows that say nothing are left out. */
export function toLogLives(sample: LifeSample): LogLives {
  const size = sample.lower.length;
  const kinds = new Uint8Array(size);
  const low = new Float64Array(size);
  const high = new Float64Array(size);
  const entry = new Float64Array(size);
  const weights = new Float64Array(size);
  const sums = { units: 0, events: 0, zeroLives: 0, total: 0, greatestLower: 0, leastUpper: Infinity };
  let outlived = false;
  let kept = 0;
  for (let i = 0; i < size; i += 1) {
    const weight = sample.weights?.[i] ?? 1;
    const entryAge = sample.entryAges?.[i] ?? 0;
    const upper = sample.upper[i]!;
    const exact = sample.lower[i] === upper;
    // Alive at entry: nothing below it is possible.
    const lower = Math.max(sample.lower[i]!, entryAge);
    if (weight === 0) continue;
    sums.units += weight;
    if (upper === 0) sums.zeroLives += weight;
    if (upper !== Infinity) sums.events += weight;
    // A unit alive at its entry and not seen again, or known to have failed at some age, says nothing.
    if (upper === Infinity && lower === entryAge) continue;
    outlived ||= exact || lower > entryAge;
    sums.greatestLower = Math.max(sums.greatestLower, lower);
    sums.leastUpper = Math.min(sums.leastUpper, upper);
    sums.total += weight * roughTime(lower, upper, entryAge);
    kinds[kept] = exact ? EXACT : kindOf(lower, upper);
    low[kept] = Math.log(lower);
    high[kept] = Math.log(upper);
    entry[kept] = Math.log(entryAge);
    weights[kept] = weight;
    kept += 1;
  }
  return {
    kinds: kinds.subarray(0, kept),
    low: low.subarray(0, kept),
    high: high.subarray(0, kept),
    entry: entry.subarray(0, kept),
    weights: weights.subarray(0, kept),
    units: sums.units,
    events: sums.events,
    zeroLives: sums.zeroLives,
    oneLifeFitsAll: sums.greatestLower <= sums.leastUpper,
    outlived,
    roughMean: sums.total / Math.max(sums.events, 1),
  };
}

/** Log-likelihood with first and second derivatives in mu and ln sigma. */
export interface Likelihood {
  readonly value: number;
  readonly mu: number;
  readonly logSigma: number;
  readonly muMu: number;
  readonly muLogSigma: number;
  readonly logSigmaLogSigma: number;
}

/**
 * Log-likelihood of a log-location-scale family; densities are those of life itself, so that values compare between
 * families. Derivatives by the chain rule through z = (ln t − mu) / sigma: dz/dmu = −1/sigma, dz/d ln sigma = −z.
 */
export function likelihoodOf(
  lives: LogLives,
  family: StandardFamily,
  mu: number,
  logSigma: number,
): Likelihood {
  const sum = new LikelihoodSum(1 / Math.exp(logSigma));
  const { kinds, low, high, entry, weights } = lives;
  for (let i = 0; i < kinds.length; i += 1) {
    const weight = weights[i]!;
    const z = (low[i]! - mu) * sum.precision;
    switch (kinds[i]) {
      case EXACT:
        sum.value += weight * (family.logDensity(z) - logSigma - low[i]!);
        sum.logSigma -= weight;
        sum.addOne(weight, z, family.slope(z), family.curvature(z));
        break;
      case RIGHT:
        addSurvival(sum, family, weight, z);
        break;
      case LEFT: {
        const upper = (high[i]! - mu) * sum.precision;
        const logCdf = family.logCdf(upper);
        const rate = Math.exp(family.logDensity(upper) - logCdf);
        sum.value += weight * logCdf;
        sum.addOne(weight, upper, rate, rate * (family.slope(upper) - rate));
        break;
      }
      default:
        addBetween(sum, family, weight, z, (high[i]! - mu) * sum.precision);
    }
    if (entry[i]! > -Infinity) addSurvival(sum, family, -weight, (entry[i]! - mu) * sum.precision);
  }
  return sum;
}

/** ln S(z) with its derivatives; a negative weight conditions on survival to an entry age. */
function addSurvival(sum: LikelihoodSum, family: StandardFamily, weight: number, z: number): void {
  const logSurvival = family.logSurvival(z);
  const hazard = Math.exp(family.logDensity(z) - logSurvival);
  sum.value += weight * logSurvival;
  sum.addOne(weight, z, -hazard, -hazard * (family.slope(z) + hazard));
}

function addBetween(
  sum: LikelihoodSum,
  family: StandardFamily,
  weight: number,
  low: number,
  high: number,
): void {
  const logBetween = family.logBetween(low, high);
  const atHigh = Math.exp(family.logDensity(high) - logBetween);
  const atLow = -Math.exp(family.logDensity(low) - logBetween);
  const highHigh = atHigh * (family.slope(high) - atHigh);
  const lowLow = atLow * (family.slope(low) - atLow);
  sum.value += weight * logBetween;
  sum.addOne(weight, high, atHigh, highHigh);
  sum.addOne(weight, low, atLow, lowLow);
  sum.addCross(weight, low, high, -atHigh * atLow);
}

class LikelihoodSum implements Likelihood {
  value = 0;
  mu = 0;
  logSigma = 0;
  muMu = 0;
  muLogSigma = 0;
  logSigmaLogSigma = 0;

  constructor(readonly precision: number) {}

  addOne(weight: number, z: number, first: number, second: number): void {
    this.mu -= weight * first * this.precision;
    this.logSigma -= weight * first * z;
    this.muMu += weight * second * this.precision * this.precision;
    this.muLogSigma += weight * (second * z + first) * this.precision;
    this.logSigmaLogSigma += weight * (second * z + first) * z;
  }

  addCross(weight: number, low: number, high: number, cross: number): void {
    this.muMu += 2 * weight * cross * this.precision * this.precision;
    this.muLogSigma += weight * cross * (low + high) * this.precision;
    this.logSigmaLogSigma += 2 * weight * cross * low * high;
  }
}

/** The likelihood as a function of (mu, ln sigma), for the optimiser. */
export function inBothParameters(
  lives: LogLives,
  family: StandardFamily,
): (at: readonly number[]) => SecondOrder {
  return ([mu = 0, logSigma = 0]) => {
    const sum = likelihoodOf(lives, family, mu, logSigma);
    return {
      value: sum.value,
      gradient: [sum.mu, sum.logSigma],
      hessian: [
        [sum.muMu, sum.muLogSigma],
        [sum.muLogSigma, sum.logSigmaLogSigma],
      ],
    };
  };
}

/** The likelihood as a function of mu alone. */
export function inLocation(
  lives: LogLives,
  family: StandardFamily,
  logSigma: number,
): (at: readonly number[]) => SecondOrder {
  return ([mu = 0]) => {
    const sum = likelihoodOf(lives, family, mu, logSigma);
    return { value: sum.value, gradient: [sum.mu], hessian: [[sum.muMu]] };
  };
}
