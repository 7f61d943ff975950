import fc from 'fast-check';
import { mixtureOfDemands } from '../demand/combine-demands.js';
import { demandOfChances } from '../demand/demand-of-chances.js';
import { givenLeadTime, leadTimesOf } from './lead-times.js';
import { priceOfQuantity } from './price-of-quantity.js';
import { proposeOrder } from './propose-order.js';

const eur = (amount: string) => ({ amount, currency: 'EUR' });

describe('lead times as delivered', () => {
  it('stretch the promise by the slips of the past: promised 4 and came after 9, promised 9 and came after 9', () => {
    // (9 + 1) / (4 + 1) = 2 and (9 + 1) / (9 + 1) = 1: a promise of 8 becomes 9 · 2 − 1 = 17 and 9 · 1 − 1 = 8 days.
    expect(
      leadTimesOf(8, [
        { promisedDays: 4, actualDays: 9 },
        { promisedDays: 9, actualDays: 9 },
      ]),
    ).toMatchObject({
      kind: 'known',
      source: 'delivered',
      cases: [
        { days: 8, weight: 0.5 },
        { days: 17, weight: 0.5 },
      ],
      meanDays: 12.5,
      ninetiethDays: 17,
      deliveries: 2,
    });
  });

  it('without a promise are the delivered days themselves, like ones counted together', () => {
    const delivered = [3, 5, 3, 11].map((actualDays) => ({ promisedDays: null, actualDays }));
    expect(leadTimesOf(null, delivered)).toMatchObject({
      cases: [
        { days: 3, weight: 0.5 },
        { days: 5, weight: 0.25 },
        { days: 11, weight: 0.25 },
      ],
      meanDays: 5.5,
    });
  });

  it('are the promise alone where nothing came yet, and unknown with neither', () => {
    expect(leadTimesOf(6, [])).toMatchObject({ source: 'promisedOnly', meanDays: 6, deliveries: 0 });
    expect(leadTimesOf(null, [])).toEqual({ kind: 'unknown' });
    expect(givenLeadTime(18)).toMatchObject({ source: 'given', cases: [{ days: 18, weight: 1 }] });
    expect(() => leadTimesOf(-1, [])).toThrow(RangeError);
  });

  it('weights add up to 1, and one in ten at most lies beyond the ninetieth', () => {
    const day = fc.integer({ min: 0, max: 60 });
    fc.assert(
      fc.property(fc.array(day, { minLength: 1, maxLength: 30 }), day, (days, promisedDays) => {
        const times = leadTimesOf(
          promisedDays,
          days.map((actualDays) => ({ promisedDays: 5, actualDays })),
        );
        if (times.kind !== 'known') throw new Error('deliveries make it known');
        expect(times.cases.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
        const beyond = times.cases.filter((each) => each.days > times.ninetiethDays);
        expect(beyond.reduce((sum, { weight }) => sum + weight, 0)).toBeLessThan(0.1 + 1e-9);
      }),
      { seed: 47, numRuns: 200 },
    );
  });
});

describe('order proposals', () => {
  it('by hand: three vans reach the limit within the lead time, one housing is here, so two are ordered', () => {
    // Chances 0.95, 0.9 and 0.9: P(D ≤ 2) = 1 − 0.95 · 0.9 · 0.9 = 0.2305, so 95 % need all three.
    const proposal = proposeOrder({
      demand: demandOfChances([0.95, 0.9, 0.9]),
      onHand: 1,
      onOrder: 0,
      measure: 'cycleService',
      target: 0.95,
    });
    expect(proposal).toMatchObject({ kind: 'proposed', quantity: 2, position: 1, level: { level: 3 } });
    if (proposal.kind !== 'proposed') throw new Error('it is proposed');
    // P(D ≤ 1) = none 0.0005 + one (0.95·0.1·0.1 + 2 · 0.05·0.9·0.1 = 0.0095 + 0.009) = 0.019
    expect(proposal.serviceWithout).toBeCloseTo(0.019, 12);
    // mean 2.75, none missing only at 0 and 1: 2.75 − 1 + P(D = 0) = 1.7505
    expect(proposal.shortWithout).toBeCloseTo(1.7505, 12);
  });

  it('a slow supplier needs more on the shelf than a quick one, and an uncertain one may need as many', () => {
    const within = (days: number) => demandOfChances(Array.from({ length: 8 }, () => Math.min(1, days / 60)));
    const level = (cases: readonly { weight: number; days: number }[]) => {
      const demand = mixtureOfDemands(cases.map(({ weight, days }) => ({ weight, demand: within(days) })));
      const found = proposeOrder({ demand, onHand: 0, onOrder: 0, measure: 'cycleService', target: 0.95 });
      return found.kind === 'proposed' ? found.quantity : null;
    };
    const [quick, slow] = [level([{ weight: 1, days: 5 }])!, level([{ weight: 1, days: 25 }])!];
    const uncertain = level([
      { weight: 1, days: 5 },
      { weight: 1, days: 25 },
    ])!;
    expect(quick).toBeLessThan(uncertain);
    expect(uncertain).toBeLessThanOrEqual(slow);
  });

  it('what is on order counts, and never is a negative number proposed', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 10 }),
        fc.nat(12),
        fc.nat(12),
        (chances, onHand, onOrder) => {
          const ask = (hand: number, order: number) =>
            proposeOrder({
              demand: demandOfChances(chances),
              onHand: hand,
              onOrder: order,
              measure: 'fillRate',
              target: 0.9,
            });
          const proposal = ask(onHand, onOrder);
          if (proposal.kind !== 'proposed') throw new Error('a target below 1 has a level');
          expect(proposal.quantity).toBe(Math.max(0, proposal.level.level - onHand - onOrder));
          expect(ask(onHand + onOrder, 0)).toEqual(proposal);
        },
      ),
      { seed: 53, numRuns: 200 },
    );
  });

  it('names a certainty that no stock gives', () => {
    const demand = demandOfChances([0.5]);
    const question = { demand, onHand: 0, onOrder: 0, measure: 'cycleService', target: 1 } as const;
    expect(proposeOrder(question)).toEqual({ kind: 'unattainable', target: 1 });
    expect(() => proposeOrder({ ...question, onHand: -1 })).toThrow(RangeError);
  });
});

describe('price breaks', () => {
  const breaks = [
    { fromQuantity: 10, price: eur('5.00') },
    { fromQuantity: 3, price: eur('8.00') },
  ];

  it('the highest break that is reached counts for every piece', () => {
    expect(priceOfQuantity(eur('10.00'), breaks, 1)).toMatchObject({ unitPrice: eur('10.00') });
    expect(priceOfQuantity(eur('10.00'), breaks, 4)).toMatchObject({
      unitPrice: eur('8.00'),
      total: eur('32.00'),
      noDearer: null,
    });
  });

  it('names more pieces that cost no more in all: seven at 8.00 are 56.00, ten at 5.00 are 50.00', () => {
    expect(priceOfQuantity(eur('10.00'), breaks, 7).noDearer).toEqual({
      quantity: 10,
      unitPrice: eur('5.00'),
      total: eur('50.00'),
    });
  });

  it('refuses a break in another currency, which cannot be compared', () => {
    const foreign = [{ fromQuantity: 3, price: { amount: '6.00', currency: 'USD' } }];
    expect(() => priceOfQuantity(eur('10.00'), foreign, 2)).toThrow(RangeError);
    expect(() => priceOfQuantity(eur('10.00'), foreign, 5)).toThrow(RangeError);
    expect(() => priceOfQuantity(eur('10.00'), [], 0)).toThrow(RangeError);
  });
});
