import { randomBytes } from 'node:crypto';
import { createDatabase, dropDatabase, type ScratchServer } from '@endfloat/persistence';

type TestServer = Omit<ScratchServer, 'stop'>;

export interface TestDatabase {
  readonly ownerUrl: string;
  readonly apiUrl: string;
  readonly workerUrl: string;
  /** Removes the database, ending what is still connected to it. */
  drop(): Promise<void>;
}

/**
 * A database for one test file, as the migrations leave it: a copy of the template of the test run. Whatever a test
 * does to it, no other file sees it.
 *
 * @param content - `empty` for a database without the migrations
 */
export async function createTestDatabase(content: 'migrated' | 'empty' = 'migrated'): Promise<TestDatabase> {
  const server = testServer();
  const name = server.prefix + randomBytes(6).toString('hex');
  const { adminUrl, template } = server;
  await createDatabase({ adminUrl, name, ...(content === 'migrated' ? { template } : {}) });
  return {
    ownerUrl: inDatabase(server.ownerUrl, name),
    apiUrl: inDatabase(server.apiUrl, name),
    workerUrl: inDatabase(server.workerUrl, name),
    drop: () => dropDatabase(adminUrl, name),
  };
}

/** The server that all test files share. */
export function testServer(): TestServer {
  const value = process.env['ENDFLOAT_TEST_SERVER'];
  if (value === undefined) throw new Error('Only the projects integration and e2e have a database.');
  return JSON.parse(value) as TestServer;
}

function inDatabase(url: string, name: string): string {
  const changed = new URL(url);
  changed.pathname = `/${name}`;
  return changed.href;
}
