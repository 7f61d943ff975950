import type { FastifyInstance } from 'fastify';
import { exchangeOf } from '../requests/exchange.js';
import type { Metrics } from './metrics.js';

/** Counts and times every request. To be called before hooks that may refuse one. */
export function observeRequests(fastify: FastifyInstance, metrics: Metrics): void {
  fastify.addHook('onRequest', (request, _reply, done) => {
    exchangeOf(request).isCounted = true;
    metrics.begin(request.method);
    done();
  });
  fastify.addHook('onResponse', (request, reply, done) => {
    const { startedAt, problem, isCounted } = exchangeOf(request);
    if (isCounted === true)
      metrics.end({
        method: request.method,
        route: request.routeOptions.url ?? '',
        status: reply.statusCode,
        seconds: (performance.now() - startedAt) / 1000,
        problem,
      });
    done();
  });
}
