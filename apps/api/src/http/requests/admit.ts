import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { authenticate, type Credentials } from '../access/authenticate.js';
import { checkRole } from '../access/check-role.js';
import type { RateLimits } from '../access/rate-limits.js';
import type { Drain } from '../operation/drain.js';
import { HttpProblem } from '../problems/http-problem.js';
import { readExpectedVersion } from './expected-version.js';
import { exchangeOf } from './exchange.js';
import { checkAccept, checkContentType, consumedBy } from './media-types.js';
import { checkQueryNames, refuseQuery } from './query-names.js';
import { checkHost } from './host-header.js';
import { retirementHeaders } from './retirement.js';
import { requestContext } from './request-context.js';
import { RouteTable } from './route-table.js';

const longestUrl = 8 * 1024;

/** Header fields of ours that pages of other origins may read, and that they may send: those that are given and heeded. */
const exposed =
  'Accept-Patch, Accept-Post, Content-Disposition, Deprecation, ETag, Idempotency-Replayed, Link, Location, Preference-Applied, RateLimit, RateLimit-Policy, Retry-After, Sunset, WWW-Authenticate';
const sendable = 'Authorization, Content-Type, Idempotency-Key, If-Match, If-None-Match, Prefer, traceparent';

export interface Gate {
  readonly limits: RateLimits;
  readonly credentials: Credentials;
  readonly drain: Drain;
  /** Method and path of every route that takes no query. */
  readonly withoutQuery: ReadonlySet<string>;
}

/**
 * Everything that is settled before a body is read, cheapest first: is the process ending, is the caller too fast, is
 * there such a path and method, may the caller do this, can the request and the wanted answer be spoken at all.
 */
export function admitRequests(fastify: FastifyInstance, gate: Gate): void {
  const routes = new RouteTable();
  fastify.addHook('onRoute', (route) => {
    routes.add(route);
    const limit = route.config?.rules?.bodyLimit;
    if (limit !== undefined) route.bodyLimit = limit;
  });
  fastify.addHook('onRequest', async (request, reply) => {
    checkHost(request.raw);
    if (request.routeOptions.config.rules?.isProbe === true) return;
    if (gate.drain.isClosing) throw new HttpProblem('shutting-down', { headers: { 'retry-after': '1' } });
    gate.limits.takeForAddress(request, reply);
    if (request.is404) return answerUnrouted(request, reply, routes);
    await admitCaller(request, reply, gate);
    checkQueryNames(request.raw.url ?? '');
    const method = request.method === 'HEAD' ? 'GET' : request.method;
    if (gate.withoutQuery.has(`${method} ${request.routeOptions.url ?? ''}`))
      refuseQuery(request.raw.url ?? '');
    reply.headers(retirementHeaders(request.routeOptions.config.rules));
    checkAccept(request);
    checkContentType(request);
    if (request.routeOptions.config.rules?.needsVersion === true)
      readExpectedVersion(request.headers['if-match']);
  });
  // Reading a body may leave the asynchronous context, so it is entered after that.
  fastify.addHook('preValidation', (request, _reply, done) => requestContext.run(exchangeOf(request), done));
}

/** Header fields of every answer; a handler's answer may replace them. To be called before other hooks are added. */
export function setStandingHeaders(fastify: FastifyInstance, allowedOrigin: string, drain: Drain): void {
  fastify.addHook('onRequest', (request, reply, done) => {
    reply.headers({
      'cache-control': 'no-store',
      vary: allowedOrigin === '*' ? 'Authorization, Accept' : 'Authorization, Accept, Origin',
      'access-control-allow-origin': allowedOrigin,
      'access-control-expose-headers': exposed,
    });
    // A kept connection would hold up the end of the process.
    if (drain.isDraining) reply.header('connection', 'close');
    done((request.raw.url ?? '').length > longestUrl ? new HttpProblem('uri-too-long') : undefined);
  });
}

/** A path without this method is told apart from no path at all; OPTIONS is answered on every path. */
function answerUnrouted(request: FastifyRequest, reply: FastifyReply, routes: RouteTable): FastifyReply {
  const methods = routes.methodsAt(request.raw.url?.split('?', 1)[0] ?? '/');
  if (methods.length === 0) throw new HttpProblem('not-found');
  const allow = methods.join(', ');
  if (request.method !== 'OPTIONS') throw new HttpProblem('method-not-allowed', { headers: { allow } });
  if (methods.includes('POST')) reply.header('accept-post', consumedBy('POST', undefined).join(', '));
  if (methods.includes('PATCH')) reply.header('accept-patch', consumedBy('PATCH', undefined).join(', '));
  return reply
    .code(204)
    .headers({
      allow,
      'access-control-allow-methods': allow,
      'access-control-allow-headers': sendable,
      'access-control-max-age': '600',
    })
    .send();
}

async function admitCaller(request: FastifyRequest, reply: FastifyReply, gate: Gate): Promise<void> {
  const access = request.routeOptions.config.rules?.access;
  if (access === 'public') return;
  const caller = await authenticate(request.headers.authorization, gate.credentials, Date.now()).catch(
    (error: unknown) => {
      if (error instanceof HttpProblem && error.type === 'invalid-token')
        gate.limits.countWrongCredential(request);
      throw error;
    },
  );
  gate.limits.takeForCaller(`${caller.shopId}/${caller.userId}`, reply);
  checkRole(caller, access ?? [], request.method);
  exchangeOf(request).caller = caller;
}
