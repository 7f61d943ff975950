import { statisticsPublishedCases } from './statistics-published-cases.js';

describe('published cases of statistics', () => {
  it.each(statisticsPublishedCases.map((publishedCase) => [publishedCase.id, publishedCase] as const))(
    '%s is reproduced to its tolerance',
    (_id, { figures, compute }) => {
      const computed = compute();
      const missed = figures.filter(({ name, expected, tolerance }) => {
        const off = Math.abs((computed[name] ?? Number.NaN) - expected);
        const allowed =
          tolerance.kind === 'relative' ? tolerance.value * Math.abs(expected) : tolerance.value;
        return !(off <= allowed);
      });
      expect(missed.map((figure) => ({ ...figure, computed: computed[figure.name] }))).toEqual([]);
    },
  );

  it('names every case once', () => {
    const ids = statisticsPublishedCases.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
