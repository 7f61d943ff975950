import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  databaseUrls,
  openDatabasePool,
  runMigrations,
  ShopConnections,
  sqlReadiness,
  startEmbeddedDatabase,
  type EmbeddedDatabase,
} from '@endfloat/persistence';

const root = fileURLToPath(new URL('../..', import.meta.url));
const script = readFileSync(join(root, '.config/container-roles.sql'), 'utf8');
const passwords = { owner: "it's o", api: 'p4ss/word?', worker: 'w:orker@' };

/** The script as psql would send it: passwords come from files there. */
const statements = script
  .replace(/^\\set .*$/gm, '')
  .replace(
    /:'(\w+)_password'/g,
    (_, role: keyof typeof passwords) => `'${passwords[role].replaceAll("'", "''")}'`,
  );

describe('the database container with the roles that it makes', () => {
  let folder: string;
  let server: EmbeddedDatabase;

  // A server of its own, brought to the state in which the container's first start finds it.
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'endfloat-container-'));
    server = await startEmbeddedDatabase({ dataFolder: folder, settings: { fsync: 'off' } });
    await asAdmin('postgres', 'DROP DATABASE endfloat');
    for (const role of ['owner', 'api', 'worker']) await asAdmin('postgres', `DROP ROLE endfloat_${role}`);
    await asAdmin('postgres', 'CREATE DATABASE endfloat');
    await asAdmin('endfloat', statements);
  });

  afterAll(async () => {
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  async function asAdmin(database: string, sql: string): Promise<void> {
    const url = new URL(server.adminUrl);
    url.pathname = `/${database}`;
    const pool = openDatabasePool({ url: url.href, size: 1, waitMs: 20_000 });
    await pool.query(sql).finally(() => pool.end());
  }

  /** As .config/container-start.mjs writes it. */
  const urlOf = (role: keyof typeof passwords): string => {
    const { host } = new URL(server.adminUrl);
    return `postgresql://endfloat_${role}:${encodeURIComponent(passwords[role])}@${host}/endfloat`;
  };
  const urlsOf = (role: keyof typeof passwords) => {
    const url = urlOf(role);
    return databaseUrls({ databaseUrl: url, apiDatabaseUrl: url, workerDatabaseUrl: url });
  };

  it('lets the owner migrate, and API and worker work with their own password alone', async () => {
    const { ownerUrl, warnings } = await urlsOf('owner');
    expect(warnings).toEqual([]);
    await runMigrations({ url: ownerUrl, folder: join(root, 'prisma/migrations') });

    for (const role of ['api', 'worker'] as const) {
      const { apiUrl } = await urlsOf(role);
      const pool = openDatabasePool({ url: apiUrl, size: 1, waitMs: 20_000 });
      expect(await sqlReadiness(pool)).toBeUndefined();
      const connections = new ShopConnections(pool);
      const shopId = `0193f2c0-0000-7000-8000-0000000000${role === 'api' ? '0a' : '0b'}`;
      const answer = await connections.inTransaction(shopId, 'READ WRITE', async ({ prisma }) => {
        await prisma.shop.create({ data: { id: shopId, recordedAt: '2031-05-04T00:00:00Z' } });
        return (await prisma.shop.findMany()).map(({ id }) => id);
      });
      expect(answer).toContain(shopId);
      await expect(pool.query('CREATE TABLE planted (id int)')).rejects.toThrow(/permission denied/);
      await connections.close();
    }
  });

  it('lets nobody else into the database', async () => {
    await asAdmin('postgres', `CREATE ROLE stranger LOGIN PASSWORD 'stranger'`);
    const url = new URL(urlOf('api'));
    Object.assign(url, { username: 'stranger', password: 'stranger' });
    const pool = openDatabasePool({ url: url.href, size: 1, waitMs: 20_000 });
    await expect(pool.query('SELECT 1')).rejects.toThrow(/permission denied for database/);
    await pool.end();
  });
});
