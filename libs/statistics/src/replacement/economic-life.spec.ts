import fc from 'fast-check';
import { challengerRule } from './challenger-rule.js';
import { economicLife, type EconomicLife } from './economic-life.js';

function lived(outcome: ReturnType<typeof economicLife>): EconomicLife {
  if (outcome.kind === 'insufficientData') throw new Error(outcome.kind);
  return outcome;
}

describe('economicLife', () => {
  it('replaces the machine of the textbook exercise after five years', () => {
    // Price 80,000, running cost 5,000 rising by 7,000 a year, no resale; published answer year 5 at 35,000.
    const periods = Array.from({ length: 8 }, (_, i) => ({ running: 5000 + 7000 * i, resale: 0 }));
    const life = lived(economicLife(80_000, periods));
    expect(life).toMatchObject({ kind: 'minimumInside', periods: 5, cost: 35_000 });
    expect(life.costs.slice(0, 6).map((cost) => Number(cost.toFixed(2)))).toEqual([
      85000, 48500, 38666.67, 35500, 35000, 35833.33,
    ]);
  });

  it('replaces the truck of the textbook exercise after five years', () => {
    // Price 6,000; published averages 4000 3350 2950 2756.25 2700 2716.67 2814.29 2962.5.
    const running = [1000, 1200, 1400, 1800, 2300, 2800, 3400, 4000];
    const resale = [3000, 1500, 750, 375, 200, 200, 200, 200];
    const life = lived(
      economicLife(
        6000,
        running.map((cost, i) => ({ running: cost, resale: resale[i]! })),
      ),
    );
    expect(life).toMatchObject({ kind: 'minimumInside', periods: 5, cost: 2700 });
    expect(life.costs.map((cost) => Number(cost.toFixed(2)))).toEqual([
      4000, 3350, 2950, 2756.25, 2700, 2716.67, 2814.29, 2962.5,
    ]);
  });

  it('discounts as worked by hand', () => {
    // Price 1000, interest 10 %, running 100 and 210, resale 550 and 242.
    // One period: 1000 · 1.1 + 100 − 550 = 650.
    // Two: present value 1000 + 100/1.1 + 210/1.21 − 242/1.21 = 1000 + 90.909091 − 26.446281 = 1064.462810;
    // times 0.1 / (1 − 1/1.21) = 0.576190476 gives 613.333333.
    const life = lived(
      economicLife(
        1000,
        [
          { running: 100, resale: 550 },
          { running: 210, resale: 242 },
        ],
        { discountRate: 0.1 },
      ),
    );
    expect(life.costs[0]).toBeCloseTo(650, 10);
    expect(life.costs[1]).toBeCloseTo(613.3333333333, 9);
    expect(life).toMatchObject({ kind: 'lowestAtLastPeriod', periods: 2 });
  });

  it('takes the shorter of equal lives', () => {
    // 4 for one period; (6 + 1 + 3 − 2) / 2 = 4 for two.
    expect(
      economicLife(6, [
        { running: 1, resale: 3 },
        { running: 3, resale: 2 },
      ]),
    ).toMatchObject({ kind: 'minimumInside', periods: 1, cost: 4 });
  });

  const amounts = fc.array(fc.record({ running: fc.nat(5000), resale: fc.nat(3000) }), {
    minLength: 1,
    maxLength: 12,
  });

  it('comes close to the plain average as interest goes to nothing', () => {
    fc.assert(
      fc.property(fc.nat(20_000), amounts, (price, periods) => {
        const plain = lived(economicLife(price, periods));
        const nearly = lived(economicLife(price, periods, { discountRate: 1e-9 }));
        nearly.costs.forEach((cost, i) => expect(cost).toBeCloseTo(plain.costs[i]!, 2));
      }),
      { seed: 29, numRuns: 100 },
    );
  });

  it('grows by a constant running cost, and by nothing else', () => {
    fc.assert(
      fc.property(
        fc.nat(20_000),
        amounts,
        fc.constantFrom(undefined, 0.07),
        (price, periods, discountRate) => {
          const options = discountRate === undefined ? {} : { discountRate };
          const plain = lived(economicLife(price, periods, options));
          const dearer = lived(
            economicLife(
              price,
              periods.map(({ running, resale }) => ({ running: running + 100, resale })),
              options,
            ),
          );
          dearer.costs.forEach((cost, i) => expect(cost).toBeCloseTo(plain.costs[i]! + 100, 6));
        },
      ),
      { seed: 30, numRuns: 100 },
    );
  });

  it('needs a period and finite amounts', () => {
    expect(economicLife(5, [])).toEqual({ kind: 'insufficientData', of: 'periods', needed: 1, got: 0 });
    expect(() => economicLife(NaN, [])).toThrow(RangeError);
    expect(() => economicLife(1, [{ running: Infinity, resale: 0 }])).toThrow(RangeError);
    expect(() => economicLife(1, [], { discountRate: 0 })).toThrow(RangeError);
  });
});

