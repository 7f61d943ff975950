import 'reflect-metadata';
import { Module, VersioningType, type DynamicModule, type InjectionToken } from '@nestjs/common';
import { ModulesContainer, NestFactory } from '@nestjs/core';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import type { Logger } from 'pino';
import { AnswerOnceUseCase } from '@endfloat/workshop';
import { BearerTokens, NoBearerTokens } from './http/access/bearer-tokens.port.js';
import { CredentialLookup } from './http/access/credential-lookup.port.js';
import { RateLimits } from './http/access/rate-limits.js';
import { AnswerInterceptor } from './http/answers/answer.interceptor.js';
import { buildDocument } from './http/contract/build-document.js';
import { faultyRoutes } from './http/contract/check-routes.js';
import { walkRoutes } from './http/contract/route-walk.js';
import { serveDocument } from './http/contract/serve-document.js';
import { AnswerOnceInterceptor } from './http/idempotency/answer-once.interceptor.js';
import { HttpModule } from './http/http.module.js';
import type { Metrics } from './http/observe/metrics.js';
import { observeRequests } from './http/observe/observe-requests.js';
import { boundInFlight } from './http/operation/bound-in-flight.js';
import { Drain } from './http/operation/drain.js';
import { logRequests } from './http/operation/log-requests.js';
import { createLogger, FrameworkLogger } from './http/operation/logger.js';
import { protect } from './http/operation/protect.js';
import { ProblemDetailsFilter } from './http/problems/problem-details.filter.js';
import { admitRequests, setStandingHeaders } from './http/requests/admit.js';
import { ProblemFastifyAdapter } from './http/requests/fastify-adapter.js';
import { ReadAsDeclaredPipe } from './http/requests/validation.pipe.js';
import type { ApiSettings } from './http/settings.js';

@Module({})
class RootModule {}

export interface ApiParts {
  readonly settings: ApiSettings;
  /** The interface itself: `AppModule.register(ports)`, or trial controllers in a test. */
  readonly module: DynamicModule;
  readonly logger?: Logger;
  /** Counts requests; nothing is counted without. */
  readonly metrics?: Metrics;
}

/**
 * The interface, ready to listen: shell, routes, document. The main program, the tests and the script that writes the
 * document all start here.
 *
 * @throws Error when a route is declared so that it would not be guarded or validated
 */
export async function createApi({
  settings,
  module,
  logger = createLogger(settings),
  metrics,
}: ApiParts): Promise<NestFastifyApplication> {
  const adapter = new ProblemFastifyAdapter(settings, logger);
  const root: DynamicModule = { module: RootModule, imports: [HttpModule.register(settings), module] };
  const app = await NestFactory.create<NestFastifyApplication>(root, adapter, {
    bodyParser: false,
    abortOnError: false,
    logger: new FrameworkLogger(logger),
  });
  app.enableVersioning({ type: VersioningType.URI });
  const routes = walkRoutes(app.get(ModulesContainer));
  const faults = faultyRoutes(routes);
  if (faults.length > 0) throw new Error(`routes are declared wrongly:\n${faults.join('\n')}`);
  app.useGlobalPipes(new ReadAsDeclaredPipe());
  app.useGlobalFilters(new ProblemDetailsFilter());
  app.useGlobalInterceptors(...answeringOnce(app), new AnswerInterceptor(settings.strictAnswers));
  const fastify = app.getHttpAdapter().getInstance();
  const drain = app.get(Drain, { strict: false });
  if (metrics !== undefined) observeRequests(fastify, metrics);
  setStandingHeaders(fastify, settings.allowedOrigin, drain);
  await protect(fastify, settings);
  logRequests(fastify);
  boundInFlight(fastify, settings.mostInFlight);
  admitRequests(fastify, {
    limits: new RateLimits(settings.rateLimits),
    credentials: {
      keys: app.get(CredentialLookup, { strict: false }),
      tokens: isProvided(app, BearerTokens) ? app.get(BearerTokens, { strict: false }) : new NoBearerTokens(),
    },
    drain,
    withoutQuery: new Set(
      routes
        .filter(
          (route) =>
            route.rules.isProbe !== true && !route.arguments.some(({ source }) => source === 'query'),
        )
        .map(({ method, path }) => `${method} ${path}`),
    ),
  });
  serveDocument(fastify, () => buildDocument(app, routes));
  await app.init();
  await fastify.ready();
  return app;
}

/** Around all others, since it keeps what they made; absent in an interface without a database. */
function answeringOnce(app: NestFastifyApplication): AnswerOnceInterceptor[] {
  return isProvided(app, AnswerOnceUseCase)
    ? [new AnswerOnceInterceptor(app.get(AnswerOnceUseCase, { strict: false }))]
    : [];
}

function isProvided(app: NestFastifyApplication, part: InjectionToken): boolean {
  return [...app.get(ModulesContainer).values()].some((module) => module.providers.has(part));
}
