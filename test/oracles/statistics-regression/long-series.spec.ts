import { mannKendall, theilSenSlope, type Point } from '@endfloat/statistics';

describe('a series of ten thousand points', () => {
  // y = x² over x = 1…n has the pair slopes xi + xj, spread evenly about n + 1: nearly fifty million of them.
  const n = 10_000;
  const points = Array.from({ length: n }, (_, i): Point => [i + 1, (i + 1) ** 2]);

  it('has the slope and limits that symmetry asks for', () => {
    const outcome = theilSenSlope(points);
    if (outcome.kind !== 'estimated') throw new Error(outcome.kind);
    expect(outcome).toMatchObject({ pairs: 49_995_000, slope: n + 1 });
    expect(outcome.interval!.lower + outcome.interval!.upper).toBeCloseTo(2 * (n + 1), 6);
  });

  it('has the highest score there is', () => {
    expect(mannKendall(points)).toMatchObject({ score: 49_995_000, tauA: 1, tauB: 1 });
  });
});
