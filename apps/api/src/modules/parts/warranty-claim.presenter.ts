import type { WarrantyClaimContent, WarrantyClaimResponse, WarrantyClaimStepDto } from '@endfloat/contracts';
import type { ClaimStepEntry, WarrantyClaimEntry, WarrantyClaimView } from '@endfloat/workshop';
import { presentRecorded, presentWarning } from '../../http/answers/recorded.presenter.js';
import { moneyOrNull } from './core.presenter.js';

export function toWarrantyClaim(request: WarrantyClaimContent): WarrantyClaimEntry {
  const { supplier, giver, claimedOn, foundOn, months, km, amount, description } = request;
  return { supplier, giver, claimedOn, foundOn, months, km, amount: moneyOrNull(amount), description };
}

export function toClaimStep({ kind, on, reason, amount }: WarrantyClaimStepDto): ClaimStepEntry {
  return { kind, on, reason, amount: moneyOrNull(amount) };
}

type Cover = WarrantyClaimView['record']['content']['cover'];

function coverWord(cover: Cover): WarrantyClaimResponse['cover'] {
  if (cover.kind !== 'ended') return cover.kind;
  return cover.by === 'months' ? 'endedByMonths' : 'endedByDistance';
}

export function presentWarrantyClaim({ record, standing }: WarrantyClaimView): WarrantyClaimResponse {
  const { partId, fittedPartId, jobId } = record.identity;
  const { content } = record;
  return {
    ...presentRecorded(record),
    ...toWarrantyClaim(content),
    partId,
    fittedPartId,
    jobId,
    state: standing.state,
    next: [...standing.next],
    cover: coverWord(content.cover),
    steps: content.steps.map(toClaimStep),
    warnings: content.warnings.map(presentWarning),
  };
}
