import { STATUS_CODES } from 'node:http';
import type { Socket } from 'node:net';
import { newTraceId } from '../requests/trace-context.js';
import { HttpProblem } from './http-problem.js';
import { problemBody, problemMediaType } from './problem-body.js';
import { problemOf } from './problem-of.js';
import { problemTypes } from './problem-types.js';

/** Answers what Node's parser refused, for which there is no request yet, and closes the connection. */
export function sendRawProblem(error: Error & { code?: string }, socket: Socket): void {
  if (error.code === 'ECONNRESET' || socket.destroyed) return;
  if (!socket.writable) {
    socket.destroy(error);
    return;
  }
  const found = problemOf(error);
  const problem = found.type === 'internal' ? new HttpProblem('malformed-request') : found;
  const { status } = problemTypes[problem.type];
  const body = JSON.stringify(problemBody(problem, '/', newTraceId()));
  const head = [
    `HTTP/1.1 ${status} ${STATUS_CODES[status] ?? ''}`,
    `Content-Type: ${problemMediaType}`,
    `Content-Length: ${Buffer.byteLength(body)}`,
    'Cache-Control: no-store',
    'Connection: close',
  ];
  socket.end(`${head.join('\r\n')}\r\n\r\n${body}`);
  socket.destroySoon();
}
