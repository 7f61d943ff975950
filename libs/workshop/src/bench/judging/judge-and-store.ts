import type { IdSource } from '../../ports/id-source.port.js';
import type { Stamp } from '../../ports/record-store.port.js';
import type { ShopTransaction } from '../../ports/unit-of-work.port.js';
import { gatherBenchCase, type BenchGround } from './gather-bench-case.js';
import { judgeInspection } from './judge-inspection.js';
import { storeVerdicts } from './store-verdicts.js';

/** Judges an inspection by everything recorded so far and stores what changed. */
export async function judgeAndStore(
  tx: ShopTransaction,
  ids: IdSource,
  ground: BenchGround,
  stamp: Stamp & { readonly reason: string },
): Promise<void> {
  const rows = judgeInspection(await gatherBenchCase(tx, ground));
  await storeVerdicts(tx, ids, ground.inspection.id, rows, stamp);
}
