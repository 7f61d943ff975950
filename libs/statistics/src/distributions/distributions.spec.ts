import fc from 'fast-check';
import { distributionValues } from '../../../../test/oracles/statistics-survival/distribution-values.js';
import * as statistics from '../index.js';

type Call = (...args: readonly number[]) => number;
const functions = statistics as unknown as Readonly<Record<string, Call>>;

const families = [...new Set(distributionValues.map(([name]) => name))];

/**
 * Relative tolerance 2e-12; logarithms and quantiles near zero are held to the same absolute error. The binomial
 * logarithm subtracts log-gamma values of up to 5e5, which costs three more digits.
 */
const toleranceOf = (name: string): number => (name === 'binomialLogPmf' ? 1e-9 : 2e-12);

describe.each(families)('%s', (name) => {
  it('agrees with arbitrary-precision arithmetic to its tolerance', () => {
    const failures = distributionValues
      .filter(([family]) => family === name)
      .map(([, args, expected]) => ({ args, expected, actual: functions[name]!(...args) }))
      .filter(({ expected, actual }) => {
        const scale =
          name.includes('Log') || name.startsWith('log')
            ? Math.max(1, Math.abs(expected))
            : Math.abs(expected);
        return !(Math.abs(actual - expected) <= toleranceOf(name) * scale);
      });
    expect(failures).toEqual([]);
  });
});

describe('printed tables', () => {
  // NIST/SEMATECH e-Handbook 1.3.6.7.2 (t), 1.3.6.7.3 (F) and 1.3.6.7.4 (chi-square), to the printed digits.
  it('gives the quantiles of the handbook', () => {
    expect(statistics.studentTQuantile(0.975, 16)).toBeCloseTo(2.12, 3);
    expect(statistics.studentTQuantile(0.995, 16)).toBeCloseTo(2.921, 3);
    expect(statistics.chiSquareQuantile(0.95, 10)).toBeCloseTo(18.307, 3);
    expect(statistics.chiSquareQuantile(0.025, 20)).toBeCloseTo(9.591, 3);
    expect(statistics.fQuantile(0.95, 3, 8)).toBeCloseTo(4.066, 3);
  });
});

