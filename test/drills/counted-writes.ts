import { randomUUID } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import pg from 'pg';

/** An answer as it came, to be compared byte for byte. */
export interface Told {
  readonly status: number;
  readonly text: string;
  readonly retryAfter: string | null;
  readonly isReplay: boolean;
}

/** One write, sent under one key until it was acknowledged. */
export interface Written {
  readonly path: string;
  readonly request: RequestInit;
  readonly acknowledged: Told;
}

interface Step {
  readonly path: string;
  readonly body: object;
  readonly ifMatch?: string;
}

const customer = { kind: 'fleetOperator', contact: { name: 'Pellow Haulage' } };
const terms = { downtimeCostPerDay: null, planningDistanceKm: null };
const van = {
  chassisNumber: null,
  plate: null,
  firstUsedOn: '1991-04-02',
  application: null,
  attributes: {},
  expectedKmPerYear: null,
  observedSpans: [],
  retiredOn: null,
};

/** After which a client gives an answer up and sends the request again; longer than the service lets anybody wait. */
const patienceMs = 20_000;
/** Statuses after which the same request is sent again under the same key. */
const comeAgain = new Set([409, 429, 503]);

/**
 * Writers that record customers, vans, their odometers and corrections, each request under a key of its own and sent
 * until it is acknowledged; and the count of what was acknowledged.
 */
export class CountedWrites {
  readonly written: Written[] = [];
  /** statuses seen, and how often */
  readonly statuses = new Map<number, number>();
  /** refusals to come again that did not say when */
  untimed = 0;
  /** connections that broke, or were given up, before the answer */
  broken = 0;
  private isEnding = false;
  private readonly waiting: { readonly count: number; readonly resolve: () => void }[] = [];

  /** @param address - where the interface is now; asked before every attempt, may wait for the next server */
  constructor(
    private readonly key: string,
    private readonly address: () => Promise<string>,
  ) {}

  /** Writes until `finish`, so many at once; resolves when every write begun has been acknowledged. */
  async run(writers: number): Promise<void> {
    await Promise.all(Array.from({ length: writers }, () => this.writer()));
  }

  finish(): void {
    this.isEnding = true;
  }

  /** Resolves when so many more have been acknowledged. */
  more(count: number): Promise<void> {
    return new Promise((resolve) => this.waiting.push({ count: this.written.length + count, resolve }));
  }

  /** Sends an acknowledged write once more, under its key. */
  async again({ path, request }: Pick<Written, 'path' | 'request'>): Promise<Told> {
    for (;;) {
      const told = await this.attempt(path, request);
      if (told !== undefined && !comeAgain.has(told.status)) return told;
      await wait(1000 * Number(told?.retryAfter ?? 0));
    }
  }

  private async writer(): Promise<void> {
    while (!this.isEnding) {
      const customerId = await this.write({ path: '/v1/customers', body: { ...customer, ...terms } });
      const content = { ...van, label: 'Van 14' };
      const vehicle = { ...content, customerId, ownedFrom: '2020-01-01T00:00:00Z' };
      const path = `/v1/vehicles/${await this.write({ path: '/v1/vehicles', body: vehicle })}`;
      const shown = { shown: '184200', unit: 'km', readAt: '2024-03-01T09:00:00Z' };
      await this.write({ path: `${path}/odometer-entries`, body: shown });
      const body = { ...content, label: 'Van 15', reason: 'another van was meant' };
      await this.write({ path: `${path}/corrections`, body, ifMatch: '"1"' });
    }
  }

  private async write({ path, body, ifMatch }: Step): Promise<string> {
    const request = {
      method: 'POST',
      body: JSON.stringify(body),
      headers: {
        authorization: `Bearer ${this.key}`,
        'content-type': 'application/json',
        'idempotency-key': randomUUID(),
        ...(ifMatch === undefined ? {} : { 'if-match': ifMatch }),
      },
    };
    const acknowledged = await this.again({ path, request });
    if (acknowledged.status !== 201)
      throw new Error(`${path}: ${String(acknowledged.status)} ${acknowledged.text}`);
    this.written.push({ path, request, acknowledged });
    for (const each of this.waiting.filter(({ count }) => count <= this.written.length)) each.resolve();
    return (JSON.parse(acknowledged.text) as { id: string }).id;
  }

  /** Undefined when the connection broke or was given up. */
  private async attempt(path: string, request: RequestInit): Promise<Told | undefined> {
    const address = await this.address();
    try {
      const reply = await fetch(`${address}${path}`, { ...request, signal: AbortSignal.timeout(patienceMs) });
      const text = await reply.text();
      const retryAfter = reply.headers.get('retry-after');
      this.statuses.set(reply.status, (this.statuses.get(reply.status) ?? 0) + 1);
      if (comeAgain.has(reply.status) && retryAfter === null) this.untimed += 1;
      const isReplay = reply.headers.get('idempotency-replayed') === '?1';
      return { status: reply.status, text, retryAfter, isReplay };
    } catch {
      this.broken += 1;
      return undefined;
    }
  }
}

/** What the writers' tables hold, as counts; `superuserUrl` is not bound to a shop. */
export async function countRows(superuserUrl: string): Promise<Readonly<Record<string, number>>> {
  const session = new pg.Client({ connectionString: superuserUrl });
  await session.connect();
  try {
    const { rows } = await session.query<Record<string, number>>(
      `SELECT (SELECT count(*)::int FROM customer) AS customers,
              (SELECT count(*)::int FROM vehicle) AS vehicles,
              (SELECT count(*)::int FROM vehicle_ownership) AS ownerships,
              (SELECT count(*)::int FROM odometer_entry) AS "odometerEntries",
              (SELECT count(*)::int FROM vehicle_revision WHERE revision = 2) AS corrections,
              (SELECT count(*)::int FROM vehicle_revision WHERE revision > 2) AS "correctedTwice",
              (SELECT count(*)::int FROM stored_answer) AS answers`,
    );
    return rows[0]!;
  } finally {
    await session.end();
  }
}

/** What `countRows` finds when each acknowledged write was done once and nothing else was. */
export function countsOf(written: readonly Written[]): Readonly<Record<string, number>> {
  const count = (pattern: RegExp): number => written.filter(({ path }) => pattern.test(path)).length;
  const vehicles = count(/\/vehicles$/);
  return {
    customers: count(/\/customers$/),
    vehicles,
    ownerships: vehicles,
    odometerEntries: count(/odometer-entries$/),
    corrections: count(/corrections$/),
    correctedTwice: 0,
    answers: written.length,
  };
}
