import fc from 'fast-check';
import { mixtureOfDemands, sumOfDemands } from './combine-demands.js';
import { chanceOfAny, demandOfChances } from './demand-of-chances.js';
import { demandQuantile, demandUpTo, summariseDemand } from './demand-distribution.js';
import { chanceToEndWithin } from './life-chance.js';
import { poissonDemand } from './poisson-demand.js';

const seed = { seed: 41, numRuns: 200 };
const chances = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 12 });
const close = (a: readonly number[], b: readonly number[], tolerance = 1e-12) => {
  const length = Math.max(a.length, b.length);
  for (let i = 0; i < length; i += 1) expect(Math.abs((a[i] ?? 0) - (b[i] ?? 0))).toBeLessThan(tolerance);
};

/** Every subset of the vans written out: the definition itself, 2ⁿ terms. */
function byEnumeration(each: readonly number[]): number[] {
  const found = Array.from({ length: each.length + 1 }, () => 0);
  for (let subset = 0; subset < 2 ** each.length; subset += 1) {
    let [product, count] = [1, 0];
    each.forEach((chance, at) => {
      const isIn = (subset >> at) % 2 === 1;
      product *= isIn ? chance : 1 - chance;
      if (isIn) count += 1;
    });
    found[count] = (found[count] ?? 0) + product;
  }
  return found;
}

describe('demand of vans with a chance each', () => {
  it('is what a hand count gives: three vans with 0.9, 0.5 and 0.1', () => {
    // none: 0.1 · 0.5 · 0.9 = 0.045. All: 0.9 · 0.5 · 0.1 = 0.045. One: 0.9·0.5·0.9 + 0.1·0.5·0.9 + 0.1·0.5·0.1 =
    // 0.405 + 0.045 + 0.005 = 0.455. Two: the rest, 0.455.
    close(demandOfChances([0.9, 0.5, 0.1]).probabilities, [0.045, 0.455, 0.455, 0.045]);
  });

  it('agrees with every subset written out, whatever the chances', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 9 }), (each) =>
        close(demandOfChances(each).probabilities, byEnumeration(each)),
      ),
      seed,
    );
  });

  it('has mean Σp and variance Σp(1 − p), in any order of the vans', () => {
    fc.assert(
      fc.property(chances, (each) => {
        const { mean, standardDeviation } = summariseDemand(demandOfChances(each));
        expect(mean).toBeCloseTo(
          each.reduce((sum, p) => sum + p, 0),
          10,
        );
        expect(standardDeviation ** 2).toBeCloseTo(
          each.reduce((sum, p) => sum + p * (1 - p), 0),
          10,
        );
        close(demandOfChances([...each].reverse()).probabilities, demandOfChances(each).probabilities);
      }),
      seed,
    );
  });

  it('with equal chances is binomial: 4 vans at one half are 1 4 6 4 1 in 16', () => {
    close(
      demandOfChances([0.5, 0.5, 0.5, 0.5]).probabilities,
      [1, 4, 6, 4, 1].map((ways) => ways / 16),
    );
  });

  it('refuses what is no chance', () => {
    expect(() => demandOfChances([1.1])).toThrow(RangeError);
    expect(() => demandOfChances([Number.NaN])).toThrow(RangeError);
    expect(() => chanceOfAny([-0.1])).toThrow(RangeError);
  });

  it('takes several reasons of one van together: 0.5, 0.2 and 0.1 leave 0.5 · 0.8 · 0.9 = 0.36 without need', () => {
    expect(chanceOfAny([0.5, 0.2, 0.1])).toBeCloseTo(0.64, 14);
    expect(chanceOfAny([])).toBe(0);
  });
});

describe('demand in other forms', () => {
  it('Poisson: P(D ≤ 1) for a mean of 1 is 2/e, and the distribution adds up to 1', () => {
    const demand = poissonDemand(1);
    expect(demandUpTo(demand, 1)).toBeCloseTo(2 / Math.E, 14);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 300, noNaN: true }), (mean) => {
        const { probabilities } = poissonDemand(mean);
        expect(probabilities.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 11);
        expect(summariseDemand({ probabilities }).mean).toBeCloseTo(mean, 6);
      }),
      seed,
    );
  });

  it('the sum of two Poisson demands is Poisson with the sum of their means', () => {
    close(
      sumOfDemands(poissonDemand(0.7), poissonDemand(1.6)).probabilities,
      poissonDemand(2.3).probabilities,
      1e-12,
    );
  });

  it('two groups of vans together are the vans together', () => {
    fc.assert(
      fc.property(chances, chances, (one, other) =>
        close(
          sumOfDemands(demandOfChances(one), demandOfChances(other)).probabilities,
          demandOfChances([...one, ...other]).probabilities,
        ),
      ),
      seed,
    );
  });

  it('over an uncertain lead time: half of the orders take 0 days, half the time 2 pieces are asked for', () => {
    const demand = mixtureOfDemands([
      { weight: 2, demand: { probabilities: [1] } },
      { weight: 2, demand: { probabilities: [0, 0, 1] } },
    ]);
    expect(demand.probabilities).toEqual([0.5, 0, 0.5]);
    expect(summariseDemand(demand)).toMatchObject({ mean: 1, standardDeviation: 1, lower: 0, upper: 2 });
    expect(() => mixtureOfDemands([{ weight: 0, demand: { probabilities: [1] } }])).toThrow(RangeError);
  });

  it('the spread of a mixture is never less than the mean spread of its cases', () => {
    fc.assert(
      fc.property(chances, chances, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (a, b, weight) => {
        const [one, other] = [demandOfChances(a), demandOfChances(b)];
        const mixed = summariseDemand(
          mixtureOfDemands([
            { weight, demand: one },
            { weight: 1 - weight, demand: other },
          ]),
        );
        const within =
          weight * summariseDemand(one).standardDeviation ** 2 +
          (1 - weight) * summariseDemand(other).standardDeviation ** 2;
        expect(mixed.standardDeviation ** 2).toBeGreaterThan(within - 1e-9);
      }),
      seed,
    );
  });

  it('the quantile is the smallest number not exceeded with the probability', () => {
    fc.assert(
      fc.property(chances, fc.double({ min: 0.001, max: 0.999, noNaN: true }), (each, probability) => {
        const demand = demandOfChances(each);
        const quantile = demandQuantile(demand, probability);
        expect(demandUpTo(demand, quantile)).toBeGreaterThan(probability - 1e-9);
        if (quantile > 0) expect(demandUpTo(demand, quantile - 1)).toBeLessThan(probability);
      }),
      seed,
    );
  });
});

describe('chance that a part ends', () => {
  it('without ageing does not depend on the age: a mean of 100 days leaves 1 − e^(−0.1) within 10 days', () => {
    for (const age of [0, 30, 500])
      expect(chanceToEndWithin({ scale: 100, shape: 1 }, age, 10)).toBeCloseTo(1 - Math.exp(-0.1), 12);
  });

  it('with wear-out grows with the age: shape 2, scale 100, age 100, 100 more', () => {
    // R(200)/R(100) = exp(−4)/exp(−1) = e⁻³
    expect(chanceToEndWithin({ scale: 100, shape: 2 }, 100, 100)).toBeCloseTo(1 - Math.exp(-3), 12);
  });

  it('stays a chance where survival itself can no longer be written', () => {
    expect(chanceToEndWithin({ scale: 1, shape: 5 }, 1000, 1)).toBe(1);
    expect(() => chanceToEndWithin({ scale: 1, shape: 5 }, -1, 1)).toThrow(RangeError);
  });
});
