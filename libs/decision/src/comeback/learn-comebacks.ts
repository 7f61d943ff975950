import { readingLikelihood } from '../belief/part-belief.js';
import { anyPartDensity, functionalLikelihood, populationWeights } from '../belief/wear-belief.js';
import { stepsAtNodes } from '../belief/wear-grid.js';
import { complaintLikelihood } from '../belief/complaint-evidence.js';
import { normalised } from '../grid/hat-weights.js';
import { log, logistic } from '../portable/elementary.js';
import type { ComebackTable, LearnedTables } from '../tables/learned-tables.js';
import { adjustingLogOdds, comebacksLikelihood } from './adjusting-causes.js';
import type { ComebackOutcome } from './comeback-outcome.js';
import { cholesky } from './coefficient-draws.js';
import { comebackChance, comebackFeatures, risingCoefficients } from './comeback-predictor.js';

const MOST_STEPS = 100;
const TOLERANCE = 1e-10;

/** A table that outcomes have taught, or that the fit did not settle. */
export type TaughtComebacks =
  | { readonly kind: 'estimated'; readonly table: ComebackTable; readonly iterations: number }
  | { readonly kind: 'notConverged'; readonly iterations: number };

interface Case {
  readonly features: Float64Array;
  /** what the coefficients correct */
  readonly logOdds: number;
  /** share of the window watched; a comeback and an elapsed window count whole */
  readonly watched: number;
  readonly cameBack: boolean;
}

/** Mean steps of the wear that was left in, over what its reading leaves in doubt. */
function caseOf({ context, wear, outcome }: ComebackOutcome, tables: LearnedTables): Case {
  const watched = outcome.kind === 'running' ? outcome.shareOfWindow : 1;
  if (!(watched >= 0 && watched <= 1))
    throw new RangeError(`a share of the window lies from 0 to 1, got ${watched}`);
  const weights = wearLeftIn(context, wear, tables);
  const steps: [number, number, number] = [0, 0, 0];
  weights.forEach((weight, i) =>
    steps.forEach((step, k) => (steps[k] = step + weight * stepsAtNodes[i]![k]!)),
  );
  return {
    features: comebackFeatures(context, steps),
    logOdds: context.action === 'adjust' ? meanLogOdds(weights, tables, context.earlierComebacks) : 0,
    watched,
    cameBack: outcome.kind === 'comeback',
  };
}

/**
 * Weights over the wear that a repair was done at: its reading, the criterion, that there was a complaint and how often it
 * had come back.
 *
 * @param context  of the repair
 * @param wear     reading, or null
 * @param tables   populations and complaint rates
 * @returns weights over the wear nodes
 */
export function wearLeftIn(
  { functional, earlierComebacks }: ComebackOutcome['context'],
  wear: ComebackOutcome['wear'],
  tables: LearnedTables,
): Float64Array {
  const { functionalWidth, complaints } = tables;
  const functionalSays = functionalLikelihood(functional, functionalWidth);
  const density =
    wear === null ? populationWeights(tables.wear.fittedPart.start) : anyPartDensity(tables.wear);
  const likelihood = wear === null ? density.map(() => 1) : readingLikelihood(wear);
  if (wear?.standardUncertainty === 0) return likelihood;
  const read = density.map((value, i) => value * likelihood[i]! * functionalSays[i]!);
  const complaint = complaintLikelihood(complaints);
  const comebacks = comebacksLikelihood(tables, earlierComebacks);
  return normalised(read.map((weight, i) => weight * complaint[i]! * comebacks[i]!));
}

/** Log odds of the mean chance that the causes give. */
function meanLogOdds(weights: Float64Array, tables: LearnedTables, count: number): number {
  if (tables.adjusting === undefined) return 0;
  const atNodes = adjustingLogOdds(tables, count);
  const chance = weights.reduce((sum, weight, i) => sum + weight * logistic(atNodes[i]!), 0);
  return log(chance) - log(1 - chance);
}

/** Solves L L' x = b. */
function solved(triangle: readonly Float64Array[], b: Float64Array): Float64Array {
  const size = b.length;
  const x = Float64Array.from(b);
  for (let i = 0; i < size; i += 1) {
    for (let k = 0; k < i; k += 1) x[i] = x[i]! - triangle[i]![k]! * x[k]!;
    x[i] = x[i]! / triangle[i]![i]!;
  }
  for (let i = size - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < size; k += 1) x[i] = x[i]! - triangle[k]![i]! * x[k]!;
    x[i] = x[i]! / triangle[i]![i]!;
  }
  return x;
}

