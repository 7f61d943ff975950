import type { SettledCheck } from '../evidence/settle-results.js';

/**
 * Whether a check may be judged now.
 * 'met': every prerequisite is negative, or positive and corrected. 'provisional': all have a result, but one is
 * positive and not corrected, so a reading is kept and not judged. 'unmet': one has no usable result yet.
 */
export const prerequisiteStandings = ['met', 'provisional', 'unmet'] as const;
export type PrerequisiteStanding = (typeof prerequisiteStandings)[number];

/** What the ordering of checks needs to know of one. */
export interface OrderedCheck {
  readonly id: string;
  readonly prerequisites: readonly string[];
  readonly openingMove: boolean;
}

/** A check with a result that needs no repeat. */
export function isDone(checkId: string, settled: ReadonlyMap<string, SettledCheck>): boolean {
  const standing = settled.get(checkId)?.standing;
  return standing === 'positive' || standing === 'negative' || standing === 'corrected';
}

/**
 * @param check  the check in question
 * @param settled  where the other checks stand
 * @returns met, provisional or unmet
 * @example prerequisiteStanding({ id: 'a', prerequisites: [], openingMove: false }, new Map()) // => 'met'
 */
export function prerequisiteStanding(
  check: OrderedCheck,
  settled: ReadonlyMap<string, SettledCheck>,
): PrerequisiteStanding {
  if (check.prerequisites.some((id) => !isDone(id, settled))) return 'unmet';
  return check.prerequisites.some((id) => settled.get(id)?.standing === 'positive') ? 'provisional' : 'met';
}

/**
 * A check together with its prerequisites that still need a result, each before those that need it.
 *
 * @param checks  all checks of the sheet
 * @param checkId  the check at the end of the chain
 * @param settled  where the checks stand
 * @returns ids in the order to do them; the last is `checkId`
 * @throws RangeError when a named check does not exist or the prerequisites run in a circle
 */
export function chainTo(
  checks: readonly OrderedCheck[],
  checkId: string,
  settled: ReadonlyMap<string, SettledCheck>,
): readonly string[] {
  const chain: string[] = [];
  const open = new Set<string>();
  const visit = (id: string): void => {
    if (chain.includes(id)) return;
    const check = checks.find((row) => row.id === id);
    if (check === undefined) throw new RangeError(`check ${id} does not exist`);
    if (open.has(id)) throw new RangeError(`prerequisites of ${id} run in a circle`);
    open.add(id);
    check.prerequisites.filter((needed) => !isDone(needed, settled)).forEach(visit);
    open.delete(id);
    chain.push(id);
  };
  visit(checkId);
  return chain;
}
