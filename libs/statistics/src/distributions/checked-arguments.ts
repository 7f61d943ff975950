/** Refuses NaN; the infinities are allowed, as limits of a distribution's axis. */
export function requireNumber(name: string, value: number): void {
  if (Number.isNaN(value)) throw new RangeError(`${name} must be a number, got NaN`);
}

/** Refuses NaN and the infinities. */
export function requireFinite(name: string, value: number): void {
  if (!Number.isFinite(value)) throw new RangeError(`${name} must be finite, got ${value}`);
}

/** Refuses what is not above 0 and finite. */
export function requirePositive(name: string, value: number): void {
  if (!(value > 0) || value === Infinity) {
    throw new RangeError(`${name} must be positive and finite, got ${value}`);
  }
}

/** Refuses what does not lie in [0, 1]. */
export function requireProbability(name: string, value: number): void {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${name} must lie between 0 and 1, got ${value}`);
}

/** Refuses what is not a whole number, 0 or more, that a double holds exactly. */
export function requireCount(name: string, value: number): void {
  if (!Number.isSafeInteger(value) || value < 0) {
    throw new RangeError(`${name} must be a whole number, 0 or more, got ${value}`);
  }
}
