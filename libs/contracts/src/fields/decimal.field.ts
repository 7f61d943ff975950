import { field, type FieldOptions } from './field.js';
import { textRules, textSchema, type TextLimits } from './text.js';
import { value } from './value-shape.js';

export interface DecimalLimits {
  /** Most digits before the point; 9 unless told, which with 9 after it fits what metrology reads. */
  readonly integerDigits?: number;
  /** Most digits after the point; 9 unless told. */
  readonly scale?: number;
  /** Negative values are admitted; not unless told. */
  readonly signed?: boolean;
}

/** Text limits of an exact decimal number: no exponent, no leading zeros, no plus sign. */
export function decimalText({
  integerDigits = 9,
  scale = 9,
  signed = false,
}: DecimalLimits = {}): TextLimits {
  const whole = `(?:0|[1-9][0-9]{0,${integerDigits - 1}})`;
  const fraction = scale > 0 ? `(?:\\.[0-9]{1,${scale}})?` : '';
  return {
    max: integerDigits + (scale > 0 ? scale + 1 : 0) + (signed ? 1 : 0),
    pattern: `^${signed ? '-?' : ''}${whole}${fraction}$`,
  };
}

/** Exact number as decimal text. The limits fit the column it is stored in. */
export const DecimalField = (options: FieldOptions & DecimalLimits): PropertyDecorator => {
  const text = decimalText(options);
  return field(options, { schema: () => textSchema(text), rules: textRules(text), shape: value });
};
