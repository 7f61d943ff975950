import fc from 'fast-check';
import { funnelLimits } from '@endfloat/statistics';
import { compareGroups, type MixCell, type StratumTotal } from './compare-groups.js';

function strataOf(cells: readonly MixCell[]): StratumTotal[] {
  const strata = new Map<string, { events: number; atRisk: number }>();
  for (const { stratum, events, atRisk } of cells) {
    const sum = strata.get(stratum) ?? { events: 0, atRisk: 0 };
    strata.set(stratum, { events: sum.events + events, atRisk: sum.atRisk + atRisk });
  }
  return [...strata].map(([stratum, sum]) => ({ stratum, ...sum }));
}

const comparedOf = (comparison: ReturnType<typeof compareGroups>, name: string) => {
  const found = comparison.groups.find(({ group }) => group === name)!;
  if (found.against.kind !== 'compared') throw new Error(`${name} is not compared`);
  return { ...found, ...found.against };
};

describe('fair comparison of groups', () => {
  it('does not fall into the trap of a different mix: by hand, same true rates, raw rates three times apart', () => {
    // Brakes come back 2 in 100, drivability 20 in 100, whoever does them. One does mostly the easy ones.
    const cells = [
      { group: 'easy', stratum: 'brakes', events: 18, atRisk: 900 },
      { group: 'easy', stratum: 'drivability', events: 20, atRisk: 100 },
      { group: 'hard', stratum: 'brakes', events: 2, atRisk: 100 },
      { group: 'hard', stratum: 'drivability', events: 180, atRisk: 900 },
    ];
    const comparison = compareGroups(cells, strataOf(cells), 20);
    const [easy, hard] = [comparedOf(comparison, 'easy'), comparedOf(comparison, 'hard')];
    expect([easy.rate.value, hard.rate.value]).toEqual([0.038, 0.182]);
    expect([easy.expected, hard.expected]).toEqual([38, 182]);
    for (const each of [easy, hard]) {
      expect(each.ratio).toMatchObject({ ratio: 1, finding: 'withinChance' });
      expect(each.finding).toBe('inside');
    }
  });

  it('shrinks 3 of 40 and 9 of 210 to a shop rate of 5 % worth 50 jobs: 6.1 % and 4.4 %', () => {
    // By hand: (2.5 + 3) / 90 and (2.5 + 9) / 260. The rest of the shop makes the rate 5 % exactly: 38 of 750.
    const cells = [
      { group: 'a', stratum: 'all', events: 3, atRisk: 40 },
      { group: 'b', stratum: 'all', events: 9, atRisk: 210 },
      { group: 'rest', stratum: 'all', events: 38, atRisk: 750 },
    ];
    const comparison = compareGroups(cells, strataOf(cells), 20);
    expect(comparison).toMatchObject({ overall: { value: 0.05 }, priorJobs: 50, priorFrom: 'judgement' });
    expect(comparedOf(comparison, 'a').shrunken.value).toBeCloseTo(5.5 / 90, 12);
    expect(comparedOf(comparison, 'b').shrunken.value).toBeCloseTo(11.5 / 260, 12);
    // Wilson 95 %: 2.6 to 19.9 % and 2.3 to 7.9 %.
    const [a, b] = ['a', 'b'].map((name) => comparedOf(comparison, name).rate.interval!);
    expect([a!.lower, a!.upper].map((limit) => limit.toFixed(3))).toEqual(['0.026', '0.199']);
    expect([b!.lower, b!.upper].map((limit) => limit.toFixed(3))).toEqual(['0.023', '0.079']);
  });

  it('draws the funnel of Spiegelhalter (2005) around a target of 8 %', () => {
    const sizes = [10, 25, 50, 100, 250];
    const cells = [
      ...sizes.map((atRisk) => ({ group: `n${atRisk}`, stratum: 'all', events: 0, atRisk })),
      { group: 'rest', stratum: 'all', events: 40, atRisk: 65 },
    ];
    const comparison = compareGroups(cells, strataOf(cells), 1);
    // Published formula, values computed with R (qbinom, pbinom): lower and upper limits, 95 % and 99.8 %.
    const expected = [
      [0, 0.24398488, 0, 0.392056583],
      [0, 0.184527282, 0, 0.271515777],
      [0.002835437, 0.153847857, 0, 0.211397985],
      [0.025397375, 0.132166, 0.003657454, 0.169532272],
      [0.045859603, 0.113269446, 0.029896228, 0.135540009],
    ];
    sizes.forEach((size, at) => {
      const { inner, outer } = comparedOf(comparison, `n${size}`);
      [inner.lower, inner.upper, outer.lower, outer.upper].forEach((limit, i) =>
        expect(limit).toBeCloseTo(expected[at]![i]!, 8),
      );
    });
  });

  it('ranks nobody under the minimum, and gives equal rates one rank', () => {
    const cells = [
      { group: 'a', stratum: 'all', events: 1, atRisk: 19 },
      { group: 'b', stratum: 'all', events: 2, atRisk: 40 },
      { group: 'c', stratum: 'all', events: 2, atRisk: 40 },
      { group: 'd', stratum: 'all', events: 9, atRisk: 40 },
    ];
    const comparison = compareGroups(cells, strataOf(cells), 20);
    expect(comparison.groups[0]).toMatchObject({
      against: { kind: 'belowMinimum', needed: 20, got: 19 },
      rate: { kind: 'estimated' },
    });
    expect(['b', 'c', 'd'].map((name) => comparedOf(comparison, name).rank)).toEqual([1, 1, 3]);
  });

  it('raises false alarms at the rate its limits name, where nothing differs', () => {
    // 4000 groups of 30 to 300 jobs at one true rate of 12 %: about 5 % outside the inner limits, 0.2 % outside the outer.
    let state = 20260105;
    const uniform = (): number => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state / 2 ** 32;
    };
    const cells = Array.from({ length: 4000 }, (_, at) => {
      const atRisk = 30 + Math.floor(uniform() * 271);
      let events = 0;
      for (let job = 0; job < atRisk; job += 1) if (uniform() < 0.12) events += 1;
      return { group: String(at), stratum: 'all', events, atRisk };
    });
    const limits = new Map<
      number,
      { inner: ReturnType<typeof funnelLimits>; outer: ReturnType<typeof funnelLimits> }
    >();
    const share = (coverage: 'inner' | 'outer'): number =>
      cells.filter(({ events, atRisk }) => {
        const found = limits.get(atRisk) ?? {
          inner: funnelLimits(0.12, atRisk, 0.95),
          outer: funnelLimits(0.12, atRisk, 0.998),
        };
        limits.set(atRisk, found);
        const value = events / atRisk;
        return value > found[coverage].upper || value < found[coverage].lower;
      }).length / cells.length;
    // Standard errors of the shares: 0.34 % and 0.07 %; the bounds allow four of them.
    expect(Math.abs(share('inner') - 0.05)).toBeLessThan(0.014);
    expect(Math.abs(share('outer') - 0.002)).toBeLessThan(0.003);
  });

  it('expects in all groups together what was seen, however jobs fall into groups and strata', () => {
    const cell = fc
      .record({
        group: fc.constantFrom('a', 'b', 'c'),
        stratum: fc.constantFrom('x', 'y'),
        atRisk: fc.integer({ min: 0, max: 60 }),
        share: fc.double({ min: 0, max: 1, noNaN: true }),
      })
      .map(({ share, ...rest }) => ({ ...rest, events: Math.floor(rest.atRisk * share) }));
    fc.assert(
      fc.property(fc.array(cell, { minLength: 1, maxLength: 10 }), (cells) => {
        const comparison = compareGroups(cells, strataOf(cells), 1);
        const expected = comparison.groups.reduce((sum, group) => sum + group.expected, 0);
        expect(expected).toBeCloseTo(
          cells.reduce((sum, { events }) => sum + events, 0),
          9,
        );
      }),
      { seed: 7, numRuns: 100 },
    );
  });

  it('refuses a cell of a stratum it was not told of, and a minimum of nothing', () => {
    const cells = [{ group: 'a', stratum: 'x', events: 1, atRisk: 2 }];
    expect(() => compareGroups(cells, [], 20)).toThrow(RangeError);
    expect(() => compareGroups(cells, strataOf(cells), 0)).toThrow(RangeError);
    // Three comebacks of two jobs here and none of two there would pass as three of four.
    const odd = [
      { group: 'a', stratum: 'x', events: 3, atRisk: 2 },
      { group: 'a', stratum: 'y', events: 0, atRisk: 2 },
    ];
    expect(() => compareGroups(odd, strataOf(odd), 1)).toThrow(RangeError);
  });
});
