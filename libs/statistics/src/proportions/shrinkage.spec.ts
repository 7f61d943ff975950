import fc from 'fast-check';
import { battingSuccesses, battingTrials } from '../../../../test/oracles/statistics-regression/batting.js';
import { logGamma } from '../distributions/special-functions.js';
import { betaBinomialFit } from './beta-binomial-fit.js';
import { betaBinomialInLogits, exceedancesOf } from './beta-binomial-likelihood.js';
import { betaPosterior } from './beta-posterior.js';
import type { BinomialCount } from './binomial-count.js';
import { jamesSteinProportions, type JamesSteinForm } from './james-stein-proportions.js';
import { jamesSteinShrinkage } from './james-stein-shrinkage.js';

const batters: readonly BinomialCount[] = battingSuccesses.map((successes) => ({
  successes,
  trials: battingTrials,
}));

function drawn(form: JamesSteinForm) {
  const outcome = jamesSteinProportions(batters, form);
  if (outcome.kind !== 'estimated') throw new Error(outcome.kind);
  return outcome;
}
const relative = (actual: number, expected: number): number => Math.abs(actual / expected - 1);

describe('jamesSteinProportions on the batters of Efron & Morris', () => {
  it('gives the arcsine estimates of the 1975 paper', () => {
    const outcome = drawn('arcsine');
    expect(relative(outcome.centre, -3.31656313614)).toBeLessThan(1e-9);
    expect(relative(outcome.spread, 18.962719811)).toBeLessThan(1e-9);
    expect(relative(outcome.factor, 0.208974232098)).toBeLessThan(1e-9);
    expect(outcome.proportions.map((p) => p.toFixed(3))).toEqual(
      '.290 .286 .281 .277 .273 .273 .268 .264 .259 .259 .254 .254 .254 .254 .254 .249 .244 .239'
        .split(' ')
        .map((p) => `0${p}`),
    );
    expect(relative(outcome.proportions[0]!, 0.290127227944)).toBeLessThan(1e-9);
    expect(relative(outcome.proportions[17]!, 0.238700135434)).toBeLessThan(1e-9);
  });

  it('gives the untransformed estimates of the 1977 article', () => {
    const outcome = drawn('untransformed');
    expect(relative(outcome.factor, 0.211653417144)).toBeLessThan(1e-9);
    expect(outcome.proportions.map((p) => p.toFixed(3))).toEqual(
      '.294 .289 .285 .280 .275 .275 .270 .266 .261 .261 .256 .256 .256 .256 .256 .252 .247 .242'
        .split(' ')
        .map((p) => `0${p}`),
    );
    expect(relative(outcome.proportions[0]!, 0.2939138549)).toBeLessThan(1e-9);
  });

  it('names groups it cannot take', () => {
    const equal = { successes: 1, trials: 4 };
    expect(jamesSteinProportions([equal, equal, equal], 'arcsine')).toMatchObject({ of: 'groups', got: 3 });
    expect(jamesSteinProportions([equal, equal, equal, { successes: 1, trials: 5 }], 'arcsine')).toEqual({
      kind: 'unequalTrials',
      fewest: 4,
      most: 5,
    });
    const none = { successes: 0, trials: 4 };
    expect(jamesSteinProportions([none, none, none, none], 'untransformed')).toEqual({
      kind: 'allAlike',
      proportion: 0,
    });
    const empty = { successes: 0, trials: 0 };
    expect(jamesSteinProportions([empty, empty, empty, empty], 'arcsine')).toMatchObject({ of: 'trials' });
  });
});

