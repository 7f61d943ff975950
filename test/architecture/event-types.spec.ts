import { isSource, projectFiles, readProjectFile, valuesOf } from './project-files.js';

const { eventTypes } = (await valuesOf('libs/workshop/src/ports/event-types.ts')) as {
  eventTypes: Readonly<Record<string, { readonly data: Readonly<Record<string, string>> }>>;
};

/** Types as use cases announce them; a part that is filled in stands as `*`. */
const announced = new Set(
  projectFiles()
    .filter(
      (file) => /^(libs\/workshop|apps)\//.test(file) && isSource(file) && !file.endsWith('event-types.ts'),
    )
    .flatMap((file) => [
      ...readProjectFile(file).matchAll(
        /type: ['`](endfloat\.[A-Za-z]+\.(?:[A-Za-z]+|\$\{[^}]+\})\.v[0-9]+)['`]/g,
      ),
    ])
    .map(([, type = '']) => type.replace(/\$\{[^}]+\}/, '*')),
);
const fits = (pattern: string, type: string): boolean =>
  new RegExp(`^${pattern.replaceAll('.', '\\.').replace('*', '[A-Za-z]+')}$`).test(type);

describe('types of events', () => {
  it('stand in the table, so that the document tells of them and endpoints can choose them', () => {
    const missing = [...announced].filter(
      (pattern) => !Object.keys(eventTypes).some((type) => fits(pattern, type)),
    );
    expect(missing).toEqual([]);
  });

  it('of the table are all announced by somebody', () => {
    const unused = Object.keys(eventTypes).filter(
      (type) => ![...announced].some((pattern) => fits(pattern, type)),
    );
    expect(unused).toEqual([]);
  });

  it('are named after a thing and what happened to it, with a version', () => {
    const names = Object.keys(eventTypes);
    expect(
      names.filter((name) => !/^endfloat\.[a-z][A-Za-z]*\.[a-z][A-Za-z]*\.v[1-9][0-9]*$/.test(name)),
    ).toEqual([]);
    expect(names).toEqual([...names].sort());
  });
});
