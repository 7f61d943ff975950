import { Agent, request } from 'node:http';

export interface Call {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly body?: string | undefined;
}

/** Bounds of one leg; it ends with whichever is reached first. */
export interface Bounds {
  readonly seconds: number;
  readonly requests: number;
  readonly connections: number;
}

export interface Measured {
  readonly perSecond: number;
  readonly requests: number;
  /** milliseconds */
  readonly median: number;
  readonly p95: number;
  readonly p99: number;
}

/**
 * Sends calls over kept connections, each the next one when the one before was answered.
 *
 * @throws Error when an answer is not the status that is wanted; a refusal is fast and would measure nothing
 */
export async function measure(
  target: { readonly address: string; readonly authorization: string },
  callOf: (index: number) => Call,
  bounds: Bounds,
  wanted: readonly number[] = [200, 201],
): Promise<Measured> {
  const agent = new Agent({ keepAlive: true, maxSockets: bounds.connections });
  const times: number[] = [];
  const begun = performance.now();
  const end = begun + bounds.seconds * 1000;
  let next = 0;
  const connection = async (): Promise<void> => {
    while (next < bounds.requests && performance.now() < end) {
      const call = callOf(next);
      next += 1;
      const from = performance.now();
      const { status, text } = await send(target, call, agent);
      if (!wanted.includes(status)) throw new Error(`${call.path}: ${String(status)} ${text.slice(0, 300)}`);
      times.push(performance.now() - from);
    }
  };
  await Promise.all(Array.from({ length: bounds.connections }, connection));
  const seconds = (performance.now() - begun) / 1000;
  agent.destroy();
  times.sort((a, b) => a - b);
  const quantile = (share: number): number => times[Math.floor(share * (times.length - 1))] ?? 0;
  return {
    perSecond: times.length / seconds,
    requests: times.length,
    median: quantile(0.5),
    p95: quantile(0.95),
    p99: quantile(0.99),
  };
}

export function send(
  { address, authorization }: { readonly address: string; readonly authorization: string },
  { method, path, body }: Call,
  agent?: Agent,
): Promise<{ readonly status: number; readonly text: string }> {
  return new Promise((resolve, reject) => {
    const outgoing = request(`${address}${path}`, {
      method,
      ...(agent === undefined ? {} : { agent }),
      headers: {
        authorization,
        ...(body === undefined
          ? {}
          : { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) }),
      },
    });
    outgoing.on('error', reject).on('response', (incoming) => {
      const chunks: Buffer[] = [];
      incoming
        .on('data', (chunk: Buffer) => chunks.push(chunk))
        .on('error', reject)
        .on('end', () =>
          resolve({ status: incoming.statusCode ?? 0, text: Buffer.concat(chunks).toString() }),
        );
    });
    outgoing.end(body);
  });
}
