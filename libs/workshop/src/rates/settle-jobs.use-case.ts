import { settlingVersion } from '@endfloat/reliability';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { settledRows } from './settled-rows.js';

/** Vehicles settled in one transaction. */
const atOnce = 100;

/**
 * Brings the settled jobs of a shop up to its records. A projection: dropping it and running this again gives the same.
 * Two at once do no harm, they take turns.
 */
export class SettleJobsUseCase {
  constructor(private readonly work: UnitOfWork) {}

  /** Settles up to `most` vehicles and answers how many it did; fewer than `most`: nothing was left. */
  async execute(shopId: string, most = Infinity): Promise<number> {
    let settled = 0;
    await this.work.run(shopId, (tx) => tx.settledJobs.markOtherMethod(settlingVersion));
    while (settled < most) {
      const size = Math.min(atOnce, most - settled);
      const found = await this.work.run(shopId, (tx) => settleSome(tx, size));
      settled += found;
      if (found < size) break;
    }
    return settled;
  }

  /** Marks everything to be settled again. */
  rebuild(shopId: string): Promise<void> {
    return this.work.run(shopId, (tx) => tx.settledJobs.markAll());
  }
}

async function settleSome(tx: ShopTransaction, most: number): Promise<number> {
  await tx.takeTurn('settled-jobs');
  const vehicleIds = await tx.settledJobs.takeUnsettled(most);
  await tx.settledJobs.add(await settledRows(tx, vehicleIds), settlingVersion);
  return vehicleIds.length;
}
