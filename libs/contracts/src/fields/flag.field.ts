import { field, type FieldOptions } from './field.js';
import { value } from './value-shape.js';

/** Yes or no, as a JSON boolean; the name of the member is positive. */
export const FlagField = (options: FieldOptions): PropertyDecorator =>
  field(options, {
    schema: () => ({ type: 'boolean' }),
    rules: [{ name: 'flag', detail: 'must be true or false', test: (given) => typeof given === 'boolean' }],
    shape: value,
  });
