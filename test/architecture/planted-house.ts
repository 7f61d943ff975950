import { mkdirSync, mkdtempSync, readdirSync, realpathSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { computingRooms, house, type Room } from './house.js';
import { readProjectFile, root } from './project-files.js';

/** A file put into the house, and the rules it must be reported for; none for a file that breaks nothing. */
export interface Plant {
  readonly file: string;
  readonly text: string;
  readonly breaks: readonly string[];
}

const thing = 'export interface Thing { readonly size: number }\nexport const thing: Thing = { size: 1 };\n';
const other = '@endfloat/';
const typeOf = (from: string): string => `import type { Thing } from '${from}';\nexport type Mine = Thing;\n`;
const valueOf = (from: string): string => `import { thing } from '${from}';\nexport const mine = thing;\n`;
const rule = (room: Room, end: string): string => `${room.folder.replace('/', '-')}-${end}`;
const onlyBelow = 'imports-only-rooms-below';

/** The room enters a neighbour by the door that stands open for it. */
function doorOf(from: string, to: string): string {
  return to === 'workshop' && (from === 'persistence' || from === 'contracts') ? 'workshop/ports' : to;
}

/** Every room imports a type of every other room: legal exactly where the house says so. */
function pairs(): Plant[] {
  return [...house].flatMap(([from, room]) =>
    [...house.keys()]
      .filter((to) => to !== from)
      .map((to) => {
        const legal = room.imports.includes(to);
        const inModule = to === 'persistence' && room.folder.startsWith('apps/');
        return {
          file: `${room.folder}/src/imports-${to}${inModule ? '.module' : ''}.ts`,
          text: typeOf(other + doorOf(from, to)),
          breaks: legal ? [] : [rule(room, onlyBelow)],
        };
      }),
  );
}

/** What a room may take from outside, and what it may not. */
function outside(): Plant[] {
  return [...house.values()].flatMap((room): Plant[] => {
    const core = { file: `${room.folder}/src/reads-files.ts`, text: "import 'node:fs';\n" };
    const foreign = { file: `${room.folder}/src/takes-a-package.ts`, text: "import 'fast-check';\n" };
    const anyPackage = ['apps/api', 'apps/worker'].includes(room.folder);
    return [
      { ...core, breaks: room.node ? [] : [rule(room, 'uses-no-node-module')] },
      { ...foreign, breaks: anyPackage ? [] : [rule(room, 'uses-only-its-npm-packages')] },
      ...(room.npm === undefined
        ? []
        : [{ file: `${room.folder}/src/takes-its-package.ts`, text: `import '${room.npm}';\n`, breaks: [] }]),
    ];
  });
}

/** One file for each way in which a value of a computing room could be used by an app. */
function calculations(): Plant[] {
  const breaks = ['apps-compute-nothing'];
  return computingRooms.map((room) => ({
    file: `apps/api/src/computes-with-${room}.ts`,
    text: valueOf(other + room),
    breaks,
  }));
}

const particular: readonly Plant[] = [
  {
    file: 'libs/wear/src/value-of-neighbour.ts',
    text: valueOf('@endfloat/reliability'),
    breaks: ['libs-wear-imports-only-rooms-below'],
  },
  {
    file: 'libs/wear/src/exports-neighbour.ts',
    text: "export type { Thing } from '@endfloat/diagnosis';\n",
    breaks: ['libs-wear-imports-only-rooms-below'],
  },
  {
    file: 'libs/wear/src/asks-for-neighbour.ts',
    text: "export const late = () => import('@endfloat/diagnosis');\n",
    breaks: ['libs-wear-imports-only-rooms-below'],
  },
  {
    file: 'libs/wear/src/neighbour-in-a-spec.spec.ts',
    text: valueOf('@endfloat/diagnosis'),
    breaks: ['libs-wear-imports-only-rooms-below'],
  },
  {
    file: 'libs/wear/src/reaches-into-neighbour.ts',
    text: valueOf('../../diagnosis/src/inner.js'),
    breaks: ['libs-wear-imports-only-rooms-below', 'enter-through-the-front-door'],
  },
  {
    file: 'libs/wear/src/reaches-past-the-door.ts',
    text: valueOf('../../metrology/src/inner.js'),
    breaks: ['enter-through-the-front-door'],
  },
  {
    file: 'test/e2e/reaches-past-the-door.ts',
    text: valueOf('../../libs/metrology/src/inner.js'),
    breaks: ['enter-through-the-front-door'],
  },
  {
    file: 'libs/wear/src/deep-path-of-a-package.ts',
    text: typeOf('@endfloat/metrology/src/inner.js'),
    breaks: ['everything-must-resolve'],
  },
  { file: 'libs/wear/src/nowhere.ts', text: valueOf('./not-there.js'), breaks: ['everything-must-resolve'] },
  {
    file: 'libs/decision/src/decides-by-the-simulator.ts',
    text: valueOf('./simulator/index.js'),
    breaks: ['nothing-decides-by-the-simulator'],
  },
  {
    file: 'libs/workshop/src/decides-by-the-simulator.ts',
    text: typeOf('@endfloat/decision/simulator'),
    breaks: ['nothing-decides-by-the-simulator'],
  },
  { file: 'apps/demo/src/yardstick/computes.ts', text: valueOf('@endfloat/decision/simulator'), breaks: [] },
  {
    file: 'libs/wear/src/reads-files.spec.ts',
    text: "import 'node:fs';\n",
    breaks: ['unit-specs-touch-nothing'],
  },
  { file: 'libs/persistence/src/reads-files.spec.ts', text: "import 'node:fs';\n", breaks: [] },
  { file: 'libs/paint/src/index.ts', text: thing, breaks: [] },
  { file: 'libs/paint/src/colour.ts', text: valueOf('./index.js'), breaks: ['every-room-is-listed'] },
  {
    file: 'apps/api/src/names-the-database.ts',
    text: "import type { Pool } from 'pg';\nexport type Mine = Pool;\n",
    breaks: ['only-persistence-names-the-database'],
  },
  {
    file: 'apps/worker/src/names-the-orm.ts',
    text: "import type {} from '@prisma/adapter-pg';\n",
    breaks: ['only-persistence-names-the-database'],
  },
  {
    file: 'test/e2e/names-the-database.ts',
    text: "import 'pg';\n",
    breaks: ['only-persistence-names-the-database'],
  },
  { file: 'test/bench/names-the-database.ts', text: "import 'pg';\n", breaks: [] },
  {
    file: 'libs/persistence/src/calls-a-use-case.ts',
    text: valueOf('@endfloat/workshop'),
    breaks: ['persistence-sees-only-ports'],
  },
  {
    file: 'libs/contracts/src/calls-a-use-case.ts',
    text: valueOf('@endfloat/workshop'),
    breaks: ['contracts-see-only-value-lists'],
  },
  {
    file: 'libs/workshop/src/ports/knows-a-use-case.ts',
    text: typeOf('../use-case.js'),
    breaks: ['ports-know-no-use-case'],
  },
  { file: 'libs/workshop/src/ports/names-an-error.ts', text: typeOf('../thing.errors.js'), breaks: [] },
  {
    file: 'apps/api/src/binds-an-adapter.ts',
    text: typeOf('@endfloat/persistence'),
    breaks: ['persistence-is-wired-in-modules-only'],
  },
  {
    file: 'apps/worker/src/binds-an-adapter.ts',
    text: valueOf('@endfloat/persistence'),
    breaks: ['persistence-is-wired-in-modules-only'],
  },
  { file: 'apps/worker/src/binds-an-adapter.module.ts', text: valueOf('@endfloat/persistence'), breaks: [] },
  {
    file: 'libs/wear/src/borrows-from-a-spec.ts',
    text: valueOf('./inner.spec.js'),
    breaks: ['source-imports-no-test'],
  },
  {
    file: 'libs/persistence/src/borrows-from-tests.ts',
    text: valueOf('../../../test/support/thing.js'),
    breaks: ['source-imports-no-test'],
  },
  { file: 'libs/wear/src/here.ts', text: typeOf('./there.js'), breaks: ['no-cycles'] },
  // A cycle is reported once, at the file met first.
  { file: 'libs/wear/src/there.ts', text: typeOf('./here.js'), breaks: [] },
];

/** Files that the plants import; they break nothing themselves. */
const soil: readonly string[] = [
  ...[...house.values()].flatMap(({ folder }) => [`${folder}/src/index.ts`, `${folder}/src/inner.ts`]),
  'libs/workshop/src/ports/index.ts',
  'libs/workshop/src/use-case.ts',
  'libs/workshop/src/thing.errors.ts',
  'libs/wear/src/inner.spec.ts',
  'libs/decision/src/simulator/index.ts',
  'test/support/thing.ts',
];

export const plants: readonly Plant[] = [
  ...pairs(),
  ...outside(),
  ...calculations(),
  ...particular,
  ...soil.map((file) => ({ file, text: thing, breaks: [] })),
];

/** Builds a house of small files with the plants in it, on the packages that are installed; answers its folder. */
export function buildPlantedHouse(): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'planted-house-')));
  const write = (file: string, text: string): void => {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), text);
  };
  write('package.json', readProjectFile('package.json'));
  for (const { folder: room } of house.values())
    write(`${room}/package.json`, readProjectFile(`${room}/package.json`));
  for (const { file, text } of plants) write(file, text);

  mkdirSync(join(folder, 'node_modules', '@endfloat'), { recursive: true });
  for (const [name, room] of house)
    symlinkSync(join(folder, room.folder), join(folder, 'node_modules', '@endfloat', name), 'dir');
  for (const name of readdirSync(join(root, 'node_modules')))
    if (!name.startsWith('.') && name !== '@endfloat')
      symlinkSync(join(root, 'node_modules', name), join(folder, 'node_modules', name));
  return folder;
}
