import type { FastifyRequest } from 'fastify';
import { HttpProblem } from '../problems/http-problem.js';
import { problemMediaType } from '../problems/problem-body.js';

export const json = 'application/json';
export const mergePatch = 'application/merge-patch+json';
export const csvMediaType = 'text/csv';

/** Media types of the body a route reads: what it says itself, else a merge patch for PATCH and JSON for the rest. */
export function consumedBy(method: string, consumes: readonly string[] | undefined): readonly string[] {
  return consumes ?? (method === 'PATCH' ? [mergePatch] : [json]);
}

/** Refuses a body of a type that the route does not read (415), and names the types it does. */
export function checkContentType(request: FastifyRequest): void {
  const { method, headers } = request;
  const hasBody = headers['transfer-encoding'] !== undefined || Number(headers['content-length'] ?? 0) > 0;
  if (method === 'GET' || method === 'HEAD' || (!hasBody && headers['content-type'] === undefined)) return;
  if (!/^(?:identity)?$/i.test((headers['content-encoding'] ?? '').trim())) {
    throw new HttpProblem('unsupported-media-type', {
      detail: 'A body is read as it is, without Content-Encoding.',
      headers: { 'accept-encoding': 'identity' },
    });
  }
  const consumed = consumedBy(method, request.routeOptions.config.rules?.consumes);
  const [type = '', ...parameters] = (headers['content-type'] ?? '')
    .split(';')
    .map((part) => part.trim().toLowerCase());
  const isUtf8 = parameters.every((each) => !each.startsWith('charset') || /^charset="?utf-8"?$/.test(each));
  if (consumed.includes(type) && isUtf8) return;
  const name = method === 'PATCH' ? 'accept-patch' : 'accept-post';
  throw new HttpProblem('unsupported-media-type', {
    detail: `This route reads ${consumed.join(', ')} in UTF-8.`,
    headers: { [name]: consumed.join(', ') },
  });
}

/** Refuses a request that accepts none of the types the route can answer with (406, RFC 9110 section 12.5.1). */
export function checkAccept(request: FastifyRequest): void {
  const { accept } = request.headers;
  if (accept === undefined || accept.trim() === '') return;
  const produced = request.routeOptions.config.rules?.produces ?? [json];
  if (produced.some((type) => accepts(accept, type))) return;
  throw new HttpProblem('not-acceptable', {
    detail: `This route answers with ${produced.join(', ')}; refusals are ${problemMediaType}.`,
  });
}

/** Whether an Accept header admits a type: the most specific range that fits decides, and weight 0 refuses. */
export function accepts(accept: string, type: string): boolean {
  return weightOf(accept, type) > 0;
}

/** Whether an Accept header asks for CSV rather than JSON: named or weighted above it. */
export function prefersCsv(accept: string | undefined): boolean {
  return accept !== undefined && weightOf(accept, csvMediaType) > weightOf(accept, json);
}

/** The weight an Accept header gives a type, 0 where it refuses it or does not admit it. */
function weightOf(accept: string, type: string): number {
  const [main = ''] = type.split('/', 1);
  let bestRank = -1;
  let weight = 0;
  for (const entry of accept.split(',')) {
    const [range = '', ...parameters] = entry.split(';').map((part) => part.trim().toLowerCase());
    const rank = [`*/*`, `${main}/*`, type].indexOf(range);
    if (rank <= bestRank) continue;
    bestRank = rank;
    const given = parameters.map((each) => /^q=([01](?:\.\d{0,3})?)$/.exec(each)?.[1]);
    weight = Number(given.find((each) => each !== undefined) ?? '1');
  }
  return weight;
}
