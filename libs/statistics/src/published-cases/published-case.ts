/** How close a computed figure must come. */
export type FigureTolerance =
  | { readonly kind: 'relative'; readonly value: number }
  | { readonly kind: 'absolute'; readonly value: number };

/** One figure of a case with what it should be. */
export interface ExpectedFigure {
  readonly name: string;
  readonly expected: number;
  readonly tolerance: FigureTolerance;
}

/** A worked example from outside with the computation that must reproduce it; run again by whoever asks. */
export interface StatisticsPublishedCase {
  /** Kebab-case. */
  readonly id: string;
  readonly title: string;
  readonly source: string;
  /** Where the figures were seen: in the source, by an independent library, or remembered. */
  readonly provenance: readonly ('published' | 'computed' | 'memory')[];
  /** The input in words and numbers, for a reader. */
  readonly input: string;
  readonly figures: readonly ExpectedFigure[];
  /** One number for every figure, by name. */
  readonly compute: () => Readonly<Record<string, number>>;
}

/** A closed formula. */
export const closedForm: FigureTolerance = { kind: 'relative', value: 1e-9 };
/** A maximum of a likelihood. */
export const maximum: FigureTolerance = { kind: 'relative', value: 1e-6 };
/** A limit of a profile likelihood. */
export const profile: FigureTolerance = { kind: 'relative', value: 1e-5 };
/** Whole numbers and other exact figures. */
export const exactly: FigureTolerance = { kind: 'absolute', value: 0 };
/** Half a unit of the last printed digit. */
export const printed = (value: number): FigureTolerance => ({ kind: 'absolute', value });

/** Figures with one tolerance. */
export function figuresOf(
  tolerance: FigureTolerance,
  expected: Readonly<Record<string, number>>,
): readonly ExpectedFigure[] {
  return Object.entries(expected).map(([name, value]) => ({ name, expected: value, tolerance }));
}

/** The answer where there must be one; a case whose input is refused cannot be reproduced. */
export function answered<T extends { readonly kind: string }, K extends T['kind']>(
  outcome: T,
  kind: K,
): T & { readonly kind: K } {
  if (outcome.kind !== kind) throw new RangeError(`expected ${kind}, got ${outcome.kind}`);
  return outcome as T & { readonly kind: K };
}

/** A limit where there must be one. */
export function given(value: number | null | undefined): number {
  if (value === null || value === undefined) throw new RangeError('expected a number');
  return value;
}
