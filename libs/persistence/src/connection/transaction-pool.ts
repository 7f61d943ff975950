import { AsyncLocalStorage } from 'node:async_hooks';
import pg from 'pg';

const current = new AsyncLocalStorage<pg.PoolClient>();

/** Runs `work` so that Prisma's client, wherever it is called in it, uses this connection. */
export function onConnection<T>(client: pg.PoolClient, work: () => Promise<T>): Promise<T> {
  return current.run(client, work);
}

function connection(): pg.PoolClient {
  const client = current.getStore();
  if (client === undefined) throw new Error('the database is reached through a transaction of a shop only');
  return client;
}

/**
 * What Prisma's adapter takes for a pool: it owns no connection and passes every statement on to the connection of
 * the running transaction. So Prisma and plain SQL share one transaction, and Prisma can reach nothing outside one.
 */
export class TransactionPool extends pg.Pool {
  override query = ((...statement: Parameters<pg.PoolClient['query']>) =>
    connection().query(...statement)) as unknown as pg.Pool['query'];

  override connect(): Promise<pg.PoolClient> {
    return Promise.reject(new Error('transactions are opened by the unit of work, not by Prisma'));
  }
}
