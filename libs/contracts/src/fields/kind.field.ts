import { field } from './field.js';
import { value } from './value-shape.js';

/** The member that tells the classes of a union apart: exactly one value. */
export const KindField = (kind: string, description = 'which case this is'): PropertyDecorator =>
  field(
    { description },
    {
      schema: () => ({ type: 'string', enum: [kind] }),
      rules: [{ name: 'kind', detail: `must be ${kind}`, test: (given) => given === kind }],
      shape: value,
    },
  );
