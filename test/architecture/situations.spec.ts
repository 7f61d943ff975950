import { existsSync } from 'node:fs';
import { join, normalize } from 'node:path';
import { isTest, readProjectFile, root } from './project-files.js';

const folder = 'apps/api/docs';
/** `[title](file)`; a title may hold no bracket. */
const link = /\[([^\]]+)\]\(([^)#]+)\)/g;

interface Named {
  readonly title: string;
  readonly file: string;
}

const testsNamedIn = (text: string): Named[] =>
  [...text.matchAll(link)]
    .map(([, title = '', target = '']) => ({ title, file: normalize(join(folder, target)) }))
    .filter(({ file }) => isTest(file));

/** Tests that are named and not to be found under that title. */
const missing = (named: readonly Named[]): Named[] =>
  named.filter(({ title, file }) => !existsSync(join(root, file)) || !readProjectFile(file).includes(title));

const rows = readProjectFile(`${folder}/situations.md`)
  .split('\n')
  .filter((line) => /^\| *\d/.test(line))
  .map((line) => line.split('|').map((cell) => cell.trim()))
  .map(([, number = '', situation = '', shown = '', open = '']) => ({
    number: Number(number),
    situation,
    tests: testsNamedIn(shown),
    open,
  }));

describe('the page of situations', () => {
  it('has each of the sixty-six once, in order', () => {
    expect(rows.map(({ number }) => number)).toEqual(Array.from({ length: 66 }, (_, index) => index + 1));
    expect(new Set(rows.map(({ situation }) => situation)).size).toBe(66);
  });

  it('names tests that are there', () => {
    expect(missing(rows.flatMap(({ tests }) => tests))).toEqual([]);
  });

  it('names a test of each situation, or says that all of it is open', () => {
    const silent = rows.filter(({ tests, open }) => (tests.length === 0) !== (open === 'all of it'));
    expect(silent).toEqual([]);
  });

  it('names no test of another situation', () => {
    const foreign = rows.flatMap(({ number, tests }) =>
      tests.filter(({ title }) => {
        const said = /^(?:API )?row (\d+)/.exec(title)?.[1];
        return said !== undefined && Number(said) !== number;
      }),
    );
    expect(foreign).toEqual([]);
  });

  it('would notice a title that is gone, and a file that is gone', () => {
    const [first] = rows.flatMap(({ tests }) => tests);
    const named = [
      { title: 'a title nobody wrote', file: first!.file },
      { title: first!.title, file: 'test/e2e/gone.e2e-spec.ts' },
    ];
    expect(missing(named)).toEqual(named);
  });
});

describe('the page of guarantees', () => {
  const promises = readProjectFile(`${folder}/guarantees.md`)
    .split(/\n(?=- \*\*)/)
    .slice(1)
    .filter((text) => !text.startsWith('- **Not promised'));

  it('names for every promise a test that is there', () => {
    expect(promises.length).toBeGreaterThanOrEqual(10);
    expect(promises.filter((text) => testsNamedIn(text).length === 0)).toEqual([]);
    expect(missing(promises.flatMap(testsNamedIn))).toEqual([]);
  });
});
