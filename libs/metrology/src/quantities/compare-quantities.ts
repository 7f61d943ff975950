import { compareFractions, quantityInBase } from './convert-quantity.js';
import type { Quantity, QuantityRefusal } from './quantity.js';
import type { QuantityKind } from './quantity-kind.js';

/** Order of two quantities, or why they cannot be compared. */
export type ComparisonResult =
  { readonly kind: 'compared'; readonly order: 'less' | 'equal' | 'greater' } | QuantityRefusal;

const orders = { '-1': 'less', '0': 'equal', '1': 'greater' } as const;

/**
 * Compares two quantities of one kind exactly, as they were written: nothing is rounded on the way, so 2/32 in (0.0625
 * in) stays below 1.6 mm and above 1.58 mm.
 *
 * @param first   decimal text and unit
 * @param second  decimal text and unit, possibly another unit
 * @param kind    what both are values of
 * @returns the order of the first against the second in the sense of the kind's canonical unit (a van that runs 20 miles
 *   per gallon has the *greater* consumption than one that runs 30), or the refusal of the first that is refused
 * @source exact fractions of the factors of `convertQuantity`
 * @example compareQuantities({ value: '0.0625', unit: '[in_i]' }, { value: '1.6', unit: 'mm' }, 'length')
 *   // => { kind: 'compared', order: 'less' }
 */
export function compareQuantities(first: Quantity, second: Quantity, kind: QuantityKind): ComparisonResult {
  const a = quantityInBase(first, kind);
  if (a.kind !== 'base') return a;
  const b = quantityInBase(second, kind);
  if (b.kind !== 'base') return b;
  return { kind: 'compared', order: orders[`${compareFractions(a.fraction, b.fraction)}`] };
}
