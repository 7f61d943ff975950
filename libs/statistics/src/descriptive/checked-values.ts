/** Plain or typed array of numbers. */
export type Numbers = ArrayLike<number>;

/** Refuses a column with a number that is not finite. */
export function requireFiniteValues(name: string, values: Numbers): void {
  for (let i = 0; i < values.length; i += 1) {
    if (!Number.isFinite(values[i])) throw new RangeError(`${name}[${i}] must be finite, got ${values[i]}`);
  }
}

/** Refuses a column with a number that is not finite or below zero. */
export function requireNonNegativeValues(name: string, values: Numbers): void {
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i]!;
    if (!(value >= 0) || value === Infinity) {
      throw new RangeError(`${name}[${i}] must be 0 or more and finite, got ${value}`);
    }
  }
}

/** Refuses columns of different lengths. */
export function requireSameLength(name: string, column: ArrayLike<unknown>, length: number): void {
  if (column.length !== length) {
    throw new RangeError(`${name} must have ${length} entries, got ${column.length}`);
  }
}

/** Refuses a confidence level outside (0, 1). */
export function requireLevel(level: number): void {
  if (!(level > 0 && level < 1))
    throw new RangeError(`level must lie strictly between 0 and 1, got ${level}`);
}
