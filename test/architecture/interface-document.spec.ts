import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { fullFormats } from 'ajv-formats/dist/formats.js';
import type { OpenAPIV3_1 } from 'openapi-types';

const document = JSON.parse(
  readFileSync(new URL('../../libs/contracts/openapi/openapi.json', import.meta.url), 'utf8'),
) as OpenAPIV3_1.Document;

interface Named {
  readonly name: string;
  readonly operation: OpenAPIV3_1.OperationObject;
}

const operations = Object.entries(document.paths ?? {}).flatMap(([path, item]) =>
  (['get', 'post', 'patch', 'put', 'delete'] as const).flatMap((method): Named[] => {
    const operation = item?.[method];
    return operation === undefined ? [] : [{ name: `${method} ${path}`, operation }];
  }),
);

/** Names of the operations of which something does not hold. */
const without = (holds: (operation: OpenAPIV3_1.OperationObject) => boolean): readonly string[] =>
  operations.filter(({ operation }) => !holds(operation)).map(({ name }) => name);

/** A schema within the document, by the way to it, with the examples it gives. */
interface Exemplified {
  readonly pointer: string;
  readonly examples: readonly unknown[];
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const escaped = (name: string): string =>
  encodeURIComponent(name.replaceAll('~', '~0').replaceAll('/', '~1'));
/** Below these stand names that people chose, not keywords. */
const nameHolders = new Set(['properties', 'schemas', 'patternProperties']);
const values = new Set(['example', 'examples', 'default', 'enum', 'const']);

function examplesIn(value: unknown, pointer = '', key = ''): readonly Exemplified[] {
  if (Array.isArray(value))
    return value.flatMap((each: unknown, index) => examplesIn(each, `${pointer}/${String(index)}`));
  if (!isObject(value)) return [];
  const isNames = nameHolders.has(key);
  const below = Object.entries(value)
    .filter(([name]) => isNames || !values.has(name))
    .flatMap(([name, each]) => examplesIn(each, `${pointer}/${escaped(name)}`, name));
  if (isNames) return below;
  const isOfSchema = isObject(value['schema']);
  const { example, examples } = value;
  const many = Array.isArray(examples)
    ? (examples as unknown[])
    : isOfSchema && isObject(examples)
      ? Object.values(examples).map((each) => (isObject(each) ? each['value'] : each))
      : [];
  const own = [...('example' in value ? [example] : []), ...many];
  return own.length === 0
    ? below
    : [{ pointer: isOfSchema ? `${pointer}/schema` : pointer, examples: own }, ...below];
}

describe('the interface document', () => {
  it('gives every operation an id of its own, a summary, a description, and says who may call it', () => {
    expect(operations.length).toBeGreaterThan(200);
    expect(new Set(operations.map(({ operation }) => operation.operationId)).size).toBe(operations.length);
    for (const member of ['operationId', 'summary', 'description'] as const)
      expect([member, without((operation) => (operation[member] ?? '').length > 0)]).toEqual([member, []]);
    expect(without(({ security = document.security }) => security !== undefined)).toEqual([]);
  });

  it('documents what every operation may refuse with', () => {
    const answers = (operation: OpenAPIV3_1.OperationObject, status: string): boolean =>
      operation.responses?.[status] !== undefined;
    for (const status of ['429', '503'])
      expect([status, without((operation) => answers(operation, status))]).toEqual([status, []]);
    for (const status of ['401', '403'])
      expect([
        status,
        without((operation) => operation.security?.length === 0 || answers(operation, status)),
      ]).toEqual([status, []]);
    expect(without((operation) => operation.requestBody === undefined || answers(operation, '400'))).toEqual(
      [],
    );
  });

  it('gives only examples that its own schemas take', () => {
    const ajv = new Ajv2020({ strict: false, allErrors: true, formats: fullFormats });
    ajv.addSchema(document, 'document');
    const found = examplesIn(document);
    expect(found.length).toBeGreaterThan(100);
    const wrong = found.flatMap(({ pointer, examples }) => {
      const holds = ajv.compile({ $ref: `document#${pointer}` });
      return examples.filter((example) => !holds(example)).map((example) => [pointer, example]);
    });
    expect(wrong).toEqual([]);
  });

  it('would tell a wrong example', () => {
    const ajv = new Ajv2020({ strict: false, formats: fullFormats });
    const planted = { components: { schemas: { Size: { type: 'integer', minimum: 1, example: 0 } } } };
    ajv.addSchema(planted, 'document');
    const [only] = examplesIn(planted);
    expect(only).toEqual({ pointer: '/components/schemas/Size', examples: [0] });
    expect(ajv.validate({ $ref: 'document#/components/schemas/Size' }, 0)).toBe(false);
  });
});
