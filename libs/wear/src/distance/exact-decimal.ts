/** A decimal number held exactly: `units` times ten to the power of minus `scale`. */
export interface ExactDecimal {
  readonly units: bigint;
  readonly scale: number;
}

const grammar = /^(-?)([0-9]+)(?:\.([0-9]+))?$/;

/**
 * Reads decimal text exactly; leading zeros, as a display shows them, are allowed.
 *
 * @param text  digits with an optional minus and point
 * @returns the number
 * @throws RangeError on any other text
 */
export function exactDecimal(text: string): ExactDecimal {
  const parts = grammar.exec(text);
  if (parts === null) throw new RangeError(`not a decimal number: ${text.slice(0, 64)}`);
  const decimals = parts[3] ?? '';
  const magnitude = BigInt(parts[2]! + decimals);
  return { units: parts[1] === '-' ? -magnitude : magnitude, scale: decimals.length };
}

const rescaled = (value: ExactDecimal, scale: number): bigint =>
  value.units * 10n ** BigInt(scale - value.scale);

/** Exact sum. */
export function plus(a: ExactDecimal, b: ExactDecimal): ExactDecimal {
  const scale = Math.max(a.scale, b.scale);
  return { units: rescaled(a, scale) + rescaled(b, scale), scale };
}

/** Exact difference. */
export function minus(a: ExactDecimal, b: ExactDecimal): ExactDecimal {
  return plus(a, { units: -b.units, scale: b.scale });
}

/** Exact product. */
export function times(a: ExactDecimal, b: ExactDecimal): ExactDecimal {
  return { units: a.units * b.units, scale: a.scale + b.scale };
}

/** Sign of a - b. */
export function compareExact(a: ExactDecimal, b: ExactDecimal): -1 | 0 | 1 {
  const { units } = minus(a, b);
  if (units === 0n) return 0;
  return units > 0n ? 1 : -1;
}

/** Plain decimal text without trailing zeros, never "-0". */
export function exactText(value: ExactDecimal): string {
  const sign = value.units < 0n ? '-' : '';
  const digits = (value.units < 0n ? -value.units : value.units).toString().padStart(value.scale + 1, '0');
  const whole = digits.slice(0, digits.length - value.scale);
  const decimals = digits.slice(digits.length - value.scale).replace(/0+$/, '');
  return decimals === '' ? `${sign}${whole}` : `${sign}${whole}.${decimals}`;
}
