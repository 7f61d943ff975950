import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import type { OpenAPIV3_1 } from 'openapi-types';

/** Validates answers against the document that the interface itself serves. */
export interface DocumentChecker {
  /** the schema of an answer; undefined where the document says there is no body; throws where it is not documented */
  validator(method: string, path: string, status: number, type: string): ValidateFunction | undefined;
}

export interface AnswerToCheck {
  readonly method: string;
  readonly url: string;
  readonly status: number;
  readonly type: string;
  readonly body: unknown;
}

export async function documentOf(app: NestFastifyApplication): Promise<DocumentChecker> {
  const answer = await app.inject({ method: 'GET', url: '/openapi.json' });
  if (answer.statusCode !== 200) throw new Error(`the document cannot be built: ${answer.payload}`);
  const document = JSON.parse(answer.payload) as OpenAPIV3_1.Document;
  const ajv = new Ajv2020({ strict: false, allErrors: true });
  (addFormats as unknown as (to: Ajv2020) => void)(ajv);
  ajv.addFormat('int32', true).addFormat('int64', true);
  ajv.addSchema(document, 'document');
  const paths = Object.keys(document.paths ?? {}).map((template) => ({
    template,
    matcher: new RegExp(`^${template.replace(/\{[^}]+\}/g, '[^/]+')}$`),
  }));
  return {
    validator(method, path, status, type) {
      const found = paths.find(({ matcher }) => matcher.test(path));
      if (found === undefined) return undefined;
      const operation = document.paths?.[found.template]?.[method.toLowerCase() as 'get'];
      if (operation === undefined) return undefined;
      const place = `/paths/${escape(found.template)}/${method.toLowerCase()}/responses`;
      const response = operation.responses?.[String(status)];
      if (response === undefined)
        throw new Error(`${method} ${found.template}: status ${String(status)} is not in the document`);
      const target = '$ref' in response ? response.$ref.slice(1) : `${place}/${String(status)}`;
      const media = type.split(';')[0] ?? '';
      const content = '$ref' in response ? resolve(document, response.$ref).content : response.content;
      if (content === undefined) return undefined;
      if (!(media in content))
        throw new Error(
          `${method} ${found.template}: ${String(status)} with ${media} is not in the document`,
        );
      return ajv.getSchema(`document#${target}/content/${escape(media)}/schema`);
    },
  };
}

/** Fails the test whose request was answered off the document. */
export function checkAnswer(
  checker: DocumentChecker,
  { method, url, status, type, body }: AnswerToCheck,
): void {
  if (method === 'HEAD' || method === 'OPTIONS' || status === 204 || status === 304) return;
  const validate = checker.validator(method, url.split('?')[0] ?? '', status, type);
  if (validate === undefined || validate(body)) return;
  const faults = (validate.errors ?? [])
    .slice(0, 5)
    .map((fault) => `${fault.instancePath} ${fault.message ?? ''}`);
  throw new Error(
    `${method} ${url} answered ${String(status)} off the document:\n${faults.join('\n')}\n${JSON.stringify(body).slice(0, 500)}`,
  );
}

function escape(text: string): string {
  return encodeURIComponent(text.replaceAll('~', '~0').replaceAll('/', '~1'));
}

function resolve(document: OpenAPIV3_1.Document, ref: string): OpenAPIV3_1.ResponseObject {
  const name = ref.split('/').at(-1) ?? '';
  return document.components?.responses?.[name] as OpenAPIV3_1.ResponseObject;
}