/** Inverse of a positive definite matrix, symmetric to the last bit. */
function inverse(matrix: readonly (readonly number[])[]): number[][] {
  const triangle = cholesky(matrix);
  const size = matrix.length;
  const columns = matrix.map((_, j) =>
    solved(
      triangle,
      Float64Array.from({ length: size }, (_unused, i) => (i === j ? 1 : 0)),
    ),
  );
  return matrix.map((_, i) => matrix.map((_unused, j) => (columns[j]![i]! + columns[i]![j]!) / 2));
}

interface Slope {
  readonly value: number;
  readonly gradient: Float64Array;
  readonly information: number[][];
}

/**
 * Log posterior, its gradient, and the expected information plus the prior's: positive definite whatever the coefficients.
 * A window watched to the share t without comeback has chance 1 - p t (comebacks spread evenly over the window).
 */
function slopeAt(
  at: Float64Array,
  cases: readonly Case[],
  prior: ComebackTable,
  precision: readonly (readonly number[])[],
): Slope {
  const size = at.length;
  const gradient = new Float64Array(size);
  const information = precision.map((row) => [...row]);
  let value = 0;
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < size; j += 1) {
      const pull = precision[i]![j]! * (at[j]! - prior.mean[j]!);
      gradient[i] = gradient[i]! - pull;
      value -= 0.5 * (at[i]! - prior.mean[i]!) * pull;
    }
  }
  for (const { features, logOdds, watched, cameBack } of cases) {
    const p = Math.min(1 - 1e-12, Math.max(1e-12, comebackChance(at, features, logOdds)));
    const without = 1 - p * watched;
    const score = cameBack ? 1 - p : (-watched * p * (1 - p)) / without;
    const weight = (watched * p * (1 - p) * (1 - p)) / without;
    value += cameBack ? log(p) : log(without);
    for (let i = 0; i < size; i += 1) {
      if (features[i] === 0) continue;
      gradient[i] = gradient[i]! + score * features[i]!;
      const row = information[i]!;
      for (let j = 0; j < size; j += 1) row[j] = row[j]! + weight * features[i]! * features[j]!;
    }
  }
  return { value, gradient, information };
}

function moved(at: Float64Array, direction: Float64Array, length: number): Float64Array {
  const next = at.map((value, k) => value + length * direction[k]!);
  for (const k of risingCoefficients) next[k] = Math.max(0, next[k]!);
  return next;
}

/**
 * Belief over the comeback coefficients after released repairs: posterior mode, and as covariance the inverse information
 * there. Elapsed windows count whole; a window that is running, or a vehicle not seen since, counts for the share that was
 * watched and never as a success. Only confirmed and attributable comebacks belong in here; who is counted is decided
 * outside.
 *
 * The wear that was left in enters by the mean of its steps over what the reading leaves in doubt (regression calibration),
 * so that a coarse reading does not pass for a sharp one.
 *
 * @param tables    tables before; their comeback table is the prior, so teach from the judgement table with all outcomes
 * @param outcomes  released repairs, any order
 * @returns table with its counts, or `notConverged`
 * @throws RangeError on a share of the window outside 0 to 1, on a covariance without inverse
 * @source penalised logistic regression by Fisher scoring; Gaussian approximation at the mode (Laplace); censoring by the
 *   chance of a comeback so far, 1 - p t
 * @oracle one coefficient by hand and by a fine grid (learn-comebacks.spec.ts)
 */
export function learnComebacks(tables: LearnedTables, outcomes: readonly ComebackOutcome[]): TaughtComebacks {
  const prior = tables.comeback;
  const precision = inverse(prior.covariance);
  const cases = outcomes.map((outcome) => caseOf(outcome, tables));
  let at = moved(Float64Array.from(prior.mean), new Float64Array(prior.mean.length), 0);
  let here = slopeAt(at, cases, prior, precision);
  for (let iterations = 1; iterations <= MOST_STEPS; iterations += 1) {
    const direction = solved(cholesky(here.information), here.gradient);
    let length = 1;
    let next = moved(at, direction, length);
    let there = slopeAt(next, cases, prior, precision);
    for (; there.value < here.value && length > 1e-6;) {
      length /= 2;
      next = moved(at, direction, length);
      there = slopeAt(next, cases, prior, precision);
    }
    if (there.value < here.value) [next, there] = [at, here];
    const change = Math.max(...next.map((value, k) => Math.abs(value - at[k]!)));
    [at, here] = [next, there];
    if (change < TOLERANCE) {
      const count = (kind: 'comeback' | 'held' | 'running') =>
        outcomes.filter(({ outcome }) => outcome.kind === kind).length;
      const { taught } = prior;
      return {
        kind: 'estimated',
        iterations,
        table: {
          mean: [...at],
          covariance: inverse(here.information),
          taught: {
            comebacks: taught.comebacks + count('comeback'),
            held: taught.held + count('held'),
            running: taught.running + count('running'),
          },
        },
      };
    }
  }
  return { kind: 'notConverged', iterations: MOST_STEPS };
}
