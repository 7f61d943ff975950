import { Decimal } from 'decimal.js';

/**
 * Decimal arithmetic wide enough that sums and products of entered texts and unit factors are exact. Only a division
 * that does not end is cut, far behind the last digit that is ever shown.
 */
export const ExactDecimal = Decimal.clone({ precision: 200, rounding: Decimal.ROUND_HALF_EVEN });

/** An exact decimal number. */
export type ExactDecimal = Decimal;

/** Significant digits of a converted value; more are never written. */
export const convertedSignificantDigits = 24;

/** A fraction of two exact decimals, so that comparing needs no division. */
export interface ExactFraction {
  readonly numerator: ExactDecimal;
  readonly denominator: ExactDecimal;
}

/**
 * Writes an exact number as plain decimal text, rounded half to even at 24 significant digits.
 *
 * @param value  finite decimal
 * @returns text without exponent, without trailing zeros, never "-0"
 */
export function toDecimalText(value: ExactDecimal): string {
  const text = value.toSignificantDigits(convertedSignificantDigits, Decimal.ROUND_HALF_EVEN).toFixed();
  return text === '-0' ? '0' : text;
}
