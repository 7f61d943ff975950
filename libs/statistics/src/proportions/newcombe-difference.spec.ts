import fc from 'fast-check';
import { newcombeDifference } from './newcombe-difference.js';

const difference = (a: number, m: number, b: number, n: number, confidence?: number) => {
  const found = newcombeDifference({ successes: a, trials: m }, { successes: b, trials: n }, confidence);
  if (found.kind !== 'estimated') throw new Error(found.kind);
  return found;
};

describe('newcombeDifference', () => {
  // Newcombe (1998), Stat. Med. 17:873–890, table II, method 10 (4 digits printed); 12 digits from R (generate.R).
  it.each([
    [56, 70, 48, 80, 0.0524, 0.3339, 0.0524314724024, 0.3338726540369],
    [9, 10, 3, 10, 0.1705, 0.809, 0.170522723935, 0.809017973535],
    [6, 7, 2, 7, 0.0582, 0.8062, 0.0582279274823, 0.8062496375242],
    [5, 56, 0, 29, -0.0381, 0.1926, -0.0381371479035, 0.1925600138551],
  ])('agrees for %d/%d against %d/%d', (a, m, b, n, printedLower, printedUpper, lower, upper) => {
    const found = difference(a, m, b, n);
    expect(Math.abs(found.lower - printedLower)).toBeLessThanOrEqual(0.0001 / 2 + 1e-12);
    expect(Math.abs(found.upper - printedUpper)).toBeLessThanOrEqual(0.0001 / 2 + 1e-12);
    expect(Math.abs(found.lower / lower - 1)).toBeLessThan(1e-9);
    expect(Math.abs(found.upper / upper - 1)).toBeLessThan(1e-9);
    expect(found.difference).toBe(a / m - b / n);
  });

  it('turns over with its arguments, holds the difference and stays within −1 and 1', () => {
    const count = fc
      .integer({ min: 1, max: 60 })
      .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
    fc.assert(
      fc.property(count, count, ([a, m], [b, n]) => {
        const plain = difference(a, m, b, n);
        const turned = difference(b, n, a, m);
        expect(turned.lower).toBeCloseTo(-plain.upper, 12);
        expect(turned.upper).toBeCloseTo(-plain.lower, 12);
        expect(plain.lower).toBeLessThanOrEqual(plain.difference);
        expect(plain.upper).toBeGreaterThanOrEqual(plain.difference);
        expect(plain.lower).toBeGreaterThanOrEqual(-1);
        expect(plain.upper).toBeLessThanOrEqual(1);
        const wide = difference(a, m, b, n, 0.99);
        expect(wide.lower).toBeLessThanOrEqual(plain.lower);
        expect(wide.upper).toBeGreaterThanOrEqual(plain.upper);
      }),
      { seed: 17, numRuns: 200 },
    );
  });

  it('needs a trial on both sides', () => {
    expect(newcombeDifference({ successes: 1, trials: 2 }, { successes: 0, trials: 0 })).toMatchObject({
      kind: 'insufficientData',
      of: 'trials',
    });
  });
});