describe('tails and ends', () => {
  it('keeps the digits of a tail far out, where one minus the distribution function has none', () => {
    expect(statistics.normalSurvival(20)).toBeCloseTo(2.7536241186062337e-89, 100);
    expect(statistics.normalSurvival(20) / 2.7536241186062337e-89).toBeCloseTo(1, 12);
    // Poisson: the chance of more than 60 with mean 1 is e⁻¹ (1/61! + 1/62! + …).
    const tail = Math.exp(-1 - statistics.logGamma(62)) * (1 + 1 / 62 + 1 / (62 * 63) + 1 / (62 * 63 * 64));
    expect(statistics.poissonSurvival(60, 1) / tail).toBeCloseTo(1, 6);
    // Binomial: all of 40 tries succeed with chance 0.1.
    expect(statistics.binomialSurvival(39, 40, 0.1) / 1e-40).toBeCloseTo(1, 10);
  });

  it('has the normal quantile of every probability that is a number (qnorm of R 4.2.2)', () => {
    const expected = [
      [10 ** -12.5, -7.1932961493285363],
      [1e-14, -7.6506280929352677],
      [1e-17, -8.4937932241096004],
      [1e-20, -9.2623400897984052],
      [1e-100, -21.2734535609653186],
      [1e-300, -37.0470962993612],
      [Number.MIN_VALUE, -38.46740561714434],
    ] as const;
    for (const [probability, quantile] of expected) {
      expect(statistics.normalQuantile(probability) / quantile).toBeCloseTo(1, 13);
    }
    expect(statistics.normalQuantile(1 - Number.EPSILON)).toBeCloseTo(8.1258906647019, 9);
    expect(statistics.poissonQuantile(1e-300, 2)).toBe(0);
  });

  it('answers at the ends of the axis', () => {
    expect([statistics.normalCdf(-Infinity), statistics.normalCdf(Infinity)]).toEqual([0, 1]);
    expect([statistics.studentTCdf(-Infinity, 3), statistics.studentTCdf(Infinity, 3)]).toEqual([0, 1]);
    expect([statistics.gammaCdf(-1, 2, 1), statistics.gammaCdf(Infinity, 2, 1)]).toEqual([0, 1]);
    expect([statistics.betaCdf(-1, 2, 1), statistics.betaCdf(2, 2, 1)]).toEqual([0, 1]);
    expect([statistics.fCdf(-1, 2, 1), statistics.fCdf(Infinity, 2, 1)]).toEqual([0, 1]);
    expect([statistics.lognormalCdf(0, 2, 1), statistics.lognormalSurvival(0, 2, 1)]).toEqual([0, 1]);
    expect([statistics.normalQuantile(0), statistics.normalQuantile(1)]).toEqual([-Infinity, Infinity]);
    expect([statistics.studentTQuantile(0, 4), statistics.studentTQuantile(1, 4)]).toEqual([
      -Infinity,
      Infinity,
    ]);
    expect([statistics.chiSquareQuantile(0, 4), statistics.chiSquareQuantile(1, 4)]).toEqual([0, Infinity]);
    expect([statistics.betaQuantile(0, 4, 2), statistics.betaQuantile(1, 4, 2)]).toEqual([0, 1]);
    expect([statistics.poissonQuantile(0, 4), statistics.poissonQuantile(1, 4)]).toEqual([0, Infinity]);
    expect([statistics.binomialQuantile(0, 4, 0.5), statistics.binomialQuantile(1, 4, 0.5)]).toEqual([0, 4]);
  });

  it.each([
    ['normalCdf', [NaN]],
    ['normalCdf', [0, 0, 0]],
    ['normalQuantile', [1.1]],
    ['studentTCdf', [0, 0]],
    ['chiSquareQuantile', [0.5, -1]],
    ['gammaCdf', [1, 2, 0]],
    ['betaCdf', [NaN, 1, 1]],
    ['betaQuantile', [0.5, 0, 1]],
    ['fQuantile', [0.5, 1, NaN]],
    ['weibullCdf', [1, 0, 1]],
    ['lognormalCdf', [1, NaN, 1]],
    ['exponentialCdf', [1, -1]],
    ['poissonCdf', [1, -1]],
    ['poissonLogPmf', [1.5, 1]],
    ['binomialCdf', [1, 2.5, 0.5]],
    ['binomialLogPmf', [1, 2, 1.5]],
    ['logGamma', [0]],
    ['digamma', [-1]],
    ['regularisedBeta', [2, 1, 1]],
  ] as const)('refuses %s(%j)', (name, args) => {
    expect(() => functions[name]!(...args)).toThrow(RangeError);
  });
});

describe('properties', () => {
  const probability = fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true });
  const positive = fc.double({ min: 0.05, max: 2000, noNaN: true });
  const options = { seed: 5, numRuns: 300 };

  it('has quantiles that undo the distribution functions', () => {
    fc.assert(
      fc.property(probability, positive, positive, (p, a, b) => {
        const close = (value: number): boolean => Math.abs(value - p) <= 1e-9 * p + 1e-12;
        expect(close(statistics.normalCdf(statistics.normalQuantile(p)))).toBe(true);
        expect(close(statistics.studentTCdf(statistics.studentTQuantile(p, a + 0.5), a + 0.5))).toBe(true);
        const x = statistics.gammaQuantile(p, a, b);
        if (x > 1e-290) expect(close(statistics.gammaCdf(x, a, b))).toBe(true);
        expect(close(statistics.weibullCdf(statistics.weibullQuantile(p, a, 1.5), a, 1.5))).toBe(true);
      }),
      options,
    );
  });

  it('has lower and upper tails that add to one', () => {
    fc.assert(
      fc.property(positive, positive, positive, (x, a, b) => {
        expect(statistics.gammaCdf(x, a, 1) + statistics.gammaSurvival(x, a, 1)).toBeCloseTo(1, 11);
        expect(statistics.fCdf(x, a, b) + statistics.fSurvival(x, a, b)).toBeCloseTo(1, 11);
        const share = x / (x + a);
        expect(statistics.betaCdf(share, a, b) + statistics.betaSurvival(share, a, b)).toBeCloseTo(1, 11);
      }),
      options,
    );
  });

  it('gives discrete quantiles that are the first count to reach the probability', () => {
    fc.assert(
      fc.property(probability, fc.double({ min: 0.01, max: 500, noNaN: true }), (p, mean) => {
        const k = statistics.poissonQuantile(p, mean);
        expect(statistics.poissonCdf(k, mean)).toBeGreaterThanOrEqual(p * (1 - 1e-13));
        if (k > 0) expect(statistics.poissonCdf(k - 1, mean)).toBeLessThan(p);
      }),
      options,
    );
  });
});
