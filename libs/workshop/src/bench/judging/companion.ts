import { selectApplicableLimits, type Limit, type LimitContext } from '@endfloat/metrology';
import type { BenchCase, ReadingGroup, ReadingRecord } from './bench-case.js';
import { limitsOf } from './limits-of-check.js';
import { worksBefore } from './reading-groups.js';

export interface Companion {
  readonly companion: ReadingRecord | null;
  readonly companionLimit: Limit | null;
}

/**
 * The companion's last reading that tells what state it was in when the functional answer was given: of the same phase,
 * with no work on the part between the two.
 */
export function companionFor(
  bench: BenchCase,
  { check, phase, until }: ReadingGroup,
  companionCheckId: string,
  context: LimitContext,
): Companion {
  const sheetCheck = bench.sheet.checks.find(({ id }) => id === companionCheckId);
  if (sheetCheck === undefined) return { companion: null, companionLimit: null };
  const { applicable } = selectApplicableLimits(limitsOf(bench, sheetCheck), context, bench.localDay(until));
  const worksAt = (at: string): number => worksBefore(bench.works, check.componentTypeId, at);
  const readings = bench.readings.filter(
    ({ content }) =>
      content.checkId === companionCheckId &&
      content.phase === phase &&
      content.valueConfirmed &&
      worksAt(content.takenAt) === worksAt(until),
  );
  return {
    companion: readings[readings.length - 1] ?? null,
    companionLimit: applicable.find(({ criterion }) => criterion.kind === 'pair') ?? null,
  };
}
