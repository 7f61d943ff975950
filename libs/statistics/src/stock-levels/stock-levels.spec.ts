import fc from 'fast-check';
import { intermittentDemand } from '../../../../test/oracles/statistics-regression/intermittent-demand.js';
import { poissonLogPmf } from '../distributions/poisson.js';
import { croston } from './croston.js';
import { expectedBackorders } from './expected-backorders.js';
import { newsvendorNormal } from './newsvendor-normal.js';
import { newsvendorPoisson, newsvendorPoissonCost } from './newsvendor-poisson.js';
import { poissonBaseStock } from './poisson-base-stock.js';
import { syntetosBoylan } from './syntetos-boylan.js';

const relative = (actual: number, expected: number): number => Math.abs(actual / expected - 1);

describe('poissonBaseStock', () => {
  // R 4.2.2 qpois (generate.R): levels for cycle service of 90, 95 and 99 %.
  it.each([
    [0.5, [1, 2, 3]],
    [1, [2, 3, 4]],
    [2, [4, 5, 6]],
    [4.2, [7, 8, 10]],
  ])('finds the levels for a mean of %d', (mean, levels) => {
    expect([0.9, 0.95, 0.99].map((target) => poissonBaseStock(mean, target, 'cycleService'))).toMatchObject(
      levels.map((level) => ({ kind: 'found', level })),
    );
    // The ready rate looks one piece lower, so it needs one more.
    expect([0.9, 0.95, 0.99].map((target) => poissonBaseStock(mean, target, 'readyRate'))).toMatchObject(
      levels.map((level) => ({ kind: 'found', level: level + 1 })),
    );
  });

  it('names its measure and the service reached', () => {
    // Mean 1: P(D ≤ 2) = e⁻¹ · 2.5 = 0.9196986; P(D ≤ 3) = e⁻¹ · 8/3 = 0.9810118.
    const cycle = poissonBaseStock(1, 0.9, 'cycleService');
    const ready = poissonBaseStock(1, 0.95, 'readyRate');
    if (cycle.kind !== 'found' || ready.kind !== 'found') throw new Error('expected levels');
    expect(cycle.measure).toBe('cycleService');
    expect(cycle.service).toBeCloseTo(2.5 / Math.E, 13);
    expect(ready).toMatchObject({ measure: 'readyRate', level: 4 });
    expect(ready.service).toBeCloseTo(8 / 3 / Math.E, 13);
  });

  it('states what happens at the edges', () => {
    expect(poissonBaseStock(2, 1, 'cycleService')).toEqual({ kind: 'unattainable', target: 1 });
    expect(poissonBaseStock(0, 1, 'cycleService')).toMatchObject({
      level: 0,
      service: 1,
      expectedBackorders: 0,
    });
    expect(poissonBaseStock(0, 0.5, 'readyRate')).toMatchObject({ level: 1, service: 1 });
    expect(poissonBaseStock(2, 0, 'readyRate')).toMatchObject({
      level: 0,
      service: 0,
      expectedBackorders: 2,
    });
    expect(() => poissonBaseStock(-1, 0.5, 'readyRate')).toThrow(RangeError);
    expect(() => poissonBaseStock(1, 1.1, 'readyRate')).toThrow(RangeError);
  });

  it('is the smallest level that reaches the target', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 60, noNaN: true }),
        fc.double({ min: 0.01, max: 0.9999, noNaN: true }),
        (mean, target) => {
          const found = poissonBaseStock(mean, target, 'cycleService');
          if (found.kind !== 'found') throw new Error(found.kind);
          const cdf = (most: number): number =>
            Array.from({ length: most + 1 }, (_, k) => Math.exp(poissonLogPmf(k, mean))).reduce(
              (a, b) => a + b,
              0,
            );
          expect(cdf(found.level)).toBeGreaterThanOrEqual(target - 1e-12);
          if (found.level > 0) expect(cdf(found.level - 1)).toBeLessThan(target + 1e-12);
        },
      ),
      { seed: 32, numRuns: 150 },
    );
  });
});

