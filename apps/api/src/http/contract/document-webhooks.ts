import type { OpenAPIV3_1 } from 'openapi-types';
import { CloudEventDto, idPattern, textPattern, type SchemaNames } from '@endfloat/contracts';
import { eventTypes, type EventMember, type EventType } from '@endfloat/workshop';

const id = { type: 'string', format: 'uuid', pattern: idPattern, maxLength: 36 };
const text = { type: 'string', maxLength: 200, pattern: textPattern({ max: 200 }) };
const members: Readonly<Record<EventMember, object>> = {
  id,
  idOrNull: { ...id, type: ['string', 'null'] },
  count: { type: 'integer', format: 'int32', minimum: -2147483648, maximum: 2147483647 },
  text,
  texts: { type: 'array', maxItems: 1000, items: text },
};

const headers = [
  [
    'webhook-id',
    'Id of the event; the same whenever it is sent again. Keep those you have dealt with.',
    '^[0-9a-f-]{36}$',
  ],
  [
    'webhook-timestamp',
    'When it was sent, in seconds since 1970; refuse what is older than five minutes.',
    '^[0-9]{1,12}$',
  ],
  [
    'webhook-signature',
    'HMAC-SHA256 of `<id>.<timestamp>.<body>` under the secret of the endpoint, in base64; several while a secret is changed.',
    '^v1,[A-Za-z0-9+/]{43}=(?: v1,[A-Za-z0-9+/]{43}=)*$',
  ],
] as const;

/** One entry for each type of event: what an endpoint is sent (Standard Webhooks 1.0.0), and what its answers mean. */
export function describeWebhooks(names: SchemaNames): OpenAPIV3_1.Document['webhooks'] {
  const event = names.ofClass(CloudEventDto);
  return Object.fromEntries(
    Object.entries(eventTypes)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([type, described]) => [type, { post: message(type, described, event) }]),
  ) as OpenAPIV3_1.Document['webhooks'];
}

function message(type: string, { summary, subject, data }: EventType, event: object): object {
  const [, thing = '', happened = ''] = type.split('.');
  return {
    operationId: `tell${capital(thing)}${capital(happened)}`,
    tags: ['webhooks'],
    summary,
    description: `${summary} \`subject\` is the id of the ${subject}.`,
    security: [],
    parameters: headers.map(([name, description, pattern]) => ({
      name,
      in: 'header',
      required: true,
      description,
      schema: { type: 'string', maxLength: 1024, pattern },
    })),
    requestBody: {
      required: true,
      content: {
        'application/cloudevents+json': {
          schema: {
            allOf: [
              event,
              {
                type: 'object',
                properties: {
                  type: { type: 'string', const: type },
                  data: {
                    type: 'object',
                    properties: Object.fromEntries(
                      Object.entries(data).map(([name, member]) => [name, members[member]]),
                    ),
                    required: Object.keys(data),
                  },
                },
              },
            ],
          },
        },
      },
    },
    responses: {
      '2XX': { description: 'Accepted; it is not sent again.' },
      '410': { description: 'The receiver is gone; nothing more is sent to it.' },
      default: {
        description: 'Anything else, a redirect too, is a failure: it is sent again over three days.',
      },
    },
  };
}

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}
