import fc from 'fast-check';
import type pg from 'pg';
import { moveStock } from '@endfloat/stock';
import type { StockMoveIdentity } from '@endfloat/workshop/ports';
import { createTestDatabase, type TestDatabase } from '../../../../test/support/database.js';
import { openDatabasePool } from '../connection/database-pool.js';
import { ShopConnections } from '../connection/shop-connection.js';
import { SqlUnitOfWork } from '../repositories/sql-unit-of-work.repository.js';
import { UuidSource } from '../system/uuid-source.js';
import { buildStockLinesSql } from './stock.query.js';

const ids = new UuidSource();
const by = ids.next();
const moment = (minutes: number): string =>
  new Date(Date.parse('2031-05-04T09:00:00.000Z') + minutes * 60_000).toISOString();

let database: TestDatabase;
let pool: pg.Pool;
let connections: ShopConnections;
let work: SqlUnitOfWork;

beforeAll(async () => {
  database = await createTestDatabase();
  pool = openDatabasePool({ url: database.apiUrl, size: 2, waitMs: 20_000 });
  connections = new ShopConnections(pool);
  work = new SqlUnitOfWork(connections, ids);
});

afterAll(async () => {
  await connections.close();
  await database.drop();
});

const content = (happenedAt: string, quantity: number) => ({
  happenedAt,
  serial: null,
  batch: null,
  quantity,
  supplier: null,
  offerId: null,
  deliveryId: null,
  unitCost: null,
  place: null,
  note: null,
  warnings: [],
});

async function shopWithParts(count: number): Promise<{ shopId: string; partIds: string[] }> {
  const shopId = ids.next();
  const partIds = Array.from({ length: count }, () => ids.next());
  await work.run(shopId, async (tx) => {
    await tx.shops.add(moment(0));
    for (const id of partIds) {
      const part = {
        componentType: 'throttle-housing',
        partNumber: id,
        title: 'housing',
        applications: [],
        supersededById: null,
        interchangesWith: [],
        alsoOrder: [],
        note: null,
      };
      await tx.parts.add(id, {}, part, { at: moment(0), by });
    }
  });
  return { shopId, partIds };
}

const line = (partId: string, more: Partial<StockMoveIdentity>): StockMoveIdentity => ({
  partId,
  jobId: null,
  workLineId: null,
  reversesId: null,
  condition: 'used',
  kind: 'receive',
  position: 1,
  onHandChange: 1,
  reservedChange: 0,
  onHandAfter: 1,
  reservedAfter: 0,
  ...more,
});

describe('the ends of stock ledgers', () => {
  it('are what adding up every change by hand gives, now and as of any moment', async () => {
    const conditions = ['used', 'new'] as const;
    const step = fc.record({
      part: fc.nat(1),
      condition: fc.constantFrom(...conditions),
      quantity: fc.integer({ min: 1, max: 5 }),
      kind: fc.constantFrom('receive', 'remove', 'count'),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 12 }), fc.nat(12), async (steps, at) => {
        const { shopId, partIds } = await shopWithParts(2);
        const written: { at: string; identity: StockMoveIdentity }[] = [];
        await work.run(shopId, async (tx) => {
          for (const [index, { part, condition, quantity, kind }] of steps.entries()) {
            const partId = partIds[part]!;
            const own = written.filter(
              ({ identity }) => identity.partId === partId && identity.condition === condition,
            );
            const onHand = own.reduce((sum, { identity }) => sum + identity.onHandChange, 0);
            const balance = { onHand, reserved: 0, reservedForJob: 0, inJob: 0 };
            const outcome = moveStock(balance, { kind: kind as 'receive', quantity });
            if (outcome.kind === 'refused') continue;
            const identity = line(partId, {
              condition,
              kind: kind,
              position: own.length + 1,
              onHandChange: outcome.onHandChange,
              onHandAfter: outcome.after.onHand,
            });
            const recordedAt = moment(index);
            await tx.stockMoves.add(ids.next(), identity, content(recordedAt, quantity), {
              at: recordedAt,
              by,
            });
            written.push({ at: recordedAt, identity });
          }
        });
        for (const asOf of [undefined, moment(at)]) {
          const found = await work.read(shopId, (tx) => tx.stock.lines({ asOf }));
          const known = written.filter((each) => asOf === undefined || each.at <= asOf);
          const expected = partIds.flatMap((partId) =>
            [...conditions].sort().flatMap((condition) => {
              const own = known.filter(
                ({ identity }) => identity.partId === partId && identity.condition === condition,
              );
              const onHand = own.reduce((sum, { identity }) => sum + identity.onHandChange, 0);
              return own.length === 0 ? [] : [[partId, condition, own.length, onHand]];
            }),
          );
          expect(found.map((each) => [each.partId, each.condition, each.position, each.onHand])).toEqual(
            expected.sort(([a = '', b = ''], [c = '', d = '']) => (`${a} ${b}` < `${c} ${d}` ? -1 : 1)),
          );
        }
      }),
      { seed: 71, numRuns: 15 },
    );
  });

  it('are found by one look into the index a ledger', async () => {
    const { shopId } = await shopWithParts(1);
    const { text, values } = buildStockLinesSql(shopId, {});
    const plan = await connections.inTransaction(shopId, 'READ ONLY', async ({ sql }) => {
      await sql.query('SET LOCAL enable_seqscan = off');
      const { rows } = await sql.query<{ 'QUERY PLAN': string }>(`EXPLAIN ${text}`, values);
      return rows.map((row) => row['QUERY PLAN']).join('\n');
    });
    expect(plan).toMatch(/Index Scan Backward using stock_move_shop_id_part_id_condition_position_key/);
  });
});

describe('the ledger keeps itself', () => {
  const refused = async (lines: readonly Partial<StockMoveIdentity>[]): Promise<string> => {
    const { shopId, partIds } = await shopWithParts(1);
    try {
      await work.run(shopId, async (tx) => {
        for (const more of lines)
          await tx.stockMoves.add(ids.next(), line(partIds[0]!, more), content(moment(0), 1), {
            at: moment(0),
            by,
          });
      });
    } catch (error) {
      return String(error);
    }
    return 'taken';
  };

  it('API row 40: refuses less than nothing, a line that does not go on from the one before, and more kept than is there', async () => {
    expect(await refused([{ onHandChange: -1, onHandAfter: -1 }])).toContain('stock_move_never_negative');
    expect(await refused([{}, { position: 2, onHandChange: 1, onHandAfter: 7 }])).toContain(
      'goes on from the move before it',
    );
    expect(
      await refused([
        { kind: 'reserve', onHandChange: 0, onHandAfter: 0, reservedChange: 1, reservedAfter: 1 },
      ]),
    ).toContain('stock_move_reserves_what_is_there');
    expect(await refused([{}, { position: 2, onHandAfter: 2 }])).toBe('taken');
  });

  it('API row 40: of two lines at the same place only the first is taken', async () => {
    const { shopId, partIds } = await shopWithParts(1);
    const outcomes = await work.run(shopId, async (tx) => {
      const add = () =>
        tx.stockMoves.add(ids.next(), line(partIds[0]!, {}), content(moment(0), 1), { at: moment(0), by });
      return [await add(), await add()];
    });
    expect(outcomes).toEqual(['added', 'otherContent']);
  });
});
