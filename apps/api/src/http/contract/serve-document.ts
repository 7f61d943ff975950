import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { isKnownToCaller } from '../answers/entity-tag.js';
import { HttpProblem } from '../problems/http-problem.js';
import { problemTypes, type ProblemName } from '../problems/problem-types.js';
import type { RouteRules } from '../requests/route-rules.js';
import { apiCatalog, catalogueMediaType } from './api-catalogue.js';
import { readPage } from './pages.js';
import { referencePage, referenceStart } from './reference-page.js';

const html = 'text/html; charset=utf-8';
/** Files of the viewer that the reference page loads, from the package that holds them; nothing comes from elsewhere. */
const viewerFiles: Readonly<Record<string, string>> = {
  'swagger-ui.css': 'text/css; charset=utf-8',
  'swagger-ui-bundle.js': 'text/javascript; charset=utf-8',
  'favicon-32x32.png': 'image/png',
};

interface Page {
  readonly type: string;
  readonly text: () => string | Buffer | Promise<string | Buffer>;
}

/** The document, its reference page, the catalogue that links to them, and the pages of problem types. For everybody. */
export function serveDocument(fastify: FastifyInstance, build: () => object): void {
  let document: string | undefined;
  const pages: Record<string, Page> = {
    '/openapi.json': { type: 'application/json', text: () => (document ??= JSON.stringify(build())) },
    '/.well-known/api-catalog': { type: catalogueMediaType, text: () => JSON.stringify(apiCatalog) },
    '/docs': { type: html, text: () => referencePage },
    '/docs/start.js': { type: 'text/javascript; charset=utf-8', text: () => referenceStart },
    '/docs/guarantees': { type: html, text: () => readPage('guarantees') },
    '/problems': { type: html, text: () => readPage('problems/index') },
  };
  for (const [name, type] of Object.entries(viewerFiles)) {
    pages[`/docs/assets/${name}`] = { type, text: () => viewerFile(name) };
  }
  for (const [url, page] of Object.entries(pages)) {
    fastify.get(url, { config: { rules: rulesFor(page.type) } }, (request, reply) =>
      send(request, reply, page),
    );
  }
  fastify.get<{ Params: { name: string } }>(
    '/problems/:name',
    { config: { rules: rulesFor(html) } },
    (request, reply) => {
      const { name } = request.params;
      if (!Object.hasOwn(problemTypes, name)) throw new HttpProblem('not-found');
      return send(request, reply, { type: html, text: () => readPage(`problems/${name as ProblemName}`) });
    },
  );
}

const rulesFor = (type: string): RouteRules => ({
  access: 'public',
  produces: [type.split(';', 1)[0] ?? type],
});

async function send(
  request: FastifyRequest,
  reply: FastifyReply,
  { type, text }: Page,
): Promise<FastifyReply> {
  const body = await text();
  const tag = `"${createHash('sha256').update(body).digest('base64url').slice(0, 16)}"`;
  reply.headers({ etag: tag, 'cache-control': 'public, max-age=300' });
  if (type === html) {
    reply.header(
      'content-security-policy',
      "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; frame-ancestors 'none'",
    );
  }
  if (isKnownToCaller(request, tag)) return reply.code(304).send();
  return reply.type(type).send(body);
}

function viewerFile(name: string): Promise<Buffer> {
  return readFile(new URL(name, import.meta.resolve('swagger-ui-dist/package.json')));
}
