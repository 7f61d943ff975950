import type { OpenAPIV3_1 } from 'openapi-types';
import { collectSchemas, Problem } from '@endfloat/contracts';
import { headerComponents } from './document-headers.js';
import { describeWebhooks } from './document-webhooks.js';
import { describeOperation } from './describe-operation.js';
import { problemResponses } from './document-problems.js';
import type { WalkedRoute } from './route-walk.js';

const methods = ['get', 'post', 'put', 'patch', 'delete'] as const;

/**
 * Completes what the framework knows of the routes: parameters, bodies, answers, refusals and header fields follow from
 * the same classes and rules that serve them. Only components that are used are written, sorted, so that the text of the
 * document changes with the interface and with nothing else.
 *
 * @throws Error for an operation that no walked route stands behind
 */
export function finishDocument(
  built: OpenAPIV3_1.Document,
  routes: readonly WalkedRoute[],
): OpenAPIV3_1.Document {
  const collector = collectSchemas();
  const problem = collector.names.ofClass(Problem).$ref!;
  const byId = new Map(routes.map((route) => [route.operationId, route]));
  const paths: OpenAPIV3_1.PathsObject = {};
  const tags = new Set<string>();
  for (const [path, item] of Object.entries(built.paths ?? {}).sort(([a], [b]) => (a < b ? -1 : 1))) {
    const finished: OpenAPIV3_1.PathItemObject = {};
    for (const method of methods) {
      const operation = item?.[method];
      if (operation === undefined) continue;
      const route = byId.get(operation.operationId ?? '');
      if (route === undefined) throw new Error(`${method} ${path} has no walked route`);
      if (route.rules.isProbe === true) continue;
      const described = describeOperation(operation, route, collector.names);
      described.tags?.forEach((tag) => tags.add(tag));
      finished[method] = described;
    }
    if (Object.keys(finished).length > 0) paths[path] = finished;
  }
  const webhooks = describeWebhooks(collector.names);
  tags.add('webhooks');
  const responses = used(problemResponses(problem), 'responses', [paths]);
  return {
    openapi: built.openapi,
    jsonSchemaDialect: 'https://spec.openapis.org/oas/3.1/dialect/base',
    info: { ...built.info, contact: { name: 'Endfloat maintainers' } },
    servers: [
      {
        url: '/',
        description: 'This server, in production or on a local machine.',
        'x-internal': false,
      } as OpenAPIV3_1.ServerObject,
    ],
    tags: [...tags]
      .sort()
      .map((name) => ({ name, description: `Operations on ${name.replaceAll('-', ' ')}.` })),
    paths,
    webhooks: webhooks ?? {},
    components: {
      securitySchemes: { key: keyScheme },
      headers: used(headerComponents, 'headers', [paths, responses]),
      responses,
      schemas: collector.schemas() as Record<string, OpenAPIV3_1.SchemaObject>,
    },
  };
}

const keyScheme: OpenAPIV3_1.SecuritySchemeObject = {
  type: 'http',
  scheme: 'bearer',
  description:
    'A key of the shop, `<prefix>.<secret>`, or an access token of an issuer that the operator has set (RFC 9068), sent as `Authorization: Bearer` (RFC 6750); never in an address.',
};

/** The components of one kind that something refers to. */
function used<T>(
  components: Readonly<Record<string, T>>,
  kind: string,
  places: readonly unknown[],
): Record<string, T> {
  const text = JSON.stringify(places);
  return Object.fromEntries(
    Object.entries(components).filter(([name]) => text.includes(`"#/components/${kind}/${name}"`)),
  );
}
