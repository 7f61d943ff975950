import fc from 'fast-check';
import { lognormalLogPdf, lognormalSurvival } from '../distributions/lognormal.js';
import { weibullLogPdf, weibullSurvival } from '../distributions/weibull.js';
import { ageReplacementCostRate } from './age-replacement-cost-rate.js';
import { ageReplacement } from './age-replacement.js';
import { integrate } from './integrate.js';
import type { LifeDistribution } from './life-distribution.js';
import type { OptimalAge } from './replacement-costs.js';
import { weibullAgeReplacement } from './weibull-age-replacement.js';

const uniform = (end: number): LifeDistribution => ({
  survival: (t) => Math.max(0, 1 - t / end),
  density: () => 1 / end,
  end,
  typical: end / 2,
});
const weibull = (scale: number, shape: number): LifeDistribution => ({
  survival: (t) => weibullSurvival(t, scale, shape),
  density: (t) => Math.exp(weibullLogPdf(t, scale, shape)),
  end: Infinity,
  typical: scale,
});
function optimal(outcome: ReturnType<typeof ageReplacement>): OptimalAge {
  if (outcome.kind !== 'optimum') throw new Error(outcome.kind);
  return outcome;
}
const relative = (actual: number, expected: number): number => Math.abs(actual / expected - 1);

describe('ageReplacement', () => {
  it('solves the uniform life of Jardine & Tsang', () => {
    // Ch. 2, problem 2 (solutions manual): life uniform up to 40,000 km, planned 100, failure 200; printed .0143 .01
    // .0093 .01. Setting the derivative to 0: t² + 2 · 40000 t − 2 · 40000² = 0, so t = 40000(√3 − 1).
    const costs = { planned: 100, failure: 200 };
    const rates = [10_000, 20_000, 30_000, 40_000].map((t) =>
      ageReplacementCostRate(uniform(40_000), costs, t),
    );
    expect(rates.map((rate) => Number(rate.toFixed(4)))).toEqual([0.0143, 0.01, 0.0093, 0.01]);
    expect(relative(rates[0]!, 1 / 70)).toBeLessThan(1e-12);
    expect(relative(rates[2]!, 0.14 / 15)).toBeLessThan(1e-12);
    const best = optimal(ageReplacement(uniform(40_000), costs));
    expect(relative(best.age, 40_000 * (Math.sqrt(3) - 1))).toBeLessThan(1e-8);
    expect(relative(best.costRate, 0.00933012701892)).toBeLessThan(1e-8);
    expect(relative(best.runToFailureCostRate, 0.01)).toBeLessThan(1e-12);
  });

  it('solves the ten-year example of Ross', () => {
    // Introduction to Probability Models, renewal reward: life uniform over 10 years, 3 for a new one, 0.5 more at
    // failure; printed 9.25 years, exactly −60 + √4800.
    const costs = { planned: 3, failure: 3.5 };
    const best = optimal(ageReplacement(uniform(10), costs));
    expect(relative(best.age, -60 + Math.sqrt(4800))).toBeLessThan(1e-8);
    expect(relative(best.costRate, 0.696410161514)).toBeLessThan(1e-8);
    expect(relative(ageReplacementCostRate(uniform(10), costs, 9.25), 0.69641734758)).toBeLessThan(1e-10);
  });

  it('agrees with the closed form for Weibull lives', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.3, max: 6, noNaN: true }),
        fc.double({ min: 1.5, max: 30, noNaN: true }),
        (shape, failure) => {
          const costs = { planned: 1, failure };
          const closed = optimal(weibullAgeReplacement({ scale: 700, shape }, costs));
          if (closed.failureShare > 0.999) return;
          const general = optimal(ageReplacement(weibull(700, shape), costs));
          expect(relative(general.age, closed.age)).toBeLessThan(1e-6);
          expect(relative(general.costRate, closed.costRate)).toBeLessThan(1e-9);
          expect(relative(general.runToFailureCostRate, closed.runToFailureCostRate)).toBeLessThan(1e-9);
        },
      ),
      { seed: 27, numRuns: 25 },
    );
  });

  it('finds the dip of a hazard that falls again later, and no better age around it', () => {
    const life: LifeDistribution = {
      survival: (t) => (t === 0 ? 1 : lognormalSurvival(t, 4, 0.5)),
      density: (t) => (t === 0 ? 0 : Math.exp(lognormalLogPdf(t, 4, 0.5))),
      end: Infinity,
      typical: Math.exp(4),
    };
    const costs = { planned: 1, failure: 12 };
    const best = optimal(ageReplacement(life, costs));
    for (const factor of [0.5, 0.9, 0.99, 1.01, 1.1, 2, 10]) {
      expect(ageReplacementCostRate(life, costs, best.age * factor)).toBeGreaterThan(best.costRate);
    }
  });

  it('says when no finite age is best', () => {
    const costs = { planned: 1, failure: 5 };
    expect(ageReplacement(weibull(10, 0.8), costs)).toMatchObject({ reason: 'hazardDoesNotRiseEnough' });
    const exponential = ageReplacement(weibull(10, 1), costs);
    expect(exponential).toMatchObject({ kind: 'runToFailure', reason: 'hazardDoesNotRiseEnough' });
    if (exponential.kind === 'runToFailure') expect(relative(exponential.costRate, 0.5)).toBeLessThan(1e-10);
    expect(ageReplacement(uniform(10), { planned: 2, failure: 2 })).toMatchObject({
      reason: 'failureCostsNoMore',
    });
    const immortal: LifeDistribution = { survival: () => 1, density: () => 0, end: Infinity, typical: 1 };
    expect(ageReplacement(immortal, costs)).toMatchObject({ kind: 'notConverged' });
  });

  it('refuses what is no life', () => {
    const costs = { planned: 1, failure: 5 };
    expect(() => ageReplacement({ ...uniform(10), survival: () => 0.5 }, costs)).toThrow(RangeError);
    expect(() => ageReplacement({ ...uniform(10), survival: (t) => 1 + t }, costs)).toThrow(RangeError);
    expect(() => ageReplacement({ ...uniform(10), typical: 11 }, costs)).toThrow(RangeError);
    expect(() => ageReplacement(uniform(10), { planned: 0, failure: 5 })).toThrow(RangeError);
    expect(() => ageReplacementCostRate(uniform(10), costs, 0)).toThrow(RangeError);
  });
});

