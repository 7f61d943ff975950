import type pg from 'pg';
import { DomainError, type ShopTransaction, type Stamp } from '@endfloat/workshop/ports';
import { createTestDatabase, type TestDatabase } from '../../../../test/support/database.js';
import {
  columnFacts,
  columnFactsQuery,
  RecordSamples,
  sampleStamp,
  type AnyStore,
  type ColumnFacts,
  type SampledTables,
} from '../../../../test/integration/record-samples.js';
import { openDatabasePool } from '../connection/database-pool.js';
import { ShopConnections } from '../connection/shop-connection.js';
import { UuidSource } from '../system/uuid-source.js';
import { recordTables } from './record-tables.js';
import { SqlUnitOfWork } from './sql-unit-of-work.repository.js';

const tables: SampledTables = recordTables;
const stores = Object.keys(tables);
const ids = new UuidSource();

let database: TestDatabase;
let pool: pg.Pool;
let connections: ShopConnections;
let work: SqlUnitOfWork;
let facts: ColumnFacts;
let samples: RecordSamples;
let shopId: string;

const later = (seconds: number): Stamp => ({
  at: new Date(Date.parse(sampleStamp.at) + seconds * 1000).toISOString(),
  by: sampleStamp.by,
  reason: 'the figure was misread',
});
const inShop = <T>(
  shop: string,
  store: string,
  run: (records: AnyStore, tx: ShopTransaction) => Promise<T>,
): Promise<T> => work.run(shop, (tx) => run(samples.storeOf(tx, store), tx));

async function openShop(): Promise<string> {
  const id = ids.next();
  await work.run(id, (tx) => tx.shops.add(sampleStamp.at));
  return id;
}

beforeAll(async () => {
  database = await createTestDatabase();
  pool = openDatabasePool({ url: database.apiUrl, size: 10, waitMs: 20_000 });
  connections = new ShopConnections(pool);
  work = new SqlUnitOfWork(connections, ids);
  const owner = openDatabasePool({ url: database.ownerUrl, size: 1, waitMs: 20_000 });
  facts = columnFacts(
    (await owner.query<{ column: string; nullable: boolean; leadsTo: string | null }>(columnFactsQuery)).rows,
  );
  await owner.end();
  samples = new RecordSamples(tables, facts, ids);
});

beforeEach(async () => {
  shopId = await openShop();
});

afterAll(async () => {
  await connections.close();
  await database.drop();
});

it('keys that lead to other records are known, so that the tests of references test something', () => {
  expect(stores.length).toBeGreaterThan(25);
  expect(facts.leadsTo.size).toBeGreaterThan(50);
});

