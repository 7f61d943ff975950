import { requireLevel } from '../descriptive/checked-values.js';
import { insufficientData, type InsufficientData, type NotConverged } from '../descriptive/outcomes.js';
import { curveLimits, multiplierOf, type CurveLimitForm } from './curve-limits.js';
import type { CurveOptions } from './kaplan-meier.js';
import { requireLifeSample, type LifeSample } from './life-sample.js';
import { massStandardErrors } from './turnbull-standard-errors.js';
import { innermostIntervals, type CoveredRange } from './innermost-intervals.js';
import { selfConsistentMasses } from './self-consistent-masses.js';

/** Nonparametric survival from interval-censored lives, one entry per interval that holds mass, ages rising. */
export interface TurnbullCurve {
  readonly kind: 'estimated';
  /** Ends of each interval (lower, upper]; equal where a life is known exactly; upper Infinity for the last survivors. */
  readonly lowerAges: readonly number[];
  readonly upperAges: readonly number[];
  readonly masses: readonly number[];
  /** Survival from the upper age on; inside an interval the data do not say how the mass is spread. */
  readonly survival: readonly number[];
  /** Null past the last age with survivors, and for all when there are more intervals than `standardErrorsUpTo`. */
  readonly standardErrors: readonly (number | null)[];
  readonly lower: readonly (number | null)[];
  readonly upper: readonly (number | null)[];
  readonly limitForm: CurveLimitForm;
  readonly level: number;
  readonly units: number;
  readonly logLikelihood: number;
  readonly iterations: number;
}

/** Greatest number of intervals with mass for which standard errors are given; the work grows with its cube. */
export const standardErrorsUpTo = 300;

/**
 * Nonparametric maximum likelihood of survival from exact, left-, right- and interval-censored lives (Turnbull). The
 * mass lies in the innermost intervals; it is found by self-consistency steps in turn with steps of the iterative convex
 * minorant algorithm, until the Kuhn–Tucker conditions hold. Standard errors by the observed information of the masses
 * that are not 0; with inspections common to all units these are Greenwood's.
 *
 * @param sample  lives as intervals; late entry is not taken, since the estimate then need not exist
 * @param options  form of the limits (default logLog) and level (default 0.95)
 * @returns the curve; `insufficientData` for no units; without any event one interval that is open to the right;
 *   `notConverged` when the steps run out
 * @throws RangeError on unlike lengths, numbers below 0, upper below lower, an entry age above 0, or a level outside
 *   (0, 1)
 * @complexity O(n log n), then O(n) a step for n distinct rows; O(n) memory
 * @source Turnbull (1976), JRSS B 38:290–295; Gentleman & Geyer (1994), Biometrika 81:618–623 for the conditions;
 *   Wellner & Zhan (1997), JASA 92:945–959 for the search
 * @oracle test/oracles/statistics-survival/generate.R
 * @example turnbullEstimate({ lower: [0, 2], upper: [2, Infinity] }).kind // => 'estimated'
 */
export function turnbullEstimate(
  sample: LifeSample,
  options: CurveOptions = {},
): TurnbullCurve | InsufficientData | NotConverged {
  const { limitForm = 'logLog', level = 0.95 } = options;
  requireLevel(level);
  requireLifeSample(sample);
  for (let i = 0; i < (sample.entryAges?.length ?? 0); i += 1) {
    if (sample.entryAges![i]! > 0) throw new RangeError('late entry cannot be taken into account');
  }
  const { intervals, ranges, units } = innermostIntervals(sample);
  if (!(units > 0)) return insufficientData('units', 1, 0);
  const found = selfConsistentMasses(ranges, intervals.length, units);
  if (found.kind !== 'found') return found;
  const kept = intervals.map((_, i) => i).filter((i) => found.masses[i]! > 0);
  const masses = kept.map((i) => found.masses[i]!);
  const survival = survivalAfter(masses);
  const errors =
    kept.length > standardErrorsUpTo
      ? null
      : massStandardErrors(renumbered(ranges, kept, intervals.length), masses);
  const standardErrors = survival.map((s, i) => (s > 0 ? (errors?.[i] ?? null) : null));
  const multiplier = multiplierOf(level);
  const limits = survival.map((s, i) =>
    curveLimits(s, (standardErrors[i] ?? NaN) / s, multiplier, limitForm),
  );
  return {
    kind: 'estimated',
    lowerAges: kept.map((i) => intervals[i]!.lower),
    upperAges: kept.map((i) => intervals[i]!.upper),
    masses,
    survival,
    standardErrors,
    lower: limits.map(({ lower }) => lower),
    upper: limits.map(({ upper }) => upper),
    limitForm,
    level,
    units,
    logLikelihood: found.logLikelihood,
    iterations: found.iterations,
  };
}

/** Sum of the masses behind each place, from the far end, so that the last is exactly 0. */
function survivalAfter(masses: readonly number[]): number[] {
  const survival = new Array<number>(masses.length).fill(0);
  for (let i = masses.length - 2; i >= 0; i -= 1) survival[i] = survival[i + 1]! + masses[i + 1]!;
  return survival;
}

/** The ranges counted among the kept intervals only. */
function renumbered(ranges: readonly CoveredRange[], kept: readonly number[], size: number): CoveredRange[] {
  const keptBefore = new Uint32Array(size + 1);
  for (const place of kept) keptBefore[place + 1] = 1;
  for (let i = 1; i <= size; i += 1) keptBefore[i]! += keptBefore[i - 1]!;
  return ranges.map(({ first, last, weight }) => ({
    first: keptBefore[first]!,
    last: keptBefore[last + 1]! - 1,
    weight,
  }));
}
