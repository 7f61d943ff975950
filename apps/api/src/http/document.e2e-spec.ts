import { readdir } from 'node:fs/promises';
import { Controller, Get } from '@nestjs/common';
import { Validator } from '@seriousme/openapi-schema-validator';
import { openTrial, type Trial } from '../../../../test/support/http.js';
import { trialControllers } from '../../../../test/support/trial-things.js';
import { problemTypes } from './problems/problem-types.js';

type Json = Record<string, any>; // eslint-disable-line @typescript-eslint/no-explicit-any

/** Every object inside a value, with its place. */
function* objectsIn(value: unknown, at = ''): Generator<[string, Json]> {
  if (typeof value !== 'object' || value === null) return;
  if (!Array.isArray(value)) yield [at, value];
  for (const [name, inner] of Object.entries(value)) yield* objectsIn(inner, `${at}/${name}`);
}

describe('the document', () => {
  let trial: Trial;
  let document: Json;
  beforeAll(async () => {
    trial = await openTrial(trialControllers);
    document = (await trial.request({ method: 'GET', url: '/openapi.json' })).body as Json;
  });
  afterAll(() => trial.app.close());

  it('K2: is a valid OpenAPI 3.1.1 document', async () => {
    expect(document['openapi']).toBe('3.1.1');
    expect(await new Validator().validate(document as never)).toEqual({ valid: true });
  });

  it('names no class that a type-only import leaves behind', () => {
    const names = Object.keys(document['components'].schemas as Json);
    expect(names).toContain('TrialThing');
    expect(names.filter((name) => ['Function', 'Object', 'Array', 'String', ''].includes(name))).toEqual([]);
  });

  it('D2: closes every object that has members, and bounds every text, list and map', () => {
    const loose: string[] = [];
    for (const [at, schema] of objectsIn(document['components'].schemas)) {
      if (/\/(?:properties|examples)$/.test(at)) continue;
      const types = [schema['type']].flat();
      if (
        types.includes('object') &&
        schema['additionalProperties'] !== false &&
        schema['maxProperties'] === undefined
      )
        loose.push(at);
      if (types.includes('string') && schema['maxLength'] === undefined && schema['enum'] === undefined)
        loose.push(at);
      if (types.includes('array') && schema['maxItems'] === undefined) loose.push(at);
    }
    expect(loose).toEqual([]);
  });

  it('K1: each operation has an id, a summary, security, its errors and its limits', () => {
    const operations = Object.values(document['paths'] as Json).flatMap(
      (item) => Object.values(item as Json) as Json[],
    );
    expect(operations.length).toBeGreaterThan(8);
    for (const operation of operations) {
      expect(operation['operationId']).toMatch(/^[a-z][A-Za-z]+$/);
      expect(operation['summary']).not.toBe('');
      expect(operation['security']).toBeDefined();
      expect(Object.keys(operation['responses'] as Json)).toEqual(
        expect.arrayContaining(['400', '404', '429', '500', '503']),
      );
    }
  });

  it('says that If-Match is necessary exactly where the shell demands it', () => {
    const patch = document['paths']['/v1/trial-things/{thingId}'].patch as Json;
    expect((patch['parameters'] as Json[]).find(({ name }) => name === 'If-Match')).toMatchObject({
      in: 'header',
      required: true,
    });
    expect(Object.keys(patch['responses'] as Json)).toEqual(expect.arrayContaining(['412', '428']));
    expect(Object.keys(patch['requestBody'].content as Json)).toEqual(['application/merge-patch+json']);
    const post = document['paths']['/v1/trial-things'].post as Json;
    expect(Object.keys(post['responses'] as Json)).not.toContain('428');
  });

  it('D6: marks enums that may grow', () => {
    expect(document['components'].schemas.TrialKind).toMatchObject({
      enum: ['gauge', 'lamp'],
      'x-open-enum': true,
    });
  });

  it('gives examples that meet their own schemas', async () => {
    const { Ajv2020 } = await import('ajv/dist/2020.js');
    const { default: addFormats } = await import('ajv-formats');
    const ajv = new Ajv2020({ strict: false });
    (addFormats as unknown as (to: unknown) => void)(ajv);
    ajv.addSchema(document, 'document');
    let checked = 0;
    for (const [name, schema] of Object.entries(document['components'].schemas as Json)) {
      for (const [member, inner] of Object.entries(((schema as Json)['properties'] ?? {}) as Json)) {
        for (const example of ((inner as Json)['examples'] ?? []) as unknown[]) {
          const validate = ajv.getSchema(`document#/components/schemas/${name}/properties/${member}`)!;
          expect([name, member, example, validate(example)]).toEqual([name, member, example, true]);
          checked += 1;
        }
      }
    }
    expect(checked).toBeGreaterThan(4);
  });

  it('is the same text each time', async () => {
    const again = await openTrial(trialControllers);
    const text = (await again.request({ method: 'GET', url: '/openapi.json' })).text;
    await again.app.close();
    expect(text).toBe(JSON.stringify(document));
  });

  it('H11: the catalogue leads to the document, the reference, the guarantees and the problem types, which are all there', async () => {
    const catalogue = await trial.request({ method: 'GET', url: '/.well-known/api-catalog' });
    expect(catalogue.headers['content-type']).toMatch(/^application\/linkset\+json/);
    const links = [...objectsIn(catalogue.body)].flatMap(([, { href }]) =>
      typeof href === 'string' ? [href] : [],
    );
    expect(links).toEqual(
      expect.arrayContaining(['/openapi.json', '/docs', '/docs/guarantees', '/problems']),
    );
    for (const url of [
      ...links,
      '/docs/start.js',
      '/docs/assets/swagger-ui.css',
      '/docs/assets/swagger-ui-bundle.js',
      '/docs/assets/favicon-32x32.png',
    ]) {
      const page = await trial.request({ method: 'GET', url });
      expect([url, page.status]).toEqual([url, 200]);
      expect(page.text).not.toMatch(/(?:src|href)="https?:/);
    }
    expect((await trial.request({ method: 'GET', url: '/docs/assets/package.json' })).status).toBe(404);
  });

  it('E2: each problem type has its page, and each page its type', async () => {
    const files = await readdir(new URL('../../docs/problems/', import.meta.url));
    expect(files.sort()).toEqual(
      [...Object.keys(problemTypes).map((name) => `${name}.md`), 'index.md'].sort(),
    );
    for (const [name, { status }] of Object.entries(problemTypes)) {
      const page = await trial.request({ method: 'GET', url: `/problems/${name}` });
      expect([name, page.status, page.text.includes(`<p>Status ${status}.`)]).toEqual([name, 200, true]);
    }
    expect((await trial.request({ method: 'GET', url: '/problems/unheard-of' })).body).toMatchObject({
      status: 404,
    });
    const known = await trial.request({ method: 'GET', url: '/problems/not-found' });
    const again = await trial.request({
      method: 'GET',
      url: '/problems/not-found',
      headers: { 'if-none-match': String(known.headers['etag']) },
    });
    expect(again.status).toBe(304);
  });
});

describe('starting', () => {
  it('is refused while a route says neither who may call it nor what it answers', async () => {
    @Controller({ path: 'open-doors', version: '1' })
    class OpenDoors {
      @Get()
      listDoors(): string {
        return 'anything';
      }
    }
    await expect(openTrial([OpenDoors])).rejects.toThrow('OpenDoors.listDoors does not say who may call it');
  });
});

describe('linting the document', () => {
  it('K2: two linters with the rules of OWASP have nothing to say at the level of a warning', async () => {
    const { execFile } = await import('node:child_process');
    const { mkdtemp, rm, writeFile } = await import('node:fs/promises');
    const { tmpdir } = await import('node:os');
    const { fileURLToPath } = await import('node:url');
    const root = fileURLToPath(new URL('../../../../', import.meta.url));
    const trial = await openTrial(trialControllers);
    const { text } = await trial.request({ method: 'GET', url: '/openapi.json' });
    await trial.app.close();
    const folder = await mkdtemp(`${tmpdir()}/document-`);
    await writeFile(`${folder}/openapi.json`, text);
    const run = (file: string, ...args: string[]) =>
      new Promise<string>((resolve) => {
        const env = {
          ...process.env,
          NODE_OPTIONS: '',
          REDOCLY_TELEMETRY: 'off',
          REDOCLY_SUPPRESS_UPDATE_NOTICE: 'true',
        };
        execFile(
          process.execPath,
          [`${root}node_modules/.bin/${file}`, ...args],
          { cwd: root, env },
          (error, out, err) => resolve(`${error === null ? 'clean' : 'not clean'}\n${out}${err}`),
        );
      });
    const lints = await Promise.all([
      run(
        'spectral',
        'lint',
        '-r',
        '.config/spectral.yaml',
        '--fail-severity=warn',
        `${folder}/openapi.json`,
      ),
      run('redocly', 'lint', '--config', '.config/redocly.yaml', `${folder}/openapi.json`),
    ]);
    await rm(folder, { recursive: true });
    expect(lints[0]).toMatch(/^clean\n[^]*No results with a severity of 'warn' or higher found!/);
    expect(lints[1]).toMatch(/^clean\n/);
    expect(lints[1]).not.toMatch(/You have \d+ (?:warning|error)/);
  }, 60_000);
});
