import type { FieldKind } from './field.js';
import type { JsonSchema, SchemaNames } from './json-schema.js';
import { isRecord, type Rule } from './rule.js';
import { hasLength } from './text.js';
import { value } from './value-shape.js';

export interface MapLimits {
  /** Most members. */
  readonly max: number;
  /** Anchored pattern of their names. */
  readonly names: string;
  /** Schema of what each member holds. */
  readonly item: (names: SchemaNames) => JsonSchema;
  /** Rules that each member must keep. */
  readonly rules: readonly Rule[];
}

const longestName = 64;

/** The kind of field whose members are named by the caller, all holding the same kind of value. */
export function mapKind({ max, names: pattern, item, rules }: MapLimits): FieldKind {
  const matcher = new RegExp(pattern, 'u');
  const isName = (name: string) => hasLength(name, 1, longestName) && matcher.test(name);
  const holds = (test: (given: Record<string, unknown>) => boolean) => (given: unknown) =>
    isRecord(given) && test(given);
  return {
    schema: (names) => ({
      type: 'object',
      additionalProperties: item(names),
      propertyNames: { type: 'string', pattern, minLength: 1, maxLength: longestName },
      maxProperties: max,
    }),
    rules: [
      { name: 'object', detail: 'must be an object', test: isRecord },
      {
        name: 'count',
        detail: `must have at most ${max} members`,
        test: holds((given) => Object.keys(given).length <= max),
      },
      {
        name: 'names',
        detail: `names must match ${pattern}`,
        test: holds((given) => Object.keys(given).every(isName)),
      },
      ...rules.map(({ name, detail, test }) => ({
        name,
        detail: `each member ${typeof detail === 'string' ? detail : 'must keep its rule'}`,
        test: holds((given) => Object.values(given).every(test)),
      })),
    ],
    shape: value,
  };
}
