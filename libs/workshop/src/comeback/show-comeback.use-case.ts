import { notFound } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { exactSum } from '../rates/job-facts.js';
import type { RepeatCost } from '../rates/comeback-cost.js';
import { settledRows } from '../rates/settled-rows.js';
import { requiredRecord } from '../recording/required-record.js';
import { mayKnowVehicle } from '../recording/vehicle-visibility.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import type { ComebackRecord } from './propose-comebacks.js';

export interface ComebackView {
  readonly record: ComebackRecord;
  readonly originalJobIds: readonly string[];
  readonly repeatJobId: string | null;
  /** all its original jobs together; null where it does not count */
  readonly cost: RepeatCost | null;
  readonly currency: string;
}

/** One comeback: what was said of it, what it counts for, what it cost. */
export class ShowComebackUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, id: string, asOf?: string): Promise<ComebackView> {
    return this.work.read(caller.shopId, async (tx) => {
      const record = await requiredRecord(tx.comebacks, 'comeback', id, asOf);
      const complaint = await requiredRecord(tx.complaints, 'complaint', record.identity.complaintId, asOf);
      const { vehicleId } = complaint.identity;
      if (!(await mayKnowVehicle(tx, caller, vehicleId, this.clock.now()))) throw notFound('comeback');
      const { currency } = await settingsOf(tx, asOf);
      const rows = await settledRows(tx, [vehicleId], asOf);
      const bearing = rows.filter(({ repeats }) => repeats.some(({ comebackId }) => comebackId === id));
      const shares = bearing.flatMap(({ repeats }) => repeats.filter(({ comebackId }) => comebackId === id));
      const sum = (member: 'labour' | 'parts' | 'handling' | 'total'): string =>
        shares.reduce((total, share) => exactSum(total, share[member]), '0');
      return {
        record,
        originalJobIds: bearing.map(({ jobId }) => jobId),
        repeatJobId: complaint.content.jobId,
        cost:
          shares.length === 0
            ? null
            : {
                labour: sum('labour'),
                parts: sum('parts'),
                handling: sum('handling'),
                total: sum('total'),
                gaps: shares[0]?.gaps ?? 0,
              },
        currency,
      };
    });
  }

  /** Every word on it, the oldest first. */
  revisions(caller: Caller, id: string): Promise<readonly ComebackRecord[]> {
    return this.work.read(caller.shopId, async (tx: ShopTransaction) => {
      const { identity } = await requiredRecord(tx.comebacks, 'comeback', id);
      const complaint = await requiredRecord(tx.complaints, 'complaint', identity.complaintId);
      if (!(await mayKnowVehicle(tx, caller, complaint.identity.vehicleId, this.clock.now())))
        throw notFound('comeback');
      return tx.comebacks.history(id);
    });
  }
}
