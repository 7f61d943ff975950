import type { NotConverged } from '../descriptive/outcomes.js';
import { maximiseByNewton, type SecondOrder } from '../optimise/maximise-by-newton.js';
import { remlState } from './reml-criterion.js';
import type { Symmetric } from './symmetric-matrix.js';
import type { UnitSummary } from './unit-summary.js';

/**
 * How the units' lines differ: in level and slope freely; in one direction only (one of them not at all, or both in step);
 * or not at all. The last two lie on the border of what a covariance can be.
 */
export const betweenVariations = ['full', 'oneDirection', 'none'] as const;
export type BetweenVariation = (typeof betweenVariations)[number];

export interface RemlMinimum {
  readonly kind: 'found';
  readonly relative: Symmetric;
  readonly variation: BetweenVariation;
  readonly criterion: number;
}

/** Criterion differences below this are rounding. */
const SAME = 1e-8;

/** Λ = [[p, 0], [q, w]] gives D = Λ Λᵀ; with two numbers w is 0. */
const relativeOf = ([p = 0, q = 0, w = 0]: readonly number[]): Symmetric => ({
  a: p * p,
  b: p * q,
  d: q * q + w * w,
});

/** −criterion / 2 and its gradient in the entries of Λ: −G Λ. */
function valueAndGradient(units: readonly UnitSummary[], factor: readonly number[]) {
  const { criterion, gradient } = remlState(units, relativeOf(factor));
  const [p = 0, q = 0, w = 0] = factor;
  const slopes = [
    -(gradient.a * p + gradient.b * q),
    -(gradient.b * p + gradient.d * q),
    -gradient.d * w,
  ].slice(0, factor.length);
  return { value: -criterion / 2, gradient: slopes };
}

/** Second derivatives by central differences of the exact gradient. */
function secondOrder(units: readonly UnitSummary[], factor: readonly number[]): SecondOrder {
  const { value, gradient } = valueAndGradient(units, factor);
  const size = 1e-5 * (1 + Math.max(...factor.map(Math.abs)));
  const columns = factor.map((_, i) => {
    const shifted = (by: number) => factor.map((entry, j) => (i === j ? entry + by : entry));
    const up = valueAndGradient(units, shifted(size)).gradient;
    const down = valueAndGradient(units, shifted(-size)).gradient;
    return up.map((slope, j) => (slope - down[j]!) / (2 * size));
  });
  const hessian = columns.map((column, i) => column.map((entry, j) => (entry + columns[j]![i]!) / 2));
  return { value, gradient, hessian };
}

function search(units: readonly UnitSummary[], start: readonly number[]): RemlMinimum | NotConverged {
  const maxStep = 2 * Math.max(...start.map(Math.abs));
  const found = maximiseByNewton((factor) => secondOrder(units, factor), start, {
    tolerance: 1e-15,
    maxStep,
  });
  if (found.kind !== 'found') return found;
  // Two more full steps: this close to the top the value no longer shows a gain, the gradient still does.
  let factor = found.at;
  for (let step = 0; step < 2; step += 1) {
    const { gradient } = valueAndGradient(units, factor);
    factor = factor.map(
      (entry, i) =>
        entry + gradient.reduce((sum, slope, j) => sum + found.inverseCurvature[i]![j]! * slope, 0),
    );
  }
  const relative = relativeOf(factor);
  return {
    kind: 'found',
    relative,
    variation: factor.length === 3 ? 'full' : 'oneDirection',
    criterion: remlState(units, relative).criterion,
  };
}

/** Whether the criterion would fall if variation in a new direction were let in. */
function wantsMoreVariation(units: readonly UnitSummary[], { relative, variation }: RemlMinimum): boolean {
  if (variation === 'full') return false;
  const { gradient } = remlState(units, relative);
  const scale = Math.abs(gradient.a) + Math.abs(gradient.d) + 1;
  const { a, b, d } = gradient;
  if (variation === 'none') return (a + d) / 2 - Math.hypot((a - d) / 2, b) < -SAME * scale;
  const across = [-Math.sqrt(relative.d) * Math.sign(relative.b || 1), Math.sqrt(relative.a)] as const;
  const along = a * across[0] ** 2 + 2 * b * across[0] * across[1] + d * across[1] ** 2;
  return along < -SAME * scale * (relative.a + relative.d);
}

/**
 * Lowest criterion over all covariances, its border included. Newton steps run from several starts in the inside and on
 * the border of one direction, since either search alone can end where the other is better.
 *
 * @param starts  guesses of the relative standard deviations of level and slope, both positive
 */
export function minimiseReml(
  units: readonly UnitSummary[],
  [level, slope]: readonly [number, number],
): RemlMinimum | NotConverged {
  const zero: Symmetric = { a: 0, b: 0, d: 0 };
  const none: RemlMinimum = {
    kind: 'found',
    relative: zero,
    variation: 'none',
    criterion: remlState(units, zero).criterion,
  };
  const border = [
    [level, 0],
    [level / 10, slope],
    [level, slope],
    [level, -slope],
  ].map((start) => search(units, start));
  const inside = [1, 0.3, 0.05].map((factor) => search(units, [level * factor, 0, slope * factor]));
  // In order of simplicity: a richer covariance must beat a simpler one by more than rounding.
  const best = [...border, ...inside].reduce<RemlMinimum>(
    (lowest, found) => (found.kind === 'found' && found.criterion < lowest.criterion - SAME ? found : lowest),
    none,
  );
  if (wantsMoreVariation(units, best)) {
    return { kind: 'notConverged', iterations: 100, reason: 'no search ended at a minimum' };
  }
  return best;
}
