import { STATUS_CODES, type IncomingMessage, type ServerResponse } from 'node:http';
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

/** Answers a request that expects what no server of ours does (RFC 9110 section 10.1.1), before its body is sent. */
export function refuseExpectation(request: IncomingMessage, response: ServerResponse): void {
  const problem = new HttpProblem('expectation-failed', {
    detail: 'Expect: 100-continue is the only expectation that is met here.',
  });
  const body = JSON.stringify(problemBody(problem, request.url?.split('?', 1)[0] ?? '/', newTraceId()));
  response.writeHead(problemTypes[problem.type].status, {
    'content-type': problemMediaType,
    'content-length': Buffer.byteLength(body),
    'cache-control': 'no-store',
    connection: 'close',
  });
  response.end(body);
}
