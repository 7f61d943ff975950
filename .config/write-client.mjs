// Writes the typed client's files from the interface document, or says whether they are what it gives:
//   node .config/write-client.mjs [--check]
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const head =
  '// Written from the interface document; change the routes, then: node .config/write-client.mjs\n';
const nameOf = (ref) => ref.split('/').at(-1);
const word = (name) => (/^[A-Za-z_$][\w$]*$/.test(name) ? name : `'${name}'`);
const literal = (value) =>
  typeof value === 'string'
    ? `'${value.replaceAll('\\', '\\\\').replaceAll("'", "\\'").replaceAll('\n', '\\n')}'`
    : JSON.stringify(value);
const comment = (text, indent) =>
  text === undefined || text === ''
    ? ''
    : `${indent}/** ${text.replaceAll('*/', '*\\/').replaceAll('\n', ' ')} */\n`;

/** The TypeScript type of a schema; `prefix` stands before the names of schemas. */
export function typeOf(schema, prefix = '', indent = '') {
  if (schema === undefined || schema === true) return 'unknown';
  if (schema.$ref !== undefined) return prefix + nameOf(schema.$ref);
  if ('const' in schema) return literal(schema.const);
  if (schema.enum !== undefined) return enumOf(schema);
  const choices = schema.oneOf ?? schema.anyOf;
  if (choices !== undefined) return choices.map((each) => typeOf(each, prefix, indent)).join(' | ');
  if (schema.allOf !== undefined)
    return schema.allOf.map((each) => bracketed(typeOf(each, prefix, indent))).join(' & ');
  const types = Array.isArray(schema.type) ? schema.type : [schema.type];
  return types.map((type) => plainType(type, schema, prefix, indent)).join(' | ');
}

const bracketed = (type) => (type.includes('|') ? `(${type})` : type);

function enumOf(schema) {
  const values = schema.enum.map(literal).join(' | ');
  return schema['x-open-enum'] === true ? `${values} | (string & {})` : values;
}

function plainType(type, schema, prefix, indent) {
  switch (type) {
    case 'integer':
    case 'number':
      return 'number';
    case 'string':
    case 'boolean':
    case 'null':
      return type;
    case 'array':
      return `readonly ${bracketed(typeOf(schema.items, prefix, indent)).replace(/^(?=readonly )(.*)$/s, '($1)')}[]`;
    case 'object':
      return objectOf(schema, prefix, indent);
    case undefined:
      return schema.properties === undefined ? 'unknown' : objectOf(schema, prefix, indent);
    default:
      throw new Error(`a schema of type ${String(type)} is not known to the writer of the client`);
  }
}

function objectOf(schema, prefix, indent) {
  const inner = `${indent}  `;
  const required = new Set(schema.required ?? []);
  const members = Object.entries(schema.properties ?? {}).map(
    ([name, member]) =>
      `${comment(member.description, inner)}${inner}readonly ${word(name)}${required.has(name) ? '' : '?'}: ${typeOf(member, prefix, inner)};\n`,
  );
  if (members.length > 0) return `{\n${members.join('')}${indent}}`;
  const others = schema.additionalProperties;
  if (others === false) return '{ readonly [name: string]: never }';
  return `{ readonly [name: string]: ${typeOf(others === undefined ? true : Object.keys(others).length === 0 ? true : others, prefix, indent)} }`;
}

const schemaFile = (document) =>
  head +
  Object.entries(document.components.schemas)
    .map(([name, schema]) => `\n${comment(schema.description, '')}export type ${name} = ${typeOf(schema)};\n`)
    .join('');

