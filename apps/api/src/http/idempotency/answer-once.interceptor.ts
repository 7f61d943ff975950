import type { CallHandler, ExecutionContext, NestInterceptor } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { from, lastValueFrom, type Observable } from 'rxjs';
import type { AnswerOnceUseCase, AnswerToKeep } from '@endfloat/workshop';
import { HttpProblem } from '../problems/http-problem.js';
import { json } from '../requests/media-types.js';
import { currentCaller } from '../requests/request-context.js';
import { readIdempotencyKey, takesKey } from './idempotency-key.js';

const jsonType = `${json}; charset=utf-8`;
/** Header fields that belong to an answer and are given again with it. */
const kept = ['etag', 'link', 'preference-applied'] as const;

/**
 * Gives a request with an Idempotency-Key its first answer again, byte for byte. It stands around everything that makes
 * an answer, so that what is kept is what was sent; the kept answer and the effect are one transaction.
 */
export class AnswerOnceInterceptor implements NestInterceptor {
  constructor(private readonly once: AnswerOnceUseCase) {}

  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const http = context.switchToHttp();
    const request = http.getRequest<FastifyRequest>();
    const { rules } = request.routeOptions.config;
    if (!takesKey(request.method, rules)) return next.handle();
    const header = request.headers['idempotency-key'];
    if (header === undefined) {
      if (rules?.needsIdempotencyKey === true && !bringsId(request.body)) throw keyMissing();
      return next.handle();
    }
    const key = readIdempotencyKey(header);
    return from(this.answer(key, request, http.getResponse<FastifyReply>(), next));
  }

  private async answer(
    key: string,
    request: FastifyRequest,
    reply: FastifyReply,
    next: CallHandler,
  ): Promise<string | undefined> {
    const keyed = { key, method: request.method, address: request.raw.url ?? '', body: request.body };
    const plannedStatus = reply.statusCode;
    const { answer, isReplay } = await this.once.execute(currentCaller(), keyed, async () => {
      reply.code(plannedStatus);
      const body: unknown = await lastValueFrom(next.handle(), { defaultValue: undefined });
      return answerOf(reply, body);
    });
    if (isReplay) {
      reply.code(answer.status).headers({ ...answer.headers, 'idempotency-replayed': '?1' });
      if (answer.location !== null) reply.header('location', answer.location);
    }
    if (answer.body === null) return undefined;
    reply.header('content-type', jsonType);
    return answer.body;
  }
}

function answerOf(reply: FastifyReply, body: unknown): AnswerToKeep {
  const textOf = (name: string): string | null => {
    const value = reply.getHeader(name);
    return value === undefined ? null : String(value);
  };
  const headers = kept.flatMap((name) => {
    const value = textOf(name);
    return value === null ? [] : [[name, value] as const];
  });
  return {
    status: reply.statusCode,
    location: textOf('location'),
    headers: Object.fromEntries(headers),
    body: body === undefined ? null : JSON.stringify(body),
  };
}

function bringsId(body: unknown): boolean {
  return typeof body === 'object' && body !== null && typeof (body as { id?: unknown }).id === 'string';
}

function keyMissing(): HttpProblem {
  return new HttpProblem('idempotency-key-missing', {
    detail:
      'Send Idempotency-Key, or choose the id of what is made, so that sending this twice makes it once.',
  });
}
