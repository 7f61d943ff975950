import { invalidInput } from '../errors/domain.errors.js';
import type { AuditEntry } from '../ports/audit.port.js';
import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';

const day = 86_400_000;
const usualDays = 31;
const mostDays = 366;

export interface AuditQuestion {
  readonly from?: string | undefined;
  readonly until?: string | undefined;
  readonly by?: string | undefined;
  readonly kind?: string | undefined;
  readonly recordId?: string | undefined;
  readonly after?: { readonly sortValue: string; readonly id: string } | undefined;
  readonly limit: number;
}

/**
 * Who recorded, corrected, revoked or erased what, newest first. It is read from the records themselves, which nobody
 * can change, so it holds what every way in has written: requests, imports, and the service's own work.
 */
export class ListAuditEntriesUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    question: AuditQuestion,
  ): Promise<{
    readonly items: readonly AuditEntry[];
    readonly next?: { readonly sortValue: string; readonly id: string } | undefined;
  }> {
    // What was recorded within this very millisecond belongs to the trail, too.
    const until = question.until ?? moved(this.clock.now(), 1);
    const from = question.from ?? moved(until, -usualDays * day);
    if (from > until) throw invalidInput('/from', 'order', 'The span ends before it begins.');
    if (Date.parse(until) - Date.parse(from) > mostDays * day)
      throw invalidInput('/from', 'span', `Ask for at most ${String(mostDays)} days at once.`);
    return this.work.read(caller.shopId, (tx) => tx.auditTrail.list({ ...question, from, until }));
  }
}

function moved(instant: string, milliseconds: number): string {
  return new Date(Date.parse(instant) + milliseconds).toISOString();
}
