import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runMigrations } from '../migrations/run-migrations.js';
import { createDatabase, dropDatabases } from './databases.js';
import { databaseUrls } from './external-database.js';
import { startEmbeddedDatabase } from './start-embedded-database.js';

export interface ScratchServerOptions {
  /** The folder `prisma/migrations`. */
  readonly migrations: string;
  /** A server to use; its role may make roles and databases. An embedded one in a temporary folder when left out. */
  readonly databaseUrl?: string | undefined;
}

/** A server whose databases nobody misses. The URLs name the roles, and no database of use. */
export interface ScratchServer {
  readonly adminUrl: string;
  readonly ownerUrl: string;
  readonly apiUrl: string;
  readonly workerUrl: string;
  /** A migrated database, to be copied. */
  readonly template: string;
  /** Begins the names of all databases that the end of the server removes. */
  readonly prefix: string;
  /** Removes the databases, and an embedded server with its folder. */
  stop(): Promise<void>;
}

type Running = Omit<ScratchServer, 'template' | 'prefix'>;

/** What a scratch server loses when the machine fails is no loss. */
const settings = { fsync: 'off', synchronous_commit: 'off', full_page_writes: 'off', max_connections: '200' };

/**
 * A server with a migrated template, for tests, comparisons and measurements.
 *
 * @throws DatabaseStartError or MigrationError; nothing is left then
 */
export async function startScratchServer({
  migrations,
  databaseUrl,
}: ScratchServerOptions): Promise<ScratchServer> {
  const prefix = `endfloat_scratch_${randomBytes(4).toString('hex')}_`;
  const template = `${prefix}template`;
  const server = await (databaseUrl === undefined
    ? startInTemporaryFolder()
    : useServer(databaseUrl, prefix));
  try {
    const url = new URL(server.ownerUrl);
    url.pathname = `/${template}`;
    await createDatabase({ adminUrl: server.adminUrl, name: template });
    await runMigrations({ url: url.href, folder: migrations });
  } catch (error) {
    await server.stop();
    throw error;
  }
  return { ...server, template, prefix };
}

async function startInTemporaryFolder(): Promise<Running> {
  const folder = mkdtempSync(join(tmpdir(), 'endfloat-scratch-'));
  const removeFolder = () => rmSync(folder, { recursive: true, force: true });
  try {
    const { adminUrl, ownerUrl, apiUrl, workerUrl, stop } = await startEmbeddedDatabase({
      dataFolder: folder,
      settings,
    });
    return { adminUrl, ownerUrl, apiUrl, workerUrl, stop: () => stop().finally(removeFolder) };
  } catch (error) {
    removeFolder();
    throw error;
  }
}

async function useServer(adminUrl: string, prefix: string): Promise<Running> {
  const { ownerUrl, apiUrl, workerUrl } = await databaseUrls({ databaseUrl: adminUrl });
  return { adminUrl, ownerUrl, apiUrl, workerUrl, stop: () => dropDatabases(adminUrl, prefix) };
}
