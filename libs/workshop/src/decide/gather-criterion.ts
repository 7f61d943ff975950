import type { Check } from '@endfloat/catalogue';
import type { FunctionalCriterion } from '@endfloat/decision';
import { counts } from '../bench/judging/bench-case.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import type { MeasuredPart } from './gather-wear.js';
import { evidenceOf } from './evidence.js';

/** The answer at which the criterion is met: what its limit does not accept. */
function isPositive(check: Check, answer: boolean): boolean {
  const criterion = check.limits.find((limit) => limit.criterion.kind === 'yesNo')?.criterion;
  return criterion?.kind === 'yesNo' ? answer !== (criterion.accepted === 'yes') : answer;
}

/**
 * The latest answer to the functional criterion of this part. It is valid only where a verdict says so: a positive with the
 * companion set high enough, a negative with the companion in its window. Taken before or after setting the companion makes
 * no difference to the wear, so both phases count.
 */
export async function gatherCriterion(
  tx: ShopTransaction,
  { vehicleId, position, part }: MeasuredPart,
  checks: readonly Check[],
  characteristicId: string,
): Promise<FunctionalCriterion> {
  const check = checks.find(({ functional }) => functional?.outranks.includes(characteristicId) === true);
  if (check === undefined) return { kind: 'notDone' };
  const inspections = await tx.inspections.all({ vehicleId });
  if (inspections.length === 0) return { kind: 'notDone' };
  const inspectionId = inspections.map(({ id }) => id);
  const answers = (await tx.readings.all({ inspectionId, checkId: check.id }))
    .filter(
      ({ content }) =>
        counts({ content }) &&
        content.answer !== null &&
        content.position === position &&
        content.fittedPartId === (part?.id ?? null),
    )
    .sort((a, b) => a.content.takenAt.localeCompare(b.content.takenAt));
  const last = answers.at(-1);
  if (last === undefined || last.content.answer === null) return { kind: 'notDone' };
  const kind = isPositive(check, last.content.answer) ? 'positive' : 'negative';
  const verdict = (
    await tx.verdicts.all({ inspectionId: last.identity.inspectionId, checkId: check.id })
  ).find(({ content }) => content.readingIds.includes(last.id));
  const outcome = verdict?.content.outcome;
  return {
    kind,
    isValid:
      verdict?.content.provisional === false && outcome === (kind === 'positive' ? 'outside' : 'inside'),
    evidence: [
      // The companion that made the answer valid is evidence too.
      ...[...new Set([last.id, ...(verdict?.content.readingIds ?? [])])].map((id) =>
        evidenceOf('reading', id),
      ),
      ...(verdict === undefined ? [] : [evidenceOf('verdict', verdict.id)]),
    ],
  };
}
