const grammar = /^(-?)([0-9]+)(?:\.([0-9]+))?$/;

function scaled(text: string, decimals: number): bigint {
  const parts = grammar.exec(text);
  if (parts === null) throw new RangeError(`not a decimal number: ${text.slice(0, 64)}`);
  const magnitude = BigInt(parts[2]! + (parts[3] ?? '').padEnd(decimals, '0'));
  return parts[1] === '-' ? -magnitude : magnitude;
}

const decimalsOf = (text: string): number => /\.([0-9]+)$/.exec(text)?.[1]?.length ?? 0;

function written(units: bigint, decimals: number): string {
  const sign = units < 0n ? '-' : '';
  const digits = (units < 0n ? -units : units).toString().padStart(decimals + 1, '0');
  const fraction = digits.slice(digits.length - decimals).replace(/0+$/, '');
  const whole = digits.slice(0, digits.length - decimals);
  return fraction === '' || decimals === 0 ? sign + whole : `${sign}${whole}.${fraction}`;
}

/** Exact a + b of two decimal texts. */
export function sumOfKm(a: string, b: string): string {
  const decimals = Math.max(decimalsOf(a), decimalsOf(b));
  return written(scaled(a, decimals) + scaled(b, decimals), decimals);
}

/** Exact a - b of two decimal texts. */
export function differenceOfKm(a: string, b: string): string {
  const decimals = Math.max(decimalsOf(a), decimalsOf(b));
  return written(scaled(a, decimals) - scaled(b, decimals), decimals);
}

/** Whether a reaches b, exactly. */
export const reachesKm = (a: string, b: string): boolean => !differenceOfKm(a, b).startsWith('-');
