import { readFileSync } from 'node:fs';
import { readTokenIssuers, usualApiSettings, type ApiSettings, type TokenIssuer } from '@endfloat/api';

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
  /** requests that may be under way at once */
  readonly mostInFlight: number;
  /** where metrics are told; nowhere where there is no port */
  readonly metricsHost: string;
  readonly metricsPort: number | undefined;
  /** whose tokens are believed */
  readonly tokenIssuers: readonly TokenIssuer[];
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
  'ENDFLOAT_MOST_IN_FLIGHT',
  'ENDFLOAT_METRICS_HOST',
  'ENDFLOAT_METRICS_PORT',
  'ENDFLOAT_TOKEN_ISSUERS',
]);

type Environment = Readonly<Record<string, string | undefined>>;
type ReadFile = (path: string) => string;

/**
 * Reads the settings from the environment.
 *
 * @throws SettingsError naming every setting that cannot be used, what was found and what is wanted
 */
export function readSettings(
  given: Environment,
  readFile: ReadFile = (path) => readFileSync(path, 'utf8'),
): ProcessSettings {
  const reader = new SettingsReader(given);
  const databaseUrl = reader.databaseUrl();
  const secret = reader.secret(databaseUrl !== undefined);
  const settings: ProcessSettings = {
    dataFolder: reader.text('ENDFLOAT_DATA'),
    databaseUrl,
    apiDatabaseUrl: reader.text('ENDFLOAT_API_DATABASE_URL'),
    workerDatabaseUrl: reader.text('ENDFLOAT_WORKER_DATABASE_URL'),
    databaseSecret: reader.text('ENDFLOAT_DATABASE_SECRET'),
    secret,
    host: reader.text('ENDFLOAT_HOST') ?? '127.0.0.1',
    port: reader.wholeNumber('ENDFLOAT_PORT', 0, 65535) ?? 3000,
    poolSize: reader.wholeNumber('ENDFLOAT_POOL_SIZE', 1, 200) ?? 10,
    demo: reader.oneOf('ENDFLOAT_DEMO', 'on', ['on', 'off']) === 'on',
    logLevel: reader.oneOf('ENDFLOAT_LOG', 'warn', logLevels),
    allowedOrigin: reader.text('ENDFLOAT_ALLOWED_ORIGIN') ?? usualApiSettings.allowedOrigin,
    trustProxy: reader.text('ENDFLOAT_TRUST_PROXY') ?? false,
    webhookLoopback: reader.oneOf('ENDFLOAT_WEBHOOK_LOOPBACK', 'off', ['on', 'off']) === 'on',
    mostInFlight: reader.wholeNumber('ENDFLOAT_MOST_IN_FLIGHT', 1, 100_000) ?? usualApiSettings.mostInFlight,
    metricsHost: reader.text('ENDFLOAT_METRICS_HOST') ?? '127.0.0.1',
    metricsPort: reader.wholeNumber('ENDFLOAT_METRICS_PORT', 0, 65535),
    tokenIssuers: reader.tokenIssuers(readFile),
  };
  reader.refuseFaults();
  return settings;
}

/** Reads one setting after another and remembers what is wrong with each, so that all is told at once. */
class SettingsReader {
  private readonly faults: string[] = [];

  constructor(private readonly given: Environment) {
    const unknown = Object.keys(given).filter(
      (name) => name.startsWith('ENDFLOAT_') && !known.has(name) && !name.startsWith('ENDFLOAT_TEST_'),
    );
    if (unknown.length > 0) {
      this.faults.push(
        `${unknown.join(', ')}: no such setting. There are ${[...known].join(', ')} and DATABASE_URL.`,
      );
    }
  }

  refuseFaults(): void {
    if (this.faults.length > 0) throw new SettingsError(this.faults.join('\n'));
  }

  text(name: string): string | undefined {
    const value = this.given[name];
    return value === '' ? undefined : value;
  }

  databaseUrl(): string | undefined {
    const url = this.text('DATABASE_URL');
    if (url !== undefined && !/^postgres(ql)?:\/\//.test(url)) {
      this.faults.push(
        'DATABASE_URL must begin with postgresql:// and name the server, the role and the database.',
      );
    }
    return url;
  }

  secret(isNeeded: boolean): string | undefined {
    const value = this.text('ENDFLOAT_SECRET');
    if (value === undefined && isNeeded) {
      this.faults.push(
        'ENDFLOAT_SECRET is needed with DATABASE_URL: at least 32 characters, the same for all processes of the service.',
      );
    }
    if (value !== undefined && value.length < 32)
      this.faults.push('ENDFLOAT_SECRET is too short: give at least 32 characters nobody can guess.');
    return value;
  }

  wholeNumber(name: string, least: number, most: number): number | undefined {
    const value = this.text(name);
    if (value === undefined) return undefined;
    const number = Number(value);
    if (!/^\d+$/.test(value) || number < least || number > most) {
      this.faults.push(
        `${name} is "${value}": give a whole number from ${String(least)} to ${String(most)}.`,
      );
    }
    return number;
  }

  oneOf<const T extends string>(name: string, usual: T, values: readonly T[]): T {
    const value = this.text(name) ?? usual;
    const found = values.find((each) => each === value);
    if (found === undefined) this.faults.push(`${name} is "${value}": give one of ${values.join(', ')}.`);
    return found ?? usual;
  }

  tokenIssuers(readFile: ReadFile): readonly TokenIssuer[] {
    const path = this.text('ENDFLOAT_TOKEN_ISSUERS');
    if (path === undefined) return [];
    let document: string;
    try {
      document = readFile(path);
    } catch {
      this.faults.push(`ENDFLOAT_TOKEN_ISSUERS is "${path}": there is no file that can be read.`);
      return [];
    }
    const { issuers, faults } = readTokenIssuers(document);
    this.faults.push(...faults.map((fault) => `ENDFLOAT_TOKEN_ISSUERS, ${fault}`));
    return issuers;
  }
}
