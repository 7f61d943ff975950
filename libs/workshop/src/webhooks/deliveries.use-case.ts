import { DomainError, notFound } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import type { DeliveryList, DeliveryState, WebhookAttempt, WebhookDelivery } from '../ports/webhooks.port.js';
import { requiredRecord } from '../recording/required-record.js';

export interface DeliveryView {
  readonly delivery: WebhookDelivery;
  readonly attempts: readonly WebhookAttempt[];
}

/** What was told to whom, newest first. */
export class ListWebhookDeliveriesUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(
    caller: Caller,
    query: {
      readonly endpointId?: string | undefined;
      readonly state?: DeliveryState | undefined;
      readonly after?: { readonly sortValue: string; readonly id: string } | undefined;
      readonly limit: number;
    },
  ): Promise<DeliveryList> {
    return this.work.read(caller.shopId, (tx) => tx.webhookDeliveries.list(query));
  }
}

/** One delivery with all its attempts. */
export class ShowWebhookDeliveryUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(caller: Caller, id: string): Promise<DeliveryView> {
    return this.work.read(caller.shopId, (tx) => viewOf(tx, id));
  }
}

/** Tells an event once more to the endpoint of an earlier delivery, under the same id, whatever became of the first. */
export class ReplayWebhookDeliveryUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(caller: Caller, deliveryId: string): Promise<DeliveryView> {
    return this.work.run(caller.shopId, async (tx) => {
      const { delivery } = await viewOf(tx, deliveryId);
      const { endpointId, eventId, settledAt } = delivery;
      const endpoint = await requiredRecord(tx.webhookEndpoints, 'webhook endpoint', endpointId);
      if (endpoint.content.state !== 'active')
        throw new DomainError(
          'record.wrongState',
          'The endpoint is not active. Make it active, then replay.',
        );
      if (settledAt === null)
        throw new DomainError(
          'record.wrongState',
          'This delivery still waits; it will be tried again by itself.',
        );
      const id = this.ids.next();
      await tx.webhookDeliveries.add({ id, endpointId, eventId, at: this.clock.now() });
      return viewOf(tx, id);
    });
  }
}

async function viewOf(tx: ShopTransaction, id: string): Promise<DeliveryView> {
  const delivery = await tx.webhookDeliveries.find(id);
  if (delivery === undefined) throw notFound('delivery');
  return { delivery, attempts: await tx.webhookDeliveries.attemptsOf(id) };
}
