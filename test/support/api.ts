import { createHash } from 'node:crypto';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import {
  AppModule,
  createApi,
  openPorts,
  writeKeyPrefix,
  type ApiParts,
  type ApiSettings,
  type TokenIssuer,
} from '@endfloat/api';
import { SystemClock, UuidSource } from '@endfloat/persistence';
import {
  Clock,
  OpenShopUseCase,
  type ShopRole,
  type ShopSettings,
  type UnitOfWork,
} from '@endfloat/workshop';
import { createTestDatabase, type TestDatabase } from './database.js';
import { checkAnswer, documentOf, type DocumentChecker } from './document-checker.js';
import { testSettings } from './http.js';

/** A clock that stands until a test moves it; later ids and times follow it. */
export class StandingClock extends Clock {
  constructor(private instant: string) {
    super();
  }

  now(): string {
    return this.instant;
  }

  moveTo(instant: string): void {
    this.instant = new Date(instant).toISOString();
  }

  moveOn(milliseconds: number): void {
    this.instant = new Date(Date.parse(this.instant) + milliseconds).toISOString();
  }
}

/** What test processes seal with, so that a second one opens what the first has sealed. */
export const testSealingSecret = 'a secret for sealing that only tests know';

export interface Call {
  readonly as?: TestUser | undefined;
  readonly body?: unknown;
  readonly ifMatch?: string | undefined;
  readonly headers?: Readonly<Record<string, string>> | undefined;
}

export interface Reply {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | number | undefined>>;
  // eslint-disable-next-line @typescript-eslint/no-explicit-any -- answers are checked against the document, then looked into freely
  readonly body: any;
}

export interface TestUser {
  readonly id: string;
  readonly authorization: string;
}

export interface TestShop {
  readonly id: string;
  readonly owner: TestUser;
  /** Records a user with these roles and gives them a key. */
  user(roles: readonly ShopRole[], customerId?: string): Promise<TestUser>;
}

export interface TestApi {
  readonly app: NestFastifyApplication;
  readonly database: TestDatabase;
  readonly work: UnitOfWork;
  readonly ids: UuidSource;
  readonly clock: StandingClock | SystemClock;
  /** Sends a request; the answer has been checked against the document. */
  call(
    method: 'GET' | 'POST' | 'PATCH' | 'PUT' | 'DELETE' | 'HEAD' | 'OPTIONS',
    url: string,
    call?: Call,
  ): Promise<Reply>;
  openShop(settings?: Partial<ShopSettings>): Promise<TestShop>;
  close(): Promise<void>;
}

export const usualShopSettings: ShopSettings = {
  name: 'Quillmarsh Van Works',
  timeZone: 'Europe/Lisbon',
  currency: 'EUR',
  labourRatePerHour: '80.00',
  downtimeCostPerDay: '60.00',
  comebackHandling: '250.00',
  comebackWindowDays: 90,
  comebackWindowKm: '5000',
  planningDistanceKm: '120000',
  rankingMinimumJobs: 20,
};

/** The real interface over a real database of its own, with every answer checked against the document. */
export async function startTestApi(
  options: {
    readonly clock?: StandingClock;
    readonly webhookLoopback?: boolean;
    readonly tokenIssuers?: readonly TokenIssuer[];
    readonly settings?: Partial<ApiSettings>;
    readonly parts?: Partial<Pick<ApiParts, 'logger' | 'metrics'>>;
  } = {},
): Promise<TestApi> {
  const database = await createTestDatabase();
  const clock = options.clock ?? new SystemClock();
  const ids = new UuidSource();
  const ports = openPorts(
    { url: database.apiUrl, size: 8, waitMs: 2000 },
    {
      clock,
      ids,
      sealingSecret: testSealingSecret,
      webhookLoopback: options.webhookLoopback ?? false,
      tokenIssuers: options.tokenIssuers ?? [],
    },
  );
  const app = await createApi({
    settings: { ...testSettings, ...options.settings },
    module: AppModule.register(ports.providers),
    ...options.parts,
  });
  const checker = await documentOf(app);
  const parts = { app, work: ports.work, clock, ids };
  return {
    ...parts,
    database,
    call: (method, url, call = {}) => send(app, checker, method, url, call),
    openShop: (settings = {}) => openShop(parts, settings),
    close: async () => {
      await app.close();
      await ports.close();
      await database.drop();
    },
  };
}

async function send(
  app: NestFastifyApplication,
  checker: DocumentChecker,
  method: string,
  url: string,
  call: Call,
): Promise<Reply> {
  const answer = await app.inject({
    method: method as 'GET',
    url,
    headers: {
      ...(call.as === undefined ? {} : { authorization: call.as.authorization }),
      ...(call.ifMatch === undefined ? {} : { 'if-match': call.ifMatch }),
      ...(call.body === undefined
        ? {}
        : { 'content-type': method === 'PATCH' ? 'application/merge-patch+json' : 'application/json' }),
      ...call.headers,
    },
    ...(call.body === undefined
      ? {}
      : { payload: typeof call.body === 'string' ? call.body : JSON.stringify(call.body) }),
  });
  const type = String(answer.headers['content-type'] ?? '');
  const body: unknown =
    type.includes('json') && answer.payload !== '' ? JSON.parse(answer.payload) : answer.payload;
  checkAnswer(checker, { method, url, status: answer.statusCode, type, body });
  const { location } = answer.headers;
  if (answer.statusCode === 201 && typeof location === 'string') await follow(app, location, call);
  return { status: answer.statusCode, headers: answer.headers, body };
}

/** What was made must be found where the answer says it is. */
async function follow(app: NestFastifyApplication, location: string, call: Call): Promise<void> {
  const found = await app.inject({
    method: 'GET',
    url: location,
    headers: call.as === undefined ? {} : { authorization: call.as.authorization },
  });
  if (found.statusCode !== 200 && found.statusCode !== 403)
    throw new Error(`the Location ${location} answers ${String(found.statusCode)}`);
}

type Parts = Pick<TestApi, 'work' | 'clock' | 'ids'>;

async function openShop(parts: Parts, settings: Partial<ShopSettings>): Promise<TestShop> {
  const { work, clock, ids } = parts;
  const shopId = ids.next();
  const ownerId = ids.next();
  await new OpenShopUseCase(work, clock, ids).execute({
    shopId,
    settings: { ...usualShopSettings, ...settings },
    owner: { id: ownerId, displayName: 'Odile Marrow' },
  });
  const owner = await giveKey(parts, shopId, ownerId, ['owner']);
  return {
    id: shopId,
    owner,
    user: async (roles, customerId) => {
      const id = ids.next();
      const user = {
        displayName: `Invented ${roles.join(' and ')}`,
        roles,
        customerId: customerId ?? null,
        active: true,
      };
      await work.run(shopId, (tx) => tx.users.add(id, {}, user, { at: clock.now(), by: ownerId }));
      return giveKey(parts, shopId, id, roles);
    },
  };
}

async function giveKey(
  { work, clock, ids }: Parts,
  shopId: string,
  userId: string,
  roles: readonly ShopRole[],
): Promise<TestUser> {
  const keyId = ids.next();
  const secret = createHash('sha256').update(keyId).digest('base64url');
  await work.run(shopId, (tx) =>
    tx.apiKeys.add({
      id: keyId,
      userId,
      name: 'key of a test',
      secretHash: createHash('sha256').update(secret).digest('hex'),
      roles,
      expiresAt: null,
      recordedAt: clock.now(),
      recordedBy: userId,
    }),
  );
  return { id: userId, authorization: `Bearer ${writeKeyPrefix(shopId, keyId)}.${secret}` };
}
