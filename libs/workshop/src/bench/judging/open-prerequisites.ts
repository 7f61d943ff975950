import type { BenchCase, JudgedRow, ReadingGroup } from './bench-case.js';
import { isLeftOut, standingOf } from './check-standing.js';

export interface GroupWithRows {
  readonly group: ReadingGroup;
  readonly rows: readonly JudgedRow[];
}

/**
 * Prerequisites of a reading that are not passed. What was put right and passed as left counts for readings taken after
 * that; readings taken before keep the state in which they were taken, so they stay provisional.
 */
export function openPrerequisites(
  bench: BenchCase,
  { check, phase, from }: ReadingGroup,
  before: ReadonlyMap<string, readonly GroupWithRows[]>,
): readonly string[] {
  return check.prerequisites.filter((id) => {
    if (isLeftOut(bench.notDone, id)) return false;
    const groups = before.get(id) ?? [];
    const asLeft = groups.filter(({ group }) => group.phase === 'asLeft');
    const asFound = groups.filter(({ group }) => group.phase === 'asFound');
    const isLaterOnly = phase === 'asFound' && asLeft.some(({ group }) => group.until > from);
    const counted = asLeft.length > 0 && !isLaterOnly ? asLeft : asFound;
    return counted.length === 0 || !counted.every(({ rows }) => standingOf(rows).satisfies);
  });
}
