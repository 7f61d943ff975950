import {
  attemptOutcomes,
  deliveryStates,
  endpointStates,
  type AttemptOutcome,
  type DeliveryState,
  type EndpointState,
} from '@endfloat/workshop/ports';
import {
  EnumField,
  IdField,
  InstantField,
  IntegerField,
  JoinTypes,
  ListField,
  PartialType,
  TextField,
} from '../fields/index.js';
import { PageQuery, pageOf } from '../paging/index.js';
import { RecordedResponse } from '../recording/index.js';

/** States that people choose; `gone` is what the receiver said. */
export const chosenEndpointStates = ['active', 'paused'] as const satisfies readonly EndpointState[];
export type ChosenEndpointState = (typeof chosenEndpointStates)[number];

export class WebhookEndpointContent {
  @TextField({
    description:
      'Where messages are sent: https, a name or address of the public internet, port 443 or 8443.',
    max: 2000,
    example: 'https://hooks.example.com/workshop',
  })
  url!: string;

  @TextField({ description: 'What it is for.', max: 200, example: 'comeback report of the fleet' })
  description!: string;

  @ListField({
    description: 'Types of events it is told of; null: all, also those to come.',
    nullable: true,
    max: 100,
    min: 1,
    unique: true,
    text: { max: 120, pattern: '^endfloat\\.[A-Za-z]+\\.[A-Za-z]+\\.v[0-9]+$' },
  })
  eventTypes!: string[] | null;
}

export class RecordWebhookEndpointRequest extends WebhookEndpointContent {
  @IdField({ description: 'Id chosen by the client.', optional: true })
  id?: string;
}

class ChosenState {
  @EnumField({
    description: '`paused` takes back what still waits; `active` begins anew, also after `gone`.',
    values: chosenEndpointStates,
    enumName: 'ChosenEndpointState',
  })
  state!: ChosenEndpointState;
}

export class WebhookEndpointPatch extends PartialType(JoinTypes(WebhookEndpointContent, ChosenState)) {}

export class WebhookEndpointResponse extends JoinTypes(RecordedResponse, WebhookEndpointContent) {
  @EnumField({
    description: 'Whether it is told of things; `gone`: it answered 410.',
    values: endpointStates,
    enumName: 'WebhookEndpointState',
    open: true,
  })
  state!: EndpointState;
}

export class NewWebhookEndpointResponse extends WebhookEndpointResponse {
  @TextField({
    description: 'What messages are signed with, shown this once; null where the endpoint was there already.',
    nullable: true,
    max: 120,
    pattern: '^whsec_[A-Za-z0-9+/]+=*$',
  })
  secret!: string | null;
}

export class WebhookEndpointPage extends pageOf(() => WebhookEndpointResponse) {}

export class WebhookEndpointPath {
  @IdField({ description: 'Id of the endpoint.' })
  endpointId!: string;
}

export class NewWebhookSecretResponse {
  @IdField({ description: 'Id of the secret.' })
  id!: string;

  @IdField({ description: 'The endpoint it belongs to.' })
  endpointId!: string;

  @TextField({ description: 'The secret, shown this once.', max: 120, pattern: '^whsec_[A-Za-z0-9+/]+=*$' })
  secret!: string;

  @InstantField({ description: 'From when on it signs.' })
  recordedAt!: string;

  @InstantField({ description: 'Until when the earlier secret signs beside it.' })
  earlierEndsAt!: string;
}

export class ListWebhookDeliveriesQuery extends PageQuery {
  @IdField({ description: 'Of this endpoint only.', optional: true })
  endpointId?: string;

  @EnumField({
    description: 'In this state only.',
    values: deliveryStates,
    enumName: 'WebhookDeliveryState',
    optional: true,
  })
  state?: DeliveryState;
}

export class WebhookDeliveryResponse {
  @IdField({ description: 'Id of the delivery.' })
  id!: string;

  @IdField({ description: 'The endpoint.' })
  endpointId!: string;

  @IdField({ description: 'Id of the event; it is the `webhook-id` of every attempt.' })
  eventId!: string;

  @TextField({ description: 'What happened.', max: 120 })
  eventType!: string;

  @IdField({ description: 'The record it happened to.' })
  subject!: string;

  @EnumField({
    description: '`failed`: given up; `withdrawn`: the endpoint was paused or gone before.',
    values: deliveryStates,
    enumName: 'WebhookDeliveryState',
  })
  state!: DeliveryState;

  @IntegerField({ description: 'Attempts that were begun.', min: 0, max: 1000 })
  attempts!: number;

  @InstantField({ description: 'When it is tried next; null once it is settled.', nullable: true })
  nextAttemptAt!: string | null;

  @InstantField({ description: 'When it was to be told first.' })
  recordedAt!: string;

  @InstantField({
    description: 'When it was delivered, given up or withdrawn; null while it waits.',
    nullable: true,
  })
  settledAt!: string | null;
}

export class WebhookAttemptDto {
  @IntegerField({
    description: 'Its number, from 1; a number that is missing was begun and never concluded.',
    min: 1,
    max: 1000,
  })
  number!: number;

  @InstantField({ description: 'When it was begun.' })
  startedAt!: string;

  @InstantField({ description: 'When its end was noted.' })
  endedAt!: string;

  @EnumField({
    description: 'How it went.',
    values: attemptOutcomes,
    enumName: 'WebhookAttemptOutcome',
    open: true,
  })
  outcome!: AttemptOutcome;

  @IntegerField({
    description: 'HTTP status of the receiver; null where there was none.',
    min: 0,
    max: 999,
    nullable: true,
  })
  status!: number | null;
}

export class WebhookDeliveryDetail extends WebhookDeliveryResponse {
  @ListField({ description: 'Every attempt that was concluded.', type: () => WebhookAttemptDto, max: 1000 })
  log!: WebhookAttemptDto[];
}

export class WebhookDeliveryPage extends pageOf(() => WebhookDeliveryResponse) {}

export class WebhookDeliveryPath {
  @IdField({ description: 'Id of the delivery.' })
  deliveryId!: string;
}
