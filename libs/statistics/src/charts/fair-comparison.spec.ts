import fc from 'fast-check';
import { poissonCdf, poissonSurvival } from '../distributions/poisson.js';
import { expectedCount } from './expected-count.js';
import { funnelLimits } from './funnel-limits.js';
import { observedToExpected, type ObservedToExpected } from './observed-to-expected.js';

describe('funnelLimits', () => {
  // Spiegelhalter (2005), appendix; R 4.2.2 (generate.R), 12 digits. Target 0.08.
  it.each([
    [10, 0.95, 0, 0.243984880139],
    [25, 0.95, 0, 0.184527282499],
    [50, 0.95, 0.00283543656941, 0.1538478567402],
    [100, 0.95, 0.0253973754676, 0.1321659995804],
    [250, 0.95, 0.0458596031392, 0.1132694458608],
    [10, 0.998, 0, 0.392056583427],
    [25, 0.998, 0, 0.271515777418],
    [50, 0.998, 0, 0.211397985342],
    [100, 0.998, 0.00365745365024, 0.16953227194836],
    [250, 0.998, 0.0298962275331, 0.1355400091531],
  ])('agrees for %d trials at coverage %d', (trials, coverage, lower, upper) => {
    const found = funnelLimits(0.08, trials, coverage);
    if (lower === 0) expect(found.lower).toBe(0);
    else expect(Math.abs(found.lower / lower - 1)).toBeLessThan(1e-9);
    expect(Math.abs(found.upper / upper - 1)).toBeLessThan(1e-9);
  });

  it('narrows with the number of trials and widens with coverage', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        (n, target) => {
          const inner = funnelLimits(target, n, 0.95);
          const outer = funnelLimits(target, n, 0.998);
          const larger = funnelLimits(target, 4 * n, 0.95);
          expect(outer.lower).toBeLessThanOrEqual(inner.lower);
          expect(outer.upper).toBeGreaterThanOrEqual(inner.upper);
          expect(larger.upper - larger.lower).toBeLessThan(inner.upper - inner.lower + 1e-12);
          expect(inner.lower).toBeLessThanOrEqual(target);
          expect(inner.upper).toBeLessThanOrEqual(1);
        },
      ),
      { seed: 25, numRuns: 200 },
    );
  });

  it('has no width where nothing else can happen, and refuses bad arguments', () => {
    expect(funnelLimits(1, 5, 0.95)).toEqual({ lower: 1, upper: 1 });
    expect(() => funnelLimits(0.1, 0, 0.95)).toThrow(RangeError);
    expect(() => funnelLimits(0.1, 5, 1)).toThrow(RangeError);
    expect(() => funnelLimits(-0.1, 5, 0.95)).toThrow(RangeError);
  });
});

describe('observedToExpected', () => {
  function compared(observed: number, expected: number, confidence?: number): ObservedToExpected {
    const outcome = observedToExpected(observed, expected, confidence);
    if (outcome.kind !== 'estimated') throw new Error(outcome.kind);
    return outcome;
  }

  // Garwood (1936): limits of the mean of a Poisson count at 95 %; digits from SciPy 1.17.1 (chi2.ppf).
  it.each([
    [0, 0, 3.6888794541139354],
    [1, 0.025317807984289876, 5.571643390938898],
    [10, 4.7953886961324335, 18.39035604201778],
  ])('has the exact limits for %d events', (count, lower, upper) => {
    const { interval } = compared(count, 1);
    expect(Math.abs(interval.lower - lower)).toBeLessThan(1e-9);
    expect(Math.abs(interval.upper - upper)).toBeLessThan(1e-9);
  });

  it('has limits at which the count is just unlikely enough', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), (count) => {
        const { lower, upper } = compared(count, 1).interval;
        expect(poissonSurvival(count - 1, lower)).toBeCloseTo(0.025, 10);
        expect(poissonCdf(count, upper)).toBeCloseTo(0.025, 10);
      }),
      { seed: 26, numRuns: 100 },
    );
  });

  it('names what it finds', () => {
    expect(compared(10, 4).finding).toBe('moreThanExpected');
    expect(compared(10, 20).finding).toBe('fewerThanExpected');
    expect(compared(10, 10)).toMatchObject({ ratio: 1, finding: 'withinChance' });
    expect(observedToExpected(0, 0)).toMatchObject({ kind: 'insufficientData' });
    expect(observedToExpected(2, 0)).toEqual({ kind: 'nothingExpected', observed: 2 });
    expect(() => observedToExpected(1, -1)).toThrow(RangeError);
  });

  it('expects what the reference would have had with the same mix', () => {
    // 10 units at 0.5 and 4 at 0.25: 5 + 1 = 6 events.
    expect(
      expectedCount([
        { exposure: 10, referenceRate: 0.5 },
        { exposure: 4, referenceRate: 0.25 },
      ]),
    ).toBe(6);
    expect(expectedCount([])).toBe(0);
    expect(() => expectedCount([{ exposure: -1, referenceRate: 1 }])).toThrow(RangeError);
  });
});
