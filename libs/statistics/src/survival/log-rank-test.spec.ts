import fc from 'fast-check';
import type { CensoredSample } from './censored-sample.js';
import { logRankTest } from './log-rank-test.js';

// Weeks of remission under 6-mercaptopurine and under placebo; Freireich et al. (1963), Blood 21:699–716, as in
// Gehan (1965), Biometrika 52:203–223.
const treated: CensoredSample = {
  ages: [6, 6, 6, 7, 10, 13, 16, 22, 23, 6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35],
  events: [1, 1, 1, 1, 1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
};
const placebo: CensoredSample = {
  ages: [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23],
  events: Array.from({ length: 21 }, () => 1),
};

describe('logRankTest', () => {
  it('gives the published comparison of the remission times', () => {
    // 16.79 in the textbooks (Kleinbaum & Klein, Survival Analysis, from memory); digits by SciPy 1.17.1
    // stats.logrank, statistic −4.097919104767264, p 4.168809109334529e-05. Tolerance 1e-12 relative: closed form.
    const outcome = logRankTest(treated, placebo);
    expect(outcome.kind).toBe('tested');
    if (outcome.kind !== 'tested') return;
    expect(outcome.observed).toEqual([9, 21]);
    expect(outcome.chiSquare).toBeCloseTo(4.097919104767264 ** 2, 11);
    expect(outcome.pValue).toBeCloseTo(4.168809109334529e-5, 15);
    expect(outcome.expected[0]).toBeCloseTo(19.25, 2);
    expect(outcome.expected[1]).toBeCloseTo(10.75, 2);
  });

  it('gives the value worked by hand', () => {
    // First group: event at 1, censored at 3. Second: event at 2, event at 3.
    // Age 1: n 2 + 2, E 1/2, V 1·2·2·3/(16·3) = 1/4. Age 2: n 1 + 2, E 1/3, V 1·1·2·2/(9·2) = 2/9.
    // Age 3: n 1 + 1, E 1/2, V 1/4. Observed 1, expected 4/3, variance 13/18, chi-square (1/9)/(13/18) = 2/13.
    const outcome = logRankTest({ ages: [1, 3], events: [1, 0] }, { ages: [2, 3], events: [1, 1] });
    expect(outcome).toMatchObject({ kind: 'tested', observed: [1, 2] });
    if (outcome.kind !== 'tested') return;
    expect(outcome.expected[0]).toBeCloseTo(4 / 3, 14);
    expect(outcome.variance).toBeCloseTo(13 / 18, 14);
    expect(outcome.chiSquare).toBeCloseTo(2 / 13, 14);
  });

  it('takes only those at risk into account when units enter late', () => {
    // The second group enters at 5, after the only event of the first: nothing is ever compared.
    const late = { ages: [8, 9], events: [1, 0], entryAges: [5, 5] };
    expect(logRankTest({ ages: [2, 3], events: [1, 0] }, late)).toEqual({ kind: 'notComparable' });
    // With one more unit of the first group at risk at 8 the event there counts: E = 1/3, V = 1·2·2/(9·2).
    const outcome = logRankTest({ ages: [2, 12], events: [1, 0] }, late);
    expect(outcome.kind).toBe('tested');
    if (outcome.kind === 'tested') expect(outcome.variance).toBeCloseTo(2 / 9, 14);
  });

  it('answers degenerate groups plainly', () => {
    const none = { ages: [], events: [] };
    expect(logRankTest(none, none)).toMatchObject({ kind: 'insufficientData', of: 'groups', got: 0 });
    expect(logRankTest(treated, none)).toMatchObject({ kind: 'insufficientData', of: 'groups', got: 1 });
    const censored = { ages: [4], events: [0] };
    expect(logRankTest(censored, censored)).toMatchObject({ kind: 'insufficientData', of: 'events' });
    // All at risk have the event at once: no variance, nothing to tell the groups apart by.
    expect(logRankTest({ ages: [4], events: [1] }, { ages: [4], events: [1] })).toEqual({
      kind: 'notComparable',
    });
  });

  it('is the same with the groups exchanged, and does not depend on the unit or on a bend of the age axis', () => {
    const group = fc
      .array(fc.tuple(fc.integer({ min: 1, max: 20 }), fc.boolean()), { minLength: 1, maxLength: 15 })
      .map((rows) => ({ ages: rows.map(([age]) => age), events: rows.map(([, event]) => event) }));
    fc.assert(
      fc.property(group, group, (first, second) => {
        const outcome = logRankTest(first, second);
        fc.pre(outcome.kind === 'tested');
        const exchanged = logRankTest(second, first);
        const bent = (sample: { ages: number[]; events: boolean[] }): CensoredSample => ({
          ...sample,
          ages: sample.ages.map((age) => age ** 3 / 7),
        });
        const moved = logRankTest(bent(first), bent(second));
        if (outcome.kind !== 'tested' || exchanged.kind !== 'tested' || moved.kind !== 'tested')
          throw new Error();
        expect(exchanged.chiSquare).toBeCloseTo(outcome.chiSquare, 10);
        expect(moved.chiSquare).toBeCloseTo(outcome.chiSquare, 12);
        expect(outcome.observed[0] + outcome.observed[1]).toBeCloseTo(
          outcome.expected[0] + outcome.expected[1],
          10,
        );
      }),
      { seed: 9, numRuns: 80 },
    );
  });
});
