import { documentedFunctions } from './doc-comments.js';
import { isSource, projectFiles, valuesOf } from './project-files.js';

/** Examples that cannot be run, or whose function does not yet do what they say, each with the reason. */
const listed: ReadonlyMap<string, string> = new Map();

interface Example {
  readonly key: string;
  readonly file: string;
  readonly code: string;
}

const examples: readonly Example[] = projectFiles('libs', isSource)
  .flatMap(documentedFunctions)
  .flatMap(({ file, name, tags }) =>
    (tags.get('example') ?? []).map((code) => ({ key: `${file}#${name}`, file, code })),
  );

/** What an expression gives, with the exports of its file and of its room in reach. */
function evaluate(expression: string, scope: Readonly<Record<string, unknown>>): unknown {
  const names = Object.keys(scope).filter((name) => /^[A-Za-z_$][\w$]*$/.test(name) && name !== 'default');
  // eslint-disable-next-line @typescript-eslint/no-implied-eval -- examples are code of this repository
  const run = new Function(...names, `'use strict'; return (${expression});`) as (
    ...values: unknown[]
  ) => unknown;
  return run(...names.map((name) => scope[name]));
}

/** Where the answer differs from what is written; members that the example leaves out are not compared. */
function differences(written: unknown, given: unknown, path = 'answer'): string[] {
  if (typeof written === 'number' && typeof given === 'number')
    return close(written, given) ? [] : [`${path} is ${String(given)}, not ${String(written)}`];
  if (typeof written !== 'object' || written === null || typeof given !== 'object' || given === null)
    return Object.is(written, given)
      ? []
      : [`${path} is ${JSON.stringify(given)}, not ${JSON.stringify(written)}`];
  if (Array.isArray(written) && (!Array.isArray(given) || given.length !== written.length))
    return [`${path} is ${JSON.stringify(given)}, not ${JSON.stringify(written)}`];
  return Object.entries(written).flatMap(([member, value]) =>
    differences(value, (given as Record<string, unknown>)[member], `${path}.${member}`),
  );
}

/** Figures are written with as many digits as a reader needs: ten agree, or all that stand there. */
const close = (written: number, given: number): boolean =>
  Object.is(written, given) ||
  written === given ||
  Math.abs(written - given) <= 1e-10 * Math.max(1, Math.abs(written));

describe('examples in doc comments', () => {
  it('are found', () => {
    expect(examples.length).toBeGreaterThan(150);
  });

  it.each(examples.filter(({ key }) => !listed.has(key)))('$key: $code', async (example) => {
    expect(await differencesOf(example)).toEqual([]);
  });

  it('differ from what is done only where that is listed', async () => {
    const open = examples.filter(({ key }) => listed.has(key));
    const differing = await Promise.all(
      open.map(async (example) => ((await differencesOf(example)).length > 0 ? [example.key] : [])),
    );
    expect(differing.flat()).toEqual([...listed.keys()]);
  });
});

async function differencesOf({ file, code }: Example): Promise<string[]> {
  const [expression, written, ...rest] = code.split('// =>').map((piece) => piece.trim());
  if (expression === undefined || written === undefined || written === '' || rest.length > 0)
    return ['an example is written: expression // => answer'];
  const room = `${file.split('/').slice(0, 2).join('/')}/src/index.ts`;
  const scope = { ...(await valuesOf(room)), ...(await valuesOf(file)) };
  return differences(evaluate(written, scope), evaluate(expression, scope));
}
