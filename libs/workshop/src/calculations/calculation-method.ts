/** What a calculation is and where its formula stands, told with every answer and in the list of calculations. */
export interface CalculationMethod {
  /** last part of its address, plural */
  readonly id: string;
  readonly title: string;
  /** camelCase name of the method */
  readonly name: string;
  /** which of the usual variants is computed, so that a hand check can follow it */
  readonly variant: string;
  readonly source: string;
  /** published cases that are run again whenever the calculations are listed */
  readonly caseIds: readonly string[];
}

/** The part of a method that goes out with an answer. */
export type AnsweredMethod = Pick<CalculationMethod, 'name' | 'variant' | 'source'>;

/** An answer with how it was made and on how many observations it rests. */
export type Calculated<T> = T & { readonly method: AnsweredMethod; readonly observations: number };

/** Puts method and observations beside what was calculated. */
export function calculated<T extends object>(
  { name, variant, source }: CalculationMethod,
  observations: number,
  found: T,
): Calculated<T> {
  return { method: { name, variant, source }, observations, ...found };
}
