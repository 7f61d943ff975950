import { invalidInput } from '../errors/domain.errors.js';

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

/**
 * Puts method and observations beside what was calculated.
 *
 * @throws DomainError `input.invalid` where the data are so large or small that a figure is none: nothing is answered
 */
export function calculated<T extends object>(
  { name, variant, source }: CalculationMethod,
  observations: number,
  found: T,
): Calculated<T> {
  if (!isFinite(found)) {
    throw invalidInput(
      '',
      'range',
      'The result is beyond what a number can hold. Give the data in another unit, or leave out what is far off.',
    );
  }
  return { method: { name, variant, source }, observations, ...found };
}

function isFinite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value !== 'object' || value === null) return true;
  return (Array.isArray(value) ? value : Object.values(value)).every(isFinite);
}
