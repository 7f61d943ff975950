import { dirname, join, normalize } from 'node:path';
import { homedir } from 'node:os';
import { entriesOf, isSource, isTypeScript, projectFiles, readProjectFile, root } from './project-files.js';

const topLevel = [
  'DEVELOPERS.md',
  'LICENSE',
  'README.md',
  'apps',
  'docker-compose.yml',
  'libs',
  'package-lock.json',
  'package.json',
  'prisma',
  'test',
  'tsconfig.base.json',
  'tsconfig.json',
];
const binary = /[.](png|ico|gz|zip|woff2?)$/;

/** Lines that hold code: blank ones and comments are no length. */
const codeLines = (text: string): number =>
  text
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .split('\n')
    .filter((line) => line.trim() !== '' && !line.trim().startsWith('//')).length;

/** Files with what is wrong with them, as one line each. */
const hits = (files: readonly string[], find: (text: string, file: string) => readonly string[]): string[] =>
  files.flatMap((file) => find(readProjectFile(file), file).map((found) => `${file}: ${found.trim()}`));

describe('the repository', () => {
  const all = projectFiles();
  const code = all.filter((file) => /^(apps|libs|test)\//.test(file) && isTypeScript(file));

  it('has at its top what belongs there, and nothing else', () => {
    const found = entriesOf('').filter(
      (name) => !name.startsWith('.') && !['node_modules', 'coverage'].includes(name),
    );
    expect(found).toEqual(topLevel);
  });

  it('names files in lower case with hyphens', () => {
    const inside = all.filter((file) => /^(apps|libs|test|prisma)\//.test(file));
    const well = /^[a-z0-9]+(-[a-z0-9]+)*([.][a-z0-9-]+)*[.][a-zA-Z]+$/;
    const given = ['migration_lock.toml', 'LICENSE'];
    const names = inside.map((file) => ({ file, name: file.split('/').at(-1)! }));
    expect(names.filter(({ name }) => !well.test(name) && !given.includes(name))).toEqual([]);
  });

  it('has no room for whatever fits nowhere', () => {
    const catchAll = /(^|\/)(utils?|helpers?|common|base|misc|shared|stuff)([.]|\/)/;
    expect(all.filter((file) => catchAll.test(file))).toEqual([]);
  });

  it('has no source file longer than 250 lines of code', () => {
    const isWritten = (file: string): boolean =>
      !file.endsWith('src/index.ts') && !file.startsWith('libs/client/src/document/');
    const long = all.filter(isSource).filter(isWritten);
    expect(long.filter((file) => codeLines(readProjectFile(file)) > 250)).toEqual([]);
  });

  it('exports by name', () => {
    expect(hits(code.filter(isSource), (text) => text.match(/^export default .*$/gm) ?? [])).toEqual([]);
  });

  it('ends every relative import inside the room it starts from, or in the tests', () => {
    const outside = (text: string, file: string): string[] => {
      const paths = [...text.matchAll(/(?:from|import)\s*\(?\s*'([.][^']*)'/g)].map(([, path = '']) => path);
      const room = file.split('/').slice(0, 2).join('/');
      const reach = (path: string): string => normalize(join(dirname(file), path));
      if (file.startsWith('test/')) return paths.filter((path) => reach(path).startsWith('..'));
      return paths.filter(
        (path) =>
          !reach(path).startsWith(`${room}/`) && !/^test\/(support|oracles|integration)\//.test(reach(path)),
      );
    };
    expect(hits(code, outside)).toEqual([]);
  });

  it('holds no path of a machine', () => {
    const text = all.filter((file) => !binary.test(file) && file !== 'package-lock.json');
    // The folder it lies in now, the home of whoever runs this, and what home folders are called.
    const places = [root, homedir()].filter((place) => place.split('/').length > 2);
    const folders = ['home', 'root', 'Users', 'mnt', 'workspaces?'].map((name) => `/${name}/`);
    const pattern = new RegExp(
      `^.*(?:${places.map((place) => place.replace(/[^\w/-]/g, '\\$&')).join('|') || '(?!)'}|(?<![\\w.~-])(?:${folders.join('|')})).*$`,
      'gm',
    );
    expect(hits(text, (content) => content.match(pattern) ?? [])).toEqual([]);
  });

  it('locks packages by version and checksum, whatever registry they come from', () => {
    const { packages } = JSON.parse(readProjectFile('package-lock.json')) as {
      packages: Record<string, { resolved?: string; link?: boolean; integrity?: string; inBundle?: boolean }>;
    };
    const installed = Object.entries(packages).filter(([path]) => path.includes('node_modules/'));
    expect(installed.length).toBeGreaterThan(500);
    const open = installed.filter(
      ([, { link, integrity, inBundle }]) => !link && !inBundle && integrity === undefined,
    );
    expect(open.map(([path]) => path)).toEqual([]);
    expect(installed.filter(([, { resolved }]) => resolved?.includes('://'))).toEqual([]);
  });
});
