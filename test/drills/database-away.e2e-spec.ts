import { chmodSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startEmbeddedDatabase, type EmbeddedDatabase } from '@endfloat/persistence';
import { CountedWrites, countRows, countsOf } from './counted-writes.js';
import { findBreaches } from './invariants.js';
import { openShopOn, startApiOn, type KillableServer } from './killable-server.js';

/** More with ENDFLOAT_TEST_ROUNDS. */
const rounds = Number(process.env['ENDFLOAT_TEST_ROUNDS'] ?? '2');
const writers = 6;
/** A bound for many rounds on a busy machine, not a measure. */
const bound = 120_000 + 60_000 * rounds;

let data: string;
let database: EmbeddedDatabase;
let server: KillableServer;
let writes: CountedWrites;

const superuserUrl = (): string => {
  const url = new URL(database.adminUrl);
  url.pathname = '/endfloat';
  return url.href;
};
const statusOf = async (path: string): Promise<number> => (await fetch(`${server.address}${path}`)).status;

/** Ends the database server without a checkpoint and without telling its sessions; what it wrote is in its log alone. */
function stopImmediately(): void {
  const pid = Number(readFileSync(join(data, 'cluster', 'postmaster.pid'), 'utf8').split('\n')[0]);
  process.kill(pid, 'SIGQUIT');
}

beforeAll(async () => {
  data = mkdtempSync(join(tmpdir(), 'endfloat-drill-'));
  chmodSync(data, 0o755);
  database = await startEmbeddedDatabase({ dataFolder: data });
  const key = await openShopOn(database);
  server = await startApiOn(database);
  writes = new CountedWrites(key, () => Promise.resolve(server.address));
});
afterAll(async () => {
  await server.stop();
  await database.stop();
  rmSync(data, { recursive: true, force: true });
});

describe('the database is stopped at once, and started again, under load', () => {
  it(
    'API row 54: what cannot be answered is 503 with Retry-After, and the process recovers by itself',
    async () => {
      const running = writes.run(writers);
      for (let round = 0; round < rounds; round += 1) {
        await Promise.race([writes.more(20), running]);
        const before = writes.statuses.get(503) ?? 0;
        stopImmediately();
        while ((await statusOf('/readyz')) !== 503);
        // As often as there are writers; the process itself is well.
        while ((writes.statuses.get(503) ?? 0) < before + writers) expect(await statusOf('/livez')).toBe(200);
        database = await startEmbeddedDatabase({ dataFolder: data, port: database.port });
        await Promise.race([writes.more(20), running]);
        expect(await statusOf('/readyz')).toBe(200);
      }
      writes.finish();
      await running;
      expect([...writes.statuses.keys()].filter((status) => ![201, 409, 503].includes(status))).toEqual([]);
      expect([writes.untimed, writes.broken]).toEqual([0, 0]);
    },
    bound,
  );

  it(
    'API row 54: nothing acknowledged is lost, and nothing was done twice',
    async () => {
      expect(await countRows(superuserUrl())).toEqual(countsOf(writes.written));
      for (const each of writes.written) {
        const { status, text } = await writes.again(each);
        expect([status, text]).toEqual([each.acknowledged.status, each.acknowledged.text]);
      }
      expect(await countRows(superuserUrl())).toEqual(countsOf(writes.written));
      expect(await findBreaches(superuserUrl())).toEqual([]);
    },
    bound,
  );
});
