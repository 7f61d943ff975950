import fc from 'fast-check';
import { binomialLogPmf } from '../distributions/binomial.js';
import type { BinomialCount } from './binomial-count.js';
import { clopperPearsonInterval } from './clopper-pearson-interval.js';
import { jeffreysInterval } from './jeffreys-interval.js';
import { modifiedJeffreysInterval } from './modified-jeffreys-interval.js';
import type { ProportionInterval, ProportionIntervalOutcome } from './proportion-interval.js';
import { wilsonInterval } from './wilson-interval.js';

type Method = (count: BinomialCount, confidence?: number) => ProportionIntervalOutcome;

const methods: readonly (readonly [string, Method])[] = [
  ['wilson', wilsonInterval],
  ['clopperPearson', clopperPearsonInterval],
  ['jeffreys', jeffreysInterval],
  ['modifiedJeffreys', modifiedJeffreysInterval],
];

function interval(
  method: Method,
  successes: number,
  trials: number,
  confidence?: number,
): ProportionInterval {
  const outcome = method({ successes, trials }, confidence);
  if (outcome.kind !== 'estimated') throw new Error(outcome.kind);
  return outcome;
}

/** Relative 1e-9 is the tolerance for closed forms; a limit of 0 must be exact. */
function expectClose(actual: number, expected: number): void {
  if (expected === 0) expect(actual).toBe(0);
  else expect(Math.abs(actual / expected - 1)).toBeLessThan(1e-9);
}

