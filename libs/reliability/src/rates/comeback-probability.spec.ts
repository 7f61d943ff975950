import fc from 'fast-check';
import { comebackProbability } from './comeback-probability.js';

describe('probability of a proposal', () => {
  it('by hand: a likeness of 0.3 worth 10, after 12 confirmed and 2 refused, is (3 + 12) / 24', () => {
    expect(comebackProbability(0.3, { confirmed: 12, refused: 2 })).toMatchObject({
      value: 0.625,
      prior: { mean: 0.3, weight: 10 },
      confirmed: 12,
      refused: 2,
    });
  });

  it('is the likeness where nothing was settled yet, and never certain', () => {
    expect(comebackProbability(0.42, { confirmed: 0, refused: 0 }).value).toBeCloseTo(0.42, 12);
    expect(comebackProbability(1, { confirmed: 5, refused: 0 }).value).toBeLessThan(1);
    expect(comebackProbability(0, { confirmed: 0, refused: 5 }).value).toBeGreaterThan(0);
  });

  it('rises with every confirmed and falls with every refused one, inside its interval', () => {
    const count = fc.integer({ min: 0, max: 200 });
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        count,
        count,
        (likeness, confirmed, refused) => {
          const here = comebackProbability(likeness, { confirmed, refused });
          expect(comebackProbability(likeness, { confirmed: confirmed + 1, refused }).value).toBeGreaterThan(
            here.value,
          );
          expect(comebackProbability(likeness, { confirmed, refused: refused + 1 }).value).toBeLessThan(
            here.value,
          );
          expect(here.interval.lower).toBeLessThanOrEqual(here.interval.upper);
        },
      ),
      { seed: 11, numRuns: 100 },
    );
  });

  it('refuses a likeness that is no share', () => {
    expect(() => comebackProbability(1.1, { confirmed: 0, refused: 0 })).toThrow(RangeError);
  });
});
