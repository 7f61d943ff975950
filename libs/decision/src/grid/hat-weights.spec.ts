import fc from 'fast-check';
import { hatWeights } from './hat-weights.js';
import { gammaShortfall, logNormalShortfall, normalShortfall } from './shortfall.js';

const nodes = Array.from({ length: 49 }, (_, i) => i / 24);
const meanOf = (weights: Float64Array, at = nodes) =>
  weights.reduce((sum, weight, i) => sum + weight * at[i]!, 0);

describe('hat weights', () => {
  it('puts a fixed value of 0.35 on nodes 0, 0.1 ... as a half and a half on 0.3 and 0.4', () => {
    const weights = hatWeights([0, 0.1, 0.2, 0.3, 0.4, 0.5], normalShortfall(0.35, 0));
    expect([...weights].map((weight) => Math.round(weight * 1e9) / 1e9)).toEqual([0, 0, 0, 0.5, 0.5, 0]);
  });

  it('keeps the mean of normal, lognormal and gamma variables that lie within the nodes', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 1.3, noNaN: true }),
        fc.double({ min: 0, max: 0.08, noNaN: true }),
        (mean, sd) => {
          expect(meanOf(hatWeights(nodes, normalShortfall(mean, sd)))).toBeCloseTo(mean, 8);
          expect(meanOf(hatWeights(nodes, gammaShortfall(mean / 10, sd / 10)))).toBeCloseTo(mean / 10, 8);
        },
      ),
      { seed: 6, numRuns: 200 },
    );
    const logMean = 0.4 * Math.exp(0.02);
    expect(meanOf(hatWeights(nodes, logNormalShortfall(0.4, 0.2, logMean)))).toBeCloseTo(logMean, 8);
  });

  it('gives the exponential its closed form: E max(0, t - X) = t - m (1 - e^(-t/m)), shape 1', () => {
    for (const t of [0.01, 0.2, 1, 4])
      expect(gammaShortfall(0.3, 0.3)(t)).toBeCloseTo(t - 0.3 * (1 - Math.exp(-t / 0.3)), 13);
  });

  it('sends what lies outside to the end nodes', () => {
    expect([...hatWeights([0, 1], normalShortfall(-3, 0))]).toEqual([1, 0]);
    expect([...hatWeights([0, 1], normalShortfall(7, 0))]).toEqual([0, 1]);
  });

  it('refuses a single node', () => {
    expect(() => hatWeights([0], normalShortfall(0, 1))).toThrow(RangeError);
  });
});
