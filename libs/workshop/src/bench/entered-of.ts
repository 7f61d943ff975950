import { isUnitCode } from '@endfloat/metrology';
import type { Reading } from '../ports/records/bench.records.js';
import type { EnteredResult, ReadingEntry } from './entered-reading.js';

/**
 * What was entered when a reading was recorded. A position that was left out was filled in; an entry that leaves it out
 * too says the same.
 */
export function enteredOf(reading: Reading, other: Pick<ReadingEntry, 'position'>): ReadingEntry {
  return {
    checkId: reading.checkId,
    phase: reading.phase,
    position: other.position === null ? null : reading.position,
    place: reading.place,
    result: resultOf(reading),
    instrumentId: reading.instrumentId,
    measuredBy: reading.measuredBy,
    takenAt: reading.takenAt,
    conditions: reading.conditions,
    note: reading.note,
  };
}

/** The result as it was entered. */
export function resultOf(reading: Reading): EnteredResult {
  const { resultKind, shown, unit, pair, answer, grade } = reading;
  switch (resultKind) {
    case 'number':
      return { kind: 'number', shown: shown ?? '', unit: unitOf(unit) };
    case 'bladePair':
      return {
        kind: 'bladePair',
        largestClosed: pair?.largestClosed ?? null,
        smallestOpen: pair?.smallestOpen ?? null,
        unit: unitOf(unit),
      };
    case 'yesNo':
      return { kind: 'yesNo', answer: answer === true };
    case 'grade':
      return { kind: 'grade', grade: grade ?? '' };
  }
}

function unitOf(unit: string | null): Extract<EnteredResult, { kind: 'number' }>['unit'] {
  if (unit === null || !isUnitCode(unit)) throw new RangeError('a stored reading without its unit');
  return unit;
}