describe('jamesSteinShrinkage', () => {
  it('agrees with four values worked by hand', () => {
    // 0 0 2 2 with variance 1: mean 1, V = 4, factor 1 − 1/4.
    expect(jamesSteinShrinkage([0, 0, 2, 2], 1)).toEqual({
      kind: 'estimated',
      centre: 1,
      spread: 4,
      factor: 0.75,
      values: [0.25, 0.25, 1.75, 1.75],
    });
  });

  it('draws all the way where chance explains the differences', () => {
    expect(jamesSteinShrinkage([0, 0, 1, 1], 1)).toMatchObject({ factor: 0, values: [0.5, 0.5, 0.5, 0.5] });
    expect(jamesSteinShrinkage([3, 3, 3, 3], 1)).toMatchObject({ spread: 0, factor: 0 });
    expect(jamesSteinShrinkage([1, 2, 3], 1)).toMatchObject({ kind: 'insufficientData', needed: 4 });
    expect(() => jamesSteinShrinkage([1, 2, 3, 4], 0)).toThrow(RangeError);
  });

  it('keeps the order and the mean, and follows shift and scale', () => {
    const numbers = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 4, maxLength: 20 });
    fc.assert(
      fc.property(numbers, fc.integer({ min: -9, max: 9 }), (values, shift) => {
        const plain = jamesSteinShrinkage(values, 20);
        const moved = jamesSteinShrinkage(
          values.map((value) => 3 * value + shift),
          180,
        );
        if (plain.kind !== 'estimated' || moved.kind !== 'estimated') throw new Error('expected estimates');
        expect(plain.factor).toBeGreaterThanOrEqual(0);
        expect(plain.factor).toBeLessThan(1);
        plain.values.forEach((value, i) => expect(moved.values[i]!).toBeCloseTo(3 * value + shift, 9));
        expect(plain.values.reduce((a, b) => a + b, 0)).toBeCloseTo(
          values.reduce((a, b) => a + b, 0),
          8,
        );
      }),
      { seed: 18, numRuns: 200 },
    );
  });
});

describe('betaBinomialFit', () => {
  it('finds the maximum for the batters', () => {
    const fit = betaBinomialFit(batters);
    if (fit.kind !== 'estimated') throw new Error(fit.kind);
    // R 4.2.2, nlm on the log-likelihood (generate.R). The maximum is flat: relative 1e-4 for the pair.
    expect(relative(fit.alpha, 210.550881554)).toBeLessThan(1e-4);
    expect(relative(fit.beta, 582.686126)).toBeLessThan(1e-4);
    expect(relative(fit.mean, 0.265432499428)).toBeLessThan(1e-6);
    expect(Math.abs(fit.logLikelihood - -468.702491221)).toBeLessThan(1e-6);
    const best = betaPosterior(fit, batters[0]!);
    expect(relative(best.mean, 0.272656634692)).toBeLessThan(1e-6);
    expect(relative(best.interval.lower, 0.24305233179)).toBeLessThan(1e-6);
    expect(relative(best.interval.upper, 0.303288448516)).toBeLessThan(1e-6);
  });

  it('has the log-likelihood of the beta function form', () => {
    // ln B(α + y, β + n − y) − ln B(α, β), summed by the gamma function instead of the products used inside.
    const logBeta = (a: number, b: number): number => logGamma(a) + logGamma(b) - logGamma(a + b);
    const groups = [
      { successes: 2, trials: 9 },
      { successes: 7, trials: 8 },
      { successes: 0, trials: 3 },
      { successes: 1, trials: 1 },
    ];
    const direct = (logit: number, logSpread: number): number => {
      const mean = 1 / (1 + Math.exp(-logit));
      const [a, b] = [mean / Math.exp(logSpread), (1 - mean) / Math.exp(logSpread)];
      return groups.reduce(
        (sum, { successes: y, trials: n }) => sum + logBeta(a + y, b + n - y) - logBeta(a, b),
        0,
      );
    };
    const counts = exceedancesOf(groups);
    for (const at of <readonly (readonly [number, number])[]>[
      [0.3, -1],
      [-1, 0.5],
      [2, -2],
    ]) {
      const { value, gradient, hessian } = betaBinomialInLogits(counts, at);
      expect(value).toBeCloseTo(direct(...at), 10);
      const h = 1e-4;
      const shifted = (i: number, by: number): [number, number] => [
        at[0] + (i === 0 ? by : 0),
        at[1] + (i === 1 ? by : 0),
      ];
      for (const i of [0, 1]) {
        const slope = (direct(...shifted(i, h)) - direct(...shifted(i, -h))) / (2 * h);
        expect(gradient[i]!).toBeCloseTo(slope, 6);
        const up = betaBinomialInLogits(counts, shifted(i, h)).gradient;
        const down = betaBinomialInLogits(counts, shifted(i, -h)).gradient;
        for (const j of [0, 1]) expect(hessian[i]![j]!).toBeCloseTo((up[j]! - down[j]!) / (2 * h), 6);
      }
    }
  });

  it('is the highest of the points around it, for any groups', () => {
    const group = fc
      .integer({ min: 0, max: 12 })
      .chain((trials) =>
        fc.record({ successes: fc.integer({ min: 0, max: trials }), trials: fc.constant(trials) }),
      );
    const kinds = new Set<string>();
    fc.assert(
      fc.property(fc.array(group, { minLength: 2, maxLength: 12 }), (groups) => {
        const fit = betaBinomialFit(groups);
        kinds.add(fit.kind);
        expect(fit.kind).not.toBe('notConverged');
        if (fit.kind !== 'estimated') return;
        const counts = exceedancesOf(groups);
        const logit = Math.log(fit.alpha / fit.beta);
        const logSpread = -Math.log(fit.alpha + fit.beta);
        for (const [du, dv] of [
          [0.1, 0],
          [-0.1, 0],
          [0, 0.1],
          [0, -0.1],
          [1, 1],
          [-2, -3],
        ] as const) {
          const other = betaBinomialInLogits(counts, [logit + du, logSpread + dv]).value;
          expect(other).toBeLessThanOrEqual(fit.logLikelihood + 1e-9);
        }
      }),
      { seed: 19, numRuns: 300 },
    );
    expect(kinds).toContain('estimated');
    expect(kinds).toContain('noExtraVariation');
  });

  it('names what has no maximum inside', () => {
    expect(betaBinomialFit([{ successes: 1, trials: 3 }])).toMatchObject({
      kind: 'insufficientData',
      needed: 2,
      got: 1,
    });
    expect(
      betaBinomialFit([
        { successes: 1, trials: 1 },
        { successes: 0, trials: 1 },
      ]),
    ).toMatchObject({ of: 'groupsOfTwoOrMoreTrials', got: 0 });
    expect(
      betaBinomialFit([
        { successes: 5, trials: 5 },
        { successes: 0, trials: 5 },
      ]),
    ).toEqual({ kind: 'allOrNothing', proportion: 0.5 });
    expect(
      betaBinomialFit([
        { successes: 5, trials: 10 },
        { successes: 5, trials: 10 },
      ]),
    ).toEqual({ kind: 'noExtraVariation', proportion: 0.5 });
    expect(
      betaBinomialFit([
        { successes: 4, trials: 4 },
        { successes: 5, trials: 5 },
      ]),
    ).toEqual({ kind: 'allAlike', proportion: 1 });
  });
});