describe('challengerRule', () => {
  // Worth 10 now; running 2 3 5 8, resale 8 7 6 5. Further periods alone: 2 + 10 − 8 = 4; 3 + 1 = 4; 5 + 1 = 6; 8 + 1 = 9.
  // Averages 4, 4, 14/3, 23/4.
  const periods = [
    { running: 2, resale: 8 },
    { running: 3, resale: 7 },
    { running: 5, resale: 6 },
    { running: 8, resale: 5 },
  ];

  it('replaces now when even the cheapest remaining life is dearer', () => {
    expect(challengerRule(10, periods, 3.9)).toMatchObject({
      kind: 'replaceNow',
      periods: 0,
      marginalCosts: [4, 4, 6, 9],
    });
  });

  it('keeps period by period while the next alone does not cost more', () => {
    expect(challengerRule(10, periods, 4)).toMatchObject({ kind: 'keep', periods: 2 });
    expect(challengerRule(10, periods, 7)).toMatchObject({ kind: 'keep', periods: 3 });
    expect(challengerRule(10, periods, 9)).toMatchObject({ kind: 'keepThroughout', periods: 4 });
  });

  it('is not put off by one dear period before cheap ones', () => {
    // An outlay of 9 in the first period, then 1 a period, resale 4 throughout and now: averages 9, 5, 11/3, 3.
    // At 3.5 the first period alone is dearer than the challenger, but the whole life is not.
    const later = [9, 1, 1, 1].map((running) => ({ running, resale: 4 }));
    expect(challengerRule(4, later, 3.5)).toMatchObject({ kind: 'keepThroughout', periods: 4 });
    expect(challengerRule(4, later, 2.9)).toMatchObject({ kind: 'replaceNow' });
  });

  it('charges interest on the money tied up', () => {
    // 10 % on a resale value of 10 adds 1 to the first period: 2 + 11 − 8 = 5.
    const decision = challengerRule(10, periods, 4.5, { discountRate: 0.1 });
    if (decision.kind === 'insufficientData') throw new Error(decision.kind);
    expect(decision.marginalCosts[0]).toBeCloseTo(5, 12);
    expect(decision.costs[0]).toBeCloseTo(5, 12);
    expect(decision.kind).toBe('replaceNow');
  });

  it('never keeps longer for a cheaper challenger', () => {
    const list = fc.array(fc.record({ running: fc.nat(50), resale: fc.nat(30) }), {
      minLength: 1,
      maxLength: 8,
    });
    fc.assert(
      fc.property(fc.nat(60), list, fc.nat(60), fc.nat(20), (now, further, cost, less) => {
        const dear = challengerRule(now, further, cost);
        const cheap = challengerRule(now, further, cost - less);
        if (dear.kind === 'insufficientData' || cheap.kind === 'insufficientData')
          throw new Error('expected decisions');
        expect(cheap.periods).toBeLessThanOrEqual(dear.periods);
      }),
      { seed: 31, numRuns: 200 },
    );
    expect(challengerRule(1, [], 1)).toMatchObject({ kind: 'insufficientData' });
    expect(() => challengerRule(1, periods, NaN)).toThrow(RangeError);
  });
});
