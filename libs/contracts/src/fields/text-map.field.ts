import { field, type FieldOptions } from './field.js';
import { mapKind } from './map.js';
import { textRules, textSchema, type TextLimits } from './text.js';

/** Names are camelCase, so that they read like the members beside them. */
const names = '^[a-z][A-Za-z0-9]*$';

/** Named pieces of text, such as the conditions a reading was taken under. */
export const TextMapField = (
  options: FieldOptions & TextLimits & { readonly maxEntries: number },
): PropertyDecorator =>
  field(
    options,
    mapKind({
      max: options.maxEntries,
      names,
      item: () => textSchema(options),
      rules: textRules(options),
    }),
  );
