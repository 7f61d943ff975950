import { cloudEventOf } from '../events/cloud-event.js';
import type { Clock } from '../ports/clock.port.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import type {
  Chance,
  SendResult,
  WebhookDelivery,
  WebhookMessage,
  WebhookTerms,
} from '../ports/webhooks.port.js';
import { announceChange } from './endpoints.use-case.js';
import { retryDelay } from './retry-delay.js';

/**
 * Seconds for which a begun attempt belongs to whoever began it: longer than any attempt may last. Whoever ends without
 * a word is followed by somebody else after that.
 */
export const attemptLeaseSeconds = 60;

/** Who is recorded where the service itself changes a record: nobody of the shop. */
export const serviceActor = '00000000-0000-7000-8000-000000000000';

/** An attempt that was begun, and what is to be sent. */
export interface BegunAttempt {
  readonly delivery: WebhookDelivery;
  readonly message: WebhookMessage;
  readonly startedAt: string;
}

/**
 * Begins the attempts that are due in one shop. Two who ask at once never get the same one.
 */
export class BeginDueDeliveriesUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly terms: WebhookTerms,
  ) {}

  execute(
    shopId: string,
    most: {
      readonly perEndpoint: number;
      readonly limit: number;
      readonly exceptEndpoints: readonly string[];
    },
  ): Promise<readonly BegunAttempt[]> {
    const now = this.clock.now();
    const until = later(now, attemptLeaseSeconds);
    return this.work.run(shopId, async (tx) => {
      const begun = await tx.webhookDeliveries.claimDue({ now, until, ...most });
      if (begun.length === 0) return [];
      const events = await tx.events.findMany(begun.map(({ eventId }) => eventId));
      const endpoints = await tx.webhookEndpoints.findMany([
        ...new Set(begun.map(({ endpointId }) => endpointId)),
      ]);
      const attempts: BegunAttempt[] = [];
      for (const delivery of begun) {
        const event = events.find(({ id }) => id === delivery.eventId);
        const endpoint = endpoints.find(({ id }) => id === delivery.endpointId);
        if (event === undefined || endpoint === undefined) continue;
        const secrets = await this.secretsOf(tx, delivery.endpointId, now);
        const message: WebhookMessage = {
          id: event.id,
          url: endpoint.content.url,
          timestamp: Math.floor(Date.parse(now) / 1000),
          body: JSON.stringify(cloudEventOf(shopId, event)),
          secrets,
        };
        attempts.push({ delivery, message, startedAt: now });
      }
      return attempts;
    });
  }

  private async secretsOf(tx: ShopTransaction, endpointId: string, now: string): Promise<readonly string[]> {
    const signing = await tx.webhookSecrets.signing(endpointId, now);
    return signing.map(({ sealed }) => this.terms.openSecret(sealed, endpointId));
  }
}

/** Notes how an attempt went, and what follows: delivered, tried again, given up, or the endpoint is gone. */
export class ConcludeDeliveryUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly chance: Chance,
  ) {}

  execute(shopId: string, { delivery, startedAt }: BegunAttempt, result: SendResult): Promise<void> {
    const now = this.clock.now();
    const number = delivery.attempts;
    const { outcome, status } = result;
    return this.work.run(shopId, async (tx) => {
      const { webhookDeliveries: deliveries } = tx;
      const isNew = await deliveries.recordAttempt(delivery.id, {
        number,
        startedAt,
        endedAt: now,
        outcome,
        status,
      });
      if (!isNew) return;
      if (outcome === 'accepted') {
        await deliveries.settle(delivery.id, 'delivered', now);
      } else if (outcome === 'gone') {
        await deliveries.settle(delivery.id, 'failed', now);
        await markGone(tx, delivery.endpointId, now);
      } else if ((await deliveries.find(delivery.id))?.attempts === number) {
        // Otherwise somebody else has begun the next attempt meanwhile, and will say what follows.
        const delay = retryDelay(number, this.chance.next(), result.retryAfterSeconds);
        if (delay === undefined) await deliveries.settle(delivery.id, 'failed', now);
        else await deliveries.postpone(delivery.id, later(now, delay));
      }
    });
  }
}

async function markGone(tx: ShopTransaction, endpointId: string, at: string): Promise<void> {
  const endpoint = await tx.webhookEndpoints.find(endpointId);
  if (endpoint?.content.state !== 'active') return;
  const content = { ...endpoint.content, state: 'gone' as const };
  const stamp = { at, by: serviceActor, reason: 'The receiver answered 410: it is gone.' };
  if ((await tx.webhookEndpoints.correct(endpointId, endpoint.revision, content, stamp)) !== 'corrected')
    return;
  await tx.webhookDeliveries.withdrawAll(endpointId, at);
  await announceChange(tx, endpointId, content, at);
}

function later(instant: string, seconds: number): string {
  return new Date(Date.parse(instant) + seconds * 1000).toISOString();
}
