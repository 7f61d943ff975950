import type { Fingerprint } from '../ports/fingerprint.port.js';
import type { AssessmentQuestion, FurtherCheck } from '../ports/records/decide.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { progressOf } from '../bench/inspections.use-case.js';
import { checkingRates, rankByMoney } from '../bench/next-check-money.js';
import { diagnosticEvidence, symptomsOf } from '../bench/next-check-ranking.js';
import { diagnosisNumbers, diagnosisTablesInUse } from './learning/learned-tables.use-case.js';

/**
 * Whether one more check is worth its cost before anything is repaired: the best one by the latest inspection of the job
 * and its complaints.
 */
export async function furtherCheckOf(
  tx: ShopTransaction,
  { jobId, vehicleId }: AssessmentQuestion,
  given: { readonly now: string; readonly fingerprint: Fingerprint },
): Promise<FurtherCheck> {
  if (jobId === null) return { kind: 'cannotBeSaid', why: 'noJob' };
  const inspections = await tx.inspections.all({ jobId });
  const latest = [...inspections]
    .sort((a, b) => a.content.startedAt.localeCompare(b.content.startedAt))
    .at(-1);
  if (latest === undefined) return { kind: 'cannotBeSaid', why: 'noInspection' };
  const inUse = await diagnosisTablesInUse(tx, given.fingerprint);
  const tables = diagnosisNumbers(inUse);
  const { checks } = await progressOf(tx, latest);
  const known = diagnosticEvidence(tables, checks, await symptomsOf(tx, tables, jobId));
  const ranking = rankByMoney(tables, known, await checkingRates(tx, vehicleId, given.now));
  if (ranking.kind === 'cannotBeSaid') return ranking;
  const best = ranking.checks.find(({ isWorthIt }) => isWorthIt) ?? ranking.checks[0];
  if (best === undefined) return { kind: 'cannotBeSaid', why: 'allChecksDone' };
  const { diagnosticCheckId, chain, minutes, expectedSaving, cost, net, isOpeningMove, isWorthIt } = best;
  return {
    kind: isWorthIt ? 'worthIt' : 'notWorthIt',
    diagnosticCheckId,
    chain,
    minutes,
    expectedSaving,
    cost,
    net,
    isOpeningMove,
    inspectionId: latest.id,
    tablesVersion: inUse.version,
    tablesHash: inUse.hash,
  };
}
