import helmet from '@fastify/helmet';
import underPressure from '@fastify/under-pressure';
import type { FastifyInstance } from 'fastify';
import { HttpProblem } from '../problems/http-problem.js';
import type { ApiSettings } from '../settings.js';

/** Header fields for browsers, and an early 503 while the process cannot keep up. */
export async function protect(
  fastify: FastifyInstance,
  { mostLoopDelay }: Pick<ApiSettings, 'mostLoopDelay'>,
): Promise<void> {
  await fastify.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: { defaultSrc: ["'none'"], frameAncestors: ["'none'"] },
    },
    crossOriginResourcePolicy: { policy: 'cross-origin' },
    referrerPolicy: { policy: 'no-referrer' },
  });
  await fastify.register(underPressure, {
    maxEventLoopDelay: mostLoopDelay,
    pressureHandler: (request) => {
      if (request.routeOptions.config.rules?.isProbe === true) return;
      throw new HttpProblem('overloaded', { headers: { 'retry-after': '2' } });
    },
  });
}
