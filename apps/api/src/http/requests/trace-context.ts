import { randomBytes } from 'node:crypto';

const traceparent = /^00-([0-9a-f]{32})-([0-9a-f]{16})-[0-9a-f]{2}$/;

/** New trace id: 16 random bytes as lower-case hexadecimal. */
export function newTraceId(): string {
  return randomBytes(16).toString('hex');
}

/** New id of one step of a trace: 8 random bytes as lower-case hexadecimal. */
export function newSpanId(): string {
  return randomBytes(8).toString('hex');
}

/** The trace id of a `traceparent` header (W3C Trace Context), or a new one where it is missing or broken. */
export function traceIdOf(header: string | readonly string[] | undefined): string {
  const [, traceId = '', parentId = ''] = typeof header === 'string' ? (traceparent.exec(header) ?? []) : [];
  const isUsable = traceId !== '' && !/^0+$/.test(traceId) && !/^0+$/.test(parentId);
  return isUsable ? traceId : newTraceId();
}
