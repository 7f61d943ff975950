import type { FastifyInstance } from 'fastify';
import { exchangeOf } from '../requests/exchange.js';

/** One line per answered request: the template of its path, never its query or its header fields. */
export function logRequests(fastify: FastifyInstance): void {
  fastify.addHook('onResponse', (request, reply, done) => {
    const { traceId, requestId, startedAt, caller, problem } = exchangeOf(request);
    request.log.info(
      {
        traceId,
        requestId,
        method: request.method,
        route: request.routeOptions.url ?? null,
        status: reply.statusCode,
        milliseconds: Math.round((performance.now() - startedAt) * 10) / 10,
        problem,
        shop: caller?.shopId,
        user: caller?.userId,
      },
      'answered',
    );
    done();
  });
}
