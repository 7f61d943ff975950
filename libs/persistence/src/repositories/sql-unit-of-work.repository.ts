import { UnitOfWork, type IdSource, type ShopTransaction } from '@endfloat/workshop/ports';
import type { ShopConnection, ShopConnections } from '../connection/shop-connection.js';
import { SqlAuditTrail } from '../queries/audit-trail.query.js';
import { SqlEventFeed } from '../queries/event-feed.query.js';
import { SqlFleetHistoryQueries } from '../queries/fleet-history.query.js';
import { SqlStockQueries } from '../queries/stock.query.js';
import { SqlLearningHistoryQueries } from '../queries/learning-history.query.js';
import { PrismaLearnedTablesStore } from './prisma-learned-tables.repository.js';
import {
  announceEvent,
  PrismaApiKeyStore,
  PrismaPersonalRecordStore,
  PrismaShopStore,
} from './prisma-plain-stores.repository.js';
import type { RecordTable } from './record-table.js';
import { recordTables } from './record-tables.js';
import { SqlStoredAnswerStore } from './sql-stored-answers.repository.js';
import { SqlWebhookDeliveryStore } from './sql-webhook-deliveries.repository.js';
import { SqlWebhookSecretStore } from './sql-webhook-secrets.repository.js';
import { SqlSettledJobStore } from './sql-settled-jobs.repository.js';
import { SqlRecordStore } from './sql-record-store.repository.js';

type RecordTables = typeof recordTables;
type RecordStores = Pick<ShopTransaction, keyof RecordTables & keyof ShopTransaction>;

export class SqlUnitOfWork extends UnitOfWork {
  constructor(
    private readonly connections: ShopConnections,
    private readonly ids: IdSource,
  ) {
    super();
  }

  run<T>(shopId: string, work: (tx: ShopTransaction) => Promise<T>): Promise<T> {
    return this.connections.inTransaction(shopId, 'READ WRITE', (connection) =>
      work(this.transaction(connection)),
    );
  }

  read<T>(shopId: string, work: (tx: ShopTransaction) => Promise<T>): Promise<T> {
    return this.connections.inTransaction(shopId, 'READ ONLY', (connection) =>
      work(this.transaction(connection)),
    );
  }

  /** The stores on a connection; for transactions that this class did not open. */
  transaction(connection: ShopConnection): ShopTransaction {
    const tables = Object.entries(recordTables) as unknown as [string, RecordTable<object, object>][];
    const entries = tables.map(([name, table]) => [name, new SqlRecordStore(connection, table)]);
    return {
      ...(Object.fromEntries(entries) as unknown as RecordStores),
      shopId: connection.shopId,
      shops: new PrismaShopStore(connection),
      apiKeys: new PrismaApiKeyStore(connection),
      personal: new PrismaPersonalRecordStore(connection),
      fleetHistory: new SqlFleetHistoryQueries(connection),
      settledJobs: new SqlSettledJobStore(connection),
      stock: new SqlStockQueries(connection),
      learnedTables: new PrismaLearnedTablesStore(connection),
      learningHistory: new SqlLearningHistoryQueries(connection),
      storedAnswers: new SqlStoredAnswerStore(connection),
      webhookSecrets: new SqlWebhookSecretStore(connection),
      webhookDeliveries: new SqlWebhookDeliveryStore(connection),
      events: new SqlEventFeed(connection),
      auditTrail: new SqlAuditTrail(connection),
      takeTurn: (id) => takeTurn(connection, id),
      announce: (event) => announceEvent(connection, this.ids.next(), event),
    };
  }
}

async function takeTurn({ sql, shopId }: ShopConnection, id: string): Promise<void> {
  await sql.query('SELECT pg_advisory_xact_lock(hashtextextended($1, 0))', [`${shopId}/${id}`]);
}
