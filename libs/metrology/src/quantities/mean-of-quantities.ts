import { fractionFromBase, quantityInBase } from './convert-quantity.js';
import type { ExactFraction } from './exact-decimal.js';
import { ExactDecimal, toDecimalText } from './exact-decimal.js';
import type { ConversionResult, Quantity } from './quantity.js';
import type { QuantityKind } from './quantity-kind.js';
import { quantityKindTable } from './quantity-kind.js';
import { unitTable } from './unit-table.js';

/**
 * Arithmetic mean of quantities of one kind in its canonical unit. The sum is exact, so neither the order of the
 * quantities nor the mixture of their units matters. Consumption is averaged as volume per distance.
 *
 * @param quantities  at least one
 * @param kind        what they are values of
 * @returns `converted` mean in the canonical unit, or the refusal of the first quantity that is refused
 * @throws RangeError on an empty list
 * @source definition
 * @example meanOfQuantities([{ value: '0.17', unit: 'mm' }, { value: '0.18', unit: 'mm' }], 'length')
 *   // => { kind: 'converted', value: '0.175', unit: 'mm' }
 */
export function meanOfQuantities(quantities: readonly Quantity[], kind: QuantityKind): ConversionResult {
  if (quantities.length === 0) throw new RangeError('a mean needs at least one quantity');
  let sum: ExactFraction = { numerator: new ExactDecimal(0), denominator: new ExactDecimal(1) };
  for (const quantity of quantities) {
    const base = quantityInBase(quantity, kind);
    if (base.kind !== 'base') return base;
    sum = addFractions(sum, base.fraction);
  }
  const unit = quantityKindTable[kind].canonical;
  if (unitTable[unit].isReciprocal) throw new RangeError(`the canonical unit of ${kind} is reciprocal`);
  const mean = { numerator: sum.numerator, denominator: sum.denominator.times(quantities.length) };
  return { kind: 'converted', value: toDecimalText(fractionFromBase(mean, unit, kind)), unit };
}

/** Fractions over the same denominator stay over it, so that the digits do not grow with the number of readings. */
function addFractions(a: ExactFraction, b: ExactFraction): ExactFraction {
  if (a.numerator.isZero()) return b;
  if (a.denominator.eq(b.denominator)) {
    return { numerator: a.numerator.plus(b.numerator), denominator: a.denominator };
  }
  return {
    numerator: a.numerator.times(b.denominator).plus(b.numerator.times(a.denominator)),
    denominator: a.denominator.times(b.denominator),
  };
}
