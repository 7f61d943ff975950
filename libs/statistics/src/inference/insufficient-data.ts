/** Not enough data for an answer: what was counted, how many are needed at least, how many there are. */
export interface InsufficientData<Counted extends string = string> {
  readonly kind: 'insufficientData';
  readonly counted: Counted;
  readonly needed: number;
  readonly got: number;
}

export function insufficientData<Counted extends string>(
  counted: Counted,
  needed: number,
  got: number,
): InsufficientData<Counted> {
  return { kind: 'insufficientData', counted, needed, got };
}
