import fc from 'fast-check';
import { globalRisk, type GlobalRisk } from './global-risk.js';

const gammaRisk = (shape: number, rate: number, u: number, limit: number, acceptance: number): GlobalRisk =>
  globalRisk(
    { kind: 'gamma', shape, rate },
    u,
    { lower: null, upper: limit },
    { lower: null, upper: acceptance },
  );

describe('globalRisk over a gamma population', () => {
  // R 4.2.2: integrate(function(p) pnorm((acceptance - qgamma(p, shape, rate)) / u), ...) in 59 pieces of p, relative 1e-11;
  // the sum of its pieces is good to about 1e-10, so 1e-9 absolute is asked for.
  it.each([
    [0.1, 1, 0.1, 1, 0.8, 0.024127343726328, 0.000030859016236, 0.010139091855785],
    [0.1, 1, 5, 1, 0.8, 0.0241273437263, 0.0103653014243, 0.4305761071662],
    [0.01, 1, 0.05, 0.3, 0.3, 0.00907239642177, 0.00043332081464, 0.00057147913298],
    [0.5, 2, 0.02, 1, 1, 0.045500263896358, 0.000835329738249, 0.000889364750972],
    [1.5, 1, 0.3, 2, 1.8, 0.26146412994911, 0.00876877031428, 0.06341699983806],
    [300, 100, 0.05, 3.2, 3.1, 0.125249909137987, 0.000432333233534, 0.160661325012072],
  ])('of shape %p and rate %p agrees with R', (...row) => {
    const [shape, rate, u, limit, acceptance, nonconforming, consumer, producer] = row;
    const risk = gammaRisk(shape, rate, u, limit, acceptance);
    expect(Math.abs(risk.nonconforming - nonconforming)).toBeLessThan(1e-9);
    expect(Math.abs(risk.consumerRisk - consumer)).toBeLessThan(1e-9);
    expect(Math.abs(risk.producerRisk - producer)).toBeLessThan(1e-9);
  });

  it('refuses limits that are exchanged or no numbers', () => {
    const open = { lower: null, upper: null };
    const prior = { kind: 'normal', mean: 0, standardDeviation: 1 } as const;
    for (const ends of [
      { lower: 2, upper: 1 },
      { lower: null, upper: Number.NaN },
    ]) {
      expect(() => globalRisk(prior, 0.1, ends, open)).toThrow(RangeError);
      expect(() => globalRisk(prior, 0.1, open, ends)).toThrow(RangeError);
    }
  });

  it('refuses no more good items and accepts no more bad ones than there are', () => {
    // Shapes over the whole range that a request may have, errors from far below to far above the spread; seed 9.
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 6, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: 0.05, max: 3, noNaN: true }),
        (logShape, logError, share) => {
          const shape = 10 ** logShape;
          const risk = gammaRisk(shape, shape, 10 ** logError, share, share);
          expect(risk.consumerRisk).toBeGreaterThanOrEqual(0);
          expect(risk.consumerRisk).toBeLessThanOrEqual(risk.nonconforming + 1e-9);
          expect(risk.producerRisk).toBeGreaterThanOrEqual(0);
          expect(risk.producerRisk).toBeLessThanOrEqual(1 - risk.nonconforming + 1e-9);
        },
      ),
      { seed: 9, numRuns: 150 },
    );
  });
});
