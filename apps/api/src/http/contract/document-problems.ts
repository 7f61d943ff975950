import { STATUS_CODES } from 'node:http';
import type { OpenAPIV3_1 } from 'openapi-types';
import { problemMediaType } from '../problems/problem-body.js';
import { problemTypes } from '../problems/problem-types.js';
import { headersNamed } from './document-headers.js';

const headersOf: Readonly<Record<number, readonly string[]>> = {
  401: ['WWW-Authenticate'],
  403: ['WWW-Authenticate'],
  409: ['Retry-After'],
  415: ['Accept-Post', 'Accept-Patch', 'Accept-Encoding'],
  429: ['Retry-After'],
  503: ['Retry-After'],
};

/** Statuses that any request may be refused with. */
const always = [400, 404, 406, 414, 429, 431, 500, 503];
const withBody = [408, 409, 413, 415, 417, 422];

const nameOf = (status: number) => `Refused${status}`;

/** The refusals of each status, with the types that have it. */
export function problemResponses(schema: string): Record<string, OpenAPIV3_1.ResponseObject> {
  const statuses = [...new Set(Object.values(problemTypes).map(({ status }) => status as number))].filter(
    (status) => status !== 405,
  );
  return Object.fromEntries(
    statuses.sort().map((status) => {
      const types = Object.entries(problemTypes).filter(([, type]) => type.status === status);
      const description = `${STATUS_CODES[status] ?? 'Refused'}: ${types.map(([name]) => `\`${name}\``).join(', ')}.`;
      const content = { [problemMediaType]: { schema: { $ref: schema } } };
      return [nameOf(status), { description, headers: headersNamed(...(headersOf[status] ?? [])), content }];
    }),
  );
}

/** What one operation may refuse with. */
export function refusalsOf(operation: {
  readonly isPublic: boolean;
  readonly needsVersion: boolean;
  readonly isWrite: boolean;
}): Record<string, OpenAPIV3_1.ReferenceObject> {
  const statuses = [
    ...always,
    ...(operation.isPublic ? [] : [401, 403]),
    ...(operation.isWrite ? withBody : [409]),
    ...(operation.needsVersion ? [412, 428] : []),
  ];
  return Object.fromEntries(
    statuses.sort().map((status) => [String(status), { $ref: `#/components/responses/${nameOf(status)}` }]),
  );
}
