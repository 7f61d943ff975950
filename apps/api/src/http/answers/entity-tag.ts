import { createHash } from 'node:crypto';
import type { FastifyRequest } from 'fastify';
import { readEntityTags } from '../requests/expected-version.js';

/**
 * Strong tag of a single resource: its version where it has one, else a digest of the answer.
 * A query can change the representation, so it is part of the tag; the version stands before the point.
 */
export function entityTag(answer: Readonly<Record<string, unknown>>, url: string): string {
  const query = url.split('?', 2)[1] ?? '';
  const { version } = answer;
  if (typeof version !== 'number') return `"${digest(JSON.stringify(answer))}"`;
  return query === '' ? `"${version}"` : `"${version}.${digest(query)}"`;
}

/** Whether If-None-Match says that the caller has this representation (weak comparison, RFC 9110 section 13.1.2). */
export function isKnownToCaller(request: FastifyRequest, tag: string): boolean {
  const header = request.headers['if-none-match'];
  if (header === undefined) return false;
  if (header.trim() === '*') return true;
  return readEntityTags(header).some(({ text }) => `"${text}"` === tag);
}

function digest(text: string): string {
  return createHash('sha256').update(text).digest('base64url').slice(0, 16);
}
