import fc from 'fast-check';
import { compareRecurrences } from './compare-recurrences.js';
import { recurrenceTrend } from './recurrence-trend.js';

const watched = (until: number, ...eventAges: number[]) => ({ spans: [{ from: 0, until }], eventAges });

describe('the trend of recurrences over a fleet', () => {
  /** Repairs of one system, NIST/SEMATECH e-Handbook 8.4.5.2, observed to 1500 h. */
  const repairs = watched(1500, 5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478);

  it('of the published repairs: Laplace -1.327, chi-square 37.23 on 20 degrees of freedom, shape 0.5372', () => {
    const { laplace, powerLawTest, powerLaw } = recurrenceTrend([repairs]);
    if (laplace.kind !== 'tested' || powerLawTest.kind !== 'tested' || powerLaw.kind !== 'estimated')
      throw new Error('not tested');
    expect(laplace.statistic).toBeCloseTo(-1.32694918, 6);
    expect(powerLawTest.chiSquare).toBeCloseTo(37.2280815, 5);
    expect(powerLawTest.degreesOfFreedom).toBe(20);
    expect(powerLaw.shape).toBeCloseTo(0.537228866, 6);
    expect(powerLaw.rate).toBeCloseTo(0.196658216, 6);
  });

  it('is not made up by a vehicle that joins late: its stretch counts from where it begins', () => {
    // Watched from 900 to 1000 only, with events in the middle: taken from age 0 they would all lie late.
    const { laplace } = recurrenceTrend([{ spans: [{ from: 900, until: 1000 }], eventAges: [940, 960] }]);
    expect(laplace).toMatchObject({ kind: 'tested', statistic: 0, events: 2 });
  });

  it('leaves out events nobody watched for, and says when none is left', () => {
    const { laplace, powerLaw } = recurrenceTrend([{ spans: [{ from: 0, until: 10 }], eventAges: [50] }]);
    expect([laplace.kind, powerLaw.kind]).toEqual(['insufficientData', 'insufficientData']);
  });
});

describe('two groups of vehicles', () => {
  it('differ by hand: two vans with one and three repairs against two with none stand 2 apart, with standard error 0.7071', () => {
    // First group: four repairs over two vans, mean 2. Each van contributes half of what it had beyond the mean:
    // (1 - 2)/2 and (3 - 2)/2, whose squares add to 1/2. The second group has neither repairs nor spread.
    const found = compareRecurrences([watched(10, 2), watched(10, 4, 6, 8)], [watched(10), watched(10)]);
    if (found.kind !== 'tested') throw new Error(found.kind);
    expect(found.difference).toBe(2);
    expect(found.standardError).toBeCloseTo(Math.SQRT1_2, 12);
    expect(found.statistic).toBeCloseTo(2 * Math.SQRT2, 12);
    // Two-sided, standard normal at 2.828: 0.00468.
    expect(found.pValue).toBeCloseTo(0.00468, 5);
  });

  it('are not compared where one has a single vehicle, nothing recurred, or there is no spread', () => {
    const pair = [watched(10, 3), watched(10)];
    expect(compareRecurrences([watched(10, 2)], pair)).toEqual({
      kind: 'insufficientData',
      needed: 2,
      got: 1,
    });
    const calm = [watched(10), watched(10)];
    expect(compareRecurrences(calm, calm)).toEqual({ kind: 'notComparable' });
    expect(() => compareRecurrences([], [], 1)).toThrow(RangeError);
    const alike = [watched(10, 3), watched(10, 3)];
    expect(compareRecurrences(alike, calm)).toEqual({ kind: 'noSpread', difference: 1 });
  });

  it('differ by as much the other way round', () => {
    const van = fc
      .tuple(fc.integer({ min: 50, max: 90 }), fc.array(fc.integer({ min: 1, max: 49 }), { maxLength: 5 }))
      .map(([until, ages]) => watched(until, ...ages));
    const group = fc.array(van, { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(group, group, (first, second) => {
        const [one, other] = [compareRecurrences(first, second), compareRecurrences(second, first)];
        expect(other.kind).toBe(one.kind);
        if (one.kind !== 'tested' || other.kind !== 'tested') return;
        expect(other.difference).toBeCloseTo(-one.difference, 10);
        expect(other.pValue).toBeCloseTo(one.pValue, 10);
      }),
      { seed: 31, numRuns: 150 },
    );
  });
});
