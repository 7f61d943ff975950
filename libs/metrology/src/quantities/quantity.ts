import type { QuantityKind } from './quantity-kind.js';
import type { UnitCode } from './unit-code.js';

/** A value as it was entered: decimal text and the code of its unit. Never a float. */
export interface Quantity {
  readonly value: string;
  readonly unit: UnitCode;
}

/** A quantity in another unit; `value` is decimal text of at most 24 significant digits. */
export interface ConvertedQuantity extends Quantity {
  readonly kind: 'converted';
}

/** Why a quantity cannot be taken as a value of the kind asked for. */
export type QuantityRefusal =
  | { readonly kind: 'notDecimal'; readonly text: string }
  | { readonly kind: 'tooManyDigits'; readonly digits: number; readonly allowed: number }
  | {
      readonly kind: 'wrongKindOfUnit';
      readonly unit: string;
      readonly quantityKind: QuantityKind;
      readonly allowed: readonly UnitCode[];
    }
  | { readonly kind: 'outsidePhysicalRange'; readonly quantityKind: QuantityKind; readonly lowest: Quantity };

/** A conversion, or the reason why there is none. */
export type ConversionResult = ConvertedQuantity | QuantityRefusal;
