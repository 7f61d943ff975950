import type { Characteristic, Check } from '@endfloat/catalogue';
import { notFound } from '../errors/domain.errors.js';
import type { Reading, ReadingPhase } from '../ports/records/bench.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { characteristicOf, counts, type ReadingRecord } from './judging/bench-case.js';
import type { BenchGround } from './judging/gather-bench-case.js';
import type { VerdictRecord } from './judging/store-verdicts.js';

/** A verdict with the check it is about. */
export interface VerdictView {
  readonly record: VerdictRecord;
  readonly check: Check;
}

/** A reading with the verdicts of its check and phase. */
export interface ReadingView {
  readonly record: ReadingRecord;
  readonly check: Check;
  readonly characteristic: Characteristic;
  readonly verdicts: readonly VerdictView[];
  /** readings of this check, phase and place that are advised and not there yet */
  readonly advisedReadingsLeft: number;
}

/** Readings of one inspection as they are answered, in the order of the ids. */
export async function viewsOf(
  tx: ShopTransaction,
  { inspection, sheet, types }: BenchGround,
  ids: readonly string[],
  asOf?: string,
): Promise<readonly ReadingView[]> {
  const verdicts = await tx.verdicts.all({ inspectionId: inspection.id }, asOf);
  const all = await tx.readings.all({ inspectionId: inspection.id }, asOf);
  const records = new Map(all.map((record) => [record.id, record]));
  return ids.map((id) => {
    const record = records.get(id);
    if (record === undefined) throw notFound('reading');
    return viewOf(record, { checks: sheet.checks, types, verdicts, all });
  });
}

interface Around {
  readonly checks: readonly Check[];
  readonly types: Parameters<typeof characteristicOf>[0];
  readonly verdicts: readonly VerdictRecord[];
  readonly all: readonly ReadingRecord[];
}

export function viewOf(record: ReadingRecord, { checks, types, verdicts, all }: Around): ReadingView {
  const { content } = record;
  const check = checks.find(({ id }) => id === content.checkId);
  if (check === undefined) throw new RangeError('a reading of a check that is not on its sheet');
  const characteristic = characteristicOf(types, check);
  const alike = all.filter(
    (other) =>
      other.content.checkId === content.checkId &&
      other.content.phase === content.phase &&
      other.content.position === content.position &&
      other.content.place === content.place &&
      counts(other),
  );
  return {
    record,
    check,
    characteristic,
    verdicts: verdictsOf(verdicts, check, content.phase, content.position),
    advisedReadingsLeft: Math.max(0, characteristic.readingsAdvised - alike.length),
  };
}

export function verdictsOf(
  verdicts: readonly VerdictRecord[],
  check: Check,
  phase: ReadingPhase,
  position: string,
): readonly VerdictView[] {
  return verdicts
    .filter(
      ({ identity, content }) =>
        identity.checkId === check.id && identity.phase === phase && content.detail.position === position,
    )
    .sort((a, b) => a.identity.limitId.localeCompare(b.identity.limitId))
    .map((record) => ({ record, check }));
}

/** Whether a reading belongs into the series of its part. */
export function isTrendWorthy(content: Reading): boolean {
  return (
    counts({ content }) &&
    content.trend !== 'state' &&
    content.phase === 'asFound' &&
    content.fittedPartId !== null &&
    content.valueConfirmed &&
    !content.warnings.some(({ code }) => code === 'takenAfterWork')
  );
}
