import type { ExactFraction } from './exact-decimal.js';
import { ExactDecimal, toDecimalText } from './exact-decimal.js';
import { maximumComputedDigits, parseDecimalText } from './parse-decimal-text.js';
import type { ConversionResult, Quantity, QuantityRefusal } from './quantity.js';
import type { QuantityKind } from './quantity-kind.js';
import { quantityKindTable } from './quantity-kind.js';
import type { UnitCode } from './unit-code.js';
import type { UnitDefinition } from './unit-table.js';
import { unitTable } from './unit-table.js';

const refuseUnit = (unit: string, quantityKind: QuantityKind): QuantityRefusal => ({
  kind: 'wrongKindOfUnit',
  unit,
  quantityKind,
  allowed: quantityKindTable[quantityKind].units,
});

/** Only a temperature on a scale has an offset; a difference of temperatures has none. */
const shiftOf = (definition: UnitDefinition, kind: QuantityKind): ExactDecimal =>
  new ExactDecimal(kind === 'temperature' ? definition.shift : '0');

function toBase(value: ExactDecimal, unit: UnitCode, kind: QuantityKind): ExactFraction {
  const definition = unitTable[unit];
  if (definition.isReciprocal) {
    return {
      numerator: new ExactDecimal(definition.numerator),
      denominator: value.times(definition.denominator),
    };
  }
  return {
    numerator: value.plus(shiftOf(definition, kind)).times(definition.numerator),
    denominator: new ExactDecimal(definition.denominator),
  };
}

/** Value in a unit of a fraction of the base unit; cut only where a division does not end. */
export function fractionFromBase(base: ExactFraction, unit: UnitCode, kind: QuantityKind): ExactDecimal {
  const definition = unitTable[unit];
  if (definition.isReciprocal) {
    return base.denominator.times(definition.numerator).div(base.numerator.times(definition.denominator));
  }
  return base.numerator
    .times(definition.denominator)
    .div(base.denominator.times(definition.numerator))
    .minus(shiftOf(definition, kind));
}

/** A quantity read as an exact fraction of the base unit, or the reason why it cannot be. */
export type BaseResult = { readonly kind: 'base'; readonly fraction: ExactFraction } | QuantityRefusal;

/**
 * Exact value of a quantity in the base unit of its dimension, as a fraction.
 *
 * @param quantity  decimal text and unit
 * @param kind      what it is a value of
 * @returns the fraction, or the refusal
 */
export function quantityInBase(quantity: Quantity, kind: QuantityKind): BaseResult {
  const definition = quantityKindTable[kind];
  if (!definition.units.includes(quantity.unit)) return refuseUnit(quantity.unit, kind);
  const parsed = parseDecimalText(quantity.value, maximumComputedDigits);
  if (parsed.kind !== 'decimal') return parsed;
  const value = new ExactDecimal(parsed.text);
  const isReciprocal = unitTable[quantity.unit].isReciprocal;
  const outside: QuantityRefusal = {
    kind: 'outsidePhysicalRange',
    quantityKind: kind,
    lowest: { value: definition.lowest ?? '0', unit: definition.canonical },
  };
  if (isReciprocal && !value.gt(0)) return outside;
  const fraction = toBase(value, quantity.unit, kind);
  if (definition.lowest !== null) {
    const lowest = toBase(new ExactDecimal(definition.lowest), definition.canonical, kind);
    if (compareFractions(fraction, lowest) < 0) return outside;
  }
  return { kind: 'base', fraction };
}

/** Sign of a - b for fractions with positive denominators. */
export function compareFractions(a: ExactFraction, b: ExactFraction): -1 | 0 | 1 {
  return a.numerator.times(b.denominator).cmp(b.numerator.times(a.denominator)) as -1 | 0 | 1;
}

/**
 * A quantity in another unit of the same kind.
 *
 * Rounding rule: computed exactly as a fraction, then written with at most 24 significant digits, half to even; a
 * result that needs fewer digits is exact. Entered values have at most 18 digits, so a value converted there and back
 * and rounded to 18 significant digits is the value entered. What comes from outside is held to 18 digits by
 * `parseQuantity`; here up to 40 are taken, so that a converted value can be converted on.
 *
 * @param quantity  decimal text and unit, as entered
 * @param kind      what it is a value of; gauge pressure, absolute pressure and vacuum are different kinds
 * @param unit      unit wanted
 * @returns `converted`, or why not: `wrongKindOfUnit`, `notDecimal`, `tooManyDigits`, `outsidePhysicalRange`
 *   (below absolute zero, a negative absolute pressure or vacuum, a consumption given as zero distance per volume)
 * @source NIST SP 811 (2008), Appendix B
 * @oracle test/oracles/metrology/unit-table.spec.ts
 * @example convertQuantity({ value: '0.0625', unit: '[in_i]' }, 'length', 'mm')
 *   // => { kind: 'converted', value: '1.5875', unit: 'mm' }
 */
export function convertQuantity(quantity: Quantity, kind: QuantityKind, unit: UnitCode): ConversionResult {
  if (!quantityKindTable[kind].units.includes(unit)) return refuseUnit(unit, kind);
  const base = quantityInBase(quantity, kind);
  if (base.kind !== 'base') return base;
  if (unitTable[unit].isReciprocal && base.fraction.numerator.isZero()) {
    return {
      kind: 'outsidePhysicalRange',
      quantityKind: kind,
      lowest: { value: '0', unit: quantityKindTable[kind].canonical },
    };
  }
  return { kind: 'converted', value: toDecimalText(fractionFromBase(base.fraction, unit, kind)), unit };
}

/**
 * A quantity in the canonical unit of its kind.
 *
 * @param quantity  decimal text and unit, as entered
 * @param kind      what it is a value of
 * @returns as `convertQuantity`
 * @source as `convertQuantity`
 * @example toCanonical({ value: '1', unit: '[mi_i]' }, 'distance')
 *   // => { kind: 'converted', value: '1.609344', unit: 'km' }
 */
export function toCanonical(quantity: Quantity, kind: QuantityKind): ConversionResult {
  return convertQuantity(quantity, kind, quantityKindTable[kind].canonical);
}