describe('betaPosterior', () => {
  it('adds successes and failures to the prior', () => {
    expect(betaPosterior({ alpha: 1, beta: 1 }, { successes: 3, trials: 4 })).toMatchObject({
      alpha: 4,
      beta: 2,
      mean: 2 / 3,
    });
    // Beta(1, 1) is uniform: the middle 90 % runs from 0.05 to 0.95.
    const { interval } = betaPosterior({ alpha: 1, beta: 1 }, { successes: 0, trials: 0 }, 0.9);
    expect(interval.lower).toBeCloseTo(0.05, 12);
    expect(interval.upper).toBeCloseTo(0.95, 12);
    expect(() => betaPosterior({ alpha: 0, beta: 1 }, { successes: 0, trials: 0 })).toThrow(RangeError);
  });

  it('has a mean between the prior mean and the observed share', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 1, max: 60 }),
        fc.nat(60),
        (alpha, beta, trials, raw) => {
          const successes = Math.min(raw, trials);
          const { mean, interval } = betaPosterior({ alpha, beta }, { successes, trials });
          const [low, high] = [alpha / (alpha + beta), successes / trials].toSorted((a, b) => a - b);
          expect(mean).toBeGreaterThanOrEqual(low! - 1e-12);
          expect(mean).toBeLessThanOrEqual(high! + 1e-12);
          expect(interval.lower).toBeLessThan(interval.upper);
        },
      ),
      { seed: 20, numRuns: 200 },
    );
  });
});
