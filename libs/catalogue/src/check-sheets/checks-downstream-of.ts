import type { Check } from './check-sheet.js';

/**
 * Checks whose readings no longer count once this one was adjusted: those the check names itself, and all that have it
 * among their prerequisites, directly or through others. As-left must be complete for the adjusted check and for these.
 *
 * @param checks  the checks of a sheet
 * @param checkId  the check that was adjusted
 * @returns ids in sheet order; empty for the last in line, or for a check the sheet does not hold
 * @source moving the plate stop invalidates the switch reading: common practice
 */
export function checksDownstreamOf(
  checks: readonly Pick<Check, 'id' | 'prerequisites' | 'alsoRemeasure'>[],
  checkId: string,
): readonly string[] {
  const affected = new Set(checks.find(({ id }) => id === checkId)?.alsoRemeasure ?? []);
  const reached = new Set([checkId]);
  for (let grew = true; grew;) {
    const next = checks.filter(
      ({ id, prerequisites }) => !reached.has(id) && prerequisites.some((needed) => reached.has(needed)),
    );
    next.forEach(({ id }) => reached.add(id));
    grew = next.length > 0;
  }
  return checks.map(({ id }) => id).filter((id) => id !== checkId && (reached.has(id) || affected.has(id)));
}
