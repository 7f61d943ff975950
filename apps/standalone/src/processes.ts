import {
  AppModule,
  createApi,
  Metrics,
  openComputePool,
  openPorts,
  serveMetrics,
  usualApiSettings,
  writeKeyPrefix,
  type OpenPorts,
} from '@endfloat/api';
import { startWorker, type RunningWorker } from '@endfloat/worker';
import { demoSecret, demoShopId, demoUsers, loadDemoShop, type DemoUser } from '@endfloat/demo';
import { dataFolderOf, migrate, openDatabase, type RunningDatabase } from './database.module.js';
import { openShop } from './open-shop.js';
import { derivedSecret, serviceSecret } from './service-secret.js';
import { SettingsError, type ProcessSettings } from './settings.js';

/** What was started, and how to end it in order. */
export interface Running {
  stop(): Promise<void>;
}

const say = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

/** Database, migrations, worker, API and demo shop in one process: what a small shop runs. */
export async function runEverything(settings: ProcessSettings): Promise<Running> {
  return started(settings, async (database, secret, onStop) => {
    await migrate(database);
    const worker = await startWorkerOn(settings, database, secret, onStop);
    const { ports, address } = await listen(settings, database, secret, onStop);
    say(`API             ${address}/v1`);
    say(`Reference       ${address}/docs`);
    say(`Document        ${address}/openapi.json`);
    if (settings.demo) loadDemo(ports, derivedSecret(secret, 'demo keys'), worker);
  });
}

/** The API alone, on a database that `migrate` has prepared. */
export async function runApi(settings: ProcessSettings): Promise<Running> {
  return started(settings, async (database, secret, onStop) => {
    const { address } = await listen(settings, database, secret, onStop);
    say(`API             ${address}/v1`);
  });
}

/** The worker alone. */
export async function runWorker(settings: ProcessSettings): Promise<Running> {
  return started(settings, async (database, secret, onStop) => {
    await startWorkerOn(settings, database, secret, onStop);
    say('Worker started.');
  });
}

/** Prints the keys of the demo people as shell variables, e.g. DESK and TECHNICIAN_1. */
export function runDemoKeys(settings: ProcessSettings): Promise<undefined> {
  const secret = derivedSecret(serviceSecret(settings.secret, dataFolderOf(settings), false), 'demo keys');
  const seen = new Map<string, number>();
  for (const user of demoUsers) {
    const role = user.role.replace(/[A-Z]/g, (letter) => `_${letter}`).toUpperCase();
    const count = (seen.get(role) ?? 0) + 1;
    seen.set(role, count);
    const several = demoUsers.filter((other) => other.role === user.role).length > 1;
    const name = several ? `${role}_${String(count)}` : role;
    say(`export ${name}='${demoKey(secret, user)}' ${name}_ID='${user.id}'`);
  }
  return Promise.resolve(undefined);
}

/** Opens a shop of one's own and prints its owner's key. */
export async function runOpenShop(settings: ProcessSettings, words: readonly string[]): Promise<undefined> {
  const running = await started(settings, async (database) => {
    await migrate(database);
    say(`The shop is open. Key of its owner, shown this once: ${await openShop(database, words)}`);
  });
  await running.stop();
}

/** Applies the migrations and ends. */
export async function runMigrate(settings: ProcessSettings): Promise<undefined> {
  const running = await started(settings, async (database) => {
    const applied = await migrate(database);
    say(applied === 0 ? 'The database is up to date.' : `${String(applied)} migrations applied.`);
  });
  await running.stop();
}

type OnStop = (end: () => Promise<void>) => void;