describe.each(stores)('the store of %s', (store) => {
  const table = tables[store]!;

  it.each(['full', 'bare'] as const)(
    'gives a record back as it was recorded, every column %s',
    async (form) => {
      await inShop(shopId, store, async (records, tx) => {
        const { id, identity, content } = await samples.record(tx, store, form);
        const expected = {
          id,
          identity,
          content,
          revision: 1,
          recordedAt: sampleStamp.at,
          recordedBy: sampleStamp.by,
          reason: null,
          replacedAt: null,
          firstRecordedAt: sampleStamp.at,
        };
        expect(await records.find(id)).toEqual(expected);
        expect(await records.history(id)).toEqual([expected]);
      });
    },
  );

  it('takes the same record again, and refuses other content under its id', async () => {
    await inShop(shopId, store, async (records, tx) => {
      const { id, identity, content } = await samples.record(tx, store);
      expect(await records.add(id, identity, { ...content }, later(1))).toBe('sameAgain');
      expect(await records.add(id, identity, { ...content, inside: 'other' }, later(1))).toBe('otherContent');
      expect(await records.history(id)).toHaveLength(1);
    });
  });

  it('corrects by a new revision, and still tells what was known before', async () => {
    await inShop(shopId, store, async (records, tx) => {
      const { id, identity, content } = await samples.record(tx, store);
      const changed = { ...content, ...(await samples.make(tx, store, 'bare')).content, inside: 'corrected' };

      expect(await records.correct(id, 1, changed, later(60))).toBe('corrected');
      expect(await records.correct(id, 1, content, later(90))).toBe('changedMeanwhile');
      expect(await records.correct(id, 7, content, later(90))).toBe('changedMeanwhile');
      expect(await records.correct(ids.next(), 1, content, later(90))).toBe('notFound');

      expect(await records.find(id)).toMatchObject({
        revision: 2,
        identity,
        content: changed,
        reason: later(60).reason,
      });
      expect(await records.find(id, later(-1).at)).toBeUndefined();
      expect(await records.find(id, later(0).at)).toMatchObject({
        revision: 1,
        content,
        replacedAt: later(60).at,
      });
      expect(await records.find(id, later(59).at)).toMatchObject({ revision: 1, content });
      expect(await records.find(id, later(60).at)).toMatchObject({ revision: 2, content: changed });
      expect((await records.history(id)).map(({ revision, replacedAt }) => [revision, replacedAt])).toEqual([
        [1, later(60).at],
        [2, null],
      ]);
      expect((await records.list({ limit: 9, asOf: later(30).at, where: { id } })).items).toMatchObject([
        { revision: 1 },
      ]);
    });
  });

  it('records many as it records one, and pages through them once each', async () => {
    await inShop(shopId, store, async (records, tx) => {
      const many = [
        await samples.make(tx, store),
        await samples.make(tx, store, 'bare'),
        await samples.make(tx, store),
        await samples.make(tx, store),
      ];
      const before = (await records.all({})).length;
      await records.addMany(many, sampleStamp);
      for (const { id, identity, content } of many)
        expect(await records.find(id)).toMatchObject({
          id,
          identity,
          content,
          revision: 1,
          recordedAt: sampleStamp.at,
        });

      const walked: string[] = [];
      let page = await records.list({ limit: 1 });
      while (page.next !== undefined) {
        walked.push(...page.items.map(({ id }) => id));
        page = await records.list({ limit: 1, after: page.next });
      }
      walked.push(...page.items.map(({ id }) => id));
      const all = (await records.all({})).map(({ id }) => id);
      expect(walked).toEqual(all);
      expect(new Set(walked).size).toBe(before + many.length);
    });
  });

  it('records none of many when one of them is there already', async () => {
    const known = await inShop(shopId, store, (_records, tx) => samples.record(tx, store));
    const fresh = await inShop(shopId, store, (_records, tx) => samples.make(tx, store));
    const refused = inShop(shopId, store, (records) => records.addMany([fresh, known], later(1)));
    await expect(refused).rejects.toMatchObject({ code: 'record.idTaken' });
    expect(await inShop(shopId, store, (records) => records.find(fresh.id))).toBeUndefined();
    expect(await inShop(shopId, store, (records) => records.history(known.id))).toHaveLength(1);
  });

  it('finds a record by each of its columns, and by no member of the document', async () => {
    await inShop(shopId, store, async (records, tx) => {
      const { id, identity, content } = await samples.record(tx, store);
      const bare = await samples.record(tx, store, 'bare');
      for (const [member, value] of Object.entries({ ...identity, ...content })) {
        if (member === 'inside' || Array.isArray(value)) continue;
        const found = await records.all({ [member]: value });
        expect([member, found.map((record) => record.id)]).toEqual([member, expect.arrayContaining([id])]);
        if (typeof value !== 'string') continue;
        expect((await records.all({ [member]: [value], id })).length).toBe(1);
      }
      for (const [member, value] of Object.entries({ ...bare.identity, ...bare.content }))
        if (value === null)
          expect((await records.all({ [member]: null })).map((record) => record.id)).toContain(bare.id);
      await expect(records.all({ inside: 'x' } as never)).rejects.toThrow(RangeError);
    });
  });

  it('shows nothing of it to another shop, which may use the same id for a record of its own', async () => {
    const { id, content } = await inShop(shopId, store, (_records, tx) => samples.record(tx, store));
    await inShop(await openShop(), store, async (records, tx) => {
      expect(await records.find(id)).toBeUndefined();
      expect(await records.history(id)).toEqual([]);
      expect(await records.all({})).toEqual([]);
      expect(await records.correct(id, 1, content, later(1))).toBe('notFound');
      const own = await samples.make(tx, store);
      expect(await records.add(id, own.identity, own.content, later(1))).toBe('added');
    });
    const [first] = await inShop(shopId, store, (records) => records.history(id));
    expect(first).toMatchObject({ content, revision: 1, replacedAt: null });
  });

  const references = [
    ...Object.keys(table.identity).map((member) => ({ member, part: 'identity' as const, lies: table.name })),
    ...Object.keys(table.columns).map((member) => ({
      member,
      part: 'content' as const,
      lies: `${table.name}_revision`,
    })),
  ];
  it('refuses to point at a record of another shop, and names the member', async () => {
    const column = (member: string): string =>
      member.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
    for (const { member, part, lies } of references) {
      if (!facts.leadsTo.has(`${lies}.${column(member)}`)) continue;
      const foreign = await work.run(
        await openShop(),
        async (tx) => (await samples.record(tx, store))[part][member],
      );
      const refused = inShop(shopId, store, async (records, tx) => {
        const { id, identity, content } = await samples.make(tx, store);
        const pointing = { identity, content, [part]: { ...{ identity, content }[part], [member]: foreign } };
        return records.add(id, pointing.identity, pointing.content, sampleStamp);
      });
      await expect(refused).rejects.toMatchObject({
        code: 'record.unknownReference',
        faults: [{ pointer: `/${member}` }],
      });
      await expect(refused).rejects.toBeInstanceOf(DomainError);
    }
  });
});

describe('records under way at once', () => {
  it('are corrected by exactly one of ten that start from the same revision', async () => {
    const { id, content } = await inShop(shopId, 'vehicles', (_records, tx) =>
      samples.record(tx, 'vehicles'),
    );
    const outcomes = await Promise.all(
      Array.from({ length: 10 }, (_, at) =>
        inShop(shopId, 'vehicles', (records) =>
          records.correct(id, 1, { ...content, inside: at }, later(at + 1)),
        ),
      ),
    );
    expect(outcomes.filter((outcome) => outcome === 'corrected')).toHaveLength(1);
    expect(outcomes.filter((outcome) => outcome === 'changedMeanwhile')).toHaveLength(9);
    const history = await inShop(shopId, 'vehicles', (records) => records.history(id));
    expect(history.map(({ revision, replacedAt }) => [revision, replacedAt === null])).toEqual([
      [1, false],
      [2, true],
    ]);
  });

  it('are added by exactly one of ten that send the same', async () => {
    const sample = await inShop(shopId, 'vehicles', (_records, tx) => samples.make(tx, 'vehicles'));
    const outcomes = await Promise.all(
      Array.from({ length: 10 }, () =>
        inShop(shopId, 'vehicles', (records) => records.add(sample.id, {}, sample.content, sampleStamp)),
      ),
    );
    expect(outcomes.filter((outcome) => outcome === 'added')).toHaveLength(1);
    expect(outcomes.filter((outcome) => outcome === 'sameAgain')).toHaveLength(9);
  });
});
