/** Refuses NaN; the infinities are allowed, as limits of a distribution's axis. */
export function requireNumber(name: string, value: number): void {
  if (Number.isNaN(value)) throw new RangeError(`${name} must be a number, got NaN`);
}

export function requireFinite(name: string, value: number): void {
  if (!Number.isFinite(value)) throw new RangeError(`${name} must be finite, got ${value}`);
}

export function requirePositive(name: string, value: number): void {
  if (!(value > 0) || value === Infinity) {
    throw new RangeError(`${name} must be positive and finite, got ${value}`);
  }
}

export function requireProbability(name: string, value: number): void {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${name} must lie between 0 and 1, got ${value}`);
}

export function requireCount(name: string, value: number): void {
  if (!Number.isSafeInteger(value) || value < 0) {
    throw new RangeError(`${name} must be a whole number, 0 or more, got ${value}`);
  }
}
