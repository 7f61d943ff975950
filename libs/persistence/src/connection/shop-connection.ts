import { AsyncLocalStorage } from 'node:async_hooks';
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

/** A transaction that others join, one after the other. */
interface Shared {
  readonly connection: ShopConnection;
  /** ends when the last of those who joined has ended */
  last: Promise<unknown>;
}

const shared = new AsyncLocalStorage<Shared>();

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
    const open = shared.getStore();
    if (open?.connection.shopId === shopId) return join(open, access, work);
    return this.separately(shopId, access, work);
  }

  /** A transaction that every other one of the same shop joins which is asked for within `work`. */
  sharing<T>(shopId: string, work: (connection: ShopConnection) => Promise<T>): Promise<T> {
    return this.separately(shopId, 'READ WRITE', (connection) =>
      shared.run({ connection, last: Promise.resolve() }, () => work(connection)),
    );
  }

  private async separately<T>(
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
    // A connection that breaks while it is held says so twice: to the statement under way, which fails, and as an
    // event, which would end the process if nobody listened.
    const onBreak = (): void => {
      broken = true;
    };
    client.on('error', onBreak);
    try {
      // One round trip. The setting is local to the transaction, so a pooled connection never keeps a shop.
      await client.query(`BEGIN ${access}; SELECT set_config('app.shop', '${shopId}', true)`);
      const result = await onConnection(
        client,
        // Awaited inside: a promise of Prisma asks for its connection when it is awaited, not when it is made.
        async () => await work({ shopId, sql: client, prisma: this.prisma }),
      );
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
      client.off('error', onBreak);
      client.release(broken);
    }
  }

  async close(): Promise<void> {
    await this.prisma.$disconnect();
    await this.pool.end();
  }
}

/**
 * Runs `work` within an open transaction, after whoever joined it before. What it wrote is taken back when it fails, so
 * that whoever catches the failure may go on, or try again.
 */
function join<T>(
  open: Shared,
  access: 'READ WRITE' | 'READ ONLY',
  work: (connection: ShopConnection) => Promise<T>,
): Promise<T> {
  const { connection } = open;
  const part = async (): Promise<T> => {
    const run = () => shared.run({ connection, last: Promise.resolve() }, async () => await work(connection));
    if (access === 'READ ONLY') return run();
    await connection.sql.query('SAVEPOINT joined');
    try {
      const result = await run();
      await connection.sql.query('RELEASE SAVEPOINT joined');
      return result;
    } catch (error) {
      await connection.sql
        .query('ROLLBACK TO SAVEPOINT joined; RELEASE SAVEPOINT joined')
        .catch(() => undefined);
      throw error;
    }
  };
  const result = open.last.then(part, part);
  open.last = result.catch(() => undefined);
  return result;
}

/** SQLSTATE of an error of pg, or of one of Prisma, which keeps what its adapter was told in `meta`. */
export function sqlState(error: unknown): string | undefined {
  if (typeof error !== 'object' || error === null) return undefined;
  const { code, originalCode, cause, meta } = error as Record<string, unknown>;
  const own = [originalCode, code].find(isSqlState);
  if (own !== undefined) return own;
  return (
    sqlState(cause) ?? sqlState((meta as { driverAdapterError?: unknown } | undefined)?.driverAdapterError)
  );
}

const isSqlState = (code: unknown): code is string =>
  typeof code === 'string' && /^[0-9A-Z]{5}$/.test(code) && !/^P\d{4}$/.test(code);
