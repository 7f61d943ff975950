import { meanCumulativeDifference, normalSurvival, type RecurrenceDifference } from '@endfloat/statistics';
import type { UnitHistory } from './unit-history.js';
import { recurrenceColumns } from './recurrence-columns.js';

/** Difference of two groups at the last age both were watched to, and whether chance alone explains it. */
export type RecurrenceComparison =
  | {
      readonly kind: 'tested';
      readonly curve: RecurrenceDifference;
      readonly difference: number;
      readonly standardError: number;
      /** difference / standard error, standard normal where the groups recur alike */
      readonly statistic: number;
      readonly pValue: number;
    }
  /** fewer than two vehicles in a group: its spread cannot be known */
  | { readonly kind: 'insufficientData'; readonly needed: number; readonly got: number }
  /** no age at which both groups were watched and something recurred */
  | { readonly kind: 'notComparable' }
  /** every vehicle recurred exactly alike: there is no spread to judge the difference by */
  | { readonly kind: 'noSpread'; readonly difference: number };

/**
 * Whether one group of vehicles has more recurrences than another: difference of the mean cumulative functions at the
 * last age common to both, by the sum of their robust variances. One age only, so that it is one test and not many.
 *
 * @param first   histories of the first group
 * @param second  of the second
 * @param level   two-sided, of the limits along the curve; default 0.95
 * @returns the test with the whole curve of differences (first less second), or why there is none
 * @throws RangeError as fleetRecurrence does; where a group is too small only on a level outside (0, 1)
 * @source Doganaksoy & Nelson (1998), Lifetime Data Analysis 4:51-63; Nelson (2003), Recurrent Events Data Analysis, ch. 6
 * @oracle worked by hand in the spec
 * @example compareRecurrences([], []) // => { kind: 'insufficientData', needed: 2, got: 0 }
 */
export function compareRecurrences(
  first: readonly UnitHistory[],
  second: readonly UnitHistory[],
  level = 0.95,
): RecurrenceComparison {
  if (!(level > 0 && level < 1))
    throw new RangeError(`level must lie strictly between 0 and 1, got ${level}`);
  const got = Math.min(
    ...[first, second].map((group) => group.filter(({ spans }) => spans.length > 0).length),
  );
  if (got < 2) return { kind: 'insufficientData', needed: 2, got };
  const curve = meanCumulativeDifference(
    recurrenceColumns(first).sample,
    recurrenceColumns(second).sample,
    level,
  );
  if (curve.kind === 'notComparable') return curve;
  const difference = curve.difference.at(-1) ?? 0;
  const standardError = curve.standardErrors.at(-1) ?? null;
  if (standardError === null || !(standardError > 0)) return { kind: 'noSpread', difference };
  const statistic = difference / standardError;
  const pValue = Math.min(1, 2 * normalSurvival(Math.abs(statistic)));
  return { kind: 'tested', curve, difference, standardError, statistic, pValue };
}