/** What the client must know of an operation, each as the document has it. */
export function operationsOf(document) {
  return Object.entries(document.paths).flatMap(([path, item]) =>
    Object.entries(item).map(([method, operation]) => {
      const parameters = operation.parameters ?? [];
      const at = (place) => parameters.filter((each) => each.in === place);
      const header = (name) => at('header').find((each) => each.name === name);
      const [[media, body] = []] = Object.entries(operation.requestBody?.content ?? {});
      const good = Object.entries(operation.responses).filter(([status]) => status.startsWith('2'));
      const contents = good.map(([, answer]) => answer.content).filter((content) => content !== undefined);
      const answers = contents.flatMap((content) =>
        content['application/json'] ? [content['application/json'].schema] : [],
      );
      return {
        id: operation.operationId,
        summary: operation.summary,
        method: method.toUpperCase(),
        path,
        pathParameters: at('path'),
        query: at('query'),
        isConditional: header('If-Match') !== undefined,
        isKeyed: header('Idempotency-Key') !== undefined,
        media: media ?? null,
        body: body?.schema,
        bodyNeeded: operation.requestBody?.required === true,
        answers: [...new Map(answers.map((each) => [JSON.stringify(each), each])).values()],
        isCsv: contents.some((content) => 'text/csv' in content),
        canBeEmpty: good.some(([status]) => status === '204'),
      };
    }),
  );
}

const parametersOf = (parameters) =>
  parameters.length === 0
    ? 'undefined'
    : `{\n${parameters
        .map(
          ({ name, required, description, schema }) =>
            `${comment(description, '      ')}      readonly ${word(name)}${required ? '' : '?'}: ${typeOf(schema, 'Schemas.', '      ')};\n`,
        )
        .join('')}    }`;

function operationsFile(document) {
  const entries = operationsOf(document).map(
    (each) => `${comment(`${each.summary} (${each.method} ${each.path}).`, '  ')}  readonly ${each.id}: {
    readonly path: ${parametersOf(each.pathParameters)};
    readonly query: ${parametersOf(each.query)};
    readonly body: ${each.body === undefined ? 'undefined' : typeOf(each.body, 'Schemas.', '    ') + (each.bodyNeeded ? '' : ' | undefined')};
    readonly isConditional: ${each.isConditional};
    readonly isCsv: ${each.isCsv};
    readonly answer: ${each.answers.length === 0 ? 'undefined' : each.answers.map((answer) => typeOf(answer, 'Schemas.', '    ')).join(' | ')};
  };
`,
  );
  const events = Object.values(document.webhooks ?? {}).map(({ post }) => {
    const [{ schema }] = Object.values(post.requestBody.content);
    const type = schema.allOf?.map((part) => part.properties?.type?.const).find((each) => each !== undefined);
    return `${comment(post.summary, '  ')}  readonly '${type}': ${typeOf(schema, 'Schemas.', '  ')};\n`;
  });
  return `${head}import type * as Schemas from './schemas.js';

/** Every operation of the interface: what it takes and what it answers. */
export interface Operations {
${entries.join('')}}

/** Every event that an endpoint is sent, by its type. */
export interface Events {
${events.join('')}}
`;
}

function tableFile(document) {
  const rows = operationsOf(document).map(
    ({ id, method, path, isKeyed, media }) =>
      `  ${id}: { method: '${method}', path: '${path}', isKeyed: ${isKeyed}, media: ${media === null ? 'null' : `'${media}'`} },\n`,
  );
  return `${head}
/** How each operation is sent. */
export const operationTable = {
${rows.join('')}} as const;
`;
}

/** The files of the client that come from the document, by name. */
export function clientFiles(document) {
  return {
    'schemas.ts': schemaFile(document),
    'operations.ts': operationsFile(document),
    'operation-table.ts': tableFile(document),
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const at = (path) => fileURLToPath(new URL(`../libs/${path}`, import.meta.url));
  const files = clientFiles(JSON.parse(readFileSync(at('contracts/openapi/openapi.json'), 'utf8')));
  const folder = at('client/src/document');
  const differing = Object.entries(files).filter(
    ([name, text]) => !existsSync(`${folder}/${name}`) || readFileSync(`${folder}/${name}`, 'utf8') !== text,
  );
  if (!process.argv.includes('--check')) {
    mkdirSync(folder, { recursive: true });
    for (const [name, text] of differing) writeFileSync(`${folder}/${name}`, text);
  } else if (differing.length > 0) {
    process.stdout.write(
      `Not what the interface document gives: ${differing.map(([name]) => name).join(', ')}. Write them with: node .config/write-client.mjs\n`,
    );
    process.exitCode = 1;
  }
}
