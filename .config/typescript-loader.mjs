// Module hooks of typescript-register.mjs: './x.js' in a TypeScript file means './x.ts', and a .ts file is compiled
// with the options that jest uses, so that scripts and tests run the same code.
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { transform } from '@swc/core';
import jestConfig from './jest.config.mjs';

const [, { sourceMaps, ...options }] = jestConfig.projects[0].transform['^.+\\.ts$'];
// Node wants `with { type: 'json' }` on an import of JSON; jest does not, so its options let the attribute go.
const compile = {
  ...options,
  sourceMaps,
  jsc: { ...options.jsc, experimental: { keepImportAttributes: true } },
};

export async function resolve(specifier, context, nextResolve) {
  if (/^\.{1,2}\/.*\.js$/.test(specifier) && context.parentURL?.endsWith('.ts')) {
    const source = new URL(`${specifier.slice(0, -3)}.ts`, context.parentURL);
    if (existsSync(source)) return nextResolve(source.href, context);
  }
  return nextResolve(specifier, context);
}

export async function load(url, context, nextLoad) {
  if (!url.startsWith('file:') || !url.endsWith('.ts')) return nextLoad(url, context);
  const filename = fileURLToPath(url);
  const { code } = await transform(await readFile(filename, 'utf8'), {
    ...compile,
    filename,
    configFile: false,
  });
  return { format: 'module', source: code, shortCircuit: true };
}
