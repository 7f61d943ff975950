import type { LoggerService } from '@nestjs/common';
import { pino, stdTimeFunctions, type DestinationStream, type Logger } from 'pino';
import type { ApiSettings } from '../settings.js';
import { tellError } from './tell-error.js';

/** Log of the process: lines of JSON. What could hold a secret is never written, wherever it stands. */
export function createLogger(
  { logLevel }: Pick<ApiSettings, 'logLevel'>,
  destination?: DestinationStream,
): Logger {
  const names = ['authorization', 'cookie', 'secret', 'secretHash', 'password', 'token', 'key'];
  const paths = names.flatMap((name) => [name, `*.${name}`, `*.*.${name}`]);
  const options = {
    level: logLevel,
    base: null,
    timestamp: stdTimeFunctions.isoTime,
    // An error that was told already is an object of ours; any other is told here.
    serializers: { err: (error: unknown) => (error instanceof Error ? tellError(error) : error) },
    redact: { paths, censor: '[redacted]' },
  };
  return destination === undefined ? pino(options) : pino(options, destination);
}

/** Lets the framework write to the same log. */
export class FrameworkLogger implements LoggerService {
  constructor(private readonly logger: Logger) {}

  log = (message: unknown, context?: unknown): void => this.logger.debug({ context }, String(message));
  warn = (message: unknown, context?: unknown): void => this.logger.warn({ context }, String(message));
  error = (message: unknown, ...rest: unknown[]): void =>
    this.logger.error({ context: rest.at(-1) }, String(message));
  fatal = (message: unknown, ...rest: unknown[]): void =>
    this.logger.fatal({ context: rest.at(-1) }, String(message));
  debug = (message: unknown, context?: unknown): void => this.logger.debug({ context }, String(message));
  verbose = (message: unknown, context?: unknown): void => this.logger.trace({ context }, String(message));
}
