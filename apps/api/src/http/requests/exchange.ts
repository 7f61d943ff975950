import type { Caller } from '@endfloat/workshop';
import type { FastifyRequest } from 'fastify';
import { newSpanId, traceIdOf } from './trace-context.js';

/** What is known about one request while it is answered. */
export interface Exchange {
  readonly traceId: string;
  /** Id of this request alone: a trace may hold many. */
  readonly requestId: string;
  readonly request: FastifyRequest;
  /** Monotonic start, milliseconds. */
  readonly startedAt: number;
  /** Set once the credential has been checked; absent on public routes. */
  caller?: Caller;
  /** Type of the problem it was answered with. */
  problem?: string;
  /** Set where metrics have counted its begin. */
  isCounted?: boolean;
}

const exchanges = new WeakMap<object, Exchange>();

/** The exchange of a request; it begins with the first call. */
export function exchangeOf(request: FastifyRequest): Exchange {
  const known = exchanges.get(request.raw);
  if (known !== undefined) return known;
  const begun: Exchange = {
    traceId: traceIdOf(request.headers['traceparent']),
    requestId: newSpanId(),
    request,
    startedAt: performance.now(),
  };
  exchanges.set(request.raw, begun);
  return begun;
}
