import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Metrics } from './metrics.js';

export interface ServedMetrics {
  readonly port: number;
  close(): Promise<void>;
}

/** Serves GET /metrics on an address of its own, so that the interface itself never tells them. */
export async function serveMetrics(metrics: Metrics, host: string, port: number): Promise<ServedMetrics> {
  const server = createServer((request, response) => {
    const isAsked = request.method === 'GET' && request.url?.split('?', 1)[0] === '/metrics';
    if (!isAsked) {
      response.writeHead(404).end();
      return;
    }
    metrics.text().then(
      ({ type, text }) =>
        response.writeHead(200, { 'content-type': type, 'cache-control': 'no-store' }).end(text),
      () => response.writeHead(500).end(),
    );
  });
  server.requestTimeout = 5_000;
  server.maxConnections = 32;
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, resolve);
  });
  return {
    port: (server.address() as AddressInfo).port,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
