import type { FastifyRequest } from 'fastify';

/** `Link: <...>; rel="next"` with the filters kept (RFC 8288); none on the last page. */
export function nextPageLink(request: FastifyRequest, nextCursor: unknown): string | undefined {
  if (typeof nextCursor !== 'string') return undefined;
  const [path = '/', query = ''] = (request.raw.url ?? '').split('?', 2);
  const parameters = new URLSearchParams(query);
  parameters.set('cursor', nextCursor);
  return `<${path}?${parameters.toString()}>; rel="next"`;
}
