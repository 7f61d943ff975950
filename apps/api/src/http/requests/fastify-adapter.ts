import { FastifyAdapter } from '@nestjs/platform-fastify';
import { LogController, type FastifyInstance, type FastifyReply, type FastifyRequest } from 'fastify';
import type { Logger } from 'pino';
import { refuseExpectation, sendRawProblem } from '../problems/raw-problem.js';
import { sendProblem } from '../problems/send-problem.js';
import type { ApiSettings } from '../settings.js';
import { HttpProblem } from '../problems/http-problem.js';
import { json, mergePatch } from './media-types.js';
import { strictJson } from './strict-json.js';

/** Most bytes of the start line and the header fields together, read by Node's parser. */
const mostHeaderBytes = 32 * 1024;

/** Bodies handed to the handler as a stream; only routes that say so read them. */
const streamed = [
  'text/csv',
  'application/x-ndjson',
  'image/jpeg',
  'image/png',
  'image/webp',
  'application/pdf',
  'application/octet-stream',
];

/**
 * Fastify with every limit set and every refusal as problem details.
 * Nest would install handlers of its own for errors and unknown paths; ours take their place.
 */
export class ProblemFastifyAdapter extends FastifyAdapter {
  constructor(settings: ApiSettings, logger: Logger) {
    super({
      loggerInstance: logger,
      logController: new LogController({ disableRequestLogging: true }),
      bodyLimit: settings.bodyLimit,
      requestTimeout: settings.requestTimeout,
      // The body is read within this time too, and its own limit is to be met first.
      handlerTimeout: settings.requestTimeout + 5_000,
      connectionTimeout: settings.requestTimeout + 10_000,
      trustProxy: settings.trustProxy,
      return503OnClosing: false,
      routerOptions: { maxParamLength: 128 },
      http: {
        // Looked at by ourselves, so that a request without Host is refused like every other.
        requireHostHeader: false,
        maxHeaderSize: mostHeaderBytes,
        connectionsCheckingInterval: 1_000,
        headersTimeout: Math.min(15_000, settings.requestTimeout),
      },
      frameworkErrors: (error: unknown, request: FastifyRequest, reply: FastifyReply) =>
        sendProblem(error, request, reply),
      clientErrorHandler: sendRawProblem,
      // With frameworkErrors the inferred server type no longer fits the adapter's options.
    } as never);
    readBodies(this.getInstance());
    this.getInstance<FastifyInstance>().server.on('checkExpectation', refuseExpectation);
  }

  override setErrorHandler(): FastifyInstance {
    return this.getInstance<FastifyInstance>().setErrorHandler((error, request, reply) =>
      sendProblem(error, request, reply),
    );
  }

  override setNotFoundHandler(): FastifyInstance {
    return this.getInstance<FastifyInstance>().setNotFoundHandler((request, reply) =>
      sendProblem(new HttpProblem('not-found'), request, reply),
    );
  }
}

function readBodies(fastify: FastifyInstance): void {
  fastify.removeAllContentTypeParsers();
  fastify.addContentTypeParser([json, mergePatch], { parseAs: 'buffer' }, (_request, body, done) => {
    try {
      done(null, strictJson(body as Buffer));
    } catch (error) {
      done(error as Error);
    }
  });
  fastify.addContentTypeParser(streamed, (_request, payload, done) => done(null, payload));
}
