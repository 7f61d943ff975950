import { createHash } from 'node:crypto';
import { Global, Module, type DynamicModule, type Provider } from '@nestjs/common';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { computeHere, Computing, type Caller, type ShopRole } from '@endfloat/workshop';
import { createApi } from '../../apps/api/src/create-api.js';
import {
  CredentialLookup,
  type StoredCredential,
} from '../../apps/api/src/http/access/credential-lookup.port.js';
import { ReadinessProbe } from '../../apps/api/src/http/operation/readiness-probe.port.js';
import type { Metrics } from '../../apps/api/src/http/observe/metrics.js';
import { usualApiSettings, type ApiSettings } from '../../apps/api/src/http/settings.js';
import type { InjectOptions } from 'light-my-request';
import type { Logger } from 'pino';
import { HealthModule } from '../../apps/api/src/http/operation/health.module.js';
import { checkAnswer, documentOf } from './document-checker.js';

/** Settings of tests: quiet, no limit in the way, a member outside the contract is an error. */
export const testSettings: ApiSettings = {
  ...usualApiSettings,
  cursorKey: 'a key for cursors that only tests know',
  logLevel: 'silent',
  strictAnswers: true,
  drainTime: 0,
  mostLoopDelay: 0,
};

/** Keys of invented people, made on demand. */
export class KnownCredentials extends CredentialLookup {
  private readonly stored = new Map<string, StoredCredential>();

  /** The Authorization header of a new key. */
  add(caller: Caller, expiresAt: string | null = null): { authorization: string } {
    const prefix = `key${this.stored.size + 1}`.padEnd(8, 'x');
    const secret = createHash('sha256').update(prefix).digest('base64url');
    this.stored.set(prefix, { secretHash: createHash('sha256').update(secret).digest(), caller, expiresAt });
    return { authorization: `Bearer ${prefix}.${secret}` };
  }

  override find(prefix: string): Promise<StoredCredential | undefined> {
    return Promise.resolve(this.stored.get(prefix));
  }
}

/** A probe that says what a test tells it to. */
export class SettableProbe extends ReadinessProbe {
  reason: string | undefined;

  override check(): Promise<string | undefined> {
    return Promise.resolve(this.reason);
  }
}

export const trialShop = '0193f2c0-0000-7000-8000-000000000001';
export const otherShop = '0193f2c0-0000-7000-8000-000000000002';

/** A caller of the trial shop with the given roles. */
export function callerWith(...roles: readonly ShopRole[]): Caller {
  return { shopId: trialShop, userId: '0193f2c0-0000-7000-8000-0000000000aa', roles };
}

/** Computes in this thread, as the threads of the product would. */
class ComputingHere extends Computing {
  override async run(name: string, parts: readonly unknown[]): Promise<unknown> {
    await Promise.resolve();
    return computeHere(name, parts);
  }
}

@Global()
@Module({})
class TrialModule {}

export interface TrialAnswer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | number | undefined>>;
  // eslint-disable-next-line @typescript-eslint/no-explicit-any -- checked against the document, then looked into freely
  readonly body: any;
  readonly text: string;
}

export interface Trial {
  /** Sends a request; the answer has been checked against the document. */
  request(options: InjectOptions): Promise<TrialAnswer>;
  readonly app: NestFastifyApplication;
  readonly credentials: KnownCredentials;
  readonly probe: SettableProbe;
  /** Authorization of an owner of the trial shop. */
  readonly owner: { readonly authorization: string };
}

/** The shell around trial controllers, without resources and without a database. */
export async function openTrial(
  controllers: readonly (new (...parts: never[]) => object)[],
  changes: Partial<ApiSettings> = {},
  extra: {
    readonly providers?: readonly Provider[];
    readonly imports?: NonNullable<DynamicModule['imports']>;
    readonly logger?: Logger;
    readonly metrics?: Metrics;
  } = {},
): Promise<Trial> {
  const credentials = new KnownCredentials();
  const probe = new SettableProbe();
  const ports = [
    { provide: CredentialLookup, useValue: credentials },
    { provide: ReadinessProbe, useValue: probe },
    { provide: Computing, useValue: new ComputingHere() },
    ...(extra.providers ?? []),
  ];
  const module: DynamicModule = {
    module: TrialModule,
    imports: [HealthModule, ...(extra.imports ?? [])],
    controllers: [...controllers],
    providers: ports,
    exports: [CredentialLookup, ReadinessProbe, Computing],
  };
  const app = await createApi({
    settings: { ...testSettings, ...changes },
    module,
    ...(extra.logger === undefined ? {} : { logger: extra.logger }),
    ...(extra.metrics === undefined ? {} : { metrics: extra.metrics }),
  });
  const checker = await documentOf(app);
  const request = async (options: InjectOptions): Promise<TrialAnswer> => {
    const answer = await app.inject(options);
    const type = String(answer.headers['content-type'] ?? '');
    const body: unknown =
      type.includes('json') && answer.payload !== '' ? JSON.parse(answer.payload) : answer.payload;
    const url = typeof options.url === 'string' ? options.url : '/';
    checkAnswer(checker, {
      method: String(options.method ?? 'GET').toUpperCase(),
      url,
      status: answer.statusCode,
      type,
      body,
    });
    return { status: answer.statusCode, headers: answer.headers, body, text: answer.payload };
  };
  return { app, credentials, probe, request, owner: credentials.add(callerWith('owner')) };
}
