import { usualApiSettings, type ApiSettings } from '@endfloat/api';

/** What the process is told from outside. Everything has a default that works on one machine. */
export interface ProcessSettings {
  /** where the embedded database lies; undefined where DATABASE_URL names a server */
  readonly dataFolder: string | undefined;
  readonly databaseUrl: string | undefined;
  readonly apiDatabaseUrl: string | undefined;
  readonly workerDatabaseUrl: string | undefined;
  readonly databaseSecret: string | undefined;
  /** signs cursors and derives the keys of the demo shop; kept in the data folder when not given */
  readonly secret: string | undefined;
  readonly host: string;
  readonly port: number;
  readonly poolSize: number;
  readonly demo: boolean;
  readonly logLevel: ApiSettings['logLevel'];
  readonly allowedOrigin: string;
  readonly trustProxy: ApiSettings['trustProxy'];
  /** webhooks may go to this machine, for trials */
  readonly webhookLoopback: boolean;
}

/** A setting that cannot be used, said so that the operator can mend it. */
export class SettingsError extends Error {}

const logLevels = ['silent', 'fatal', 'error', 'warn', 'info', 'debug'] as const;

/** Names of all settings; a misspelt one with our prefix is refused. */
const known = new Set([
  'ENDFLOAT_DATA',
  'ENDFLOAT_API_DATABASE_URL',
  'ENDFLOAT_WORKER_DATABASE_URL',
  'ENDFLOAT_DATABASE_SECRET',
  'ENDFLOAT_SECRET',
  'ENDFLOAT_HOST',
  'ENDFLOAT_PORT',
  'ENDFLOAT_POOL_SIZE',
  'ENDFLOAT_DEMO',
  'ENDFLOAT_LOG',
  'ENDFLOAT_ALLOWED_ORIGIN',
  'ENDFLOAT_TRUST_PROXY',
  'ENDFLOAT_WEBHOOK_LOOPBACK',
]);

type Environment = Readonly<Record<string, string | undefined>>;

/**
 * Reads the settings from the environment.
 *
 * @throws SettingsError naming the setting, what was found and what is wanted
 */
export function readSettings(given: Environment): ProcessSettings {
  const unknown = Object.keys(given).filter(
    (name) => name.startsWith('ENDFLOAT_') && !known.has(name) && !name.startsWith('ENDFLOAT_TEST_'),
  );
  if (unknown.length > 0) {
    throw new SettingsError(
      `${unknown.join(', ')}: no such setting. There are ${[...known].join(', ')} and DATABASE_URL.`,
    );
  }
  const text = (name: string): string | undefined =>
    given[name] === undefined || given[name] === '' ? undefined : given[name];
  const databaseUrl = text('DATABASE_URL');
  if (databaseUrl !== undefined && !/^postgres(ql)?:\/\//.test(databaseUrl)) {
    throw new SettingsError(
      'DATABASE_URL must begin with postgresql:// and name the server, the role and the database.',
    );
  }
  return {
    dataFolder: text('ENDFLOAT_DATA'),
    databaseUrl,
    apiDatabaseUrl: text('ENDFLOAT_API_DATABASE_URL'),
    workerDatabaseUrl: text('ENDFLOAT_WORKER_DATABASE_URL'),
    databaseSecret: text('ENDFLOAT_DATABASE_SECRET'),
    secret: secretOf(text('ENDFLOAT_SECRET')),
    host: text('ENDFLOAT_HOST') ?? '127.0.0.1',
    port: wholeNumber('ENDFLOAT_PORT', text('ENDFLOAT_PORT'), 3000, 0, 65535),
    poolSize: wholeNumber('ENDFLOAT_POOL_SIZE', text('ENDFLOAT_POOL_SIZE'), 10, 1, 200),
    demo: oneOf('ENDFLOAT_DEMO', text('ENDFLOAT_DEMO') ?? 'on', ['on', 'off']) === 'on',
    logLevel: oneOf('ENDFLOAT_LOG', text('ENDFLOAT_LOG') ?? 'warn', logLevels),
    allowedOrigin: text('ENDFLOAT_ALLOWED_ORIGIN') ?? usualApiSettings.allowedOrigin,
    trustProxy: text('ENDFLOAT_TRUST_PROXY') ?? false,
    webhookLoopback:
      oneOf('ENDFLOAT_WEBHOOK_LOOPBACK', text('ENDFLOAT_WEBHOOK_LOOPBACK') ?? 'off', ['on', 'off']) === 'on',
  };
}

function secretOf(value: string | undefined): string | undefined {
  if (value !== undefined && value.length < 32) {
    throw new SettingsError('ENDFLOAT_SECRET is too short: give at least 32 characters nobody can guess.');
  }
  return value;
}

function wholeNumber(
  name: string,
  value: string | undefined,
  usual: number,
  least: number,
  most: number,
): number {
  if (value === undefined) return usual;
  const number = Number(value);
  if (!/^\d+$/.test(value) || number < least || number > most) {
    throw new SettingsError(
      `${name} is "${value}": give a whole number from ${String(least)} to ${String(most)}.`,
    );
  }
  return number;
}

function oneOf<const T extends string>(name: string, value: string, values: readonly T[]): T {
  const found = values.find((each) => each === value);
  if (found === undefined)
    throw new SettingsError(`${name} is "${value}": give one of ${values.join(', ')}.`);
  return found;
}
