import { field, type FieldOptions } from './field.js';
import { value } from './value-shape.js';

export interface IntegerLimits {
  readonly min?: number;
  readonly max?: number;
}

const int32Max = 2 ** 31 - 1;

/** Whole number, 0 to 2^31 - 1 unless told; never beyond 2^53 - 1. */
export const IntegerField = (options: FieldOptions & IntegerLimits): PropertyDecorator => {
  const { min = 0, max = int32Max } = options;
  const format = max <= int32Max && min >= -int32Max - 1 ? 'int32' : 'int64';
  return field(options, {
    schema: () => ({ type: 'integer', format, minimum: min, maximum: max }),
    rules: [
      { name: 'integer', detail: 'must be a whole number', test: (given) => Number.isSafeInteger(given) },
      {
        name: 'range',
        detail: `must be from ${min} to ${max}`,
        test: (given) => typeof given === 'number' && given >= min && given <= max,
      },
    ],
    shape: value,
  });
};
