import { field, type FieldOptions } from './field.js';
import { value } from './value-shape.js';

export interface NumberLimits {
  readonly min?: number;
  readonly max?: number;
}

/** Finite binary number: computed figures such as probabilities and slopes. What must be exact is a `DecimalField`. */
export const NumberField = (options: FieldOptions & NumberLimits): PropertyDecorator => {
  const { min, max } = options;
  return field(options, {
    schema: () => ({
      type: 'number',
      format: 'double',
      ...(min === undefined ? {} : { minimum: min }),
      ...(max === undefined ? {} : { maximum: max }),
    }),
    rules: [
      { name: 'number', detail: 'must be a finite number', test: (given) => Number.isFinite(given) },
      {
        name: 'range',
        detail: `must be from ${min ?? 'any'} to ${max ?? 'any'}`,
        test: (given) =>
          typeof given === 'number' && given >= (min ?? -Infinity) && given <= (max ?? Infinity),
      },
    ],
    shape: value,
  });
};
