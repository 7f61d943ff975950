import { SharedTransaction, type ShopTransaction } from '@endfloat/workshop/ports';
import type { ShopConnections } from '../connection/shop-connection.js';
import type { SqlUnitOfWork } from './sql-unit-of-work.repository.js';

/** A transaction that whatever the unit of work runs meanwhile joins. */
export class SqlSharedTransaction extends SharedTransaction {
  constructor(
    private readonly connections: ShopConnections,
    private readonly work: SqlUnitOfWork,
  ) {
    super();
  }

  run<T>(shopId: string, work: (tx: ShopTransaction) => Promise<T>): Promise<T> {
    return this.connections.sharing(shopId, (connection) => work(this.work.transaction(connection)));
  }
}
