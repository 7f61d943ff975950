import type { AssessmentInput, SafetyFinding } from '@endfloat/decision';
import { openDangerousFindings } from '../jobs/dangerous-findings.js';
import type { AssessmentQuestion } from '../ports/records/decide.records.js';
import type { FittedPart } from '../ports/records/vehicles.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { evidenceOf } from './evidence.js';

/** Work after which the worn surfaces are other ones; its comebacks say nothing about the wear of the part. */
const renewing: ReadonlySet<string> = new Set(['replace', 'reBush']);

/**
 * Comebacks that a person has confirmed, of jobs that worked on this component and were released since the present part was
 * fitted: comebacks of a part that is gone say nothing about this one.
 */
export async function gatherComebacks(
  tx: ShopTransaction,
  { vehicleId, componentType, position }: AssessmentQuestion,
  part: FittedPart | undefined,
): Promise<AssessmentInput['evidence']['earlierComebacks']> {
  const complaints = await tx.complaints.all({ vehicleId });
  if (complaints.length === 0) return { count: 0, evidence: [] };
  const complaintId = complaints.map(({ id }) => id);
  const confirmed = await tx.comebacks.all({ complaintId, state: 'confirmed' });
  if (confirmed.length === 0) return { count: 0, evidence: [] };
  const jobId = [...new Set(confirmed.map(({ identity }) => identity.jobId))];
  const lines = await tx.workLines.all({ jobId, componentType, position, state: 'done' });
  const releases = await tx.releases.all({ jobId });
  const since = part?.fittedAt ?? '';
  const counted = confirmed.filter(({ identity }) => {
    const release = releases.find((each) => each.identity.jobId === identity.jobId);
    const own = lines.filter((line) => line.identity.jobId === identity.jobId);
    const keptTheWear = own.length > 0 && !own.some(({ content }) => renewing.has(content.action));
    return keptTheWear && release !== undefined && release.content.releasedAt >= since;
  });
  return {
    count: counted.length,
    evidence: counted.flatMap(({ id, identity }) => [
      evidenceOf('comeback', id),
      evidenceOf('job', identity.jobId),
    ]),
  };
}

/** Dangerous findings on this component, and those on others, which no repair of this component cures. */
export async function gatherDangers(
  tx: ShopTransaction,
  vehicleId: string,
  checkIds: ReadonlySet<string>,
): Promise<{ readonly here: readonly SafetyFinding[]; readonly elsewhere: readonly string[] }> {
  const open = await openDangerousFindings(tx, vehicleId);
  const here = open.filter(({ checkId }) => checkIds.has(checkId));
  return {
    here: here.map(({ verdictId }) => ({
      findingId: evidenceOf('verdict', verdictId),
      // Anything but leaving it frees the linkage or renews the part; the release asks for the proof.
      curedBy: ['adjust', 'reBush', 'fitUsed', 'fitRemanufactured', 'fitNew'],
      evidence: [],
    })),
    elsewhere: open.filter(({ checkId }) => !checkIds.has(checkId)).map(({ verdictId }) => verdictId),
  };
}

/** What the customer has agreed to on this job: the ceiling of the latest version that was consented to. */
export async function gatherConsent(
  tx: ShopTransaction,
  { jobId, declinedActions }: AssessmentQuestion,
): Promise<AssessmentInput['consent']> {
  if (jobId === null) return { declinedActions, ceiling: null, evidence: [] };
  const answers = [...(await tx.consents.all({ jobId }))].sort((a, b) =>
    a.content.answeredAt.localeCompare(b.content.answeredAt),
  );
  const estimates = await tx.estimates.all({ jobId });
  const agreed = estimates
    .filter(
      ({ id }) =>
        answers.filter((each) => each.identity.estimateId === id).at(-1)?.content.answer === 'given',
    )
    .sort((a, b) => a.identity.estimateVersion - b.identity.estimateVersion)
    .at(-1);
  return {
    declinedActions,
    ceiling:
      agreed === undefined
        ? null
        : { amount: agreed.content.ceilingAmount, currency: agreed.content.currency },
    evidence: answers.map(({ id }) => evidenceOf('consent', id)),
  };
}
