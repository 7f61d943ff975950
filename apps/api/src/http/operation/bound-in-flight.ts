import type { FastifyInstance } from 'fastify';
import { HttpProblem } from '../problems/http-problem.js';

/**
 * Turns requests away while so many are being answered already: whoever comes then is told at once, instead of waiting
 * in a line that only grows. Probes are always answered.
 */
export function boundInFlight(fastify: FastifyInstance, most: number): void {
  const admitted = new WeakSet<object>();
  let inFlight = 0;
  fastify.addHook('onRequest', (request, _reply, done) => {
    if (request.routeOptions.config.rules?.isProbe === true) {
      done();
      return;
    }
    if (inFlight >= most) {
      done(new HttpProblem('overloaded', { headers: { 'retry-after': '2' } }));
      return;
    }
    inFlight += 1;
    admitted.add(request);
    done();
  });
  fastify.addHook('onResponse', (request, _reply, done) => {
    if (admitted.delete(request)) inFlight -= 1;
    done();
  });
}
