import { compareQuantities } from '../quantities/compare-quantities.js';
import type { Quantity } from '../quantities/quantity.js';

/** What a go/no-go pair of blades says about a gap. */
export const bladePairGrades = ['pass', 'tooSmall', 'tooLarge', 'undecided', 'contradictory'] as const;

/** A grade of `bladePairGrades`. */
export type BladePairGrade = (typeof bladePairGrades)[number];

/**
 * A reading with blades: the largest blade at which the state still held (switch still closed), and the smallest at which
 * it had changed (switch open). Null where no blade of the set showed it. The two are kept, never averaged.
 */
export interface BladePair {
  readonly largestHolding: Quantity | null;
  readonly smallestChanged: Quantity | null;
}

/** Two edges of a window of gaps. */
export interface GapWindow {
  readonly lower: Quantity;
  readonly upper: Quantity;
}

/**
 * Grades a pair of blades against a window, simple acceptance, in this order:
 * 1. largest holding at or above smallest changed: `contradictory` (dirty contact, or play), whatever the values;
 * 2. smallest changed at or below the lower edge: `tooSmall`;
 * 3. largest holding at or above the upper edge: `tooLarge`;
 * 4. holding at the lower edge or beyond, and changed at the upper edge or before: `pass`;
 * 5. anything else: `undecided`, use the two blades of the edges.
 * On an edge itself the gap lies on or outside the window, so steps 2 and 3 fail it (judgement: setting again is quick).
 *
 * @param pair    blades, at least one of the two known
 * @param window  permitted gap, lower edge below upper edge
 * @returns the grade
 * @throws RangeError when no blade is known, on a value that is no length, on a window with its edges exchanged
 * @source common practice for a switch that closes on a gap, no published source
 * @example gradeBladePair(
 *   { largestHolding: { value: '0.05', unit: 'mm' }, smallestChanged: { value: '0.10', unit: 'mm' } },
 *   { lower: { value: '0.05', unit: 'mm' }, upper: { value: '0.10', unit: 'mm' } }) // => 'pass'
 */
export function gradeBladePair(pair: BladePair, window: GapWindow): BladePairGrade {
  const { largestHolding: largest, smallestChanged: smallest } = pair;
  if (largest === null && smallest === null) throw new RangeError('a pair needs at least one blade');
  if (order(window.lower, window.upper) !== 'less')
    throw new RangeError('the lower edge lies below the upper edge');
  if (largest !== null && smallest !== null && order(largest, smallest) !== 'less') return 'contradictory';
  if (smallest !== null && order(smallest, window.lower) !== 'greater') return 'tooSmall';
  if (largest !== null && order(largest, window.upper) !== 'less') return 'tooLarge';
  const isHolding = largest !== null && order(largest, window.lower) !== 'less';
  const isChanged = smallest !== null && order(smallest, window.upper) !== 'greater';
  return isHolding && isChanged ? 'pass' : 'undecided';
}

/**
 * Order of two gaps, exactly as written.
 *
 * @param first   a length
 * @param second  a length
 * @returns order of the first against the second
 * @throws RangeError on a value that is no length
 * @source as `compareQuantities`
 */
export function orderOfGaps(first: Quantity, second: Quantity): 'less' | 'equal' | 'greater' {
  const comparison = compareQuantities(first, second, 'length');
  if (comparison.kind !== 'compared') throw new RangeError(`not a gap: ${comparison.kind}`);
  return comparison.order;
}

const order = orderOfGaps;
