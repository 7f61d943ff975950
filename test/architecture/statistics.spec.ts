import { documentedFunctions, identifiersOf, type DocumentedFunction } from './doc-comments.js';
import { isTypeScript, projectFiles, valuesOf } from './project-files.js';

const folder = 'libs/statistics/src';
const isOwn = (file: string): boolean => isTypeScript(file) && !file.endsWith('index.ts');

/** What the room computes for; none of it may be known there. */
const domainWords = [
  'assessment',
  'bench',
  'bush',
  'carburettor',
  'chassis',
  'comeback',
  'complaint',
  'component',
  'customer',
  'depot',
  'diagnosis',
  'fleet',
  'garage',
  'housing',
  'inspection',
  'instrument',
  'invoice',
  'job',
  'kilometre',
  'km',
  'limp',
  'linkage',
  'mileage',
  'millimetre',
  'mm',
  'money',
  'odometer',
  'owner',
  'part',
  'parts',
  'plate',
  'reading',
  'readings',
  'release',
  'repair',
  'shaft',
  'shop',
  'supplier',
  'symptom',
  'technician',
  'throttle',
  'vacuum',
  'van',
  'vans',
  'vehicle',
  'vehicles',
  'verdict',
  'warranty',
  'wear',
  'workshop',
];

/** meanCumulativeFunction, MEAN_CUMULATIVE and mean-cumulative hold the same words. */
const wordsOf = (name: string): string[] =>
  name
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z]+/);

describe('the statistics room', () => {
  it('knows no word of the workshop', () => {
    const sources = projectFiles(folder, (file) => isOwn(file) && !file.endsWith('.spec.ts'));
    expect(sources.length).toBeGreaterThan(50);
    const found = sources.flatMap((file) =>
      [...identifiersOf(file), file.slice(folder.length)]
        .filter((name) => wordsOf(name).some((word) => domainWords.includes(word)))
        .map((name) => `${file}: ${name}`),
    );
    expect(found).toEqual([]);
  });
});

describe('doc comments of what the statistics room offers', () => {
  let offered: DocumentedFunction[];
  beforeAll(async () => {
    const names = new Set(Object.keys(await valuesOf(`${folder}/index.ts`)));
    offered = projectFiles(folder, (file) => isOwn(file) && !file.endsWith('.spec.ts'))
      .flatMap(documentedFunctions)
      .filter(({ name }) => names.has(name));
  });

  const lacking = (is: (found: DocumentedFunction) => boolean): string[] =>
    offered.filter((found) => !is(found)).map(({ file, name }) => `${file}: ${name}`);
  const says = (tag: string) => (found: DocumentedFunction) =>
    (found.tags.get(tag) ?? []).some((text) => text.trim() !== '');

  it('are looked at', () => {
    expect(offered.length).toBeGreaterThan(80);
  });

  it('say in a sentence what is computed', () => {
    expect(lacking(({ text }) => text.trim().length > 10)).toEqual([]);
  });

  it('describe every parameter', () => {
    const described = ({ parameters, tags }: DocumentedFunction): boolean => {
      const named = (tags.get('param') ?? []).map((text) => /^\S+/.exec(text)?.[0]);
      return parameters.every((parameter, at) =>
        parameter.startsWith('{') ? named[at] !== undefined : named.includes(parameter),
      );
    };
    expect(lacking(described)).toEqual([]);
  });

  it.each(['returns', 'source', 'oracle', 'example'])('have @%s', (tag) => {
    expect(lacking(says(tag))).toEqual([]);
  });

  it('name oracles that exist', () => {
    const files = new Set(projectFiles('test/oracles'));
    const missing = offered.flatMap(({ file, tags }) =>
      (tags.get('oracle') ?? [])
        .flatMap((text) => text.match(/test\/oracles\/[\w./-]+\w/g) ?? [])
        .filter((oracle) => !files.has(oracle) && ![...files].some((each) => each.startsWith(`${oracle}/`)))
        .map((oracle) => `${file}: ${oracle}`),
    );
    expect(missing).toEqual([]);
  });

  it('name a RangeError where @throws stands', () => {
    expect(
      lacking(({ tags }) => (tags.get('throws') ?? []).every((text) => text.includes('RangeError'))),
    ).toEqual([]);
  });
});
