import fc from 'fast-check';
import { demandOfChances } from '../demand/demand-of-chances.js';
import { poissonDemand } from '../demand/poisson-demand.js';
import { cheapestLevel, costOfLevel, smallestLevel } from './smallest-level.js';
import { expectedShort, serviceOfLevel, stockServiceMeasures } from './stock-service.js';

const seed = { seed: 43, numRuns: 200 };
const chances = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 15 });

describe('stock levels', () => {
  it('published: Poisson demand of 0.5, 1, 2 and 4.2 needs 1/2/3, 2/3/4, 4/5/6, 7/8/10 for 90, 95 and 99 % (A9.3, R qpois)', () => {
    const levels = [0.5, 1, 2, 4.2].map((mean) =>
      [0.9, 0.95, 0.99].map((target) => {
        const found = smallestLevel(poissonDemand(mean), 'cycleService', target);
        return found.kind === 'found' ? found.level : null;
      }),
    );
    expect(levels).toEqual([
      [1, 2, 3],
      [2, 3, 4],
      [4, 5, 6],
      [7, 8, 10],
    ]);
  });

  it('published: expected shortages for a mean of 1 are 1, 0.3678794412, 0.1036383235, 0.0233369264 at levels 0 to 3 (A9.3)', () => {
    const printed = [1, 0.3678794412, 0.1036383235, 0.0233369264];
    printed.forEach((value, level) => expect(expectedShort(poissonDemand(1), level)).toBeCloseTo(value, 9));
  });

  it('published: the newsvendor of Snyder & Shen, example 4.7 (A9.2)', () => {
    const small = { over: 1, under: 4 };
    expect(cheapestLevel(poissonDemand(6), small)).toMatchObject({ level: 8 });
    expect(cheapestLevel(poissonDemand(6), small).expectedCost).toBeCloseTo(3.5701069458, 8);
    expect(costOfLevel(poissonDemand(6), small, 5)).toBeCloseTo(6.5902960246, 8);
    const large = cheapestLevel(poissonDemand(50), { over: 0.18, under: 0.7 });
    expect(large.level).toBe(56);
    expect(large.expectedCost).toBeCloseTo(1.7972352118, 8);
  });

  it('by hand: three vans with 0.9, 0.5 and 0.1 within the lead time', () => {
    // P(D ≤ 0..3) = 0.045, 0.5, 0.955, 1; mean 1.5. Missing at level 1: 0.455 · 1 + 0.045 · 2 = 0.545;
    // at level 2: 0.045. Fill rate at 2: 1 − 0.045 / 1.5 = 0.97.
    const demand = demandOfChances([0.9, 0.5, 0.1]);
    expect(smallestLevel(demand, 'cycleService', 0.95)).toMatchObject({ level: 2 });
    expect(serviceOfLevel(demand, 2, 'cycleService')).toBeCloseTo(0.955, 12);
    expect(serviceOfLevel(demand, 2, 'readyRate')).toBeCloseTo(0.5, 12);
    expect(expectedShort(demand, 1)).toBeCloseTo(0.545, 12);
    expect(serviceOfLevel(demand, 2, 'fillRate')).toBeCloseTo(0.97, 12);
    expect(smallestLevel(demand, 'readyRate', 0.95)).toMatchObject({ level: 3 });
  });

  it('a level keeps its promise, and one piece less does not', () => {
    fc.assert(
      fc.property(
        chances,
        fc.constantFrom(...stockServiceMeasures),
        fc.double({ min: 0.01, max: 0.999, noNaN: true }),
        (each, measure, target) => {
          const demand = demandOfChances(each);
          const found = smallestLevel(demand, measure, target);
          if (found.kind !== 'found') throw new Error('a target below 1 has a level');
          expect(found.service).toBeGreaterThan(target - 1e-9);
          if (found.level > 0) expect(serviceOfLevel(demand, found.level - 1, measure)).toBeLessThan(target);
        },
      ),
      seed,
    );
  });

  it('more service or more demand never needs fewer pieces', () => {
    fc.assert(
      fc.property(chances, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (each, target) => {
        const levelOf = (some: readonly number[], wanted: number) => {
          const found = smallestLevel(demandOfChances(some), 'cycleService', wanted);
          return found.kind === 'found' ? found.level : Infinity;
        };
        expect(levelOf(each, target + 0.05)).toBeGreaterThanOrEqual(levelOf(each, target));
        expect(levelOf([...each, 0.5], target)).toBeGreaterThanOrEqual(levelOf(each, target));
      }),
      seed,
    );
  });

  it('the cheapest level is no dearer than any other', () => {
    fc.assert(
      fc.property(
        chances,
        fc.double({ min: 0.01, max: 10, noNaN: true }),
        fc.double({ min: 0.01, max: 10, noNaN: true }),
        (each, over, under) => {
          const demand = demandOfChances(each);
          const { expectedCost } = cheapestLevel(demand, { over, under });
          for (let level = 0; level <= each.length; level += 1)
            expect(costOfLevel(demand, { over, under }, level)).toBeGreaterThan(expectedCost - 1e-9);
        },
      ),
      seed,
    );
  });

  it('needs nothing for a target of 0, names a target of 1 as out of reach, and refuses others', () => {
    expect(smallestLevel(poissonDemand(3), 'fillRate', 0)).toMatchObject({ level: 0, serviceBelow: null });
    expect(smallestLevel(poissonDemand(3), 'fillRate', 1)).toEqual({ kind: 'unattainable', target: 1 });
    expect(() => smallestLevel(poissonDemand(3), 'fillRate', 1.2)).toThrow(RangeError);
    expect(() => serviceOfLevel(poissonDemand(3), 1.5, 'fillRate')).toThrow(RangeError);
    expect(() => cheapestLevel(poissonDemand(3), { over: 0, under: 1 })).toThrow(RangeError);
  });

  it('without any demand nobody waits, but a ready rate wants one piece on the shelf', () => {
    const none = demandOfChances([]);
    expect(smallestLevel(none, 'cycleService', 0.95)).toMatchObject({ level: 0 });
    expect(smallestLevel(none, 'fillRate', 0.95)).toMatchObject({ level: 0 });
    expect(smallestLevel(none, 'readyRate', 0.95)).toMatchObject({ level: 1 });
  });
});
