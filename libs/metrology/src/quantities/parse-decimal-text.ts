/** Digits a decimal text from outside may have, sign and point not counted. */
export const maximumDecimalDigits = 18;

/** Digits that are still computed with exactly: what conversion itself writes may come back in. */
export const maximumComputedDigits = 40;

/** Result of reading a decimal text. */
export type DecimalTextResult =
  | { readonly kind: 'decimal'; readonly text: string }
  | { readonly kind: 'notDecimal'; readonly text: string }
  | { readonly kind: 'tooManyDigits'; readonly digits: number; readonly allowed: number };

const decimalGrammar = /^-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?$/;
const onlyZeros = /^-[0.]+$/;

/**
 * Checks a number written as text: optional minus, no leading zero, a point, no exponent, no plus, no spaces, no comma.
 * Trailing zeros stay, because "0.10" and "0.1" are not read off the same instrument.
 *
 * @param text           the text as entered
 * @param maximumDigits  digits allowed; 18 unless the text was computed here
 * @returns `decimal` with the same text (minus zero loses its sign), or why it is none
 * @source judgement
 * @example parseDecimalText('-0.00') // => { kind: 'decimal', text: '0.00' }
 * @example parseDecimalText('1e3') // => { kind: 'notDecimal', text: '1e3' }
 */
export function parseDecimalText(text: string, maximumDigits = maximumDecimalDigits): DecimalTextResult {
  if (!decimalGrammar.test(text)) return { kind: 'notDecimal', text: text.slice(0, 64) };
  const digits = text.replace(/[-.]/g, '').length;
  if (digits > maximumDigits) return { kind: 'tooManyDigits', digits, allowed: maximumDigits };
  return { kind: 'decimal', text: onlyZeros.test(text) ? text.slice(1) : text };
}