/** Opens the database, runs `work`, and makes sure that whatever was begun is ended in reverse order, also on a fault. */
async function started(
  settings: ProcessSettings,
  work: (database: RunningDatabase, secret: string, onStop: OnStop) => Promise<void>,
): Promise<Running> {
  const ends: (() => Promise<void>)[] = [];
  const stop = async (): Promise<void> => {
    for (const end of ends.splice(0).reverse()) await end();
  };
  try {
    const database = await openDatabase(settings, (error) => {
      process.stderr.write(`${error.message}\n`);
      process.exit(1);
    });
    ends.push(() => database.stop());
    database.notes.forEach(say);
    await work(database, serviceSecret(settings.secret, database.dataFolder), (end) => ends.push(end));
    return { stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

async function listen(
  settings: ProcessSettings,
  database: RunningDatabase,
  secret: string,
  onStop: OnStop,
): Promise<{ ports: OpenPorts; address: string }> {
  const ports = openPorts(
    { url: database.apiUrl, size: settings.poolSize, waitMs: 2000 },
    {
      sealingSecret: sealingSecret(secret),
      webhookLoopback: settings.webhookLoopback,
      tokenIssuers: settings.tokenIssuers,
    },
  );
  onStop(() => ports.close());
  const metrics = await openMetrics(settings, ports, onStop);
  const app = await createApi({
    ...(metrics === undefined ? {} : { metrics }),
    settings: {
      ...usualApiSettings,
      cursorKey: derivedSecret(secret, 'cursors'),
      allowedOrigin: settings.allowedOrigin,
      trustProxy: settings.trustProxy,
      logLevel: settings.logLevel,
      mostInFlight: settings.mostInFlight,
    },
    module: AppModule.register(ports.providers),
  });
  onStop(() => app.close());
  await app.listen(settings.port, settings.host).catch((error: unknown) => {
    throw portTaken(error, settings.host, settings.port, 'ENDFLOAT_PORT=3001 npm start');
  });
  return { ports, address: (await app.getUrl()).replace('[::1]', '127.0.0.1') };
}

/** Tells metrics on an address of their own where a port is set for them. */
async function openMetrics(
  { metricsHost, metricsPort }: ProcessSettings,
  ports: OpenPorts,
  onStop: OnStop,
): Promise<Metrics | undefined> {
  if (metricsPort === undefined) return undefined;
  const metrics = new Metrics();
  metrics.watchPool(() => ports.poolStanding());
  const served = await serveMetrics(metrics, metricsHost, metricsPort).catch((error: unknown) => {
    throw portTaken(error, metricsHost, metricsPort, 'ENDFLOAT_METRICS_PORT');
  });
  onStop(async () => {
    metrics.close();
    await served.close();
  });
  say(`Metrics         http://${metricsHost}:${String(served.port)}/metrics`);
  return metrics;
}

/** What to do about a port that is in use; any other error as it is. */
function portTaken(error: unknown, host: string, port: number, remedy: string): unknown {
  if ((error as NodeJS.ErrnoException).code !== 'EADDRINUSE') return error;
  return new SettingsError(
    `Port ${String(port)} on ${host} is taken by another program. End it, or choose another with ${remedy}.`,
  );
}

/** What one process seals the others open. */
const sealingSecret = (secret: string): string => derivedSecret(secret, 'sealing');

async function startWorkerOn(
  settings: ProcessSettings,
  database: RunningDatabase,
  secret: string,
  onStop: OnStop,
): Promise<RunningWorker> {
  const computing = openComputePool();
  onStop(() => computing.close());
  const worker = await startWorker({
    url: database.workerUrl,
    computing,
    sealingSecret: sealingSecret(secret),
    webhookLoopback: settings.webhookLoopback,
  });
  onStop(() => worker.stop());
  return worker;
}

function demoKey(secret: string, user: DemoUser): string {
  return `${writeKeyPrefix(demoShopId, user.keyId)}.${demoSecret(secret, user)}`;
}

/** Prints the keys of the demo people and fills the database with the demo shop, after the API has begun to answer. */
function loadDemo(ports: OpenPorts, secret: string, worker: RunningWorker): void {
  say('');
  say('Demo shop, everybody and everything in it invented. Keys, as bearer tokens:');
  for (const user of demoUsers) {
    say(`  ${user.displayName.padEnd(20)} ${user.role.padEnd(13)} ${demoKey(secret, user)}`);
  }
  loadDemoShop({ work: ports.work, secret, until: ports.clock.now() }).then(
    ({ vehicles }) => {
      if (vehicles > 0) say(`Demo shop loaded: ${String(vehicles)} vans with two years of history.`);
      worker.wake();
    },
    (error: unknown) => {
      process.stderr.write(
        `The demo shop is not complete; the next start goes on with it. ${String(error)}\n`,
      );
    },
  );
}
