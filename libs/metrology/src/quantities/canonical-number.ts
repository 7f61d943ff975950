import { toCanonical } from './convert-quantity.js';
import { ExactDecimal } from './exact-decimal.js';
import { maximumComputedDigits, parseDecimalText } from './parse-decimal-text.js';
import type { Quantity } from './quantity.js';
import type { QuantityKind } from './quantity-kind.js';
import { isUnitOfKind, quantityKindTable } from './quantity-kind.js';
import { unitTable } from './unit-table.js';

/**
 * Value of a quantity in the canonical unit of its kind, as the nearest double, for computing with.
 *
 * @param quantity  decimal text and unit, already known to be good
 * @param kind      what it is a value of
 * @returns finite number in `quantityKindTable[kind].canonical`
 * @throws RangeError where `toCanonical` refuses
 * @source as `convertQuantity`
 * @example canonicalNumber({ value: '1', unit: '[in_i]' }, 'length') // => 25.4
 */
export function canonicalNumber(quantity: Quantity, kind: QuantityKind): number {
  const converted = toCanonical(quantity, kind);
  if (converted.kind !== 'converted') {
    throw new RangeError(`not a ${kind}: ${converted.kind} (${quantity.value} ${quantity.unit})`);
  }
  return Number(converted.value);
}

/** A step on a scale in canonical units, or that the scale is not linear. */
export type StepResult =
  { readonly kind: 'step'; readonly value: number } | { readonly kind: 'scaleNotLinear' };

/**
 * Size of a *difference* (a resolution, a permissible error, a standard uncertainty) in canonical units: without the
 * offset of a temperature scale. On a reciprocal scale (distance per volume) a difference has no fixed size.
 *
 * @param step  difference as decimal text and unit, not negative
 * @param kind  what it is a difference of
 * @returns `step` in the canonical unit, or `scaleNotLinear`
 * @throws RangeError on a unit of another kind, on text that is no decimal, on a negative difference
 * @source NIST SP 811 (2008), Appendix B
 * @example canonicalStep({ value: '9', unit: '[degF]' }, 'temperature') // => { kind: 'step', value: 5 }
 */
export function canonicalStep(step: Quantity, kind: QuantityKind): StepResult {
  const exact = exactCanonicalStep(step, kind);
  return exact === null ? { kind: 'scaleNotLinear' } : { kind: 'step', value: exact.toNumber() };
}

/**
 * As `canonicalStep`, exact.
 *
 * @param step  difference as decimal text and unit, not negative
 * @param kind  what it is a difference of
 * @returns the exact size in the canonical unit, or null on a scale that is not linear
 * @throws RangeError as `canonicalStep`
 */
export function exactCanonicalStep(step: Quantity, kind: QuantityKind): ExactDecimal | null {
  if (!isUnitOfKind(kind, step.unit)) throw new RangeError(`${step.unit} is no unit of ${kind}`);
  const parsed = parseDecimalText(step.value, maximumComputedDigits);
  if (parsed.kind !== 'decimal') throw new RangeError(`not a decimal number: ${step.value.slice(0, 64)}`);
  const value = new ExactDecimal(parsed.text);
  if (value.isNegative()) throw new RangeError(`a difference is not negative: ${step.value}`);
  const from = unitTable[step.unit];
  const to = unitTable[quantityKindTable[kind].canonical];
  if (from.isReciprocal !== to.isReciprocal) return null;
  return value.times(from.numerator).times(to.denominator).div(to.numerator).div(from.denominator);
}
