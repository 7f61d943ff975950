/** Refuses anything but an estimate. */
export function estimated<T extends { readonly kind: string }>(
  outcome: T,
): Extract<T, { readonly kind: 'estimated' }> {
  if (outcome.kind !== 'estimated') throw new Error(`not an estimate: ${outcome.kind}`);
  return outcome as Extract<T, { readonly kind: 'estimated' }>;
}

/** Two figures are equal to a share of the expected one, or to 1e-14 where that is 0 or next to it. */
export function expectClose(actual: number, expected: number, relative: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.abs(expected) + 1e-14);
}

/** Entry by entry; what R does not have (NaN) is null here. */
export function expectColumn(
  actual: readonly (number | null)[],
  expected: readonly number[],
  relative: number,
): void {
  expect(actual.map((value) => value === null)).toEqual(expected.map((value) => Number.isNaN(value)));
  actual.forEach((value, row) => {
    if (value !== null) expectClose(value, expected[row]!, relative);
  });
}
