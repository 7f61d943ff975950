import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { house } from './house.js';
import { entriesOf, projectFiles, readProjectFile, root, valuesOf } from './project-files.js';

const guide = readProjectFile('DEVELOPERS.md');
/** Cells of the rows of a table, head and rule left out. */
const rowsOf = (text: string): string[][] =>
  text
    .split('\n')
    .filter((line) => line.startsWith('| '))
    .slice(1)
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
const section = (title: string): string => {
  const [, after = ''] = guide.split(`\n## ${title}\n`);
  return after.split('\n## ')[0] ?? '';
};

describe('DEVELOPERS.md', () => {
  it('describes every room, and no other', () => {
    const rooms = rowsOf(section('Rooms')).map(([room = '']) => room.replaceAll('`', ''));
    expect(rooms.sort()).toEqual([...house.values()].map(({ folder }) => folder).sort());
  });

  it('says where at least a dozen kinds of change go', () => {
    const rows = rowsOf(section('Where does my change go?'));
    expect(rows.length).toBeGreaterThanOrEqual(12);
    expect(rows.filter((cells) => cells.length !== 3 || cells.includes(''))).toEqual([]);
  });

  it('names files and folders that are there', () => {
    const pages = [
      'DEVELOPERS.md',
      'README.md',
      ...projectFiles('apps/api/docs', (file) => file.endsWith('.md')),
    ];
    const known = projectFiles();
    let looked = 0;
    const missing = pages.flatMap((page) => {
      const text = readProjectFile(page).replace(/^```[\s\S]*?^```/gm, '');
      const named = [...text.matchAll(/`((?:apps|libs|test|prisma|[.]config|[.]ci)\/[^`\s]*)`/g)].map(
        ([, path = '']) => path,
      );
      looked += named.length;
      return named
        .filter(
          (path) =>
            !/[<>*…]|(?:dist|generated)$/.test(path) && !path.includes('/tools/') && !path.includes('/tool.'),
        )
        .map((path) => path.replace(/\/$/, ''))
        .filter((path) => !known.some((file) => file === path || file.startsWith(`${path}/`)))
        .map((path) => `${page}: ${path}`);
    });
    expect(missing).toEqual([]);
    expect(looked).toBeGreaterThan(50);
  });

  it('and the other pages link to pages that are there', () => {
    const pages = [
      'DEVELOPERS.md',
      'README.md',
      ...projectFiles('apps/api/docs', (file) => file.endsWith('.md')),
    ];
    const broken = pages.flatMap((page) =>
      [...readProjectFile(page).matchAll(/\]\(([^)\s]+)\)/g)]
        .map(([, to = '']) => to.split('#')[0]!)
        // Pages of problem types link as they are served.
        .filter((to) => to !== '' && !/^(https?:|\/)/.test(to))
        .filter((to) => !existsSync(join(root, dirname(page), to)))
        .map((to) => `${page}: ${to}`),
    );
    expect(broken).toEqual([]);
  });

  it('names scripts that package.json has', () => {
    const { scripts } = JSON.parse(readProjectFile('package.json')) as { scripts: Record<string, string> };
    const named = ['DEVELOPERS.md', 'README.md', '.ci/run', '.config/check.mjs']
      .flatMap((file) => [...readProjectFile(file).matchAll(/npm run (?:-s )?([\w:-]+)/g)])
      .map(([, name = '']) => name);
    expect(named.length).toBeGreaterThan(5);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });

  it('lists every decision record', () => {
    const records = entriesOf('apps/api/docs/decisions').filter((name) => name !== 'index.md');
    const index = readProjectFile('apps/api/docs/decisions/index.md');
    expect(records.filter((name) => !index.includes(`(${name})`))).toEqual([]);
    const numbers = records.map((name) => Number(name.slice(0, 3)));
    expect(numbers).toEqual(numbers.map((_, at) => at + 1));
  });
});

describe('the catalogue of errors', () => {
  interface Type {
    readonly status: number;
  }
  let problems: Readonly<Record<string, string>>;
  let types: Readonly<Record<string, Type>>;
  let codes: readonly string[];
  beforeAll(async () => {
    const folder = 'apps/api/src/http/problems';
    problems = (await valuesOf(`${folder}/error-problems.ts`))['errorProblems'] as typeof problems;
    types = (await valuesOf(`${folder}/problem-types.ts`))['problemTypes'] as typeof types;
    codes = (await valuesOf('libs/workshop/src/ports/index.ts'))['errorCodes'] as typeof codes;
  });

  it('gives every code of the workshop a problem type, and knows no other code', () => {
    expect(Object.keys(problems).sort()).toEqual([...codes].sort());
    expect(Object.values(problems).filter((name) => !(name in types))).toEqual([]);
    expect(new Set(codes).size).toBe(codes.length);
  });

  it('has a page for every problem type, with its status, and a line for it in the list', () => {
    const pages = entriesOf('apps/api/docs/problems').filter((name) => name !== 'index.md');
    expect(pages).toEqual(
      Object.keys(types)
        .map((name) => `${name}.md`)
        .sort(),
    );
    const index = readProjectFile('apps/api/docs/problems/index.md');
    for (const [name, { status }] of Object.entries(types)) {
      const page = readProjectFile(`apps/api/docs/problems/${name}.md`);
      expect([name, page.split('\n')[0]]).toEqual([name, `# ${name}`]);
      expect(page).toContain(`Status ${String(status)}.`);
      expect(index).toContain(`[\`${name}\`](/problems/${name}) – ${String(status)}.`);
    }
  });

  it('stands in DEVELOPERS.md as it is, each code with the case it is for', () => {
    const table = /<!-- error codes: begin -->([\s\S]*?)<!-- error codes: end -->/.exec(guide)?.[1] ?? '';
    const rows = rowsOf(table);
    expect(rows.map((cells) => cells.slice(0, 3).join(' '))).toEqual(
      codes.map((code) => {
        const name = problems[code]!;
        return `\`${code}\` \`${name}\` ${String(types[name]!.status)}`;
      }),
    );
    expect(rows.filter(([, , , when = '']) => when.length < 10)).toEqual([]);
  });
});
