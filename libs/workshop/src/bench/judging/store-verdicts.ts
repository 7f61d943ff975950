import { sameContent } from '../../ports/same-content.js';
import type { IdSource } from '../../ports/id-source.port.js';
import type { Recorded, Stamp } from '../../ports/record-store.port.js';
import type { Verdict, VerdictIdentity } from '../../ports/records/bench.records.js';
import type { ShopTransaction } from '../../ports/unit-of-work.port.js';
import { correctRecord, exactly } from '../../recording/correct-record.js';
import type { JudgedRow } from './bench-case.js';

export type VerdictRecord = Recorded<VerdictIdentity, Verdict>;

/**
 * Stores the verdicts of an inspection: new ones, and a new revision of each that changed. One whose readings were
 * corrected away, or whose limit gave way to another, is kept and says so.
 */
export async function storeVerdicts(
  tx: ShopTransaction,
  ids: IdSource,
  inspectionId: string,
  rows: readonly JudgedRow[],
  stamp: Stamp & { readonly reason: string },
): Promise<void> {
  const stored = await tx.verdicts.all({ inspectionId });
  const before = new Map(stored.map((verdict) => [keyOf(verdict.identity), verdict]));
  const added = rows.filter((row) => !before.has(keyOf(row)));
  await tx.verdicts.addMany(
    added.map(({ checkId, phase, limitId, content }) => ({
      id: ids.next(),
      identity: { inspectionId, checkId, phase, limitId },
      content,
    })),
    { at: stamp.at, by: stamp.by },
  );
  const now = new Map(rows.map((row) => [keyOf(row), row]));
  for (const verdict of stored) {
    const content = now.get(keyOf(verdict.identity))?.content ?? withoutReadings(verdict);
    if (!isSameVerdict(verdict.content, content)) {
      const change = { id: verdict.id, expected: exactly(verdict.revision), content };
      await correctRecord(tx.verdicts, 'verdict', change, stamp);
    }
  }
}

const keyOf = (row: Pick<VerdictIdentity, 'checkId' | 'phase' | 'limitId'>): string =>
  `${row.checkId} ${row.phase} ${row.limitId}`;

/** The probability is a column that may come back with other trailing zeros; it also stands in the detail. */
const isSameVerdict = (one: Verdict, other: Verdict): boolean =>
  sameContent({ ...one, probabilityInside: null }, { ...other, probabilityInside: null });

function withoutReadings({ identity, content }: VerdictRecord): Verdict {
  return {
    outcome: 'notJudged',
    probabilityInside: null,
    provisional: false,
    severity: content.severity,
    readingIds: [],
    overdueInstrumentIds: [],
    detail: {
      ...content.detail,
      judgement: {
        kind: 'notJudged',
        limitId: identity.limitId,
        severity: content.detail.judgement.severity,
        reason: 'noReadings',
        details: [],
      },
      uncertainty: null,
      grade: null,
      readingClass: null,
      outrankedBy: null,
      place: null,
    },
  };
}
