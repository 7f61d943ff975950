import type { ShopTransaction } from './unit-of-work.port.js';

/**
 * A transaction that everything joins which the unit of work runs for the same shop while `work` runs: what it calls
 * commits with it or not at all. A part that fails and is caught leaves nothing behind, the rest goes on. A transaction
 * lost to a serialization failure or deadlock is run again as a whole.
 */
export abstract class SharedTransaction {
  abstract run<T>(shopId: string, work: (tx: ShopTransaction) => Promise<T>): Promise<T>;
}
