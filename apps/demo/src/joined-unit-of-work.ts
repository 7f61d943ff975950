import { UnitOfWork, type ShopTransaction } from '@endfloat/workshop';

/**
 * Runs every use case in one transaction that is already open: the history of a van is there as a whole or not at all,
 * so that a start that was killed goes on with the next van.
 */
export class JoinedUnitOfWork extends UnitOfWork {
  constructor(private readonly tx: ShopTransaction) {
    super();
  }

  run<T>(shopId: string, work: (tx: ShopTransaction) => Promise<T>): Promise<T> {
    if (shopId !== this.tx.shopId) throw new RangeError('the open transaction belongs to another shop');
    return work(this.tx);
  }

  read<T>(shopId: string, work: (tx: ShopTransaction) => Promise<T>): Promise<T> {
    return this.run(shopId, work);
  }
}
