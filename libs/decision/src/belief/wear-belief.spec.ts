import fc from 'fast-check';
import type { FunctionalEvidence } from '../comeback/comeback-predictor.js';
import { estimatedRateWeights, rateNodes } from './rate-belief.js';
import { populationWeights, wearBelief } from './wear-belief.js';
import { wearNodes, wearShare } from './wear-grid.js';

const population = { median: 0.6, logSd: 0.6 };
const mean = (weights: Float64Array, nodes = wearNodes) =>
  weights.reduce((sum, weight, i) => sum + weight * nodes[i]!, 0);
const belief = (share: number, standardUncertainty: number, functional: FunctionalEvidence = 'none') =>
  wearBelief(population, { share, standardUncertainty }, functional, 0.08);

describe('belief about wear', () => {
  it('is the reading itself when it is exact, between nodes too', () => {
    expect(mean(belief(0.51, 0))).toBeCloseTo(0.51, 12);
  });

  it('comes near the conjugate answer: a lognormal population is almost normal in a narrow window', () => {
    // Population density falls as 1/x e^(-z²/2): at 1.0 its logarithm has slope -(1 + ln(1/0.6)/0.36) = -2.4189 per share.
    // A normal reading of 1.0 +- 0.05 is so moved by slope x u² = -0.00605.
    expect(mean(belief(1, 0.05))).toBeCloseTo(1 - 0.00605, 2);
  });

  it('moves up with a positive functional criterion and down with a negative one', () => {
    expect(mean(belief(1, 0.1, 'positive'))).toBeGreaterThan(mean(belief(1, 0.1)));
    expect(mean(belief(1, 0.1, 'negative'))).toBeLessThan(mean(belief(1, 0.1)));
  });

  it('rises with the reading', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.1, max: 2.2, noNaN: true }),
        fc.double({ min: 0.01, max: 0.3, noNaN: true }),
        fc.double({ min: 0.02, max: 0.5, noNaN: true }),
        (share, more, u) => {
          expect(mean(belief(share + more, u))).toBeGreaterThanOrEqual(mean(belief(share, u)) - 1e-9);
        },
      ),
      { seed: 62, numRuns: 200 },
    );
  });

  it('stays a belief for readings far outside: below zero counts as none, beyond twice the criterion as twice', () => {
    expect(mean(belief(-5, 0.01))).toBeLessThan(0.01);
    expect(mean(belief(50, 0.01))).toBeCloseTo(2, 6);
    expect(mean(populationWeights(population))).toBeGreaterThan(0.6);
  });

  it('keeps an estimated rate’s mean, and takes a negative one for none', () => {
    const nodes = rateNodes([{ median: 0.4, logSd: 0.6 }], { mean: 0.7, standardError: 0.1 });
    expect(mean(estimatedRateWeights(nodes, { mean: 0.7, standardError: 0.1 }), nodes)).toBeCloseTo(0.7, 3);
    expect(mean(estimatedRateWeights(nodes, { mean: -0.2, standardError: 0 }), nodes)).toBe(0);
  });

  it('measures shares in the direction of wear: a 10 mm lining at 4 mm with criterion 2 mm has worn to 0.75', () => {
    const lining = {
      characteristicId: 'lining',
      unit: 'mm',
      direction: 'down',
      unwornSize: 10,
      criterionSize: 2,
    } as const;
    expect(wearShare(4, lining)).toBe(0.75);
    expect(() => wearShare(4, { ...lining, direction: 'up' })).toThrow(RangeError);
  });
});
