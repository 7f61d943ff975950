import type { VerdictThresholds } from '../limits/limit.js';
import { ExactDecimal } from '../quantities/exact-decimal.js';
import type { ResolvedBound } from '../limits/resolve-bounds.js';
import type { VerdictOutcome } from './verdict.js';

/** A probability this close to a threshold has reached it; absorbs the last bits of floating point. */
const thresholdTolerance = 1e-9;

/**
 * Three-way outcome of a probability.
 *
 * @param probabilityInside  between 0 and 1, not checked
 * @param thresholds         inside at or above the one, outside at or below the other, to 1e-9
 * @returns inside, outside or undecided
 * @source JCGM 106:2012, 8.3 (guarded acceptance and guarded rejection)
 * @example outcomeOfProbability(0.95, { inside: 0.95, outside: 0.05 }) // => 'inside'
 */
export function outcomeOfProbability(
  probabilityInside: number,
  thresholds: VerdictThresholds,
): VerdictOutcome {
  if (probabilityInside >= thresholds.inside - thresholdTolerance) return 'inside';
  return probabilityInside <= thresholds.outside + thresholdTolerance ? 'outside' : 'undecided';
}

/**
 * Compares a bare value with edges, exactly.
 *
 * @param value  exact value in the unit of the edges
 * @param lower  lower edge or null
 * @param upper  upper edge or null
 * @returns inside or outside; `onUnclearEdge` for a value exactly on an edge whose source can be read both ways
 */
export function outcomeAtFaceValue(
  value: ExactDecimal,
  lower: ResolvedBound | null,
  upper: ResolvedBound | null,
): 'inside' | 'outside' | 'onUnclearEdge' {
  const edges = [
    ...(lower === null
      ? []
      : [{ beyond: new ExactDecimal(lower.value).cmp(value), isInclusive: lower.isInclusive }]),
    ...(upper === null ? [] : [{ beyond: value.cmp(upper.value), isInclusive: upper.isInclusive }]),
  ];
  if (edges.some(({ beyond, isInclusive }) => beyond > 0 || (beyond === 0 && isInclusive === false)))
    return 'outside';
  return edges.some(({ beyond, isInclusive }) => beyond === 0 && isInclusive === null)
    ? 'onUnclearEdge'
    : 'inside';
}
