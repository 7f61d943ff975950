import { field, type FieldOptions } from './field.js';
import type { JsonSchema, SchemaNames } from './json-schema.js';
import type { Rule } from './rule.js';
import { value } from './value-shape.js';

export interface EnumChoice {
  /** The tuple of the room that owns the notion. */
  readonly values: readonly string[];
  /** Name of the component in the document. */
  readonly enumName: string;
  /** Values may be added within a version: clients must accept ones they do not know in answers. */
  readonly open?: boolean;
}

export function enumSchema({ values, enumName, open = false }: EnumChoice, names: SchemaNames): JsonSchema {
  return names.ofSchema(enumName, {
    type: 'string',
    enum: values,
    ...(open
      ? { 'x-open-enum': true, description: 'Values may be added; accept unknown ones in answers.' }
      : {}),
  });
}

export function enumRule({ values }: EnumChoice): Rule {
  const known = new Set<unknown>(values);
  return {
    name: 'oneOf',
    detail: `must be one of ${values.slice(0, 40).join(', ')}`,
    test: (given) => known.has(given),
  };
}

/** One value of a fixed list. */
export const EnumField = (options: FieldOptions & EnumChoice): PropertyDecorator =>
  field(options, { schema: (names) => enumSchema(options, names), rules: [enumRule(options)], shape: value });
