import { requireLevel } from '../descriptive/checked-values.js';
import { normalQuantile } from '../distributions/normal.js';
import { lastStepAt } from '../survival/curve-lookup.js';
import { meanCumulativeFunction, type RecurrenceOutcome } from './mean-cumulative-function.js';
import { orderSample, startOf, type RecurrenceSample } from './recurrence-sample.js';

/** Difference of two mean cumulative functions, first minus second, one entry per age at which either steps. */
export interface RecurrenceDifference {
  readonly kind: 'estimated';
  readonly ages: readonly number[];
  readonly difference: readonly number[];
  readonly standardErrors: readonly (number | null)[];
  readonly lower: readonly (number | null)[];
  readonly upper: readonly (number | null)[];
  readonly level: number;
  /** Both means count from the first age; nothing is said beyond the last. */
  readonly firstAge: number;
  readonly lastAge: number;
}

export type RecurrenceDifferenceOutcome =
  | RecurrenceDifference
  /** A group is empty, the ages observed in the groups do not overlap, or no event lies where they do. */
  | { readonly kind: 'notComparable' };

/**
 * Difference of the mean cumulative functions of two independent groups with the sum of their robust variances and plain
 * limits. Both are counted from the greater of their first ages and up to the lesser of their last ages; what was
 * observed outside is left out. An age at which a group was not observed (a gap) counts as one without events.
 *
 * @param first  first group, as for meanCumulativeFunction
 * @param second  second group
 * @param level  two-sided, pointwise; default 0.95
 * @returns the difference at each event age in the common range, or `notComparable`; the standard error is null from
 *   the first event of a single-unit group on
 * @throws RangeError as meanCumulativeFunction does
 * @complexity O(n log n) time, O(n) memory
 * @source Doganaksoy & Nelson (1998), Lifetime Data Analysis 4:51–63; Nelson (2003), Recurrent Events Data Analysis, ch. 6
 * @oracle worked by hand in the spec
 * @example meanCumulativeDifference({ eventUnits: [], eventAges: [], spanUnits: [], spanEnds: [] }, { eventUnits: [], eventAges: [], spanUnits: [], spanEnds: [] }) // => { kind: 'notComparable' }
 */
export function meanCumulativeDifference(
  first: RecurrenceSample,
  second: RecurrenceSample,
  level = 0.95,
): RecurrenceDifferenceOutcome {
  requireLevel(level);
  const orders = [orderSample(first), orderSample(second)];
  if (orders.some(({ observedUnits }) => observedUnits === 0)) return { kind: 'notComparable' };
  const firstAge = Math.max(...orders.map((order) => order.firstAge));
  const lastAge = Math.min(...orders.map((order) => order.lastAge));
  const curves = [first, second].map((sample) =>
    meanCumulativeFunction(countedFrom(sample, firstAge), { level }),
  );
  const steps = curves.flatMap((curve) => (curve.kind === 'estimated' ? curve.ages : []));
  const sorted = Float64Array.from(steps).sort();
  const ages = Array.from(sorted).filter((age, i) => age <= lastAge && age !== sorted[i - 1]);
  if (ages.length === 0) return { kind: 'notComparable' };
  const states = ages.map((age) => [stateAt(curves[0]!, age), stateAt(curves[1]!, age)] as const);
  const difference = states.map(([one, other]) => one.mean - other.mean);
  const standardErrors = states.map(([one, other]) =>
    one.standardError === null || other.standardError === null
      ? null
      : Math.hypot(one.standardError, other.standardError),
  );
  const reach = normalQuantile(0.5 + level / 2);
  const limit = (sign: number) => (standardError: number | null, i: number) =>
    standardError === null ? null : difference[i]! + sign * reach * standardError;
  return {
    kind: 'estimated',
    ages,
    difference,
    standardErrors,
    lower: standardErrors.map(limit(-1)),
    upper: standardErrors.map(limit(1)),
    level,
    firstAge,
    lastAge,
  };
}

/** The sample without what was observed up to an age; from age 0 nothing is taken away. */
function countedFrom(sample: RecurrenceSample, age: number): RecurrenceSample {
  if (age === 0) return sample;
  const rows = Array.from(sample.eventAges, (_, row) => row).filter((row) => sample.eventAges[row]! > age);
  const spans = Array.from(sample.spanEnds, (_, span) => span).filter((span) => sample.spanEnds[span]! > age);
  return {
    eventUnits: rows.map((row) => sample.eventUnits[row]!),
    eventAges: rows.map((row) => sample.eventAges[row]!),
    eventSizes: sample.eventSizes && rows.map((row) => sample.eventSizes![row]!),
    spanUnits: spans.map((span) => sample.spanUnits[span]!),
    spanStarts: spans.map((span) => Math.max(age, startOf(sample, span))),
    spanEnds: spans.map((span) => sample.spanEnds[span]!),
  };
}

/** Before its first event a group stands at 0 with a robust variance of 0. */
function stateAt(curve: RecurrenceOutcome, age: number): { mean: number; standardError: number | null } {
  const step = curve.kind === 'estimated' ? lastStepAt(curve.ages, age) : -1;
  if (curve.kind !== 'estimated' || step < 0) return { mean: 0, standardError: 0 };
  return { mean: curve.mean[step]!, standardError: curve.standardErrors[step]! };
}
