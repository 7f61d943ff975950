import { ExactDecimal, toDecimalText } from './exact-decimal.js';
import { parseDecimalText } from './parse-decimal-text.js';
import type { UnitCode } from './unit-code.js';

/** A reading as written on the bench: the text is kept, the value is exact decimal text. */
export type ReadingTextResult =
  | {
      readonly kind: 'reading';
      readonly asEntered: string;
      readonly value: string;
      readonly form: 'decimal' | 'fraction';
      /** The step the fraction was read to, in the same unit; null for a decimal. */
      readonly step: string | null;
    }
  | { readonly kind: 'notAReading'; readonly asEntered: string }
  | { readonly kind: 'fractionNotOfInches'; readonly asEntered: string; readonly unit: UnitCode }
  | { readonly kind: 'tooManyDigits'; readonly digits: number; readonly allowed: number };

const fractionGrammar = /^(?:(0|[1-9][0-9]{0,3}) )?([1-9][0-9]{0,2})\/(2|4|8|16|32|64|128)$/;

/**
 * Reads what is written on the bench: a decimal ("1.6"), or for inches a fraction as on a rule ("2/32", "4 1/4").
 * The fraction's denominator is a power of two up to 128, so its decimal value is exact.
 *
 * @param text  as entered; outer spaces are ignored
 * @param unit  unit the text is in; a fraction is read for `[in_i]` only
 * @returns `reading` with the text kept (its first 64 characters) and the exact value, or why it is none (a decimal
 *   comma is not guessed at, a fraction has no minus)
 * @source common practice, no published source
 * @example parseReadingText('2/32', '[in_i]')
 *   // => { kind: 'reading', asEntered: '2/32', value: '0.0625', form: 'fraction', step: '0.03125' }
 */
export function parseReadingText(text: string, unit: UnitCode): ReadingTextResult {
  const asEntered = text.trim().slice(0, 64);
  const fraction = fractionGrammar.exec(asEntered);
  if (fraction === null) {
    const parsed = parseDecimalText(asEntered);
    if (parsed.kind === 'decimal') {
      return { kind: 'reading', asEntered, value: parsed.text, form: 'decimal', step: null };
    }
    return parsed.kind === 'tooManyDigits' ? parsed : { kind: 'notAReading', asEntered };
  }
  if (unit !== '[in_i]') return { kind: 'fractionNotOfInches', asEntered, unit };
  const [, whole = '0', over, under] = fraction;
  const step = new ExactDecimal(1).div(under!);
  return {
    kind: 'reading',
    asEntered,
    value: toDecimalText(new ExactDecimal(whole).plus(step.times(over!))),
    form: 'fraction',
    step: toDecimalText(step),
  };
}
