import {
  runApi,
  runDemoKeys,
  runEverything,
  runMigrate,
  runOpenShop,
  runWorker,
  type Running,
} from './processes.js';
import { readSettings, SettingsError } from './settings.js';
import { isOperatorFault } from './database.module.js';

const commands = {
  all: runEverything,
  migrate: runMigrate,
  api: runApi,
  worker: runWorker,
  'open-shop': runOpenShop,
  'demo-keys': runDemoKeys,
} as const;

async function main(): Promise<void> {
  const name = process.argv[2] ?? 'all';
  const command = Object.entries(commands).find(([each]) => each === name)?.[1];
  if (command === undefined)
    throw new SettingsError(`"${name}" is no command. There are: ${Object.keys(commands).join(', ')}.`);
  const running = await command(readSettings(process.env), process.argv.slice(3));
  if (running !== undefined) endOnSignal(running);
}

/** The first signal ends in order; a second one does not wait. */
function endOnSignal(running: Running): void {
  let ending = false;
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    process.on(signal, () => {
      if (ending) process.exit(1);
      ending = true;
      running.stop().then(
        () => process.exit(0),
        (error: unknown) => {
          fail(error);
        },
      );
    });
  }
}

function fail(error: unknown): void {
  const understood = error instanceof SettingsError || isOperatorFault(error);
  process.stderr.write(
    understood
      ? `${error.message}\n`
      : `${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`,
  );
  process.exit(1);
}

main().catch(fail);
