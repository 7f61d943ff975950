import { sameContent } from '../../ports/same-content.js';
import type { IdSource } from '../../ports/id-source.port.js';
import type { Recorded, Stamp } from '../../ports/record-store.port.js';
import type { Verdict, VerdictIdentity } from '../../ports/records/bench.records.js';
import type { ShopTransaction } from '../../ports/unit-of-work.port.js';
import type { JudgedRow } from './bench-case.js';
import { JudgedMeanwhile } from './judged-meanwhile.js';

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
  for (const { checkId, phase, limitId, content } of added) {
    const identity = { inspectionId, checkId, phase, limitId };
    const outcome = await tx.verdicts.add(ids.next(), identity, content, { at: stamp.at, by: stamp.by });
    if (outcome === 'otherContent') throw new JudgedMeanwhile();
  }
  const now = new Map(rows.map((row) => [keyOf(row), row]));
  for (const verdict of stored) {
    const content = now.get(keyOf(verdict.identity))?.content ?? withoutReadings(verdict);
    if (!isSameVerdict(verdict.content, content)) {
      const outcome = await tx.verdicts.correct(verdict.id, verdict.revision, content, stamp);
      if (outcome !== 'corrected') throw new JudgedMeanwhile();
    }
  }
}

const keyOf = (row: Pick<VerdictIdentity, 'checkId' | 'phase' | 'limitId'>): string =>
  `${row.checkId} ${row.phase} ${row.limitId}`;

/** The probability is a column that may come back with other trailing zeros; it also stands in the detail. */
const isSameVerdict = (one: Verdict, other: Verdict): boolean =>
  sameContent({ ...one, probabilityInside: null }, { ...other, probabilityInside: null });

function withoutReadings({ identity, content }: VerdictRecord): Verdict {
  const { position, limit } = content.detail;
  return {
    outcome: 'notJudged',
    probabilityInside: null,
    provisional: false,
    severity: content.severity,
    readingIds: [],
    overdueInstrumentIds: [],
    detail: {
      position,
      limit,
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
