import type { Convergence, NotConverged } from '../descriptive/outcomes.js';

export type RootOutcome =
  | { readonly kind: 'found'; readonly root: number; readonly convergence: Convergence }
  | { readonly kind: 'noSignChange'; readonly atLower: number; readonly atUpper: number }
  | NotConverged;

export interface RootOptions {
  /** Absolute tolerance of the root; 0 stands for the precision of the machine. */
  readonly tolerance?: number;
  readonly maxIterations?: number;
}

/**
 * Root of a continuous function between two points of opposite sign (Brent's method).
 *
 * @param f  function of one number; may answer ±Infinity, never NaN
 * @param lower  finite, f of the other sign than at `upper`
 * @param upper  finite
 * @param options  tolerance (default 0: machine precision), greatest number of iterations (default 200)
 * @returns `found`; `noSignChange` when both ends have the same sign; an end where f is exactly 0 is the root (`upper`
 *   of two such); `notConverged` when the iterations run out
 * @throws RangeError on an end that is not finite, or when f answers NaN
 * @source Brent (1973), Algorithms for Minimization without Derivatives, ch. 4
 * @oracle roots known in closed form in the spec
 * @example findRoot((x) => x - 2, 2, 5).kind // => 'found'
 */
export function findRoot(
  f: (x: number) => number,
  lower: number,
  upper: number,
  options: RootOptions = {},
): RootOutcome {
  const { tolerance = 0, maxIterations = 200 } = options;
  if (!Number.isFinite(lower) || !Number.isFinite(upper)) throw new RangeError('the ends must be finite');
  const evaluate = (x: number): Point => {
    const y = f(x);
    if (Number.isNaN(y)) throw new RangeError(`the function is not a number at ${x}`);
    return { x, y };
  };
  // b is the best point so far, c the other end of the bracket, a the point before b.
  let a = evaluate(lower);
  let b = evaluate(upper);
  if (sameSide(a, b)) return { kind: 'noSignChange', atLower: a.y, atUpper: b.y };
  let c = a;
  let step = b.x - a.x;
  let previous = step;
  for (let iterations = 0; iterations <= maxIterations; iterations += 1) {
    if (sameSide(b, c)) {
      c = a;
      step = b.x - a.x;
      previous = step;
    }
    if (Math.abs(c.y) < Math.abs(b.y)) [a, b, c] = [b, c, b];
    const width = 2 * Number.EPSILON * Math.abs(b.x) + 0.5 * tolerance;
    const half = 0.5 * (c.x - b.x);
    if (Math.abs(half) <= width || b.y === 0) {
      return { kind: 'found', root: b.x, convergence: { iterations, remaining: Math.abs(half) } };
    }
    const proposal = interpolated(a, b, c);
    const accepted = Math.abs(previous) >= width && isAcceptable(proposal, half, previous, a, b);
    previous = accepted ? step : half;
    step = accepted ? proposal : half;
    a = b;
    b = evaluate(b.x + atLeast(step, width, half));
  }
  return {
    kind: 'notConverged',
    iterations: maxIterations,
    reason: 'the root was not enclosed closely enough',
  };
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** The step itself, or the least step worth taking, towards the other end of the bracket. */
const atLeast = (step: number, width: number, half: number): number =>
  Math.abs(step) > width ? step : Math.sign(half) * width;

const sameSide = (one: Point, other: Point): boolean =>
  one.y !== 0 && other.y !== 0 && one.y > 0 === other.y > 0;

/** An interpolated step must stay inside the bracket and be less than half the step before the last. */
function isAcceptable(proposal: number, half: number, previous: number, a: Point, b: Point): boolean {
  const share = proposal / half;
  const shrinks = Math.abs(proposal) < Math.abs(0.5 * previous);
  return Math.abs(a.y) > Math.abs(b.y) && shrinks && share > 0 && share < 1.5;
}

/** Step from b by the secant through two points or the inverse parabola through three; Infinity where there is none. */
function interpolated(a: Point, b: Point, c: Point): number {
  if (![a.y, b.y, c.y].every(Number.isFinite) || a.y === b.y) return Infinity;
  const s = b.y / a.y;
  if (a.x === c.x) return ((c.x - b.x) * s) / (s - 1);
  const q = a.y / c.y;
  const r = b.y / c.y;
  const numerator = s * ((c.x - b.x) * q * (q - r) - (b.x - a.x) * (r - 1));
  const denominator = (q - 1) * (r - 1) * (s - 1);
  return denominator === 0 ? Infinity : -numerator / denominator;
}