describe('intervals for one proportion', () => {
  // Newcombe (1998), Stat. Med. 17:857–872, table I (printed to 4 digits); 12 digits from R 4.2.2 (generate.R).
  describe.each([
    [81, 263, [0.2553, 0.3662], [0.2527, 0.3676]],
    [15, 148, [0.0624, 0.1605], [0.0578, 0.1617]],
    [0, 20, [0, 0.1611], [0, 0.1684]],
    [1, 29, [0.0061, 0.1718], [0.0009, 0.1776]],
  ] as const)('for %d of %d as printed by Newcombe', (successes, trials, wilson, clopperPearson) => {
    it.each([
      ['Wilson', wilsonInterval, wilson],
      ['Clopper–Pearson', clopperPearsonInterval, clopperPearson],
    ] as const)('has the limits of %s', (_name, method, [lower, upper]) => {
      const found = interval(method, successes, trials);
      expect(Math.abs(found.lower - lower)).toBeLessThanOrEqual(0.00005);
      expect(Math.abs(found.upper - upper)).toBeLessThanOrEqual(0.00005);
    });
  });

  it.each([
    ['wilson', 81, 263, 0.255288519878, 0.366209576983],
    ['wilson', 15, 148, 0.0623863995307, 0.1604872417233],
    ['wilson', 0, 20, 0, 0.161125158053],
    ['wilson', 1, 29, 0.00611321429276, 0.1717552187932],
    ['clopperPearson', 81, 263, 0.252736745585, 0.367621922601],
    ['clopperPearson', 15, 148, 0.0578440100834, 0.1616504903495],
    ['clopperPearson', 0, 20, 0, 0.168433470983],
    ['clopperPearson', 1, 29, 0.00087264688358, 0.17764429548872],
    ['jeffreys', 81, 263, 0.254521934991, 0.365647499174],
    ['jeffreys', 15, 148, 0.0604485170093, 0.1576431434787],
    ['jeffreys', 0, 20, 0, 0.116638982905],
    ['jeffreys', 1, 29, 0.00374617364906, 0.15007768600223],
  ] as const)('%s of %d in %d agrees with R', (name, successes, trials, lower, upper) => {
    const found = interval(new Map(methods).get(name)!, successes, trials);
    expect(found.method).toBe(name);
    expectClose(found.lower, lower);
    expectClose(found.upper, upper);
  });

  it('modifies Jeffreys only near the ends', () => {
    // No success in 20: 1 − 0.025^(1/20) = 0.16843 (Brown, Cai & DasGupta, sec. 4.1.2); one success: lower limit 0.
    expectClose(interval(modifiedJeffreysInterval, 0, 20).upper, 1 - 0.025 ** (1 / 20));
    expectClose(interval(modifiedJeffreysInterval, 20, 20).lower, 0.025 ** (1 / 20));
    expectClose(interval(modifiedJeffreysInterval, 0, 1).upper, 0.975);
    expect(interval(modifiedJeffreysInterval, 1, 29).lower).toBe(0);
    expect(interval(modifiedJeffreysInterval, 28, 29).upper).toBe(1);
    expect(interval(modifiedJeffreysInterval, 15, 148)).toEqual({
      ...interval(jeffreysInterval, 15, 148),
      method: 'modifiedJeffreys',
    });
  });

  it('agrees with Wilson limits worked by hand', () => {
    // Two of four with z = 2 (level 0.9545): (2 + 2 ± 2 * sqrt(1 + 1)) / 8 = 0.5 ± 0.35355.
    const found = interval(wilsonInterval, 2, 4, 0.9544997361036416);
    expect(found.lower).toBeCloseTo(0.5 - Math.SQRT2 / 4, 12);
    expect(found.upper).toBeCloseTo(0.5 + Math.SQRT2 / 4, 12);
  });

  describe.each(methods)('%s', (_name, method) => {
    const counts = fc
      .integer({ min: 1, max: 300 })
      .chain((trials) => fc.tuple(fc.integer({ min: 0, max: trials }), fc.constant(trials)));
    const settings = { seed: 16, numRuns: 150 };

    it('says that no trial is no information', () => {
      expect(method({ successes: 0, trials: 0 })).toEqual({
        kind: 'insufficientData',
        of: 'trials',
        needed: 1,
        got: 0,
      });
    });

    it('refuses impossible counts and levels', () => {
      expect(() => method({ successes: 3, trials: 2 })).toThrow(RangeError);
      expect(() => method({ successes: -1, trials: 2 })).toThrow(RangeError);
      expect(() => method({ successes: 0.5, trials: 2 })).toThrow(RangeError);
      expect(() => method({ successes: 1, trials: 2 }, 1)).toThrow(RangeError);
      expect(() => method({ successes: 1, trials: 2 }, NaN)).toThrow(RangeError);
    });

    it('is mirrored when successes and failures change places', () => {
      fc.assert(
        fc.property(counts, ([x, n]) => {
          const plain = interval(method, x, n);
          const mirrored = interval(method, n - x, n);
          expect(mirrored.lower).toBeCloseTo(1 - plain.upper, 9);
          expect(mirrored.upper).toBeCloseTo(1 - plain.lower, 9);
        }),
        settings,
      );
    });

    it('holds the observed share, stays within 0 and 1 and widens with the level', () => {
      fc.assert(
        fc.property(counts, ([x, n]) => {
          const narrow = interval(method, x, n, 0.8);
          const wide = interval(method, x, n, 0.99);
          expect(0 <= wide.lower && wide.lower <= narrow.lower).toBe(true);
          expect(narrow.upper <= wide.upper && wide.upper <= 1).toBe(true);
          expect(narrow.lower <= x / n && x / n <= narrow.upper).toBe(true);
        }),
        settings,
      );
    });

    it('moves up with each further success', () => {
      fc.assert(
        fc.property(counts, ([x, n]) => {
          if (x === n) return;
          const plain = interval(method, x, n);
          const more = interval(method, x + 1, n);
          expect(more.lower).toBeGreaterThanOrEqual(plain.lower);
          expect(more.upper).toBeGreaterThanOrEqual(plain.upper);
        }),
        settings,
      );
    });
  });

  it('covers what is claimed: Clopper–Pearson never less, Wilson on average', () => {
    // Coverage computed exactly, not simulated: the binomial probability of all counts whose interval holds p.
    const trials = 30;
    const coverage = (method: Method, p: number): number =>
      Array.from({ length: trials + 1 }, (_, x) => {
        const { lower, upper } = interval(method, x, trials);
        return lower <= p && p <= upper ? Math.exp(binomialLogPmf(x, trials, p)) : 0;
      }).reduce((sum, mass) => sum + mass, 0);
    const chances = Array.from({ length: 99 }, (_, i) => (i + 1) / 100);
    const exact = chances.map((p) => coverage(clopperPearsonInterval, p));
    const score = chances.map((p) => coverage(wilsonInterval, p));
    expect(Math.min(...exact)).toBeGreaterThanOrEqual(0.95);
    expect(Math.abs(score.reduce((a, b) => a + b, 0) / score.length - 0.95)).toBeLessThan(0.01);
    expect(Math.min(...score)).toBeGreaterThan(0.83);
  });

  it('covers in simulated samples as often as the binomial says (Wilson)', () => {
    // 4000 samples of 40 trials at p = 0.3, linear congruential generator with a fixed seed; exact coverage by the sum
    // over counts, four standard errors allowed: 4 * sqrt(0.95 * 0.05 / 4000) = 0.014.
    let state = 7;
    const next = (): number => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return (state + 0.5) / 4294967296;
    };
    const holds = Array.from({ length: 41 }, (_, x) => {
      const { lower, upper } = interval(wilsonInterval, x, 40);
      return lower <= 0.3 && 0.3 <= upper;
    });
    let covered = 0;
    for (let run = 0; run < 4000; run += 1) {
      let successes = 0;
      for (let trial = 0; trial < 40; trial += 1) if (next() < 0.3) successes += 1;
      if (holds[successes]!) covered += 1;
    }
    const expected = holds.reduce(
      (sum, held, x) => sum + (held ? Math.exp(binomialLogPmf(x, 40, 0.3)) : 0),
      0,
    );
    expect(Math.abs(covered / 4000 - expected)).toBeLessThan(0.014);
    expect(Math.abs(covered / 4000 - 0.95)).toBeLessThan(0.02);
  });
});
