import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import type { ExpectedRevision } from '@endfloat/workshop';
import { HttpProblem } from '../problems/http-problem.js';
import { addRules } from './route-rules.js';

/** The versions an If-Match header admits, as use cases take it. */
export type ExpectedVersion = ExpectedRevision;

/** One entity tag; ours are `"<version>"` or `"<version>.<representation>"`. */
const entityTag = /\s*(?:(W\/)?"([\u0021\u0023-\u007E]*)")\s*(?:,|$)/uy;

/**
 * Reads If-Match (RFC 9110 section 13.1.1): `*` or a list of tags. A weak tag never matches.
 *
 * @throws HttpProblem `precondition-required` where it is missing, `invalid-parameter` where it cannot be read
 */
export function readExpectedVersion(header: string | undefined): ExpectedVersion {
  if (header === undefined)
    throw new HttpProblem('precondition-required', {
      detail: 'Send If-Match with the ETag of the version the change was made from.',
    });
  if (header.trim() === '*') return { kind: 'any' };
  const versions = new Set<number>();
  for (const { isWeak, text } of readEntityTags(header)) {
    const [, version] = /^([1-9][0-9]{0,9})(?:\.[A-Za-z0-9_-]+)?$/.exec(text) ?? [];
    if (!isWeak && version !== undefined) versions.add(Number(version));
  }
  return { kind: 'oneOf', versions };
}

/** The tags of a list; an unreadable list is refused (400). */
export function readEntityTags(
  header: string,
): readonly { readonly isWeak: boolean; readonly text: string }[] {
  const tags: { isWeak: boolean; text: string }[] = [];
  entityTag.lastIndex = 0;
  while (entityTag.lastIndex < header.length) {
    const found = entityTag.exec(header);
    if (found === null)
      throw new HttpProblem('invalid-parameter', { detail: 'The list of entity tags cannot be read.' });
    tags.push({ isWeak: found[1] !== undefined, text: found[2] ?? '' });
  }
  return tags;
}

const readParameter = createParamDecorator((_data: undefined, context: ExecutionContext) =>
  readExpectedVersion(context.switchToHttp().getRequest<FastifyRequest>().headers['if-match']),
);

/** Parameter: what If-Match says. The route then refuses requests without it (428). */
export const IfMatch = (): ParameterDecorator => (target, key, index) => {
  readParameter()(target, key, index);
  if (key !== undefined) addRules((target as Record<string | symbol, object>)[key]!, { needsVersion: true });
};
