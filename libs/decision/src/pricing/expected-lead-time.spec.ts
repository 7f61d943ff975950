import fc from 'fast-check';
import { judgementTables } from '../tables/judgement-tables.js';
import type { LeadTime } from '../terms/option-terms.js';
import { expectedLeadTime } from './expected-lead-time.js';

const table = judgementTables.leadTime;
const order = (
  promisedDays: number | null,
  ...delivered: (readonly [number | null, number])[]
): LeadTime => ({
  kind: 'toOrder',
  promisedDays,
  delivered: delivered.map(([promised, actualDays]) => ({ promisedDays: promised, actualDays })),
});
const known = (leadTime: LeadTime, slips = table) => {
  const result = expectedLeadTime(leadTime, slips);
  if (result.kind !== 'known') throw new Error('unknown');
  return result;
};

describe('expected lead time', () => {
  it('is none in stock, and unknown without promise and deliveries', () => {
    expect(known({ kind: 'inStock' })).toMatchObject({ meanDays: 0, basis: 'inStock' });
    expect(expectedLeadTime(order(null), table)).toEqual({ kind: 'unknown' });
  });

  it('is the promise itself where nobody ever slips', () => {
    const exact = { meanLogSlip: 0, betweenSuppliersSd: 0, withinSupplierSd: 0 };
    expect(known(order(7), exact).meanDays).toBeCloseTo(7, 12);
  });

  it('shrinks a supplier’s slip by hand: between 0.25, within 0.35, four deliveries', () => {
    // Each delivery took 7 days on a promise of 3: slip ln 2. Weight 4 x 0.0625 / (4 x 0.0625 + 0.1225) = 0.67114.
    // Slip 0.2 + 0.67114 x (0.693147 - 0.2) = 0.530972; its variance 0.0625 x 0.32886 = 0.0205537.
    // Mean days 4 x e^(0.530972 + (0.1225 + 0.0205537) / 2) - 1 = 6.3060.
    const four = known(order(3, [3, 7], [3, 7], [3, 7], [3, 7]));
    expect(four).toMatchObject({ basis: 'delivered', deliveries: 4 });
    expect(four.logMedianSd ** 2).toBeCloseTo(0.0205537, 6);
    expect(four.meanDays).toBeCloseTo(4 * Math.exp(0.530972 + (0.1225 + 0.0205537) / 2) - 1, 4);
  });

  it('takes the delivered days where no promise was recorded', () => {
    expect(known(order(null, [null, 9])).basis).toBe('delivered');
    expect(known(order(2, [null, 9], [null, 9])).meanDays).toBeGreaterThan(8);
  });

  it('is longer for a supplier who delivers later', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 1, max: 20 }),
        (promised, actual, more) => {
          const late = known(order(promised, [promised, actual + more])).meanDays;
          expect(late).toBeGreaterThan(known(order(promised, [promised, actual])).meanDays);
        },
      ),
      { seed: 61 },
    );
  });

  it('refuses days that are none', () => {
    expect(() => expectedLeadTime(order(-1), table)).toThrow(RangeError);
    expect(() => expectedLeadTime(order(3, [3, NaN]), table)).toThrow(RangeError);
  });
});
