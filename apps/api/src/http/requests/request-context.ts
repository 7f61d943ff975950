import { AsyncLocalStorage } from 'node:async_hooks';
import type { Caller } from '@endfloat/workshop';
import { HttpProblem } from '../problems/http-problem.js';
import type { Exchange } from './exchange.js';

/** Carries the exchange to wherever it is needed while a request is answered; set before the handler runs. */
export const requestContext = new AsyncLocalStorage<Exchange>();

/** Who is asking. On a public route there is nobody, and asking for a caller there is refused. */
export function currentCaller(): Caller {
  const caller = requestContext.getStore()?.caller;
  if (caller === undefined) throw new HttpProblem('missing-credential');
  return caller;
}
