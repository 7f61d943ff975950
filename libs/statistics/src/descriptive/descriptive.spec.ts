import fc from 'fast-check';
import { compensatedSum } from './compensated-sum.js';
import { mean } from './mean.js';
import { median, sampleQuantile } from './sample-quantile.js';
import { sampleVariance } from './sample-variance.js';

// JCGM 100:2008 (GUM) 4.4.3, table 1: twenty temperatures; the guide prints mean 100.145, s 1.489, s(mean) 0.333.
const gumTable1 = [
  96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95,
  101.11, 101.2, 101.57, 101.84, 102.36, 102.72,
];

const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const values = fc.array(value, { minLength: 2, maxLength: 60 });
const options = { seed: 11, numRuns: 200 };

const varianceOf = (numbers: readonly number[]): number => {
  const outcome = sampleVariance(numbers);
  if (outcome.kind !== 'estimated') throw new Error(outcome.kind);
  return outcome.variance;
};

const quantileOf = (numbers: readonly number[], p: number): number => {
  const outcome = sampleQuantile(numbers, p);
  if (outcome.kind !== 'estimated') throw new Error(outcome.kind);
  return outcome.quantile;
};

describe('descriptive statistics', () => {
  it('gives mean and standard deviation of GUM table 1', () => {
    const outcome = sampleVariance(gumTable1);
    expect(outcome).toMatchObject({ kind: 'estimated', count: 20 });
    if (outcome.kind !== 'estimated') return;
    expect(outcome.mean).toBeCloseTo(100.145, 12);
    expect(outcome.standardDeviation).toBeCloseTo(1.48884448306, 11);
    expect(outcome.standardDeviation / Math.sqrt(20)).toBeCloseTo(0.332915747205, 11);
  });

  it('gives quantiles of type 7 as worked by hand', () => {
    // Sorted 1 2 4 8: position (4 − 1) · 0.4 = 1.2, so 2 + 0.2 · (4 − 2) = 2.4; median (2 + 4) / 2.
    expect(sampleQuantile([8, 1, 4, 2], 0.4)).toEqual({
      kind: 'estimated',
      quantile: 2.4000000000000004,
      count: 4,
    });
    expect(median([8, 1, 4, 2])).toEqual({ kind: 'estimated', quantile: 3, count: 4 });
    expect(median([7])).toEqual({ kind: 'estimated', quantile: 7, count: 1 });
  });

  it('says what is missing instead of guessing', () => {
    expect(compensatedSum([])).toBe(0);
    expect(mean([])).toEqual({ kind: 'insufficientData', of: 'values', needed: 1, got: 0 });
    expect(sampleVariance([5])).toEqual({ kind: 'insufficientData', of: 'values', needed: 2, got: 1 });
    expect(median([])).toEqual({ kind: 'insufficientData', of: 'values', needed: 1, got: 0 });
  });

  it('refuses numbers that are not finite', () => {
    expect(() => compensatedSum([1, NaN])).toThrow(RangeError);
    expect(() => mean([Infinity])).toThrow(RangeError);
    expect(() => sampleQuantile([1], 1.5)).toThrow(RangeError);
    expect(() => sampleQuantile([NaN], 0.5)).toThrow(RangeError);
  });

  it('sums exactly where plain addition loses the small numbers', () => {
    // A thousand eighths beside 1e16, where plain addition rounds each of them away.
    const numbers = [1e16, ...Array.from({ length: 1000 }, () => 0.125), -1e16];
    expect(compensatedSum(numbers)).toBe(125);
  });

  it('does not depend on order, and follows shift and scale', () => {
    fc.assert(
      fc.property(
        values,
        value,
        fc.double({ min: 0.001, max: 1000, noNaN: true }),
        (numbers, shift, scale) => {
          const reversed = [...numbers].reverse();
          const spread = 1e-9 * (1 + varianceOf(numbers));
          expect(Math.abs(varianceOf(reversed) - varianceOf(numbers))).toBeLessThanOrEqual(spread);
          const moved = numbers.map((x) => scale * x + shift);
          const tolerance = 1e-9 * (1e12 + scale * scale * 1e12);
          expect(Math.abs(varianceOf(moved) - scale * scale * varianceOf(numbers))).toBeLessThan(tolerance);
          expect(quantileOf(reversed, 0.3)).toBe(quantileOf(numbers, 0.3));
          const movedQuantile = scale * quantileOf(numbers, 0.3) + shift;
          expect(Math.abs(quantileOf(moved, 0.3) - movedQuantile)).toBeLessThan(1e-9 * (2e6 + scale * 1e6));
        },
      ),
      options,
    );
  });

  it('has quantiles that never fall as the probability grows', () => {
    fc.assert(
      fc.property(
        values,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (v, p, q) => {
          expect(quantileOf(v, Math.min(p, q))).toBeLessThanOrEqual(quantileOf(v, Math.max(p, q)));
          expect(quantileOf(v, 0) - Math.min(...v)).toBeCloseTo(0, 300);
          expect(quantileOf(v, 1) - Math.max(...v)).toBeCloseTo(0, 300);
        },
      ),
      options,
    );
  });
});
