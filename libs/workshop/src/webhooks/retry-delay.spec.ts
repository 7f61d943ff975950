import * as fc from 'fast-check';
import { retryDelay, retrySeconds } from './retry-delay.js';

describe('when a delivery is tried again', () => {
  it('Standard Webhooks 1.0.0: 5 s, 5 min, 30 min, 2 h, 5 h, 10 h, 14 h, 20 h, 24 h', () => {
    const minutes = retrySeconds.map((seconds) => seconds / 60);
    expect(minutes).toEqual([5 / 60, 5, 30, 120, 300, 600, 840, 1200, 1440]);
  });

  it('by hand: the waits add up to 272,105 s, three days and a little over three and a half hours', () => {
    const total = retrySeconds.reduce<number>((sum, seconds) => sum + seconds, 0);
    expect([total, total >= 3 * 86_400]).toEqual([272_105, true]);
  });

  it('ends after the tenth attempt', () => {
    expect(retryDelay(9, 0, null)).toBe(86_400);
    expect(retryDelay(10, 0, null)).toBeUndefined();
  });

  it('heeds a wish that is longer, up to a day, and no shorter one', () => {
    expect(retryDelay(1, 0, 120)).toBe(120);
    expect(retryDelay(1, 0, 1_000_000)).toBe(86_400);
    expect(retryDelay(4, 0, 1)).toBe(7200);
    expect(retryDelay(1, 0, -5)).toBe(5);
  });

  it('is never shorter than planned, nor longer by more than a fifth', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9 }),
        fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
        (attempts, chance) => {
          const delay = retryDelay(attempts, chance, null)!;
          const planned = retrySeconds[attempts - 1]!;
          expect(delay >= planned && delay < planned * 1.2 + 1e-6).toBe(true);
        },
      ),
      { seed: 3 },
    );
  });

  it('refuses what is no chance and no count', () => {
    for (const chance of [1, -0.1, NaN]) expect(() => retryDelay(1, chance, null)).toThrow(RangeError);
    for (const attempts of [0, 1.5]) expect(() => retryDelay(attempts, 0, null)).toThrow(RangeError);
  });
});
