import { lookup } from 'node:dns/promises';
import {
  request as requestHttp,
  type ClientRequest,
  type IncomingMessage,
  type RequestOptions,
} from 'node:http';
import { request as requestHttps } from 'node:https';
import {
  isLoopbackAddress,
  isPublicAddress,
  readWebhookTarget,
  WebhookSender,
  type SendResult,
  type WebhookMessage,
  type WebhookTarget,
} from '@endfloat/workshop';
import { signedHeaders } from './signature.js';

export interface SenderSettings {
  readonly allowsLoopback: boolean;
  /** milliseconds for the whole of an attempt, from asking for the address to the end of the answer */
  readonly totalMs?: number;
  /** most bytes of an answer that are read */
  readonly mostBytes?: number;
  /** every address of a name */
  readonly resolve?: (name: string) => Promise<readonly string[]>;
}

export const usualSending = { totalMs: 15_000, mostBytes: 64 * 1024 } as const;

const nothing: SendResult = { outcome: 'notReached', status: null, retryAfterSeconds: null };
const timedOut: SendResult = { ...nothing, outcome: 'timedOut' };
const notAllowed: SendResult = { ...nothing, outcome: 'addressNotAllowed' };

/**
 * Sends messages, and can be led nowhere else: a name is resolved once, every address it has is checked, and the
 * connection goes to the checked address itself, so that a name that changes its mind meanwhile changes nothing.
 * Redirects are not followed, an answer is read up to a size, an attempt lasts up to a time.
 */
export class HttpWebhookSender extends WebhookSender {
  constructor(private readonly settings: SenderSettings) {
    super();
  }

  async send(message: WebhookMessage): Promise<SendResult> {
    const ending = new AbortController();
    const timer = setTimeout(() => ending.abort(), this.settings.totalMs ?? usualSending.totalMs);
    try {
      return await this.attempt(message, ending.signal);
    } catch {
      return ending.signal.aborted ? timedOut : nothing;
    } finally {
      clearTimeout(timer);
    }
  }

  private async attempt(message: WebhookMessage, signal: AbortSignal): Promise<SendResult> {
    const reading = readWebhookTarget(message.url, this.settings.allowsLoopback);
    if (reading.kind === 'refused') return notAllowed;
    const { target } = reading;
    const addresses = target.isAddress
      ? [target.host]
      : await untilAborted(this.resolve(target.host), signal);
    const [address] = addresses;
    if (address === undefined) return nothing;
    if (!addresses.every((each) => this.mayBeReached(each))) return notAllowed;
    const response = await post(target, address, message, signal);
    const status = response.statusCode ?? 0;
    await readUpTo(response, this.settings.mostBytes ?? usualSending.mostBytes, signal);
    return { outcome: outcomeOf(status), status, retryAfterSeconds: retryAfter(response) };
  }

  private async resolve(name: string): Promise<readonly string[]> {
    if (this.settings.resolve !== undefined) return this.settings.resolve(name);
    return (await lookup(name, { all: true })).map(({ address }) => address);
  }

  private mayBeReached(address: string): boolean {
    return isPublicAddress(address) || (this.settings.allowsLoopback && isLoopbackAddress(address));
  }
}

function post(
  target: WebhookTarget,
  address: string,
  message: WebhookMessage,
  signal: AbortSignal,
): Promise<IncomingMessage> {
  const body = Buffer.from(message.body, 'utf8');
  const options: RequestOptions & { servername?: string } = {
    method: 'POST',
    // The address, never the name: nothing is resolved again.
    hostname: address,
    port: target.port,
    path: target.path,
    agent: false,
    signal,
    maxHeaderSize: 16 * 1024,
    headers: {
      host: hostOf(target),
      'content-type': 'application/cloudevents+json; charset=utf-8',
      'content-length': body.byteLength,
      'user-agent': 'endfloat-webhooks',
      connection: 'close',
      ...signedHeaders(message),
    },
    ...(target.scheme === 'https' && !target.isAddress ? { servername: target.host } : {}),
  };
  return new Promise((resolve, reject) => {
    const sent: ClientRequest = (target.scheme === 'https' ? requestHttps : requestHttp)(options, resolve);
    sent.on('error', reject);
    sent.end(body);
  });
}

function hostOf({ scheme, host, port }: WebhookTarget): string {
  const name = host.includes(':') ? `[${host}]` : host;
  return port === (scheme === 'https' ? 443 : 80) ? name : `${name}:${String(port)}`;
}

/** Reads an answer to its end or to the limit, whichever comes first, and closes the connection. */
function readUpTo(response: IncomingMessage, most: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve, reject) => {
    let read = 0;
    const end = (how: () => void): void => {
      // First, since closing it says that it broke off.
      how();
      response.destroy();
    };
    response.on('data', (chunk: Buffer) => {
      read += chunk.byteLength;
      if (read >= most) end(resolve);
    });
    response.on('end', () => end(resolve));
    const broken = (): void => end(() => reject(new Error('the answer broke off')));
    response.on('error', broken);
    response.on('aborted', broken);
    signal.addEventListener('abort', broken, { once: true });
  });
}

function outcomeOf(status: number): SendResult['outcome'] {
  if (status >= 200 && status < 300) return 'accepted';
  if (status === 410) return 'gone';
  return status >= 300 && status < 400 ? 'redirected' : 'refused';
}

/** Seconds of Retry-After (RFC 9110 section 10.2.3) where it is a number; a date is left out of account. */
function retryAfter({ headers }: IncomingMessage): number | null {
  const given = headers['retry-after'];
  return given !== undefined && /^\d{1,9}$/.test(given) ? Number(given) : null;
}

function untilAborted<T>(work: Promise<T>, signal: AbortSignal): Promise<T> {
  return new Promise((resolve, reject) => {
    signal.addEventListener('abort', () => reject(new Error('too late')), { once: true });
    work.then(resolve, reject);
  });
}
