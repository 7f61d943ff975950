import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import { eventTypes } from '../ports/event-types.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded } from '../ports/record-store.port.js';
import type { NoReferences } from '../ports/records/shop.records.js';
import type { WebhookEndpoint } from '../ports/records/webhooks.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import type { WebhookTerms } from '../ports/webhooks.port.js';
import { addRecord } from '../recording/add-record.js';
import { changesNothing, correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { readWebhookTarget } from './webhook-target.js';

export type WebhookEndpointRecord = Recorded<NoReferences, WebhookEndpoint>;

/** Hours for which an earlier secret signs beside the new one. */
export const secretOverlapHours = 24;

/** Most endpoints of a shop that are told of things. */
export const mostEndpoints = 50;

/** Where a program wants to be told of what happens; it is told of everything recorded from then on. */
export class RecordWebhookEndpointUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
    private readonly terms: WebhookTerms,
  ) {}

  /** `secret` is shown this once; null where the endpoint was there already. */
  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly endpoint: Omit<WebhookEndpoint, 'state'> },
  ): Promise<{
    readonly record: WebhookEndpointRecord;
    readonly created: boolean;
    readonly secret: string | null;
  }> {
    const stamp = stampOf(this.clock, caller);
    const content: WebhookEndpoint = { ...command.endpoint, state: 'active' };
    refuseWrongEndpoint(content, this.terms.allowsLoopback);
    const id = command.id ?? this.ids.next();
    return this.work.run(caller.shopId, async (tx) => {
      const added = await addRecord(
        tx.webhookEndpoints,
        'webhook endpoint',
        { id, identity: {}, content },
        stamp,
      );
      if (!added.created) return { ...added, secret: null };
      const all = await tx.webhookEndpoints.list({ where: { state: 'active' }, limit: mostEndpoints + 1 });
      if (all.items.length > mostEndpoints) throw tooMany();
      const { shown, sealed } = this.terms.makeSecret(id);
      await tx.webhookSecrets.add({
        id: this.ids.next(),
        endpointId: id,
        sealed,
        recordedAt: stamp.at,
        recordedBy: stamp.by,
      });
      await announceChange(tx, id, content, stamp.at);
      return { ...added, secret: shown };
    });
  }
}

export class ListWebhookEndpointsUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(
    caller: Caller,
    query: { readonly after?: ListPosition | undefined; readonly limit: number },
  ): Promise<ListPage<NoReferences, WebhookEndpoint>> {
    return this.work.read(caller.shopId, (tx) => tx.webhookEndpoints.list(query));
  }
}

export class ShowWebhookEndpointUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(caller: Caller, id: string, asOf?: string): Promise<WebhookEndpointRecord> {
    return this.work.read(caller.shopId, (tx) =>
      requiredRecord(tx.webhookEndpoints, 'webhook endpoint', id, asOf),
    );
  }
}

/** Changes where and of what a program is told. Pausing takes back whatever still waits for it. */
export class ChangeWebhookEndpointUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly terms: WebhookTerms,
  ) {}

  execute(
    caller: Caller,
    change: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly endpoint: Partial<Omit<WebhookEndpoint, 'state'>> & { readonly state?: 'active' | 'paused' };
    },
  ): Promise<WebhookEndpointRecord> {
    const stamp = stampOf(this.clock, caller);
    return this.work.run(caller.shopId, async (tx) => {
      const now = await requiredRecord(tx.webhookEndpoints, 'webhook endpoint', change.id);
      const content: WebhookEndpoint = { ...now.content, ...change.endpoint };
      refuseWrongEndpoint(content, this.terms.allowsLoopback);
      if (changesNothing(now, change.expected, content)) return now;
      const { id, expected } = change;
      const after = await correctRecord(
        tx.webhookEndpoints,
        'webhook endpoint',
        { id, expected, content },
        stamp,
      );
      if (content.state !== 'active') await tx.webhookDeliveries.withdrawAll(id, stamp.at);
      await announceChange(tx, id, content, stamp.at);
      return after;
    });
  }
}

/** Gives an endpoint a new secret; the earlier one signs beside it for a while, so that the receiver can change over. */
export class RotateWebhookSecretUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
    private readonly terms: WebhookTerms,
  ) {}

  execute(
    caller: Caller,
    endpointId: string,
  ): Promise<{
    readonly id: string;
    readonly endpointId: string;
    readonly secret: string;
    readonly recordedAt: string;
    readonly earlierEndsAt: string;
  }> {
    const stamp = stampOf(this.clock, caller);
    return this.work.run(caller.shopId, async (tx) => {
      await requiredRecord(tx.webhookEndpoints, 'webhook endpoint', endpointId);
      const earlierEndsAt = new Date(Date.parse(stamp.at) + secretOverlapHours * 3_600_000).toISOString();
      await tx.webhookSecrets.endAll(endpointId, earlierEndsAt);
      const { shown, sealed } = this.terms.makeSecret(endpointId);
      const id = this.ids.next();
      await tx.webhookSecrets.add({ id, endpointId, sealed, recordedAt: stamp.at, recordedBy: stamp.by });
      return { id, endpointId, secret: shown, recordedAt: stamp.at, earlierEndsAt };
    });
  }
}

/** An endpoint that is told of its own change sees that it is reached. */
export function announceChange(
  tx: ShopTransaction,
  id: string,
  { state }: WebhookEndpoint,
  at: string,
): Promise<void> {
  return tx.announce({ type: 'endfloat.webhookEndpoint.changed.v1', subjectId: id, at, payload: { state } });
}

function refuseWrongEndpoint({ url, eventTypes: wanted }: WebhookEndpoint, allowsLoopback: boolean): void {
  const reading = readWebhookTarget(url, allowsLoopback);
  if (reading.kind === 'refused') throw invalidInput('/url', reading.rule, `The address ${reading.detail}.`);
  for (const [at, type] of (wanted ?? []).entries()) {
    if (!Object.hasOwn(eventTypes, type)) {
      throw invalidInput(
        `/eventTypes/${String(at)}`,
        'knownType',
        'There is no such type of event. The types stand in the document under webhooks.',
      );
    }
  }
}

function tooMany(): DomainError {
  return new DomainError(
    'record.wrongState',
    `A shop tells at most ${String(mostEndpoints)} endpoints. Pause one that is not needed.`,
  );
}
