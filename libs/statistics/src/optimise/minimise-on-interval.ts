import type { Convergence, NotConverged } from '../descriptive/outcomes.js';

export type MinimumOutcome =
  | {
      readonly kind: 'found';
      readonly at: number;
      readonly value: number;
      /** The minimum lies within the tolerance of an end, so it may be the end's and not the function's. */
      readonly atEnd: boolean;
      readonly convergence: Convergence;
    }
  | NotConverged;

export interface MinimumOptions {
  /** Relative tolerance of the place of the minimum; a smooth function allows no better than about 1e-8. */
  readonly tolerance?: number;
  readonly maxIterations?: number;
}

const GOLDEN = (3 - Math.sqrt(5)) / 2;

/**
 * Minimum of a function on a closed interval (Brent's method: parabolas, golden section where they fail).
 * Finds the one minimum of a unimodal function, else a local one.
 *
 * @param f  function of one number; Infinity is allowed, NaN is not
 * @param lower  finite
 * @param upper  finite, above `lower`
 * @param options  relative tolerance (default 1e-9), greatest number of iterations (default 200)
 * @returns place and value of the minimum, with a mark when it touches an end of the interval; `notConverged` when the
 *   iterations run out
 * @throws RangeError on ends that are not finite or not in order, or when f answers NaN
 * @source Brent (1973), Algorithms for Minimization without Derivatives, ch. 5
 * @oracle minima known in closed form in the spec
 * @example minimiseOnInterval((x) => (x - 2) ** 2, 0, 5).kind // => 'found'
 */
export function minimiseOnInterval(
  f: (x: number) => number,
  lower: number,
  upper: number,
  options: MinimumOptions = {},
): MinimumOutcome {
  const { tolerance = 1e-9, maxIterations = 200 } = options;
  if (!Number.isFinite(lower) || !Number.isFinite(upper) || lower >= upper) {
    throw new RangeError('the ends must be finite and in order');
  }
  const evaluate = (x: number): Point => pointOf(f, x);
  const first = evaluate(lower + GOLDEN * (upper - lower));
  let search: Search = { a: lower, b: upper, best: first, second: first, third: first };
  let step = 0;
  let previous = 0;
  for (let iterations = 0; iterations <= maxIterations; iterations += 1) {
    const { a, b, best } = search;
    const middle = 0.5 * (a + b);
    const width = tolerance * Math.abs(best.x) + 1e-12 * (upper - lower);
    if (Math.abs(best.x - middle) <= 2 * width - 0.5 * (b - a)) {
      const atEnd = Math.min(best.x - lower, upper - best.x) <= 4 * width;
      return {
        kind: 'found',
        at: best.x,
        value: best.value,
        atEnd,
        convergence: { iterations, remaining: b - a },
      };
    }
    const proposal = Math.abs(previous) > width ? parabolicStep(search) : Infinity;
    const place = best.x + proposal;
    if (Math.abs(proposal) < Math.abs(0.5 * previous) && place > a && place < b) {
      previous = step;
      step = Math.min(place - a, b - place) < 2 * width ? Math.sign(middle - best.x) * width : proposal;
    } else {
      previous = best.x < middle ? b - best.x : a - best.x;
      step = GOLDEN * previous;
    }
    search = narrowed(search, evaluate(best.x + atLeast(step, width)));
  }
  return {
    kind: 'notConverged',
    iterations: maxIterations,
    reason: 'the minimum was not enclosed closely enough',
  };
}

interface Point {
  readonly x: number;
  readonly value: number;
}

function pointOf(f: (x: number) => number, x: number): Point {
  const value = f(x);
  if (Number.isNaN(value)) throw new RangeError(`the function is not a number at ${x}`);
  return { x, value };
}

/** The step itself, or the least step worth taking in its direction. */
const atLeast = (step: number, width: number): number =>
  Math.abs(step) >= width ? step : Math.sign(step || 1) * width;

/** The interval that still holds the minimum, and the three lowest points so far. */
interface Search {
  readonly a: number;
  readonly b: number;
  readonly best: Point;
  readonly second: Point;
  readonly third: Point;
}

function narrowed(search: Search, tried: Point): Search {
  const { a, b, best, second, third } = search;
  if (tried.value <= best.value) {
    const ends = tried.x < best.x ? { a, b: best.x } : { a: best.x, b };
    return { ...ends, best: tried, second: best, third: second };
  }
  const ends = tried.x < best.x ? { a: tried.x, b } : { a, b: tried.x };
  if (tried.value <= second.value || second.x === best.x)
    return { ...ends, best, second: tried, third: second };
  const replacesThird = tried.value <= third.value || third.x === best.x || third.x === second.x;
  return { ...ends, best, second, third: replacesThird ? tried : third };
}

/** Step from the best point to the vertex of the parabola through three points; Infinity where there is none. */
function parabolicStep({ best, second, third }: Search): number {
  const r = (best.x - second.x) * (best.value - third.value);
  const q = (best.x - third.x) * (best.value - second.value);
  const numerator = (best.x - third.x) * q - (best.x - second.x) * r;
  const denominator = 2 * (q - r);
  const step = -numerator / denominator;
  return Number.isFinite(step) ? step : Infinity;
}
