import type { OpenAPIV3_1 } from 'openapi-types';
import {
  memberSchema,
  membersOf,
  type FieldClass,
  type JsonSchema,
  type SchemaNames,
} from '@endfloat/contracts';
import { keyPattern, takesKey } from '../idempotency/idempotency-key.js';
import { consumedBy, csvMediaType, json } from '../requests/media-types.js';
import { headersNamed } from './document-headers.js';
import { refusalsOf } from './document-problems.js';
import type { RouteArgument, WalkedRoute } from './route-walk.js';

/** Characters of a page of 200 items as text, with room. */
const longestCsv = 16_777_216;

type Operation = NonNullable<OpenAPIV3_1.PathItemObject['get']>;
type Responses = Record<string, OpenAPIV3_1.ResponseObject | OpenAPIV3_1.ReferenceObject>;

/** One operation with its parameters, its body, its answers and its refusals. */
export function describeOperation(built: Operation, route: WalkedRoute, names: SchemaNames): Operation {
  const { rules, method } = route;
  const isPublic = rules.access === 'public';
  const isWrite = method !== 'GET';
  const body = bodyOf(route, names);
  const refusals = refusalsOf({
    isPublic,
    isWrite,
    needsVersion: rules.needsVersion === true,
  });
  const described = {
    operationId: route.operationId,
    tags: [tagOf(route.path)],
    summary: built.summary ?? route.operationId,
    description: describe(built, route),
    ...(rules.retirement === undefined ? {} : { deprecated: true }),
    security: isPublic ? [] : [{ key: [] }],
    parameters: parametersOf(route, names),
    ...(body === undefined ? {} : { requestBody: body }),
    responses: { ...answersOf(route, names), ...refusals },
  };
  return described as Operation;
}

function describe(built: Operation, { rules }: WalkedRoute): string {
  const text = built.description ?? built.summary ?? '';
  if (rules.access === undefined || rules.access === 'public') return text;
  return `${text.replace(/[.]?$/, '.')} Roles: ${rules.access.join(', ')}.`;
}

/** The first word of the path after the version. */
function tagOf(path: string): string {
  const parts = path.split('/').filter((part) => part !== '' && !/^v[0-9]+$/.test(part));
  return parts[0] ?? 'service';
}

function typeOf(route: WalkedRoute, source: RouteArgument['source']): FieldClass | undefined {
  return route.arguments.find((argument) => argument.source === source)?.type;
}

function parametersOf(route: WalkedRoute, names: SchemaNames): object[] {
  const fromClass = (source: 'path' | 'query') => {
    const type = typeOf(route, source);
    const members = type === undefined ? [] : [...membersOf(type).values()];
    return members.map((member) => {
      const { description, ...schema } = memberSchema(member, names);
      return {
        name: member.name,
        in: source,
        required: source === 'path' || member.options.optional !== true,
        description,
        schema,
      };
    });
  };
  return [...fromClass('path'), ...fromClass('query'), ...headerParameters(route)];
}

function headerParameters(route: WalkedRoute): object[] {
  const { rules, method, answer } = route;
  const tags = {
    type: 'string',
    maxLength: 1024,
    pattern: '^(?:\\*|(?:W/)?"[^"]*"(?:\\s*,\\s*(?:W/)?"[^"]*")*)$',
  };
  const header = (name: string, required: boolean, description: string, schema: object) => ({
    name,
    in: 'header',
    required,
    description,
    schema,
  });
  if (method === 'GET') {
    return answer?.type === undefined
      ? []
      : [header('If-None-Match', false, 'Tags the caller has; 304 where one still holds.', tags)];
  }
  return [
    ...(rules.needsVersion === true
      ? [header('If-Match', true, 'Tag of the version the change was made from.', tags)]
      : []),
    ...(takesKey(method, rules) ? [keyParameter(header, rules.needsIdempotencyKey === true)] : []),
    header('Prefer', false, '`return=minimal` asks for no body (RFC 7240).', {
      type: 'string',
      maxLength: 256,
      pattern: '^.+$',
    }),
  ];
}

function keyParameter(
  header: (name: string, required: boolean, description: string, schema: object) => object,
  isNeeded: boolean,
): object {
  const text =
    'Key of this request: sent again with the same key it has one effect and gets the first answer, for at least 24 hours.';
  const when = isNeeded ? ' Needed where the body brings no id.' : '';
  return header('Idempotency-Key', false, `${text}${when}`, {
    type: 'string',
    maxLength: 255,
    pattern: keyPattern,
  });
}

function bodyOf(route: WalkedRoute, names: SchemaNames): OpenAPIV3_1.RequestBodyObject | undefined {
  const { method, rules } = route;
  const type = typeOf(route, 'body');
  if (type === undefined && rules.consumes === undefined) return undefined;
  const media = type === undefined ? {} : { schema: names.ofClass(type) as OpenAPIV3_1.ReferenceObject };
  return {
    required: true,
    content: Object.fromEntries(consumedBy(method, rules.consumes).map((each) => [each, media])),
  };
}

function answersOf({ answer, method, rules }: WalkedRoute, names: SchemaNames): Responses {
  if (answer === undefined) return {};
  const { type, status, summary } = answer;
  const content = contentOf(type, rules.produces, names, status);
  const description = summary;
  if (method === 'GET') {
    const headers = headersNamed('ETag', 'Link');
    const cached: Responses =
      type === undefined
        ? {}
        : { '304': { description: 'The caller has this representation.', headers: headersNamed('ETag') } };
    return { [status]: { description, headers, ...content }, ...cached };
  }
  const headers = headersNamed(
    'ETag',
    'Preference-Applied',
    ...(takesKey(method, rules) ? ['Idempotency-Replayed' as const] : []),
    ...(status === 201 || status === 202 ? ['Location'] : []),
  );
  const minimal: Responses = {
    '204': { description: 'Done; `Prefer: return=minimal` asked for no body.', headers },
  };
  return {
    [status]: { description, headers, ...content },
    ...(status === 201
      ? { '200': { description: 'The same record was there already.', headers, ...content } }
      : {}),
    ...(status === 202 || status === 204 ? {} : minimal),
  };
}

function contentOf(
  type: FieldClass | undefined,
  produces: readonly string[] | undefined,
  names: SchemaNames,
  status: number,
): Pick<OpenAPIV3_1.ResponseObject, 'content'> {
  if (status === 204) return {};
  const schema: JsonSchema | undefined = type === undefined ? undefined : names.ofClass(type);
  const media = schema === undefined ? {} : { schema: schema as OpenAPIV3_1.ReferenceObject };
  const text = {
    schema: {
      type: 'string',
      description: 'Lines of text as in RFC 4180, the first with names.',
      maxLength: longestCsv,
      pattern: '^[^\\u0000]*$',
    },
  };
  const mediaOf = (each: string) => (each === csvMediaType && schema !== undefined ? text : media);
  return {
    content: Object.fromEntries(
      (produces ?? [json]).map((each) => [each, mediaOf(each) as OpenAPIV3_1.MediaTypeObject]),
    ),
  };
}