describe('expectedBackorders', () => {
  // R 4.2.2, direct sums (generate.R).
  it.each([
    [0, 1, 1],
    [1, 1, 0.367879441171],
    [2, 1, 0.103638323514],
    [3, 1, 0.0233369264429],
    [8, 1, 1.24757589089e-6],
    [1, 2, 1.135335283236613],
    [8, 2, 0.000293859309628],
    [3, 4.2, 1.50321056331],
    [8, 4.2, 0.045104499191],
    [8, 0.5, 3.61453234386e-9],
  ])('agrees at level %d for a mean of %d', (level, mean, expected) => {
    expect(relative(expectedBackorders(level, mean), expected)).toBeLessThan(1e-9);
  });

  it('falls by the chance of running out with each further piece', () => {
    // E(D − S)⁺ − E(D − S − 1)⁺ = P(D > S): for mean 1 from level 0 to 1, 1 − e⁻¹.
    expect(expectedBackorders(0, 1) - expectedBackorders(1, 1)).toBeCloseTo(1 - 1 / Math.E, 14);
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 300, noNaN: true }), fc.nat(300), (mean, level) => {
        const drop = expectedBackorders(level, mean) - expectedBackorders(level + 1, mean);
        const beyond = Array.from({ length: level + 1 }, (_, k) => Math.exp(poissonLogPmf(k, mean)));
        expect(drop).toBeCloseTo(1 - beyond.reduce((a, b) => a + b, 0), 9);
      }),
      { seed: 33, numRuns: 150 },
    );
    expect(expectedBackorders(5, 0)).toBe(0);
    expect(() => expectedBackorders(0.5, 1)).toThrow(RangeError);
    expect(() => expectedBackorders(1, -1)).toThrow(RangeError);
  });
});

describe('newsvendor', () => {
  it('solves examples 4.1, 4.3 and 4.4 of Snyder & Shen (normal)', () => {
    const costs = { over: 0.18, under: 0.7 };
    const day = newsvendorNormal(costs, 50, 8);
    expect(relative(day.level, 56.6039559274)).toBeLessThan(1e-8);
    expect(relative(day.expectedCost, 1.9976051932)).toBeLessThan(1e-8);
    const leadTime = newsvendorNormal(costs, 250, 8 * Math.sqrt(5));
    expect(relative(leadTime.level, 264.766894374)).toBeLessThan(1e-8);
    expect(relative(leadTime.expectedCost, 4.46678100415)).toBeLessThan(1e-8);
  });

  it('solves example 4.7 of Snyder & Shen (Poisson)', () => {
    const costs = { over: 1, under: 4 };
    const six = newsvendorPoisson(costs, 6);
    expect(six).toMatchObject({ level: 8, criticalRatio: 0.8 });
    expect(relative(six.expectedCost, 3.5701069458)).toBeLessThan(1e-8);
    expect(relative(newsvendorPoissonCost(costs, 6, 5), 6.5902960246)).toBeLessThan(1e-8);
    const fifty = newsvendorPoisson({ over: 0.18, under: 0.7 }, 50);
    expect(fifty.level).toBe(56);
    expect(relative(fifty.expectedCost, 1.7972352118)).toBeLessThan(1e-8);
  });

  it('agrees with a Poisson mean of 1 worked by hand', () => {
    // over 1, under 1: ratio 1/2; P(0) = 0.37, P(≤ 1) = 0.74, so level 1. Cost E|1 − D| = 2 · P(D = 0) = 2/e.
    const found = newsvendorPoisson({ over: 1, under: 1 }, 1);
    expect(found.level).toBe(1);
    expect(found.expectedCost).toBeCloseTo(2 / Math.E, 13);
  });

  it('is not beaten by a neighbouring level, and rises with the cost of being short', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 80, noNaN: true }),
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        (mean, under) => {
          const costs = { over: 1, under };
          const { level, expectedCost } = newsvendorPoisson(costs, mean);
          expect(newsvendorPoissonCost(costs, mean, level + 1)).toBeGreaterThanOrEqual(expectedCost - 1e-9);
          if (level > 0) {
            expect(newsvendorPoissonCost(costs, mean, level - 1)).toBeGreaterThanOrEqual(expectedCost - 1e-9);
          }
          expect(newsvendorPoisson({ over: 1, under: 2 * under }, mean).level).toBeGreaterThanOrEqual(level);
        },
      ),
      { seed: 34, numRuns: 150 },
    );
  });

  it('states what happens at the edges', () => {
    expect(newsvendorNormal({ over: 1, under: 3 }, 5, 0)).toMatchObject({ level: 5, expectedCost: 0 });
    expect(newsvendorPoisson({ over: 1, under: 3 }, 0)).toMatchObject({ level: 0, expectedCost: 0 });
    expect(() => newsvendorNormal({ over: 0, under: 3 }, 5, 1)).toThrow(RangeError);
    expect(() => newsvendorNormal({ over: 1, under: 3 }, 5, -1)).toThrow(RangeError);
    expect(() => newsvendorPoisson({ over: 1, under: Infinity }, 5)).toThrow(RangeError);
    expect(() => newsvendorPoisson({ over: 1, under: 2 }, -5)).toThrow(RangeError);
  });
});

