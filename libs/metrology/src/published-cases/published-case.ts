/** How close a computed figure must come, and the reason: exact formula, or half a unit of the last printed digit. */
export type CaseTolerance =
  | { readonly kind: 'relative'; readonly value: number }
  | { readonly kind: 'absolute'; readonly value: number };

/** Where a figure was seen: in the source, computed by an independent library, remembered, or worked out by hand. */
export const caseProvenances = ['published', 'computed', 'memory', 'byHand'] as const;

/** A provenance of `caseProvenances`. */
export type CaseProvenance = (typeof caseProvenances)[number];

/** One figure of a case with what it should be. */
export interface CaseFigure {
  readonly name: string;
  readonly expected: number;
  readonly tolerance: CaseTolerance;
}

/** A worked example from outside, with the computation that must reproduce it. */
export interface PublishedCase {
  /** Kebab-case. */
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly provenance: readonly CaseProvenance[];
  /** The input in words and numbers, for a reader. */
  readonly input: string;
  readonly figures: readonly CaseFigure[];
  /** Runs the computation anew; one number for every figure, by name. */
  readonly compute: () => Readonly<Record<string, number>>;
}

/** A case that was run. */
export interface CaseOutcome {
  readonly id: string;
  readonly figures: readonly (CaseFigure & { readonly computed: number; readonly isReproduced: boolean })[];
  readonly isReproduced: boolean;
}

/**
 * Runs a published case and compares every figure.
 *
 * @param publishedCase  the case
 * @returns each figure with what was computed, and whether it is within tolerance
 * @throws RangeError where the case computes no number for one of its figures
 * @source definition of the tolerances
 */
export function runPublishedCase(publishedCase: PublishedCase): CaseOutcome {
  const computed = publishedCase.compute();
  const figures = publishedCase.figures.map((figure) => {
    const value = computed[figure.name];
    if (value === undefined || !Number.isFinite(value)) {
      throw new RangeError(`case ${publishedCase.id} computes no ${figure.name}`);
    }
    const allowed =
      figure.tolerance.kind === 'relative'
        ? figure.tolerance.value * Math.abs(figure.expected)
        : figure.tolerance.value;
    return { ...figure, computed: value, isReproduced: Math.abs(value - figure.expected) <= allowed };
  });
  return { id: publishedCase.id, figures, isReproduced: figures.every(({ isReproduced }) => isReproduced) };
}

/**
 * Figures with one tolerance.
 *
 * @param expected   figures by name
 * @param tolerance  for all of them
 * @returns the list, in the order of the names
 * @source none needed
 */
export function caseFigures(
  expected: Readonly<Record<string, number>>,
  tolerance: CaseTolerance,
): readonly CaseFigure[] {
  return Object.entries(expected).map(([name, value]) => ({ name, expected: value, tolerance }));
}
