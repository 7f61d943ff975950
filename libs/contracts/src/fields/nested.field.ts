import { Type } from 'class-transformer';
import { ValidateNested } from 'class-validator';
import { field, type FieldOptions } from './field.js';
import type { FieldClass } from './json-schema.js';
import { isRecord } from './rule.js';

/** An object with fields of its own. The class is named late, so that classes may refer to each other. */
export const NestedField = (
  options: FieldOptions & { readonly type: () => FieldClass },
): PropertyDecorator => {
  const { type } = options;
  return field(options, {
    schema: (names) => names.ofClass(type()),
    rules: [{ name: 'object', detail: 'must be an object', test: isRecord }],
    shape: { kind: 'object', type },
    also: [ValidateNested(), Type(() => type())],
  });
};
