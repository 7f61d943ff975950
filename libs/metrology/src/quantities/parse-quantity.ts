import { toCanonical } from './convert-quantity.js';
import { parseDecimalText } from './parse-decimal-text.js';
import type { Quantity, QuantityRefusal } from './quantity.js';
import type { QuantityKind } from './quantity-kind.js';
import { quantityKindTable } from './quantity-kind.js';
import { isUnitCode } from './unit-code.js';

/** A checked quantity with its canonical form, or why it is none. */
export type QuantityResult =
  { readonly kind: 'quantity'; readonly quantity: Quantity; readonly canonical: Quantity } | QuantityRefusal;

/**
 * Checks a value and a unit that come from outside, for one kind of quantity. The unit is never guessed.
 *
 * @param value  decimal text as entered
 * @param unit   text that should be a unit code of the kind
 * @param kind   what it is a value of
 * @returns the quantity as entered (minus zero without its sign) and in the canonical unit, or the refusal
 * @source as `convertQuantity`
 * @example parseQuantity('30', '[psi]', 'length').kind // => 'wrongKindOfUnit'
 */
export function parseQuantity(value: string, unit: string, kind: QuantityKind): QuantityResult {
  const allowed = quantityKindTable[kind].units;
  if (!isUnitCode(unit) || !allowed.includes(unit)) {
    return { kind: 'wrongKindOfUnit', unit: unit.slice(0, 64), quantityKind: kind, allowed };
  }
  const parsed = parseDecimalText(value);
  if (parsed.kind !== 'decimal') return parsed;
  const quantity: Quantity = { value: parsed.text, unit };
  const canonical = toCanonical(quantity, kind);
  if (canonical.kind !== 'converted') return canonical;
  return { kind: 'quantity', quantity, canonical: { value: canonical.value, unit: canonical.unit } };
}
