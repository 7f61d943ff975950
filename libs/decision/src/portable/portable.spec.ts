import fc from 'fast-check';
import { gammaCdf, logGamma as logGammaOracle, normalCdf } from '@endfloat/statistics';
import { exp, log, logistic } from './elementary.js';
import { gammaShare, logGamma, normalDensity, normalShare } from './probability.js';

const within = (relative: number, got: number, oracle: number) =>
  expect(Math.abs(got - oracle)).toBeLessThanOrEqual(relative * Math.max(Math.abs(oracle), 1e-300));

describe('functions built from exactly rounded operations', () => {
  it('exp and log agree with published constants: e, 1/e, ln 2, ln 10 (NIST DLMF 4.2)', () => {
    within(3e-16, exp(1), 2.718281828459045235);
    within(3e-16, exp(-1), 0.367879441171442322);
    within(3e-16, log(2), 0.693147180559945309);
    within(3e-16, log(10), 2.302585092994045684);
  });

  it('exp is the engine’s to the last digits over its whole range', () => {
    fc.assert(
      fc.property(fc.double({ min: -700, max: 709, noNaN: true }), (x) =>
        within(4.5e-16, exp(x), Math.exp(x)),
      ),
      { seed: 1, numRuns: 500 },
    );
    expect([exp(-800), exp(800), exp(709.78) < Infinity, exp(-Infinity)]).toEqual([0, Infinity, true, 0]);
  });

  it('log is the engine’s to the last digits over its whole range', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-308, max: 1e308, noNaN: true }), (x) => {
        expect(Math.abs(log(x) - Math.log(x))).toBeLessThanOrEqual(
          4.5e-16 * Math.max(Math.abs(Math.log(x)), 0.1),
        );
      }),
      { seed: 2, numRuns: 500 },
    );
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 3, noNaN: true }), (x) => {
        expect(Math.abs(log(x) - Math.log(x))).toBeLessThanOrEqual(
          4.5e-16 * Math.max(Math.abs(Math.log(x)), 0.1),
        );
      }),
      { seed: 3, numRuns: 500 },
    );
    expect([log(0), log(1), log(Infinity)]).toEqual([-Infinity, 0, Infinity]);
  });

  it('refuses what has no value', () => {
    expect(() => exp(NaN)).toThrow(RangeError);
    expect(() => log(-1)).toThrow(RangeError);
    expect(() => gammaShare(0, 1)).toThrow(RangeError);
  });

  it('logistic is symmetric: f(x) + f(-x) = 1', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 40, noNaN: true }), (x) =>
        expect(logistic(x) + logistic(-x)).toBeCloseTo(1, 14),
      ),
      { seed: 4 },
    );
  });

  it('logGamma, incomplete gamma and normal agree with the statistics room', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (a, t) => {
          expect(Math.abs(logGamma(a) - logGammaOracle(a))).toBeLessThanOrEqual(
            1e-13 * Math.max(1, Math.abs(logGammaOracle(a))) * 10,
          );
          expect(Math.abs(gammaShare(a, a * t) - gammaCdf(a * t, a, 1))).toBeLessThanOrEqual(1e-11);
        },
      ),
      { seed: 5, numRuns: 300 },
    );
    for (let z = -8; z <= 8; z += 0.37)
      expect(Math.abs(normalShare(z) - normalCdf(z))).toBeLessThanOrEqual(1e-14);
  });

  it('gives the normal shares of every table: 0.975 at 1.959964, density 0.398942 at zero', () => {
    expect(normalShare(1.959963984540054)).toBeCloseTo(0.975, 13);
    expect(normalDensity(0)).toBeCloseTo(0.3989422804014327, 15);
  });
});
