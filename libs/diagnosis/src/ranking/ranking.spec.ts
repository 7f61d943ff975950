import fc from 'fast-check';
import type { CheckOutcome } from '../evidence/evidence.js';
import { settleResults } from '../evidence/settle-results.js';
import { judgementTables } from '../fixtures/judgement-tables.js';
import { chainTo, prerequisiteStanding } from './prerequisite-standing.js';
import { jointInformationBits } from './joint-information-bits.js';
import { rankCheckChains } from './rank-check-chains.js';
import { rankSingleChecks } from './rank-single-checks.js';

const settled = (...results: readonly (readonly [string, CheckOutcome])[]) =>
  settleResults(judgementTables, {
    symptoms: {},
    results: results.map(([checkId, outcome]) => ({ checkId, outcome })),
  });

const probability = fc.double({ min: 0, max: 1, noNaN: true });

describe('jointInformationBits', () => {
  it('by hand: a perfect check on two equal causes is worth one bit, a useless one none', () => {
    expect(jointInformationBits([0.5, 0.5], [[1, 0]])).toBe(1);
    expect(jointInformationBits([0.5, 0.5], [[0.3, 0.3]])).toBeCloseTo(0, 14);
  });

  it('by hand: the symmetric channel with error 0.1 on two equal causes is worth 1 - H(0.1) = 0.531004 bit', () => {
    expect(jointInformationBits([0.5, 0.5], [[0.9, 0.1]])).toBeCloseTo(0.5310044064, 9);
  });

  it('never falls when a check is added, and never exceeds the entropy or the sum of the single values', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.double({ min: 0.01, max: 1, noNaN: true }), probability, probability), {
          minLength: 2,
          maxLength: 5,
        }),
        (rows) => {
          const total = rows.reduce((sum, [w]) => sum + w, 0);
          const weights = rows.map(([w]) => w / total);
          const first = rows.map(([, p]) => p);
          const second = rows.map(([, , p]) => p);
          const one = jointInformationBits(weights, [first]);
          const other = jointInformationBits(weights, [second]);
          const joint = jointInformationBits(weights, [first, second]);
          expect(joint).toBeGreaterThanOrEqual(Math.max(one, other) - 1e-12);
          expect(joint).toBeLessThanOrEqual(one + other + 1e-12);
          expect(joint).toBeLessThanOrEqual(Math.log2(rows.length) + 1e-12);
          expect(jointInformationBits(weights, [second, first])).toBeCloseTo(joint, 10);
        },
      ),
      { seed: 24, numRuns: 200 },
    );
  });

  it('refuses a chain too long to enumerate', () => {
    expect(() =>
      jointInformationBits(
        [1],
        Array.from({ length: 17 }, () => [0.5]),
      ),
    ).toThrow(RangeError);
  });
});

describe('prerequisites', () => {
  const port = judgementTables.checks.find((check) => check.id === 'purge-port-vacuum')!;

  it('are unmet without a result, and with an undecided or contradictory one', () => {
    expect(prerequisiteStanding(port, settled())).toBe('unmet');
    expect(prerequisiteStanding(port, settled(['linkage-return', 'undecided']))).toBe('unmet');
    expect(
      prerequisiteStanding(port, settled(['linkage-return', 'positive'], ['linkage-return', 'negative'])),
    ).toBe('unmet');
  });

  it('are met by a negative or a corrected finding, provisional behind a positive one', () => {
    expect(prerequisiteStanding(port, settled(['linkage-return', 'negative']))).toBe('met');
    expect(prerequisiteStanding(port, settled(['linkage-return', 'positive']))).toBe('provisional');
    expect(
      prerequisiteStanding(port, settled(['linkage-return', 'positive'], ['linkage-return', 'corrected'])),
    ).toBe('met');
  });

  it('put every unmet one before the check that needs it, once', () => {
    expect(chainTo(judgementTables.checks, 'idle-switch-closing-point', settled())).toEqual([
      'linkage-return',
      'shaft-play',
      'purge-port-vacuum',
      'idle-switch-closing-point',
    ]);
    expect(
      chainTo(
        judgementTables.checks,
        'idle-switch-closing-point',
        settled(['linkage-return', 'negative'], ['shaft-play', 'positive']),
      ),
    ).toEqual(['purge-port-vacuum', 'idle-switch-closing-point']);
  });

  it('are refused when unknown or circular', () => {
    const row = (id: string, prerequisites: readonly string[]) => ({ id, prerequisites, openingMove: false });
    expect(() => chainTo([row('a', ['b'])], 'a', new Map())).toThrow(/does not exist/);
    expect(() => chainTo([row('a', ['b']), row('b', ['a'])], 'a', new Map())).toThrow(/circle/);
  });
});

describe('rankings', () => {
  it('keep a cheap gate that says little by itself, because of what it unlocks', () => {
    const evidence = {
      symptoms: {
        'idle-rises-with-ac': 'present',
        'idle-hunts-warm': 'present',
        'bucks-at-light-throttle': 'present',
        'no-overrun-fuel-cut-off': 'present',
        'stalls-cold': 'absent',
      },
      results: [],
    } as const;
    const single = rankSingleChecks(judgementTables, evidence);
    const chains = rankCheckChains(judgementTables, evidence);
    if (single.kind !== 'ranked' || chains.kind !== 'ranked') throw new Error('expected rankings');
    expect(single.checks[0]!.checkId).toBe('purge-hose-pinch');
    expect(chains.chains[0]!.firstAction).toBe('linkage-return');
  });

  it('offer an undecided check again, marked as a repeat', () => {
    const ranking = rankSingleChecks(judgementTables, {
      symptoms: {},
      results: [{ checkId: 'leak-test', outcome: 'undecided' }],
    });
    if (ranking.kind !== 'ranked') throw new Error('expected a ranking');
    expect(ranking.checks.find((check) => check.checkId === 'leak-test')!.repeats).toBe(true);
  });

  it('break ties by fewer minutes, then by id', () => {
    const check = (id: string, minutes: number) => ({
      id,
      minutes,
      openingMove: false,
      prerequisites: [],
      positiveGivenCause: { a: 0.5, b: 0.5 },
    });
    const tables = {
      version: 'ties',
      causes: [
        { id: 'a', prior: 0.5 },
        { id: 'b', prior: 0.5 },
      ],
      symptoms: [],
      checks: [check('z', 5), check('y', 5), check('x', 9), check('w', 1)],
    };
    const ranking = rankSingleChecks(tables, { symptoms: {}, results: [] });
    if (ranking.kind !== 'ranked') throw new Error('expected a ranking');
    expect(ranking.checks.map((row) => row.checkId)).toEqual(['w', 'y', 'z', 'x']);
  });

  it('are empty when every check is done', () => {
    const results = judgementTables.checks.map((row) => ({ checkId: row.id, outcome: 'negative' }) as const);
    expect(rankSingleChecks(judgementTables, { symptoms: {}, results })).toMatchObject({ checks: [] });
    expect(rankCheckChains(judgementTables, { symptoms: {}, results })).toMatchObject({ chains: [] });
  });
});
