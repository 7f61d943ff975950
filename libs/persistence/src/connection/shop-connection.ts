import type pg from 'pg';
import { PrismaPg } from '@prisma/adapter-pg';
import { PrismaClient } from '../generated/client.js';
import { onConnection, TransactionPool } from './transaction-pool.js';

const uuid = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;
const transient = new Set(['40001', '40P01']);
const attempts = 3;

/** One connection with the shop set: plain SQL and Prisma, in the same transaction. */
export interface ShopConnection {
  readonly shopId: string;
  readonly sql: pg.PoolClient;
  readonly prisma: PrismaClient;
}

/** Opens transactions of one shop. There is no other way to a connection. */
export class ShopConnections {
  private readonly prisma: PrismaClient;

  constructor(private readonly pool: pg.Pool) {
    this.prisma = new PrismaClient({ adapter: new PrismaPg(new TransactionPool()) });
  }

  async inTransaction<T>(
    shopId: string,
    access: 'READ WRITE' | 'READ ONLY',
    work: (connection: ShopConnection) => Promise<T>,
  ): Promise<T> {
    if (!uuid.test(shopId)) throw new RangeError('a shop is named by a lower-case UUID');
    for (let attempt = 1; ; attempt += 1) {
      try {
        return await this.once(shopId, access, work);
      } catch (error) {
        if (attempt >= attempts || !transient.has(sqlState(error) ?? '')) throw error;
      }
    }
  }

  private async once<T>(
    shopId: string,
    access: string,
    work: (connection: ShopConnection) => Promise<T>,
  ): Promise<T> {
    const client = await this.pool.connect();
    let broken = false;
    try {
      // One round trip. The setting is local to the transaction, so a pooled connection never keeps a shop.
      await client.query(`BEGIN ${access}; SELECT set_config('app.shop', '${shopId}', true)`);
      const result = await onConnection(client, () => work({ shopId, sql: client, prisma: this.prisma }));
      await client.query('COMMIT');
      return result;
    } catch (error) {
      try {
        await client.query('ROLLBACK');
      } catch {
        broken = true;
      }
      throw error;
    } finally {
      client.release(broken);
    }
  }

  async close(): Promise<void> {
    await this.prisma.$disconnect();
    await this.pool.end();
  }
}

/** SQLSTATE of an error of pg or of Prisma's adapter. */
export function sqlState(error: unknown): string | undefined {
  if (typeof error !== 'object' || error === null) return undefined;
  if (
    'code' in error &&
    typeof error.code === 'string' &&
    /^[0-9A-Z]{5}$/.test(error.code) &&
    !/^P\d{4}$/.test(error.code)
  ) {
    return error.code;
  }
  if ('cause' in error) {
    const cause = error.cause;
    if (
      typeof cause === 'object' &&
      cause !== null &&
      'originalCode' in cause &&
      typeof cause.originalCode === 'string'
    ) {
      return cause.originalCode;
    }
    return sqlState(cause);
  }
  return undefined;
}
