import { runPublishedCase, type CaseOutcome, type PublishedCase } from '@endfloat/metrology';
import { allCalculations, publishedCases } from './all-calculations.js';
import type { CalculationMethod } from './calculation-method.js';

/** A published case with what it gives now. */
export interface ReproducedCase extends Pick<
  PublishedCase,
  'id' | 'title' | 'source' | 'provenance' | 'input'
> {
  readonly outcome: CaseOutcome;
}

/** A calculation with every published case it reproduces. */
export interface ProvedCalculation {
  readonly method: CalculationMethod;
  readonly cases: readonly ReproducedCase[];
}

/**
 * Every calculation, and each of its published cases computed anew at this call: nothing is remembered from an earlier one.
 *
 * @returns in the order of the list
 */
export function listCalculations(): readonly ProvedCalculation[] {
  return allCalculations.map((method) => ({
    method,
    cases: method.caseIds.map((id) => {
      const found = publishedCases.get(id);
      if (found === undefined) throw new RangeError(`${method.id} names an unknown case ${id}`);
      const { title, source, provenance, input } = found;
      return { id, title, source, provenance, input, outcome: runPublishedCase(found) };
    }),
  }));
}
