import { metrologyPublishedCases } from './metrology-published-cases.js';
import { runPublishedCase } from './published-case.js';

describe('published cases of metrology', () => {
  it.each(metrologyPublishedCases.map((publishedCase) => [publishedCase.id, publishedCase] as const))(
    '%s is reproduced to its tolerance',
    (_id, publishedCase) => {
      const missed = runPublishedCase(publishedCase).figures.filter(({ isReproduced }) => !isReproduced);
      expect(missed).toEqual([]);
    },
  );

  it('names every case once', () => {
    const ids = metrologyPublishedCases.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('reports a figure that is off, and refuses a case that does not compute a figure', () => {
    const wrong = {
      ...metrologyPublishedCases[0]!,
      figures: [{ name: 'inside', expected: 0.92, tolerance: { kind: 'absolute', value: 1e-6 } as const }],
    };
    expect(runPublishedCase(wrong).isReproduced).toBe(false);
    expect(() => runPublishedCase({ ...wrong, compute: () => ({}) })).toThrow(RangeError);
  });
});
