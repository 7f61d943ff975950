import type {
  WebhookDeliveryDetail,
  WebhookDeliveryResponse,
  WebhookEndpointResponse,
} from '@endfloat/contracts';
import type { DeliveryView, WebhookDelivery, WebhookEndpointRecord } from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

export function presentWebhookEndpoint(record: WebhookEndpointRecord): WebhookEndpointResponse {
  const { url, description, eventTypes, state } = record.content;
  return {
    ...presentRecorded(record),
    url,
    description,
    eventTypes: eventTypes === null ? null : [...eventTypes],
    state,
  };
}

export function presentWebhookDelivery(delivery: WebhookDelivery): WebhookDeliveryResponse {
  const { id, endpointId, eventId, eventType, subjectId, state, attempts, dueAt, recordedAt, settledAt } =
    delivery;
  const nextAttemptAt = settledAt === null ? dueAt : null;
  return {
    id,
    endpointId,
    eventId,
    eventType,
    subject: subjectId,
    state,
    attempts,
    nextAttemptAt,
    recordedAt,
    settledAt,
  };
}

export function presentDeliveryView({ delivery, attempts }: DeliveryView): WebhookDeliveryDetail {
  return {
    ...presentWebhookDelivery(delivery),
    log: attempts.map(({ number, startedAt, endedAt, outcome, status }) => ({
      number,
      startedAt,
      endedAt,
      outcome,
      status,
    })),
  };
}
