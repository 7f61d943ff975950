import type { Quantity } from '../quantities/quantity.js';
import type { BladePair, GapWindow } from './grade-blade-pair.js';
import { gradeBladePair, orderOfGaps } from './grade-blade-pair.js';

/** Whether moving the part by hand made the companion (a switch) change: the functional criterion. */
export interface FunctionalObservation {
  readonly isPositive: boolean;
  /** The companion's closing point as found at that time; null where it was not taken. */
  readonly companion: BladePair | null;
}

/** What makes an observation valid. */
export interface FunctionalValidity {
  /** A positive counts only if the closing point is certainly at or above this gap. */
  readonly leastGapForPositive: Quantity;
  /** A negative counts only if the closing point is inside this window. */
  readonly window: GapWindow;
}

/** Why a positive does not count yet. */
export const functionalDoubts = [
  'companionMissing',
  'companionTooSmall',
  'companionContradictory',
  'companionNotCertain',
] as const;

/** A doubt of `functionalDoubts`. */
export type FunctionalDoubt = (typeof functionalDoubts)[number];

/**
 * Verdict of a functional criterion.
 * - `failed`: validly positive; outranks any number
 * - `passed`: validly negative
 * - `provisional`: negative while the companion was not in its window; satisfies a prerequisite, to be repeated afterwards
 * - `notJudged`: positive while the companion might react to next to nothing; set the companion and repeat
 */
export type FunctionalVerdict =
  | { readonly kind: 'failed'; readonly outcome: 'outside'; readonly outranksNumbers: true }
  | { readonly kind: 'passed'; readonly outcome: 'inside'; readonly satisfiesPrerequisite: true }
  | {
      readonly kind: 'provisional';
      readonly outcome: 'inside';
      readonly satisfiesPrerequisite: true;
      readonly repeatAfter: 'companionInWindow';
    }
  | { readonly kind: 'notJudged'; readonly reason: FunctionalDoubt; readonly repeatAfter: 'companionSet' };

/**
 * Judges a functional criterion given the state of its companion: "moving the shaft by hand works the switch".
 *
 * A switch set almost shut reacts to any shaft, and one set far away to none. So a positive is conclusive only if the
 * switch was still closed on a blade of the least gap or thicker; a negative only if the blade pair passes the window.
 *
 * @param observation  positive or negative, with the companion's blade pair
 * @param validity     least gap and window, lengths
 * @returns `failed`, `passed`, `provisional` or `notJudged`
 * @throws RangeError on values that are no lengths; for a negative also on a companion without a blade, or a window
 *   with its edges exchanged
 * @source common practice; the edge values are judgement
 * @example judgeFunctionalCriterion(
 *   { isPositive: true, companion: null },
 *   { leastGapForPositive: { value: '0.05', unit: 'mm' },
 *     window: { lower: { value: '0.05', unit: 'mm' }, upper: { value: '0.10', unit: 'mm' } } })
 *   // => { kind: 'notJudged', reason: 'companionMissing', repeatAfter: 'companionSet' }
 */
export function judgeFunctionalCriterion(
  { isPositive, companion }: FunctionalObservation,
  { leastGapForPositive, window }: FunctionalValidity,
): FunctionalVerdict {
  if (!isPositive) {
    return companion !== null && gradeBladePair(companion, window) === 'pass'
      ? { kind: 'passed', outcome: 'inside', satisfiesPrerequisite: true }
      : {
          kind: 'provisional',
          outcome: 'inside',
          satisfiesPrerequisite: true,
          repeatAfter: 'companionInWindow',
        };
  }
  const doubt = doubtAboutPositive(companion, leastGapForPositive);
  return doubt === null
    ? { kind: 'failed', outcome: 'outside', outranksNumbers: true }
    : { kind: 'notJudged', reason: doubt, repeatAfter: 'companionSet' };
}

function doubtAboutPositive(companion: BladePair | null, leastGap: Quantity): FunctionalDoubt | null {
  if (companion === null) return 'companionMissing';
  const { largestHolding, smallestChanged } = companion;
  if (
    largestHolding !== null &&
    smallestChanged !== null &&
    orderOfGaps(largestHolding, smallestChanged) !== 'less'
  ) {
    return 'companionContradictory';
  }
  if (largestHolding !== null && orderOfGaps(largestHolding, leastGap) !== 'less') return null;
  const isCertainlySmaller = smallestChanged !== null && orderOfGaps(smallestChanged, leastGap) !== 'greater';
  return isCertainlySmaller ? 'companionTooSmall' : 'companionNotCertain';
}
