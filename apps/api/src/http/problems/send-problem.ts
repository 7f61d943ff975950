import type { FastifyReply, FastifyRequest } from 'fastify';
import { exchangeOf } from '../requests/exchange.js';
import { tellError } from '../operation/tell-error.js';
import { HttpProblem } from './http-problem.js';
import { problemBody, problemMediaType } from './problem-body.js';
import { problemOf, problemOfRead } from './problem-of.js';
import { problemTypes } from './problem-types.js';

/** Header fields of a good answer that make no sense on a refusal. */
const ofGoodAnswers = ['etag', 'location', 'link', 'content-disposition', 'preference-applied'];

/** Answers with the problem that was thrown: the only way a refusal or a failure leaves the service. */
export function sendProblem(error: unknown, request: FastifyRequest, reply: FastifyReply): void {
  const exchange = exchangeOf(request);
  const { traceId, requestId } = exchange;
  const isRead = request.method === 'GET' || request.method === 'HEAD';
  const problem = isRead ? problemOfRead(problemOf(error)) : problemOf(error);
  const { status } = problemTypes[problem.type];
  exchange.problem = problem.type;
  if (status >= 500 && !(error instanceof HttpProblem))
    request.log.error({ err: tellError(error), traceId, requestId }, 'request failed');
  if (reply.raw.headersSent) {
    reply.raw.destroy();
    return;
  }
  for (const name of ofGoodAnswers) reply.removeHeader(name);
  const path = request.raw.url?.split('?', 1)[0] ?? '/';
  const body = JSON.stringify(problemBody(problem, path, traceId));
  void reply
    .code(status)
    .headers({ 'cache-control': 'no-store', ...problem.details.headers })
    .header('content-type', problemMediaType)
    .send(body);
}
