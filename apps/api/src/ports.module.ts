import type { Provider } from '@nestjs/common';
import { randomBytes } from 'node:crypto';
import {
  AesSealer,
  openDatabasePool,
  SealedWebhookTerms,
  Sha256Fingerprint,
  ShopConnections,
  SqlSharedTransaction,
  SqlUnitOfWork,
  sqlReadiness,
  SystemClock,
  UuidSource,
  type DatabasePoolSettings,
} from '@endfloat/persistence';
import {
  Clock,
  Computing,
  Fingerprint,
  IdentifyCallerUseCase,
  IdentifyPersonUseCase,
  IdSource,
  NoteKeyUseUseCase,
  Sealer,
  SharedTransaction,
  UnitOfWork,
  WebhookTerms,
} from '@endfloat/workshop';
import { BearerTokens, NoBearerTokens } from './http/access/bearer-tokens.port.js';
import { IssuerTokens } from './http/access/issuer-tokens.js';
import type { TokenIssuer } from './http/access/token-issuer.js';
import { CredentialLookup, type StoredCredential } from './http/access/credential-lookup.port.js';
import { openComputePool } from './computing/open-compute-pool.js';
import { readKeyPrefix } from './http/access/key-prefix.js';
import type { PoolStanding } from './http/observe/metrics.js';
import { ReadinessProbe } from './http/operation/readiness-probe.port.js';

/** Finds keys in the shop that the key itself names. */
class ShopCredentialLookup extends CredentialLookup {
  constructor(
    private readonly identify: IdentifyCallerUseCase,
    private readonly use: NoteKeyUseUseCase,
  ) {
    super();
  }

  async find(prefix: string): Promise<StoredCredential | undefined> {
    const named = readKeyPrefix(prefix);
    if (named === undefined) return undefined;
    const found = await this.identify.execute(named.shopId, named.keyId);
    if (found === undefined) return undefined;
    return {
      secretHash: Buffer.from(found.secretHash, 'hex'),
      caller: found.caller,
      expiresAt: null,
      noteUse: () => this.use.execute(named.shopId, named.keyId, found.lastUsedAt),
    };
  }
}

class DatabaseReadiness extends ReadinessProbe {
  constructor(private readonly probe: () => Promise<string | undefined>) {
    super();
  }

  check(): Promise<string | undefined> {
    return this.probe();
  }
}

export interface OpenPorts {
  readonly providers: readonly Provider[];
  readonly work: UnitOfWork;
  readonly clock: Clock;
  readonly ids: IdSource;
  /** Connections to the database, counted now. */
  poolStanding(): PoolStanding;
  close(): Promise<void>;
}

export interface GivenParts {
  readonly clock?: Clock;
  readonly ids?: IdSource;
  /** What is sealed with it is opened by every process that has it; without one, by this process alone. */
  readonly sealingSecret?: string;
  /** Webhooks may go to this machine, for trials. */
  readonly webhookLoopback?: boolean;
  /** Whose tokens are believed; nobody's unless told. */
  readonly tokenIssuers?: readonly TokenIssuer[];
}

/** Binds every port to its adapter on one database. `clock` and `ids` may be replaced, the database never is. */
export function openPorts(database: DatabasePoolSettings, given: GivenParts = {}): OpenPorts {
  const pool = openDatabasePool(database);
  const connections = new ShopConnections(pool);
  const clock = given.clock ?? new SystemClock();
  const ids = given.ids ?? new UuidSource();
  const work = new SqlUnitOfWork(connections, ids);
  const computing = openComputePool();
  const sealer = new AesSealer(given.sealingSecret ?? randomBytes(32).toString('hex'));
  return {
    work,
    clock,
    ids,
    providers: [
      { provide: UnitOfWork, useValue: work },
      { provide: Clock, useValue: clock },
      { provide: IdSource, useValue: ids },
      { provide: SharedTransaction, useValue: new SqlSharedTransaction(connections, work) },
      { provide: Fingerprint, useValue: new Sha256Fingerprint() },
      { provide: Sealer, useValue: sealer },
      {
        provide: WebhookTerms,
        useValue: new SealedWebhookTerms(sealer, given.webhookLoopback ?? false),
      },
      { provide: Computing, useValue: computing },
      {
        provide: CredentialLookup,
        useValue: new ShopCredentialLookup(
          new IdentifyCallerUseCase(work, clock),
          new NoteKeyUseUseCase(work, clock),
        ),
      },
      { provide: BearerTokens, useValue: bearerTokens(given.tokenIssuers ?? [], work, clock) },
      { provide: ReadinessProbe, useValue: new DatabaseReadiness(() => sqlReadiness(pool)) },
    ],
    poolStanding: () => ({
      used: pool.totalCount - pool.idleCount,
      idle: pool.idleCount,
      waiting: pool.waitingCount,
    }),
    close: async () => {
      await computing.close();
      await connections.close();
    },
  };
}

function bearerTokens(issuers: readonly TokenIssuer[], work: UnitOfWork, clock: Clock): BearerTokens {
  if (issuers.length === 0) return new NoBearerTokens();
  const identify = new IdentifyPersonUseCase(work);
  return new IssuerTokens(issuers, clock, (claimed) => identify.execute(claimed));
}
