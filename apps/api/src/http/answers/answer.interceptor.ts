import type { CallHandler, ExecutionContext, NestInterceptor } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { map, type Observable } from 'rxjs';
import { whitelist } from '@endfloat/contracts';
import { csvFormOf, type CsvForm } from '../csv/also-csv.decorator.js';
import { exchangeOf } from '../requests/exchange.js';
import { csvMediaType, prefersCsv } from '../requests/media-types.js';
import { answerRuleOf, isAlreadyThere, type AnswerRule } from './answer.decorator.js';
import { entityTag, isKnownToCaller } from './entity-tag.js';
import { nextPageLink } from './next-page-link.js';

type Body = Record<string, unknown>;

/** Reduces an answer to its contract, and writes the header fields that follow from it. */
export class AnswerInterceptor implements NestInterceptor {
  constructor(private readonly isStrict: boolean) {}

  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const rule = answerRuleOf(context.getHandler());
    const type = rule?.type;
    if (rule === undefined || type === undefined) return next.handle();
    const http = context.switchToHttp();
    const request = http.getRequest<FastifyRequest>();
    const reply = http.getResponse<FastifyReply>();
    const csv = prefersCsv(request.headers.accept) ? csvFormOf(context.getHandler()) : undefined;
    return next.handle().pipe(
      map((answer: unknown) => {
        const { value, extra } = whitelist(type, answer);
        if (extra.length > 0) this.report(type.name, extra, request);
        if (isAlreadyThere(answer)) reply.code(200);
        return request.method === 'GET' || request.method === 'HEAD'
          ? csv === undefined
            ? finishRead(value as Body, request, reply)
            : finishCsv(value as Body, csv, request, reply)
          : finishWrite(value as Body, rule, request, reply);
      }),
    );
  }

  private report(type: string, extra: readonly string[], request: FastifyRequest): void {
    if (this.isStrict)
      throw new Error(`an answer holds members that ${type} does not declare: ${extra.join(', ')}`);
    request.log.error(
      { type, extra, traceId: exchangeOf(request).traceId },
      'members outside the contract were stripped',
    );
  }
}

function finishRead(body: Body, request: FastifyRequest, reply: FastifyReply): Body | undefined {
  if ('items' in body) {
    const link = nextPageLink(request, body['nextCursor']);
    if (link !== undefined) addLink(reply, link);
    return body;
  }
  const tag = entityTag(body, request.raw.url ?? '');
  reply.header('etag', tag).header('cache-control', 'private, no-cache');
  if (!isKnownToCaller(request, tag)) return body;
  reply.code(304);
  return undefined;
}

/** The same answer as a file; a page keeps the link to the next. */
function finishCsv(
  body: Body,
  form: CsvForm,
  request: FastifyRequest,
  reply: FastifyReply,
): string | undefined {
  const link = nextPageLink(request, body['nextCursor']);
  if (link !== undefined) addLink(reply, link);
  const text = form.write(body);
  const tag = entityTag({ text }, '');
  reply.header('etag', tag).header('cache-control', 'private, no-cache');
  if (isKnownToCaller(request, tag)) {
    reply.code(304);
    return undefined;
  }
  reply
    .type(`${csvMediaType}; charset=utf-8; header=present`)
    .header('content-disposition', `attachment; filename="${form.fileName}.csv"`);
  return text;
}

/** Beside a link that was there already, such as that of an operation that goes. */
function addLink(reply: FastifyReply, link: string): void {
  const there = reply.getHeader('link');
  reply.header('link', typeof there === 'string' ? `${there}, ${link}` : link);
}

function finishWrite(
  body: Body,
  rule: AnswerRule,
  request: FastifyRequest,
  reply: FastifyReply,
): Body | undefined {
  if (typeof body['version'] === 'number') reply.header('etag', entityTag(body, ''));
  if (rule.status === 201 || rule.status === 202) {
    const path = request.raw.url?.split('?', 1)[0] ?? '';
    reply.header('location', rule.location?.(body) ?? `${path}/${String(body['id'])}`);
  }
  if (!wantsLittle(request)) return body;
  reply.header('preference-applied', 'return=minimal');
  if (reply.statusCode === 200) reply.code(204);
  return undefined;
}

/** `Prefer: return=minimal` (RFC 7240). */
function wantsLittle({ headers }: FastifyRequest): boolean {
  const prefer = headers['prefer'];
  const given = Array.isArray(prefer) ? prefer.join(',') : (prefer ?? '');
  return given
    .split(',')
    .some((each) => /^return\s*=\s*"?minimal"?$/i.test(each.split(';', 1)[0]?.trim() ?? ''));
}
