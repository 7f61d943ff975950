import { field, type FieldOptions, type JsonSchema } from '../fields/index.js';

export interface NumbersLimits {
  /** Most entries. */
  readonly max: number;
  /** Fewest entries; 0 unless told. */
  readonly min?: number;
  /** Least number. */
  readonly from?: number;
  /** Greatest number. */
  readonly to?: number;
  /** Entries may be null. */
  readonly holes?: boolean;
}

/** Most numbers of a column that is worked through in about the order of its length. */
export const mostNumbers = 100_000;

/** A column of finite numbers. The first entry that is none is told by its place. */
export const NumbersField = (options: FieldOptions & NumbersLimits): PropertyDecorator => {
  const { max, min = 0, from = -Number.MAX_VALUE, to = Number.MAX_VALUE, holes = false } = options;
  const isEntry = (given: unknown): boolean =>
    (holes && given === null) || (typeof given === 'number' && given >= from && given <= to);
  const bounds = [
    options.from === undefined ? '' : ` of ${options.from} or more`,
    options.to === undefined ? '' : ` up to ${options.to}`,
  ].join('');
  return field(options, {
    schema: (): JsonSchema => ({
      type: 'array',
      items: {
        type: holes ? ['number', 'null'] : 'number',
        format: 'double',
        ...(options.from === undefined ? {} : { minimum: options.from }),
        ...(options.to === undefined ? {} : { maximum: options.to }),
      },
      minItems: min,
      maxItems: max,
    }),
    rules: [
      { name: 'list', detail: 'must be a list of numbers', test: Array.isArray },
      {
        name: 'count',
        detail: `must have ${min} to ${max} entries`,
        test: (given) => Array.isArray(given) && given.length >= min && given.length <= max,
      },
      {
        name: 'number',
        detail: (given) =>
          `entry ${Array.isArray(given) ? given.findIndex((each) => !isEntry(each)) : 0} must be a finite number${bounds}`,
        test: (given) => Array.isArray(given) && given.every(isEntry),
      },
    ],
    shape: { kind: 'value' },
  });
};
