import { insufficientData, type InsufficientData } from '../descriptive/outcomes.js';
import { chiSquareQuantile } from '../distributions/chi-square.js';
import { requireCount, requireFinite } from '../distributions/checked-arguments.js';
import { tailProbability, upperProbability } from '../inference/confidence-level.js';
import type { Interval } from '../inference/interval.js';

export const expectationFindings = ['moreThanExpected', 'fewerThanExpected', 'withinChance'] as const;
export type ExpectationFinding = (typeof expectationFindings)[number];

export interface ObservedToExpected {
  readonly kind: 'estimated';
  readonly observed: number;
  readonly expected: number;
  /** observed / expected. */
  readonly ratio: number;
  readonly interval: Interval;
  /** Whether 1 lies inside the interval; exactly on a limit is inside. */
  readonly finding: ExpectationFinding;
}

export type ObservedToExpectedOutcome =
  | ObservedToExpected
  /** Events where the reference says there can be none. */
  | { readonly kind: 'nothingExpected'; readonly observed: number }
  | InsufficientData;

/** Exact (Garwood) limits for the mean of a Poisson count. */
function poissonMeanInterval(count: number, confidence: number): Interval {
  return {
    lower: count === 0 ? 0 : chiSquareQuantile(tailProbability(confidence), 2 * count) / 2,
    upper: chiSquareQuantile(upperProbability(confidence), 2 * count + 2) / 2,
  };
}

/**
 * Observed events against the number expected for the same mix, with an exact Poisson interval for the ratio. The
 * expected number counts as known: its own doubt, from the reference it comes from, is not in the interval.
 *
 * @param observed  whole number of events
 * @param expected  0 or more, as `expectedCount` gives it
 * @param confidence  two-sided level, strictly between 0 and 1; default 0.95
 * @returns ratio, interval and finding; the lower limit is 0 without an event. `insufficientData` when nothing was
 *   expected and nothing seen, `nothingExpected` when something was.
 * @throws RangeError on an observed number that is not whole, a negative expected one, a level outside (0, 1)
 * @source Garwood (1936), Biometrika 28:437–442; Breslow & Day (1987), Statistical Methods in Cancer Research II, sec. 2.3
 * @oracle chi-square quantiles of SciPy in the spec; test/oracles/statistics-regression/generate.R (poisson.test)
 * @example observedToExpected(0, 0) // => { kind: 'insufficientData', of: 'expectedEvents', needed: 1, got: 0 }
 */
export function observedToExpected(
  observed: number,
  expected: number,
  confidence = 0.95,
): ObservedToExpectedOutcome {
  requireCount('observed', observed);
  requireFinite('expected', expected);
  if (expected < 0) throw new RangeError(`expected must be 0 or more, got ${expected}`);
  const { lower, upper } = poissonMeanInterval(observed, confidence);
  if (expected === 0) {
    return observed === 0 ? insufficientData('expectedEvents', 1, 0) : { kind: 'nothingExpected', observed };
  }
  const interval = { lower: lower / expected, upper: upper / expected };
  return {
    kind: 'estimated',
    observed,
    expected,
    ratio: observed / expected,
    interval,
    finding:
      interval.lower > 1 ? 'moreThanExpected' : interval.upper < 1 ? 'fewerThanExpected' : 'withinChance',
  };
}
