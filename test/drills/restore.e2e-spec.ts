import { execFile } from 'node:child_process';
import { chmodSync, chownSync, mkdtempSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { startEmbeddedDatabase, type EmbeddedDatabase } from '@endfloat/persistence';
import { CountedWrites, type Written } from './counted-writes.js';
import { findBreaches } from './invariants.js';
import { openShopOn, startApiOn, type KillableServer } from './killable-server.js';

let folder: string;
let data: string;
let backup: string;
let database: EmbeddedDatabase;
let server: KillableServer;
let writes: CountedWrites;

/** Copies with owners and modes. Files that the running server removes meanwhile are missed, which the log makes good. */
const copy = (from: string, to: string): Promise<void> =>
  new Promise((resolve) => execFile('cp', ['-a', from, to], () => resolve()));

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'endfloat-drill-'));
  chmodSync(folder, 0o755);
  [data, backup] = [join(folder, 'data'), join(folder, 'backup')];
  database = await startEmbeddedDatabase({ dataFolder: data });
  const key = await openShopOn(database);
  server = await startApiOn(database);
  writes = new CountedWrites(key, () => Promise.resolve(server.address));
});
afterAll(async () => {
  await server.stop();
  await database.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** The data folder as it is, while the server writes to it, and then what its log says of that time. */
async function takeBackup(meanwhile: () => Promise<unknown>): Promise<void> {
  const session = new pg.Client({ connectionString: database.adminUrl });
  await session.connect();
  try {
    await session.query(`SELECT pg_backup_start('drill', fast => true)`);
    await Promise.all([copy(data, backup), meanwhile()]);
    const { rows } = await session.query<{ labelfile: string }>(
      'SELECT labelfile FROM pg_backup_stop(wait_for_archive => false)',
    );
    const cluster = join(backup, 'cluster');
    rmSync(join(cluster, 'postmaster.pid'), { force: true });
    rmSync(join(cluster, 'pg_wal'), { recursive: true });
    await copy(join(data, 'cluster', 'pg_wal'), join(cluster, 'pg_wal'));
    const label = join(cluster, 'backup_label');
    writeFileSync(label, rows[0]!.labelfile, { mode: 0o600 });
    const { uid, gid } = statSync(cluster);
    chownSync(label, uid, gid);
  } finally {
    await session.end();
  }
}

describe('a backup taken during writes', () => {
  it('API row 66: is restored after the data were destroyed, with all that was acknowledged before it ended', async () => {
    const running = writes.run(4);
    await Promise.race([writes.more(20), running]);
    let kept: readonly Written[] = [];
    await takeBackup(async () => {
      await Promise.race([writes.more(20), running]);
      kept = [...writes.written];
    });
    writes.finish();
    await running;
    await server.stop();
    await database.stop();

    rmSync(data, { recursive: true });
    renameSync(backup, data);
    database = await startEmbeddedDatabase({ dataFolder: data });
    server = await startApiOn(database);

    const url = new URL(database.adminUrl);
    url.pathname = '/endfloat';
    expect(await findBreaches(url.href)).toEqual([]);
    expect(kept.length).toBeGreaterThanOrEqual(40);
    for (const each of kept) {
      const { status, text, isReplay } = await writes.again(each);
      expect([status, text, isReplay]).toEqual([each.acknowledged.status, each.acknowledged.text, true]);
    }
  });
});
