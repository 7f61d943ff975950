import type { DiagnosisTables } from '../tables/diagnosis-tables.js';
import type { LearnedNumber, LearnedTables } from './learned-tables.js';

const currentOf = (
  cells: Readonly<Record<string, LearnedNumber>> | undefined,
): Readonly<Record<string, number>> =>
  Object.fromEntries(Object.entries(cells ?? {}).map(([causeId, cell]) => [causeId, cell.current]));

/**
 * Tables to compute with, from learned ones: the current mean of every number, minutes and prerequisites unchanged.
 *
 * @param learned  from `learnFromCases`
 * @returns tables under the learned version; with no job counted, the starting numbers (to rounding)
 */
export function tablesFromLearned(learned: LearnedTables): DiagnosisTables {
  const { startingTables } = learned;
  return {
    version: learned.version,
    causes: startingTables.causes.map(({ id, prior }) => ({
      id,
      prior: learned.causes[id]?.current ?? prior,
    })),
    symptoms: startingTables.symptoms.map((row) => ({
      id: row.id,
      presentGivenCause: currentOf(learned.symptoms[row.id]),
    })),
    checks: startingTables.checks.map((row) => ({
      ...row,
      positiveGivenCause: currentOf(learned.checks[row.id]),
    })),
  };
}
