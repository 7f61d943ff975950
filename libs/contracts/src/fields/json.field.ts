import { field, type FieldOptions } from './field.js';
import { isRecord } from './rule.js';
import { value } from './value-shape.js';

/** A stored document whose members its own version defines, such as the recorded inputs of a calculation. */
export const JsonField = (options: FieldOptions & { readonly maxMembers?: number }): PropertyDecorator => {
  const { maxMembers = 1000 } = options;
  return field(options, {
    schema: () => ({ type: 'object', additionalProperties: {}, maxProperties: maxMembers }),
    rules: [
      { name: 'object', detail: 'must be an object', test: isRecord },
      {
        name: 'count',
        detail: `must have at most ${maxMembers} members`,
        test: (given) => isRecord(given) && Object.keys(given).length <= maxMembers,
      },
    ],
    shape: value,
  });
};
