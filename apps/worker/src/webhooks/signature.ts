import { createHmac } from 'node:crypto';
import type { WebhookMessage } from '@endfloat/workshop';

/**
 * Header fields of a message (Standard Webhooks 1.0.0): its id, when it is sent, and one signature for each secret over
 * `<id>.<timestamp>.<body>`.
 */
export function signedHeaders({ id, timestamp, body, secrets }: WebhookMessage): Record<string, string> {
  const signatures = secrets.map((secret) => signature(secret, `${id}.${String(timestamp)}.${body}`));
  return {
    'webhook-id': id,
    'webhook-timestamp': String(timestamp),
    'webhook-signature': signatures.join(' '),
  };
}

function signature(secret: string, text: string): string {
  const key = Buffer.from(secret.replace(/^whsec_/, ''), 'base64');
  return `v1,${createHmac('sha256', key).update(text, 'utf8').digest('base64')}`;
}