describe('weibullAgeReplacement', () => {
  // Barlow & Hunter (1960) model; R 4.2.2 by numerical integration and root, SciPy by incomplete gamma and minimiser.
  it.each([
    [2, 1000, 1, 10, 336.451191255, 0.0060561214426, 0.463290211376, 324.175596357, 0.107027420029],
    [3, 10, 1, 5, 5.02609582103, 0.303139670426, 0.458604970332, 4.87217831216, 0.119237631951],
  ])(
    'solves shape %d, scale %d, costs %d and %d',
    (shape, scale, planned, failure, age, rate, saving, cycle, share) => {
      const best = weibullAgeReplacement({ scale, shape }, { planned, failure });
      if (best.kind !== 'optimum') throw new Error(best.kind);
      expect(relative(best.age, age)).toBeLessThan(1e-6);
      expect(relative(best.costRate, rate)).toBeLessThan(1e-9);
      expect(relative(best.saving, saving)).toBeLessThan(1e-9);
      expect(relative(best.meanCycle, cycle)).toBeLessThan(1e-6);
      expect(relative(best.failureShare, share)).toBeLessThan(1e-6);
    },
  );

  it('says when no finite age is best', () => {
    const costs = { planned: 1, failure: 5 };
    expect(weibullAgeReplacement({ scale: 10, shape: 1 }, costs)).toMatchObject({
      kind: 'runToFailure',
      reason: 'hazardDoesNotRiseEnough',
      meanLife: 10,
      costRate: 0.5,
    });
    expect(weibullAgeReplacement({ scale: 10, shape: 3 }, { planned: 5, failure: 5 })).toMatchObject({
      reason: 'failureCostsNoMore',
    });
    expect(weibullAgeReplacement({ scale: 10, shape: 1.01 }, { planned: 4.9, failure: 5 })).toMatchObject({
      reason: 'optimumBeyondAnyLife',
    });
    expect(() => weibullAgeReplacement({ scale: 0, shape: 2 }, costs)).toThrow(RangeError);
  });

  it('replaces earlier the dearer a failure is, scales with the life and beats its neighbours', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.05, max: 10, noNaN: true }),
        fc.double({ min: 1.2, max: 1e4, noNaN: true }),
        (shape, failure) => {
          const best = weibullAgeReplacement({ scale: 1, shape }, { planned: 1, failure });
          if (best.kind !== 'optimum') {
            expect(best).toMatchObject({ reason: 'optimumBeyondAnyLife' });
            return;
          }
          const dearer = weibullAgeReplacement({ scale: 1, shape }, { planned: 1, failure: 2 * failure });
          const longer = weibullAgeReplacement({ scale: 50, shape }, { planned: 1, failure });
          if (dearer.kind !== 'optimum' || longer.kind !== 'optimum') throw new Error('expected optima');
          expect(dearer.age).toBeLessThan(best.age);
          expect(relative(longer.age, 50 * best.age)).toBeLessThan(1e-9);
          expect(best.saving).toBeGreaterThanOrEqual(-1e-12);
          const rate = (1 + (failure - 1) * best.failureShare) / best.meanCycle;
          expect(relative(best.costRate, rate)).toBeLessThan(1e-8);
        },
      ),
      { seed: 28, numRuns: 200 },
    );
  });
});

describe('integrate', () => {
  it('gives integrals known in closed form', () => {
    expect(integrate((x) => x ** 5, 0, 2)).toBeCloseTo(64 / 6, 12);
    expect(integrate(Math.exp, 0, 10)).toBeCloseTo(Math.exp(10) - 1, 8);
    expect(integrate(Math.sqrt, 0, 1)).toBeCloseTo(2 / 3, 11);
    expect(integrate((x) => (x < 0.3 ? 1 : 0), 0, 1)).toBeCloseTo(0.3, 8);
  });
});
