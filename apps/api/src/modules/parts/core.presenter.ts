import type { CoreContent, CoreResponse, CoreStepDto } from '@endfloat/contracts';
import type { CoreEntry, CoreStepEntry, CoreView } from '@endfloat/workshop';
import { presentRecorded, presentWarning } from '../../http/answers/recorded.presenter.js';

interface Amount {
  readonly amount: string;
  readonly currency: string;
}

export const moneyOrNull = (money: Amount | null): Amount | null =>
  money === null ? null : { amount: money.amount, currency: money.currency };

export function toCore(request: CoreContent): CoreEntry {
  const { supplier, componentType, owedSince, returnBy, deposit, serial, note } = request;
  return { supplier, componentType, owedSince, returnBy, deposit: moneyOrNull(deposit), serial, note };
}

export function toCoreStep({ kind, on, reason, amount }: CoreStepDto): CoreStepEntry {
  return { kind, on, reason, amount: moneyOrNull(amount) };
}

export function presentCore({ record, standing, warnings }: CoreView): CoreResponse {
  const { partId, jobId, stockMoveId } = record.identity;
  return {
    ...presentRecorded(record),
    ...toCore(record.content),
    partId,
    jobId,
    stockMoveId,
    state: standing.state,
    since: standing.since,
    daysLeft: standing.daysLeft,
    next: [...standing.next],
    steps: record.content.steps.map(toCoreStep),
    warnings: warnings.map(presentWarning),
  };
}
