import type { IncomingMessage } from 'node:http';
import { HttpProblem } from '../problems/http-problem.js';

/**
 * Refuses a request that names no host, or more than one (RFC 9112 section 3.2): whoever stands before us might have
 * read it otherwise.
 */
export function checkHost({ rawHeaders, httpVersion }: IncomingMessage): void {
  const names = rawHeaders.filter((name, at) => at % 2 === 0 && name.toLowerCase() === 'host').length;
  if (names === 1 || (names === 0 && httpVersion === '1.0')) return;
  throw new HttpProblem('malformed-request', { detail: 'A request has exactly one Host header field.' });
}
