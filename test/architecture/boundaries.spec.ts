import { rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { house } from './house.js';
import { holdLayers, type LayerReport } from './layers.js';
import { buildPlantedHouse, plants } from './planted-house.js';
import { entriesOf, root } from './project-files.js';

interface Table {
  readonly forbidden: readonly { readonly name: string }[];
}
const table = createRequire(import.meta.url)(join(root, '.config/boundaries.cjs')) as Table;

describe('the layer table', () => {
  it('is kept by every import of the tree', async () => {
    const { modules, broken } = await holdLayers(root);
    expect(Object.fromEntries([...broken].map(([file, rules]) => [file, [...rules]]))).toEqual({});
    expect(modules).toBeGreaterThan(500);
  });

  it('has a line for every folder of apps and libs, and no other', () => {
    const folders = ['apps', 'libs'].flatMap((top) => entriesOf(top).map((name) => `${top}/${name}`));
    expect(folders.sort()).toEqual([...house.values()].map(({ folder }) => folder).sort());
  });
});

describe('the layer table, held against a house with planted imports', () => {
  let folder: string;
  let report: LayerReport;
  beforeAll(async () => {
    folder = buildPlantedHouse();
    report = await holdLayers(folder);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const rulesAt = (file: string): string[] => [...(report.broken.get(file) ?? [])].sort();
  const faults = plants.filter(({ breaks }) => breaks.length > 0);
  const legal = plants.filter(({ breaks }) => breaks.length === 0);

  it('sees all planted files', () => {
    expect(report.modules).toBeGreaterThanOrEqual(plants.length);
  });

  it.each(faults)('reports $file', ({ file, breaks }) => {
    expect(rulesAt(file)).toEqual([...breaks].sort());
  });

  it('reports none of the legal imports', () => {
    expect(legal.length).toBeGreaterThan(100);
    expect(legal.map(({ file }) => file).filter((file) => rulesAt(file).length > 0)).toEqual([]);
  });

  it('has no rule that none of the planted imports breaks', () => {
    const provoked = new Set(faults.flatMap(({ breaks }) => breaks));
    expect(table.forbidden.map(({ name }) => name).filter((name) => !provoked.has(name))).toEqual([]);
  });
});
