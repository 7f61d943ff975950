import type { Check } from '@endfloat/catalogue';
import { sameContent } from '../../ports/same-content.js';
import { readingPhases, type ReadingPhase } from '../../ports/records/bench.records.js';
import type { BenchCase, DoneWork, ReadingGroup, ReadingRecord } from './bench-case.js';

/**
 * How much work had been done on the kind of part when a reading was taken. Readings from before and after work are
 * never averaged.
 */
export function worksBefore(works: readonly DoneWork[], componentType: string, at: string): number {
  return works.filter((work) => work.componentType === componentType && work.doneAt <= at).length;
}

/** The readings of one check that are judged together, by phase and position. */
export function readingGroups(bench: BenchCase, check: Check): readonly ReadingGroup[] {
  const own = bench.readings.filter(({ content }) => content.checkId === check.id);
  return readingPhases.flatMap((phase) => {
    const ofPhase = own.filter(({ content }) => content.phase === phase);
    const positions = [...new Set(ofPhase.map(({ content }) => content.position))];
    return positions.map((position) => {
      const all = ofPhase.filter(({ content }) => content.position === position);
      return groupOf(bench, check, phase, position, all);
    });
  });
}

function groupOf(
  { works }: BenchCase,
  check: Check,
  phase: ReadingPhase,
  position: string,
  all: readonly ReadingRecord[],
): ReadingGroup {
  const epochOf = ({ content }: ReadingRecord): number =>
    worksBefore(works, check.componentTypeId, content.takenAt);
  const latest = Math.max(...all.map(epochOf));
  const sinceWork = all.filter((reading) => epochOf(reading) === latest);
  const last = sinceWork[sinceWork.length - 1];
  const readings =
    check.resultKind === 'number'
      ? sinceWork.filter(
          ({ content }) =>
            content.instrumentId === last?.content.instrumentId &&
            sameContent(content.conditions, last.content.conditions),
        )
      : sinceWork;
  return {
    check,
    phase,
    position,
    readings,
    from: readings[0]?.content.takenAt ?? '',
    until: last?.content.takenAt ?? '',
  };
}
