import { field, type FieldOptions } from './field.js';
import { isRecord } from './rule.js';
import { hasLength, textRules, textSchema, type TextLimits } from './text.js';
import { value } from './value-shape.js';

/** Names are camelCase, so that they read like the members beside them. */
const namePattern = '^[a-z][A-Za-z0-9]*$';
const nameMatcher = new RegExp(namePattern, 'u');
const longestName = 64;

/** Named pieces of text, such as the conditions a reading was taken under. */
export const TextMapField = (
  options: FieldOptions & TextLimits & { readonly maxEntries: number },
): PropertyDecorator => {
  const { maxEntries } = options;
  return field(options, {
    schema: () => ({
      type: 'object',
      additionalProperties: textSchema(options),
      propertyNames: { type: 'string', pattern: namePattern, minLength: 1, maxLength: longestName },
      maxProperties: maxEntries,
    }),
    rules: [
      { name: 'object', detail: 'must be an object', test: isRecord },
      {
        name: 'count',
        detail: `must have at most ${maxEntries} members`,
        test: (given) => isRecord(given) && Object.keys(given).length <= maxEntries,
      },
      {
        name: 'names',
        detail: `names must match ${namePattern}`,
        test: (given) =>
          isRecord(given) &&
          Object.keys(given).every((name) => hasLength(name, 1, longestName) && nameMatcher.test(name)),
      },
      ...textRules(options).map((rule) => ({
        name: rule.name,
        detail: `each member ${typeof rule.detail === 'string' ? rule.detail : 'must be text'}`,
        test: (given: unknown) => isRecord(given) && Object.values(given).every(rule.test),
      })),
    ],
    shape: value,
  });
};
