import type { Convergence, NotConverged } from '../descriptive/outcomes.js';

/** Value, gradient and matrix of second derivatives (row by row) of a function at one point. */
export interface SecondOrder {
  readonly value: number;
  readonly gradient: readonly number[];
  readonly hessian: readonly (readonly number[])[];
}

export type MaximumOutcome =
  | {
      readonly kind: 'found';
      readonly at: readonly number[];
      readonly value: number;
      /** Inverse of the negative second derivatives: the covariance when the function is a log-likelihood. */
      readonly inverseCurvature: readonly (readonly number[])[];
      readonly convergence: Convergence;
    }
  | NotConverged;

export interface NewtonOptions {
  /**
   * Ends when half the Newton decrement, which is the gain still to be had, is below this share of 1 + |value|; or below
   * 1e-12 of it, where rounding lets no further step lessen it.
   */
  readonly tolerance?: number;
  readonly maxIterations?: number;
  /** Greatest change of any one parameter in one step. */
  readonly maxStep?: number;
}

/**
 * Local maximum of a smooth function of a few parameters by Newton's method, with a ridge where the curvature has the
 * wrong sign and halving of steps that do not climb.
 *
 * @param f  value, gradient and second derivatives; a value of −Infinity marks a forbidden point
 * @param start  finite; the value there must be finite
 * @param options  tolerance (default 1e-20), iterations (default 100), greatest step (default 2)
 * @returns the maximum with its inverse curvature; `notConverged` when steps run out, cease to climb, or the
 *   curvature at the end is not that of a maximum
 * @throws RangeError when the value at the start, or a second derivative on the way, is not finite
 * @source Nocedal & Wright (2006), Numerical Optimization, 3.3–3.4
 * @oracle maxima known in closed form in the spec
 * @example maximiseByNewton(([x = 0]) => ({ value: -x * x, gradient: [-2 * x], hessian: [[-2]] }), [1]).kind // => 'found'
 */
export function maximiseByNewton(
  f: (at: readonly number[]) => SecondOrder,
  start: readonly number[],
  options: NewtonOptions = {},
): MaximumOutcome {
  const { tolerance = 1e-20, maxIterations = 100, maxStep = 2 } = options;
  let at = [...start];
  let here = f(at);
  if (!Number.isFinite(here.value)) throw new RangeError('the value at the start must be finite');
  for (let iterations = 0; iterations <= maxIterations; iterations += 1) {
    const step = climbingStep(here);
    const remaining = 0.5 * dot(step, here.gradient);
    const scale = 1 + Math.abs(here.value);
    if (remaining <= tolerance * scale) return atTop(at, here, iterations, remaining);
    // Near the top rounding hides the gain of a step in the value; there the gradient alone decides, and the search
    // ends where a full step no longer shortens the next.
    const next = remaining < 1e-9 * scale ? polished(f, at, here, step) : climbed(f, at, here, step, maxStep);
    if (next === null) {
      if (remaining < 1e-12 * scale) return atTop(at, here, iterations, remaining);
      return { kind: 'notConverged', iterations, reason: 'no step climbs any further' };
    }
    [at, here] = next;
  }
  return { kind: 'notConverged', iterations: maxIterations, reason: 'the steps ran out' };
}

function atTop(
  at: readonly number[],
  here: SecondOrder,
  iterations: number,
  remaining: number,
): MaximumOutcome {
  const factor = cholesky(negated(here.hessian));
  if (factor === null) {
    return { kind: 'notConverged', iterations, reason: 'the curvature at the end is not that of a maximum' };
  }
  const convergence = { iterations, remaining };
  return { kind: 'found', at, value: here.value, inverseCurvature: inverse(factor), convergence };
}

/** The point after the full step, or null when what would remain to be gained there is no less. */
function polished(
  f: (at: readonly number[]) => SecondOrder,
  at: readonly number[],
  here: SecondOrder,
  step: readonly number[],
): [number[], SecondOrder] | null {
  const place = at.map((x, i) => x + step[i]!);
  const next = f(place);
  if (!Number.isFinite(next.value)) return null;
  return dot(climbingStep(next), next.gradient) < dot(step, here.gradient) ? [place, next] : null;
}

/** The point after the longest share of the step that does not descend, or null when every share descends. */
function climbed(
  f: (at: readonly number[]) => SecondOrder,
  at: readonly number[],
  here: SecondOrder,
  step: readonly number[],
  maxStep: number,
): [number[], SecondOrder] | null {
  const longest = Math.max(...step.map(Math.abs));
  for (let share = Math.min(1, maxStep / longest); share > 1e-12; share /= 2) {
    const place = at.map((x, i) => x + share * step[i]!);
    const next = f(place);
    if (next.value >= here.value) return [place, next];
  }
  return null;
}

function climbingStep(point: SecondOrder): number[] {
  const curvature = negated(point.hessian);
  const scale = Math.max(1e-8, ...curvature.map((row, i) => Math.abs(row[i]!)));
  let ridge = 0;
  for (;;) {
    const factor = cholesky(curvature.map((row, i) => row.map((x, j) => (i === j ? x + ridge : x))));
    if (factor !== null) return solve(factor, point.gradient);
    ridge = ridge === 0 ? 1e-3 * scale : 4 * ridge;
    if (!(ridge < Infinity)) throw new RangeError('the second derivatives must be finite');
  }
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, x, i) => sum + x * b[i]!, 0);

const negated = (matrix: readonly (readonly number[])[]): number[][] =>
  matrix.map((row) => row.map((x) => -x));

/** Lower triangle L with L Lᵀ = matrix, or null when the matrix is not positive definite. */
function cholesky(matrix: readonly (readonly number[])[]): number[][] | null {
  const factor: number[][] = [];
  for (let i = 0; i < matrix.length; i += 1) {
    const row: number[] = [];
    for (let j = 0; j <= i; j += 1) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k += 1) sum -= row[k]! * (j === i ? row[k]! : factor[j]![k]!);
      if (j < i) row.push(sum / factor[j]![j]!);
      else if (sum > 1e-14 * Math.abs(matrix[i]![i]!)) row.push(Math.sqrt(sum));
      else return null;
    }
    factor.push(row);
  }
  return factor;
}

function solve(factor: readonly (readonly number[])[], right: readonly number[]): number[] {
  const n = right.length;
  const result = [...right];
  for (let i = 0; i < n; i += 1) {
    for (let k = 0; k < i; k += 1) result[i]! -= factor[i]![k]! * result[k]!;
    result[i]! /= factor[i]![i]!;
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < n; k += 1) result[i]! -= factor[k]![i]! * result[k]!;
    result[i]! /= factor[i]![i]!;
  }
  return result;
}

function inverse(factor: readonly (readonly number[])[]): number[][] {
  return factor.map((_, j) =>
    solve(
      factor,
      factor.map((__, i) => (i === j ? 1 : 0)),
    ),
  );
}
