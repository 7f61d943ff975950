import fc from 'fast-check';
import { meanInterval } from './mean-interval.js';

const ofTwoOrMore = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), {
  minLength: 2,
  maxLength: 30,
});

describe('meanInterval', () => {
  it('gives the interval worked by hand', () => {
    // 1 and 3: mean 2, s = √2, s / √2 = 1. With one degree of freedom t is a Cauchy variable, whose quartile is tan(π/4) = 1,
    // so the 50 % interval is 2 ± 1.
    const found = meanInterval([1, 3], 0.5);
    if (found.kind !== 'estimated') throw new Error(found.kind);
    expect(found.interval.lower).toBeCloseTo(1, 12);
    expect(found.interval.upper).toBeCloseTo(3, 12);
  });

  it('keeps the certified digits of three numbers that differ in their eighth (NIST StRD NumAcc1)', () => {
    const found = meanInterval([10000001, 10000003, 10000002]);
    expect(found).toMatchObject({ kind: 'estimated', mean: 10000002, standardError: 1 / Math.sqrt(3) });
  });

  it('moves with a shift and stretches with a scale, in any order', () => {
    fc.assert(
      fc.property(ofTwoOrMore, fc.double({ min: 0.1, max: 10, noNaN: true }), (values, scale) => {
        const [plain, moved] = [
          meanInterval(values),
          meanInterval(values.map((x) => 5 + scale * x).reverse()),
        ];
        if (plain.kind !== 'estimated' || moved.kind !== 'estimated') throw new Error('not estimated');
        const width = 1e-9 * (1 + Math.max(...values.map(Math.abs)) * scale);
        expect(Math.abs(moved.interval.lower - (5 + scale * plain.interval.lower))).toBeLessThan(width);
        expect(Math.abs(moved.interval.upper - (5 + scale * plain.interval.upper))).toBeLessThan(width);
      }),
      { seed: 3, numRuns: 100 },
    );
  });

  it('has no width for equal values, no answer for one, and refuses what is no level', () => {
    expect(meanInterval([4, 4, 4])).toMatchObject({ mean: 4, interval: { lower: 4, upper: 4 } });
    expect(meanInterval([4])).toEqual({ kind: 'insufficientData', of: 'values', needed: 2, got: 1 });
    expect(() => meanInterval([1, 2], 1)).toThrow(RangeError);
    expect(() => meanInterval([1, NaN])).toThrow(RangeError);
  });
});
