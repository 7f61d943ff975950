/**
 * The database server of one test run, a process of its own beside jest: it starts an embedded server in a temporary
 * folder (or uses the one of DATABASE_URL), migrates a template, says where it is in one line of JSON, and cleans up
 * when its standard input ends. That happens at the end of the run, and also when the run is killed.
 */
import { randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  createDatabase,
  databaseUrls,
  dropDatabases,
  runMigrations,
  startEmbeddedDatabase,
} from '@endfloat/persistence';
import { inDatabase, type TestServer } from './database.js';

interface ServerToUse {
  readonly urls: Pick<TestServer, 'adminUrl' | 'ownerUrl' | 'apiUrl' | 'workerUrl'>;
  cleanUp(): Promise<void>;
}

const migrations = fileURLToPath(new URL('../../prisma/migrations', import.meta.url));
/** Begins the names of all databases of this run. */
const prefix = `endfloat_test_${randomBytes(4).toString('hex')}_`;
/** What a test server loses when the machine fails is no loss. */
const settings = { fsync: 'off', synchronous_commit: 'off', full_page_writes: 'off', max_connections: '200' };

async function startOwnServer(): Promise<ServerToUse> {
  const folder = mkdtempSync(join(tmpdir(), 'endfloat-test-'));
  const removeFolder = () => rmSync(folder, { recursive: true, force: true });
  try {
    const database = await startEmbeddedDatabase({ dataFolder: folder, settings });
    return { urls: database, cleanUp: () => database.stop().finally(removeFolder) };
  } catch (error) {
    removeFolder();
    throw error;
  }
}

async function useServer(adminUrl: string): Promise<ServerToUse> {
  const urls = await databaseUrls({ databaseUrl: adminUrl });
  return { urls: { ...urls, adminUrl }, cleanUp: () => dropDatabases(adminUrl, prefix) };
}

const ended = once(process.stdin.resume(), 'end');
const given = process.env['DATABASE_URL'] ?? '';
const server = given === '' ? await startOwnServer() : await useServer(given);
try {
  const { adminUrl, ownerUrl, apiUrl, workerUrl } = server.urls;
  const template = `${prefix}template`;
  await createDatabase({ adminUrl, name: template });
  await runMigrations({ url: inDatabase(ownerUrl, template), folder: migrations });
  const answer: TestServer = { adminUrl, ownerUrl, apiUrl, workerUrl, prefix, template };
  process.stdout.write(`${JSON.stringify(answer)}\n`);
  await ended;
} finally {
  await server.cleanUp();
}
