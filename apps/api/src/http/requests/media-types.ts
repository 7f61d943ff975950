import type { FastifyRequest } from 'fastify';
import { HttpProblem } from '../problems/http-problem.js';
import { problemMediaType } from '../problems/problem-body.js';

export const json = 'application/json';
export const mergePatch = 'application/merge-patch+json';

/** Media types of the body a route reads: what it says itself, else a merge patch for PATCH and JSON for the rest. */
export function consumedBy(method: string, consumes: readonly string[] | undefined): readonly string[] {
  return consumes ?? (method === 'PATCH' ? [mergePatch] : [json]);
}

/** Refuses a body of a type that the route does not read (415), and names the types it does. */
export function checkContentType(request: FastifyRequest): void {
  const { method, headers } = request;
  const hasBody = headers['transfer-encoding'] !== undefined || Number(headers['content-length'] ?? 0) > 0;
  if (method === 'GET' || method === 'HEAD' || (!hasBody && headers['content-type'] === undefined)) return;
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
  const [main = ''] = type.split('/', 1);
  let bestRank = -1;
  let isAccepted = false;
  for (const entry of accept.split(',')) {
    const [range = '', ...parameters] = entry.split(';').map((part) => part.trim().toLowerCase());
    const rank = [`*/*`, `${main}/*`, type].indexOf(range);
    if (rank <= bestRank) continue;
    bestRank = rank;
    isAccepted = !parameters.some((each) => /^q=0(?:\.0{0,3})?$/.test(each));
  }
  return isAccepted;
}
