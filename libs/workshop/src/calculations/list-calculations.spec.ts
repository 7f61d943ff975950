import { publishedCases } from './all-calculations.js';
import { listCalculations } from './list-calculations.js';

describe('listCalculations', () => {
  const listed = listCalculations();

  it('reproduces every published case of every calculation when it is asked', () => {
    const missed = listed.flatMap(({ method, cases }) =>
      cases.flatMap(({ id, outcome }) =>
        outcome.figures.filter(({ isReproduced }) => !isReproduced).map(({ name }) => [method.id, id, name]),
      ),
    );
    expect(missed).toEqual([]);
  });

  it('proves every calculation by at least one case', () => {
    expect(listed.filter(({ cases }) => cases.length === 0).map(({ method }) => method.id)).toEqual([]);
  });

  it('names every calculation once', () => {
    const ids = listed.map(({ method }) => method.id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('shows the published cases of the computing rooms, none of them hidden', () => {
    const shown = new Set(listed.flatMap(({ cases }) => cases.map(({ id }) => id)));
    expect([...publishedCases.keys()].filter((id) => !shown.has(id))).toEqual([]);
  });
});