describe('croston and syntetosBoylan', () => {
  it.each([
    [0.1, 2.7502538401, 2.79328007, 0.984596521358, 0.93536669529],
    [0.2, 2.5743975424, 3.03437312, 0.848411662176, 0.763570495958],
  ])('agree on productC with smoothing %d', (smoothing, size, interval, perPeriod, corrected) => {
    // Hyndman & Athanasopoulos, FPP2; forecast 8.20 and a transcription in R agree (generate.R).
    const plain = croston(intermittentDemand, smoothing);
    const unbiased = syntetosBoylan(intermittentDemand, smoothing);
    if (plain.kind !== 'estimated' || unbiased.kind !== 'estimated') throw new Error('expected forecasts');
    expect(plain.demands).toBe(11);
    expect(relative(plain.size, size)).toBeLessThan(1e-9);
    expect(relative(plain.interval, interval)).toBeLessThan(1e-9);
    expect(relative(plain.perPeriod, perPeriod)).toBeLessThan(1e-9);
    expect(relative(unbiased.perPeriod, corrected)).toBeLessThan(1e-9);
  });

  it('agree with a series worked by hand', () => {
    // 0 0 6 0 2 0 0, smoothing ½: sizes 6, 2 → 4; intervals 3, 2 → 2.5; 1.6 per period, corrected 1.2.
    expect(croston([0, 0, 6, 0, 2, 0, 0], 0.5)).toMatchObject({
      size: 4,
      interval: 2.5,
      perPeriod: 1.6,
      demands: 2,
    });
    const corrected = syntetosBoylan([0, 0, 6, 0, 2, 0, 0], 0.5);
    if (corrected.kind !== 'estimated') throw new Error(corrected.kind);
    expect(corrected.perPeriod).toBeCloseTo(1.2, 14);
  });

  it('do not notice the periods after the last demand, and scale with the sizes', () => {
    const series = fc.array(fc.nat(5), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(series, fc.nat(5), (demand, quiet) => {
        const plain = croston(demand, 0.3);
        expect(croston([...demand, ...Array.from({ length: quiet }, () => 0)], 0.3)).toEqual(plain);
        const scaled = croston(
          demand.map((size) => 8 * size),
          0.3,
        );
        if (plain.kind !== 'estimated' || scaled.kind !== 'estimated') {
          expect(scaled).toEqual(plain);
          return;
        }
        expect(scaled.perPeriod).toBeCloseTo(8 * plain.perPeriod, 10);
      }),
      { seed: 35, numRuns: 150 },
    );
  });

  it('need one period with demand', () => {
    const none = { kind: 'insufficientData', of: 'periodsWithDemand', needed: 1, got: 0 };
    expect(croston([0, 0], 0.1)).toEqual(none);
    expect(syntetosBoylan([], 0.1)).toEqual(none);
    expect(() => croston([1], 0)).toThrow(RangeError);
    expect(() => croston([-1], 0.1)).toThrow(RangeError);
  });
});
