import { field, type FieldOptions } from './field.js';
import { textRules, textSchema, type TextLimits } from './text.js';
import { value } from './value-shape.js';

/** Text with a length in code points and a pattern; control characters and lone surrogates are refused. */
export const TextField = (options: FieldOptions & TextLimits): PropertyDecorator =>
  field(options, { schema: () => textSchema(options), rules: textRules(options), shape: value });
