import { enumRule, enumSchema, type EnumChoice } from './enum.field.js';
import { field, type FieldOptions } from './field.js';
import { isRecord } from './rule.js';
import { hasLength } from './text.js';
import { textPatterns } from './text-patterns.js';
import { value } from './value-shape.js';

export interface MapLimits {
  /** Most entries. */
  readonly max: number;
  /** Pattern of the names; catalogue ids unless told. */
  readonly names?: string;
  readonly choice: EnumChoice;
}

/** Names with one value of a fixed list each, e.g. symptoms with present, absent or not asked. */
export const MapField = (options: FieldOptions & MapLimits): PropertyDecorator => {
  const { max, names: pattern = textPatterns.catalogueId, choice } = options;
  const matcher = new RegExp(pattern, 'u');
  const longest = 64;
  const one = enumRule(choice);
  return field(options, {
    schema: (names) => ({
      type: 'object',
      additionalProperties: enumSchema(choice, names),
      propertyNames: { type: 'string', pattern, minLength: 1, maxLength: longest },
      maxProperties: max,
    }),
    rules: [
      { name: 'object', detail: 'must be an object', test: isRecord },
      {
        name: 'count',
        detail: `must have at most ${max} members`,
        test: (given) => isRecord(given) && Object.keys(given).length <= max,
      },
      {
        name: 'names',
        detail: `names must match ${pattern}`,
        test: (given) =>
          isRecord(given) &&
          Object.keys(given).every((name) => hasLength(name, 1, longest) && matcher.test(name)),
      },
      {
        name: one.name,
        detail: `each member ${String(one.detail)}`,
        test: (given) => isRecord(given) && Object.values(given).every(one.test),
      },
    ],
    shape: value,
  });
};
