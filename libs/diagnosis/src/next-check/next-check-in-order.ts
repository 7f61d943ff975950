import type { SettledCheck } from '../evidence/settle-results.js';
import type { OrderedCheck } from '../ranking/prerequisite-standing.js';
import { isDone, prerequisiteStanding } from '../ranking/prerequisite-standing.js';

/** Why a check comes next in the order of the sheet. */
export const orderReasons = ['openingMove', 'firstInOrder', 'repeatOfUndecided'] as const;
export type OrderReason = (typeof orderReasons)[number];

export type NextInOrder =
  | { readonly kind: 'next'; readonly checkId: string; readonly reason: OrderReason }
  /** everything left waits for a positive finding to be put right and checked again */
  | {
      readonly kind: 'correctFirst';
      readonly findings: readonly string[];
      readonly waiting: readonly string[];
    }
  | { readonly kind: 'allChecksDone' };

/**
 * The next check by the order of the sheet: safe opening moves first, then the first check without a usable result whose
 * prerequisites are negative, or positive and corrected. A check behind a positive, uncorrected finding is not proposed.
 *
 * @param checks  in sheet order
 * @param settled  where the checks stand, from `settleResults` or built by the caller
 * @returns the next check; or the findings to put right first; or that nothing is left
 * @throws RangeError when every open check waits for one that does not exist
 * @example nextCheckInOrder([{ id: 'a', prerequisites: [], openingMove: true }], new Map()) // => { kind: 'next', checkId: 'a', reason: 'openingMove' }
 */
export function nextCheckInOrder(
  checks: readonly OrderedCheck[],
  settled: ReadonlyMap<string, SettledCheck>,
): NextInOrder {
  const open = checks.filter((check) => !isDone(check.id, settled));
  if (open.length === 0) return { kind: 'allChecksDone' };
  const ready = open.filter((check) => prerequisiteStanding(check, settled) === 'met');
  const next = ready.find((check) => check.openingMove) ?? ready[0];
  if (next !== undefined) {
    const repeated = settled.has(next.id);
    return {
      kind: 'next',
      checkId: next.id,
      reason: repeated ? 'repeatOfUndecided' : next.openingMove ? 'openingMove' : 'firstInOrder',
    };
  }
  const findings = checks.filter(
    (check) =>
      settled.get(check.id)?.standing === 'positive' &&
      open.some((waiting) => waiting.prerequisites.includes(check.id)),
  );
  if (findings.length === 0)
    throw new RangeError('the open checks wait for a check that is not on the sheet');
  return {
    kind: 'correctFirst',
    findings: findings.map((check) => check.id),
    waiting: open.map((check) => check.id),
  };
}
