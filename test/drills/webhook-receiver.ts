import { createHmac, timingSafeEqual } from 'node:crypto';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

/** One request that a receiver got. */
export interface ReceivedMessage {
  readonly path: string;
  readonly id: string;
  readonly timestamp: string;
  readonly signatures: readonly string[];
  readonly contentType: string;
  readonly body: string;
}

export type Behaviour = (request: IncomingMessage, response: ServerResponse) => void;

/** A receiver of webhooks on this machine that counts what it gets, and behaves as a drill tells it, path by path. */
export interface WebhookReceiver {
  readonly port: number;
  readonly received: ReceivedMessage[];
  behave(path: string, behaviour: Behaviour): void;
  at(path: string): readonly ReceivedMessage[];
  /** How often each id came to a path. */
  counts(path: string): ReadonlyMap<string, number>;
  close(): Promise<void>;
}

export const accept: Behaviour = (_request, response) => response.writeHead(204).end();
export const answer =
  (status: number, headers: Record<string, string> = {}, body = ''): Behaviour =>
  (_request, response) =>
    response.writeHead(status, headers).end(body);

export async function openReceiver(): Promise<WebhookReceiver> {
  const behaviours = new Map<string, Behaviour>();
  const received: ReceivedMessage[] = [];
  const server = createServer((request, response) => {
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => {
      const path = request.url ?? '';
      const field = (name: string): string => String(request.headers[name] ?? '');
      received.push({
        path,
        id: field('webhook-id'),
        timestamp: field('webhook-timestamp'),
        signatures: field('webhook-signature').split(' '),
        contentType: field('content-type'),
        body: Buffer.concat(chunks).toString('utf8'),
      });
      (behaviours.get(path) ?? accept)(request, response);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const at = (path: string) => received.filter((each) => each.path === path);
  return {
    port: (server.address() as AddressInfo).port,
    received,
    behave: (path, behaviour) => behaviours.set(path, behaviour),
    at,
    counts: (path) => {
      const counts = new Map<string, number>();
      for (const { id } of at(path)) counts.set(id, (counts.get(id) ?? 0) + 1);
      return counts;
    },
    close: () => {
      server.closeAllConnections();
      return new Promise((resolve) => server.close(() => resolve()));
    },
  };
}

/** Verifies a message as a receiver would: any of its signatures, under one secret. */
export function isSignedWith(secret: string, { id, timestamp, body, signatures }: ReceivedMessage): boolean {
  const key = Buffer.from(secret.replace(/^whsec_/, ''), 'base64');
  const expected = createHmac('sha256', key).update(`${id}.${timestamp}.${body}`).digest();
  return signatures.some((signature) => {
    const [version, text = ''] = signature.split(',');
    const given = Buffer.from(text, 'base64');
    return version === 'v1' && given.length === expected.length && timingSafeEqual(given, expected);
  });
}
