import fc from 'fast-check';
import { genfan } from '../../../../test/oracles/statistics-survival/genfan.js';
import { nistWeibull } from '../../../../test/oracles/statistics-survival/nist-weibull.js';
import { normalCdf } from '../distributions/normal.js';
import { fitLifeDistribution, lifeFamilies, type LifeFamily, type LifeFit } from './fit-life-distribution.js';
import { failureProbability, lifeMoments, lifeQuantile, lifeScale, weibullShape } from './life-estimates.js';
import { rightCensoredLives, type LifeSample } from './life-sample.js';
import { profileQuantileLimits, profileShapeLimits } from './profile-limits.js';

const fitted = (family: LifeFamily, sample: LifeSample): LifeFit => {
  const outcome = fitLifeDistribution(family, sample);
  if (outcome.kind !== 'estimated') throw new Error(JSON.stringify(outcome));
  return outcome;
};

const near = (actual: number | null, expected: number, relative: number): void => {
  expect(Math.abs(actual! - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
};

// Tolerances: maximum-likelihood values 1e-6, profile limits 1e-5, both relative; log-likelihood 1e-6 absolute.
// Expected values by generate.R (R 4.2.2, survival 3.5-3), to 12 digits.
describe('Weibull and lognormal fits of published data', () => {
  it.each([
    {
      first: 54,
      beta: 1.7207972608,
      eta: 606.527558004,
      logLik: -75.1346181645,
      b10: 164.02243866,
      b10Lower: 83.8751295255,
      b10Upper: 320.7549190824,
      betaLower: 0.971266101954,
      betaUpper: 3.048745556778,
      etaLower: 405.089293533,
      etaUpper: 908.134785319,
      mean: 540.73702547,
      sd: 323.805824313,
      aic: 154.269236329,
      lognormalAic: 154.392541558,
      printed: [606.528, 1.7208, 540.737, 323.806],
    },
    {
      first: 55,
      beta: 1.72562575314,
      eta: 606.004797956,
      logLik: -75.1218456335,
      b10: 164.481844924,
      b10Lower: 84.272926367,
      b10Upper: 321.031658398,
      betaLower: 0.974160736151,
      betaUpper: 3.05676889797,
      etaLower: 405.226423252,
      etaUpper: 906.263249564,
      mean: 540.175212045,
      sd: 322.646935156,
      aic: 154.243691267,
      lognormalAic: 154.329754779,
      printed: [606.005, 1.72563, 540.175, 322.647],
    },
  ] as const)('gives the NIST handbook units with a first failure at $first h', (expected) => {
    const sample = rightCensoredLives(nistWeibull(expected.first));
    const fit = fitted('weibull', sample);
    const shape = weibullShape(fit);
    const scale = lifeScale(fit);
    const b10 = lifeQuantile(fit, 0.1);
    const moments = lifeMoments(fit);
    for (const [actual, value] of [
      [shape.estimate, expected.beta],
      [shape.lower, expected.betaLower],
      [shape.upper, expected.betaUpper],
      [scale.estimate, expected.eta],
      [scale.lower, expected.etaLower],
      [scale.upper, expected.etaUpper],
      [b10.estimate, expected.b10],
      [b10.lower, expected.b10Lower],
      [b10.upper, expected.b10Upper],
      [moments.mean, expected.mean],
      [moments.standardDeviation, expected.sd],
      [fit.akaike, expected.aic],
      [fitted('lognormal', sample).akaike, expected.lognormalAic],
    ] as const) {
      near(actual, value, 1e-6);
    }
    expect(Math.abs(fit.logLikelihood - expected.logLik)).toBeLessThan(1e-6);
    // The handbook prints 606.5280 where the optimum is 606.5276: 1e-3 against print.
    [scale.estimate, shape.estimate, moments.mean, moments.standardDeviation].forEach((actual, i) => {
      expect(Math.abs(actual - expected.printed[i]!)).toBeLessThan(1e-3);
    });
  });

  it('gives the generator fans, Wald and profile limits, and the exponential beside it', () => {
    const sample = rightCensoredLives(genfan);
    const fit = fitted('weibull', sample);
    const b10 = lifeQuantile(fit, 0.1);
    const b1 = lifeQuantile(fit, 0.01);
    const shape = weibullShape(fit);
    for (const [actual, value] of [
      [shape.estimate, 1.05844584994],
      [shape.lower, 0.644082311525],
      [shape.upper, 1.739385785352],
      [lifeScale(fit).estimate, 26296.8451748],
      [lifeScale(fit).lower, 10552.0696944],
      [lifeScale(fit).upper, 65534.4483286],
      [lifeScale(fit).standardError, 0.465889661042],
      [b10.estimate, 3137.24077789],
      [b10.lower, 1686.20737204],
      [b10.upper, 5836.93314457],
      [b1.estimate, 340.722587588],
      [b1.lower, 74.8244203345],
      [b1.upper, 1551.5239700319],
      [failureProbability(fit, 8000).estimate, 0.247067206628],
      [lifeMoments(fit).mean, 25715.61005],
    ] as const) {
      near(actual, value, 1e-6);
    }
    expect(Math.abs(fit.logLikelihood + 135.152719943)).toBeLessThan(1e-6);
    const shapeLimits = profileShapeLimits(sample, fit);
    near(shapeLimits.lower, 0.605974189512, 1e-5);
    near(shapeLimits.upper, 1.657940856502, 1e-5);
    const lifeLimits = profileQuantileLimits(sample, fit, 0.1);
    near(lifeLimits.lower, 1420.24657677, 1e-5);
    near(lifeLimits.upper, 5662.48431408, 1e-5);
    const exponential = fitted('exponential', sample);
    near(lifeScale(exponential).estimate, 344440 / 12, 1e-9);
    near(exponential.logLikelihood, -135.177222468, 1e-9);
    expect([fit.units, fit.events]).toEqual([70, 12]);
  });
});

describe('cases worked by hand', () => {
  it('gives the exponential mean as total time over events, entries taken off', () => {
    // (10 − 4) + 6 + 8 observed, two events: mean 10, standard error of its logarithm 1/√2,
    // log-likelihood −2 ln 10 − 2.
    const sample = rightCensoredLives({ ages: [10, 6, 8], events: [1, 1, 0], entryAges: [4, 0, 0] });
    const fit = fitted('exponential', sample);
    near(lifeScale(fit).estimate, 10, 1e-12);
    near(lifeScale(fit).standardError, Math.SQRT1_2, 1e-10);
    near(fit.logLikelihood, -2 * Math.log(10) - 2, 1e-12);
  });

  it('gives the lognormal of complete data as mean and spread of the logarithms', () => {
    // Logarithms 0, 2, 4: mean 2, mean square deviation 8/3; standard errors sigma/√3 and 1/√6 (of ln sigma).
    const ages = [1, Math.exp(2), Math.exp(4)];
    const fit = fitted('lognormal', { lower: ages, upper: ages });
    near(fit.mu, 2, 1e-9);
    near(fit.sigma, Math.sqrt(8 / 3), 1e-9);
    near(fit.covariance.muMu, 8 / 9, 1e-8);
    near(fit.covariance.logSigmaLogSigma, 1 / 6, 1e-8);
  });

  it('meets the shares exactly when two inspections leave two parameters two shares', () => {
    // Of 10 units 2 had failed by 1, 3 more by 4, 5 survived 4: F(1) = 0.2, F(4) = 0.5 for any two-parameter family.
    const sample = { lower: [0, 1, 4], upper: [1, 4, Infinity], weights: [2, 3, 5] };
    for (const family of ['weibull', 'lognormal'] as const) {
      const fit = fitted(family, sample);
      near(failureProbability(fit, 1).estimate, 0.2, 1e-8);
      near(failureProbability(fit, 4).estimate, 0.5, 1e-8);
      near(fit.logLikelihood, 2 * Math.log(0.2) + 3 * Math.log(0.3) + 5 * Math.log(0.5), 1e-12);
    }
    // For the exponential one inspection suffices: 3 of 4 failed by 2, so the mean is 2 / ln 4.
    const exponential = fitted('exponential', { lower: [0, 2], upper: [2, Infinity], weights: [3, 1] });
    near(lifeScale(exponential).estimate, 2 / Math.log(4), 1e-9);
  });

  it('gives the Weibull of complete data that solves the textbook equation', () => {
    // Profile equation Σ tᵝ ln t / Σ tᵝ − 1/β = mean ln t, and ηᵝ = mean tᵝ; checked by substitution.
    const ages = [17.88, 28.92, 33, 41.52, 42.12, 45.6, 48.4];
    const fit = fitted('weibull', { lower: ages, upper: ages });
    const beta = weibullShape(fit).estimate;
    const powers = ages.map((age) => age ** beta);
    const total = powers.reduce((sum, power) => sum + power, 0);
    const weighted = powers.reduce((sum, power, i) => sum + power * Math.log(ages[i]!), 0) / total;
    const meanLog = ages.reduce((sum, age) => sum + Math.log(age), 0) / ages.length;
    near(weighted - 1 / beta, meanLog, 1e-10);
    near(lifeScale(fit).estimate, (total / ages.length) ** (1 / beta), 1e-10);
  });
});

describe('samples without an estimate', () => {
  it.each(lifeFamilies)(
    '%s: too few events, zero lives and one life for all have their own answers',
    (family) => {
      const needed = family === 'exponential' ? 1 : 2;
      expect(fitLifeDistribution(family, { lower: [], upper: [] })).toEqual({
        kind: 'insufficientData',
        of: 'events',
        needed,
        got: 0,
      });
      expect(fitLifeDistribution(family, { lower: [5, 6], upper: [Infinity, Infinity] }).kind).toBe(
        'insufficientData',
      );
      expect(fitLifeDistribution(family, { lower: [0, 3, 4], upper: [0, 3, 4] })).toEqual({
        kind: 'zeroLives',
        count: 1,
      });
      expect(fitLifeDistribution(family, { lower: [0, 0], upper: [3, 4] })).toMatchObject({
        kind: 'noMaximum',
        reason: 'nothingOutlived',
      });
      expect(fitLifeDistribution(family, { lower: [1, 2], upper: [3, 4], entryAges: [1, 2] })).toMatchObject({
        kind: 'noMaximum',
        reason: 'nothingOutlived',
      });
    },
  );

  it.each(['weibull', 'lognormal'] as const)(
    '%s: equal events have an estimate only when a unit outlived them',
    (family) => {
      const equal = { lower: [5, 5, 5], upper: [5, 5, 5] };
      expect(fitLifeDistribution(family, equal)).toEqual({
        kind: 'noMaximum',
        reason: 'oneLifeFitsAll',
        events: 3,
      });
      expect(fitLifeDistribution(family, { lower: [5, 5, 3], upper: [5, 5, Infinity] }).kind).toBe(
        'noMaximum',
      );
      expect(fitLifeDistribution(family, { lower: [5, 5, 8], upper: [5, 5, Infinity] }).kind).toBe(
        'estimated',
      );
      expect(fitLifeDistribution(family, { lower: [1, 2], upper: [3, 4] })).toMatchObject({
        reason: 'oneLifeFitsAll',
      });
    },
  );

  it('gives no number when shares fall the wrong way and the shape would shrink to nothing', () => {
    // Half had failed by 1, fewer than half of others by 100: the best curve is flat.
    const sample = { lower: [0, 1, 0, 100], upper: [1, Infinity, 100, Infinity], weights: [50, 50, 20, 80] };
    for (const family of ['weibull', 'lognormal'] as const) {
      expect(['noMaximum', 'notConverged']).toContain(fitLifeDistribution(family, sample).kind);
    }
  });

  it.each([
    [{ lower: [1], upper: [] }],
    [{ lower: [2], upper: [1] }],
    [{ lower: [-1], upper: [1] }],
    [{ lower: [1], upper: [NaN] }],
    [{ lower: [3], upper: [3], entryAges: [3] }],
    [{ lower: [3], upper: [4], weights: [-1] }],
  ])('refuses %j', (sample) => {
    expect(() => fitLifeDistribution('weibull', sample)).toThrow(RangeError);
  });

  it('refuses limits of a parameter the family does not have', () => {
    const sample = rightCensoredLives(genfan);
    expect(() => weibullShape(fitted('lognormal', sample))).toThrow(RangeError);
    expect(() => profileShapeLimits(sample, fitted('lognormal', sample))).toThrow(RangeError);
    expect(() => profileQuantileLimits(sample, fitted('exponential', sample), 0.1)).toThrow(RangeError);
    expect(() => lifeQuantile(fitted('weibull', sample), 1)).toThrow(RangeError);
    expect(() => failureProbability(fitted('weibull', sample), 0)).toThrow(RangeError);
  });
});

describe('properties', () => {
  const options = { seed: 77, numRuns: 60, endOnFailure: true };
  const row = fc.record({
    life: fc.double({ min: 0.5, max: 200, noNaN: true }),
    end: fc.double({ min: 20, max: 300, noNaN: true }),
    entry: fc.double({ min: 0, max: 15, noNaN: true }),
  });
  const rows = fc
    .array(row, { minLength: 8, maxLength: 40 })
    .map((data) => data.filter(({ life, entry }) => life > entry))
    .filter((data) => data.filter(({ life, end }) => life < end).length >= 4);
  const sampleOf = (data: readonly { life: number; end: number; entry: number }[], late = true): LifeSample =>
    rightCensoredLives({
      ages: data.map(({ life, end }) => Math.min(life, end)),
      events: data.map(({ life, end }) => life < end),
      ...(late ? { entryAges: data.map(({ entry }) => entry) } : {}),
    });

  it('moves only its scale when the unit of age changes', () => {
    fc.assert(
      fc.property(rows, fc.constantFrom(...lifeFamilies), (data, family) => {
        const outcome = fitLifeDistribution(family, sampleOf(data));
        fc.pre(outcome.kind === 'estimated');
        const scaled = data.map(({ life, end, entry }) => ({
          life: 1609 * life,
          end: 1609 * end,
          entry: 1609 * entry,
        }));
        const moved = fitted(family, sampleOf(scaled));
        if (outcome.kind !== 'estimated') return;
        near(moved.sigma, outcome.sigma, 1e-6);
        expect(moved.mu - outcome.mu).toBeCloseTo(Math.log(1609), 6);
        near(moved.covariance.muMu, outcome.covariance.muMu, 1e-5);
      }),
      options,
    );
  });

  it('does not depend on the order, and takes a weight as that many rows', () => {
    fc.assert(
      fc.property(rows, (data) => {
        const once = fitted('weibull', sampleOf(data, false));
        const reversed = fitted('weibull', sampleOf([...data].reverse(), false));
        near(reversed.sigma, once.sigma, 1e-8);
        const doubled = fitted('weibull', sampleOf([...data, ...data], false));
        const weighted = fitted('weibull', { ...sampleOf(data, false), weights: data.map(() => 2) });
        near(weighted.sigma, doubled.sigma, 1e-8);
        near(weighted.covariance.muMu, once.covariance.muMu / 2, 1e-6);
      }),
      options,
    );
  });

  it('comes close to the exact lives when the intervals close in on them', () => {
    fc.assert(
      fc.property(rows, fc.constantFrom('weibull' as const, 'lognormal' as const), (data, family) => {
        const exact = sampleOf(data, false);
        const narrow = {
          lower: Float64Array.from(exact.lower, (low, i) =>
            exact.upper[i] === Infinity ? low : low * (1 - 1e-5),
          ),
          upper: Float64Array.from(exact.upper, (high) => high * (1 + 1e-5)),
        };
        near(fitted(family, narrow).sigma, fitted(family, exact).sigma, 1e-4);
      }),
      options,
    );
  });

  it('has a gradient of zero: no small change of the parameters raises the likelihood', () => {
    fc.assert(
      fc.property(rows, (data) => {
        const lives = data.map(({ life, end }) => ({ age: Math.min(life, end), event: life < end }));
        const fit = fitted('lognormal', sampleOf(data, false));
        // The likelihood written out anew, density in z and survival by the distribution function.
        const likelihood = (mu: number, sigma: number): number =>
          lives.reduce((sum, { age, event }) => {
            const z = (Math.log(age) - mu) / sigma;
            return (
              sum +
              (event
                ? -0.5 * z * z - Math.log(sigma * age * Math.sqrt(2 * Math.PI))
                : Math.log(normalCdf(-z)))
            );
          }, 0);
        expect(likelihood(fit.mu, fit.sigma)).toBeCloseTo(fit.logLikelihood, 8);
        for (const step of [-1e-3, 1e-3]) {
          expect(likelihood(fit.mu + step, fit.sigma)).toBeLessThan(fit.logLikelihood);
          expect(likelihood(fit.mu, fit.sigma * (1 + step))).toBeLessThan(fit.logLikelihood);
        }
      }),
      options,
    );
  });

  it('has profile limits around the estimate, wider for a higher level', () => {
    fc.assert(
      fc.property(rows, (data) => {
        const sample = sampleOf(data, false);
        const fit = fitted('weibull', sample);
        const b10 = lifeQuantile(fit, 0.1).estimate;
        const [narrow, wide] = [0.8, 0.95].map((level) => profileQuantileLimits(sample, fit, 0.1, level));
        expect(wide!.lower!).toBeLessThan(narrow!.lower!);
        expect(narrow!.lower!).toBeLessThan(b10);
        expect(narrow!.upper!).toBeGreaterThan(b10);
        expect(wide!.upper!).toBeGreaterThan(narrow!.upper!);
      }),
      { ...options, numRuns: 25 },
    );
  });
});

it('fits a hundred thousand interval-censored lives', () => {
  const size = 100_000;
  // Quantiles of a Weibull distribution with shape 2 and scale 100, each seen between two inspections 10 apart.
  const lives = Float64Array.from(
    { length: size },
    (_, i) => 100 * Math.sqrt(-Math.log(1 - (i + 0.5) / size)),
  );
  const lower = lives.map((life) => 10 * Math.floor(life / 10));
  const fit = fitted('weibull', { lower, upper: lower.map((low) => low + 10) });
  near(weibullShape(fit).estimate, 2, 1e-3);
  near(lifeScale(fit).estimate, 100, 1e-3);
});
