import { fileURLToPath } from 'node:url';
import {
  databaseUrls,
  DatabaseStartError,
  defaultDataFolder,
  MigrationError,
  runMigrations,
  startEmbeddedDatabase,
} from '@endfloat/persistence';
import type { ProcessSettings } from './settings.js';

/** A young database learns the size of its tables soon: without that it plans joins of thousands of rows badly. */
const serverSettings = { autovacuum_naptime: '10s' };

const projectFolder = fileURLToPath(new URL('../../..', import.meta.url));

export interface RunningDatabase {
  readonly ownerUrl: string;
  readonly apiUrl: string;
  readonly workerUrl: string;
  /** where secrets of this installation are kept; undefined on an external server */
  readonly dataFolder: string | undefined;
  /** what an operator should know */
  readonly notes: readonly string[];
  stop(): Promise<void>;
}

/** Faults an operator can mend; their message is all that is shown. */
export function isOperatorFault(error: unknown): error is Error {
  return error instanceof DatabaseStartError || error instanceof MigrationError;
}

/** Where the embedded database and the secrets of this installation lie. */
export function dataFolderOf(settings: ProcessSettings): string | undefined {
  return settings.databaseUrl === undefined
    ? (settings.dataFolder ?? defaultDataFolder(projectFolder))
    : undefined;
}

/** The server that DATABASE_URL names, or the embedded one, started or taken over. */
export async function openDatabase(
  settings: ProcessSettings,
  onLost: (error: Error) => void,
): Promise<RunningDatabase> {
  const { databaseUrl, apiDatabaseUrl, workerDatabaseUrl, databaseSecret } = settings;
  if (databaseUrl !== undefined) {
    const urls = await databaseUrls({
      databaseUrl,
      ...(apiDatabaseUrl === undefined ? {} : { apiDatabaseUrl }),
      ...(workerDatabaseUrl === undefined ? {} : { workerDatabaseUrl }),
      ...(databaseSecret === undefined ? {} : { secret: databaseSecret }),
    });
    return { ...urls, notes: urls.warnings, dataFolder: undefined, stop: () => Promise.resolve() };
  }
  const dataFolder = dataFolderOf(settings) ?? '';
  const database = await startEmbeddedDatabase({
    dataFolder,
    startedFrom: projectFolder,
    onLost,
    settings: serverSettings,
  });
  const notes = database.adopted
    ? ['The database of an earlier start that was killed was taken over; nothing acknowledged is lost.']
    : [];
  return { ...database, dataFolder, notes, stop: () => database.stop() };
}

/** Brings the database to the version this process was built for. */
export async function migrate(database: RunningDatabase): Promise<number> {
  const results = await runMigrations({
    url: database.ownerUrl,
    folder: `${projectFolder}prisma/migrations`,
  });
  return results.filter(({ outcome }) => outcome === 'applied').length;
}
