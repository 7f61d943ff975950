import type { DiagnosisTables } from '../tables/diagnosis-tables.js';
import type { CheckResult, Evidence } from './evidence.js';

/** Where one check stands after all its results. */
export const checkStandings = ['positive', 'negative', 'undecided', 'corrected', 'contradictory'] as const;
export type CheckStanding = (typeof checkStandings)[number];

export interface SettledCheck {
  readonly checkId: string;
  readonly standing: CheckStanding;
  /** how the check enters the posterior: by p, by 1 - p, or by a factor of one */
  readonly countsAs: 'positive' | 'negative' | 'nothing';
}

function countsAs(result: CheckResult): SettledCheck['countsAs'] {
  if (result.outcome === 'undecided') return 'nothing';
  if (result.outcome === 'corrected') return result.complaintPersists === true ? 'negative' : 'positive';
  return result.outcome;
}

function settleOne(checkId: string, results: readonly CheckResult[]): SettledCheck {
  const decided = results.filter((result) => result.outcome !== 'undecided');
  const last = decided.at(-1);
  if (last === undefined) return { checkId, standing: 'undecided', countsAs: 'nothing' };
  if (last.outcome === 'corrected') return { checkId, standing: 'corrected', countsAs: countsAs(last) };
  const previous = decided.at(-2);
  const agrees =
    previous === undefined || previous.outcome === last.outcome || previous.outcome === 'corrected';
  if (!agrees) return { checkId, standing: 'contradictory', countsAs: 'nothing' };
  return { checkId, standing: last.outcome, countsAs: countsAs(last) };
}

/**
 * Settles repeated results. A repeat of the same check is not independent evidence, so each check counts once:
 * by its last decided result, unless the two last decided results contradict each other without a correction between
 * them; then it counts for nothing until a further result agrees with the last. Undecided results change nothing.
 *
 * @param tables  name the known checks
 * @param evidence  results in the order obtained
 * @returns one entry for each check with a result, in table order
 * @throws RangeError when a result names a check that the tables do not hold
 */
export function settleResults(
  tables: DiagnosisTables,
  evidence: Evidence,
): ReadonlyMap<string, SettledCheck> {
  const known = new Set(tables.checks.map((row) => row.id));
  for (const { checkId } of evidence.results) {
    if (!known.has(checkId)) throw new RangeError(`check ${checkId} is not in the tables`);
  }
  const settled = new Map<string, SettledCheck>();
  for (const { id } of tables.checks) {
    const results = evidence.results.filter((result) => result.checkId === id);
    if (results.length > 0) settled.set(id, settleOne(id, results));
  }
  return settled;
}
