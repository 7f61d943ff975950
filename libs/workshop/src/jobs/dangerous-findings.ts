import type { Recorded } from '../ports/record-store.port.js';
import type { Verdict, VerdictIdentity } from '../ports/records/bench.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';

export interface OpenFinding {
  readonly verdictId: string;
  readonly inspectionId: string;
  readonly checkId: string;
  readonly limitId: string;
}

/**
 * Dangerous findings of a vehicle that are still open: for each check and limit the latest verdict counts, and it is
 * outside a limit whose breach is dangerous. A finding stays open across jobs until a later check is inside.
 */
export async function openDangerousFindings(
  tx: ShopTransaction,
  vehicleId: string,
): Promise<readonly OpenFinding[]> {
  const inspections = await tx.inspections.all({ vehicleId });
  if (inspections.length === 0) return [];
  const startedAt = new Map(inspections.map(({ id, content }) => [id, content.startedAt]));
  const verdicts = await tx.verdicts.all({ inspectionId: [...startedAt.keys()] });
  const order = (verdict: Recorded<VerdictIdentity, Verdict>): string =>
    `${startedAt.get(verdict.identity.inspectionId) ?? ''} ${verdict.identity.phase === 'asLeft' ? '1' : '0'} ${verdict.recordedAt}`;
  const latest = new Map<string, Recorded<VerdictIdentity, Verdict>>();
  for (const verdict of verdicts) {
    if (verdict.content.outcome !== 'inside' && verdict.content.outcome !== 'outside') continue;
    const key = `${verdict.identity.checkId} ${verdict.identity.limitId}`;
    const before = latest.get(key);
    if (before === undefined || order(before) <= order(verdict)) latest.set(key, verdict);
  }
  return [...latest.values()]
    .filter(({ content }) => content.outcome === 'outside' && content.severity === 'dangerous')
    .map(({ id, identity }) => ({
      verdictId: id,
      inspectionId: identity.inspectionId,
      checkId: identity.checkId,
      limitId: identity.limitId,
    }));
}
