import fc from 'fast-check';
import { judgementTables } from '../fixtures/judgement-tables.js';
import type { DiagnosisTables } from '../tables/diagnosis-tables.js';
import { rankChecksByMoney } from './rank-checks-by-money.js';

const twoCauses = (truePositive: number, falsePositive: number): DiagnosisTables => ({
  version: 'two',
  causes: [
    { id: 'shaft', prior: 0.5 },
    { id: 'switch', prior: 0.5 },
  ],
  symptoms: [],
  checks: [
    {
      id: 'play',
      minutes: 10,
      openingMove: false,
      prerequisites: [],
      positiveGivenCause: { shaft: truePositive, switch: falsePositive },
    },
  ],
});

/** Replacing costs 600 whatever the cause; adjusting costs 100, and 900 when the shaft was worn. */
const actions = [
  { id: 'replace', costGivenCause: { shaft: 600, switch: 600 } },
  { id: 'adjust', costGivenCause: { shaft: 900, switch: 100 } },
];

describe('rankChecksByMoney', () => {
  it('by hand: a perfect check saves 150 of 500, less ten minutes at 2', () => {
    // Now: replace 600, adjust 0.5*900 + 0.5*100 = 500. Knowing the cause: 0.5*600 + 0.5*100 = 350.
    const ranking = rankChecksByMoney(
      twoCauses(1, 0),
      { symptoms: {}, results: [] },
      { actions, labourPerMinute: 2 },
    );
    expect(ranking).toMatchObject({
      bestActionNow: { actionId: 'adjust', expectedCost: 500 },
      chains: [{ expectedCostSaved: 150, costOfChecking: 20, expectedNetSaved: 130, netSavedPerMinute: 13 }],
    });
  });

  it('by hand: an imperfect check (0.8 and 0.2) saves 70: positive, replace 600 < adjust 740; negative, adjust 260', () => {
    // 0.5*600 + 0.5*260 = 430; adjust after a positive would cost 0.8*900 + 0.2*100 = 740.
    const ranking = rankChecksByMoney(
      twoCauses(0.8, 0.2),
      { symptoms: {}, results: [] },
      { actions, labourPerMinute: 0 },
    );
    if (ranking.kind !== 'ranked') throw new Error('expected a ranking');
    expect(ranking.chains[0]!.expectedCostSaved).toBeCloseTo(70, 10);
  });

  it('finds a check that cannot change the action worth nothing, so that its minutes are lost', () => {
    const ranking = rankChecksByMoney(
      twoCauses(0.55, 0.45),
      { symptoms: {}, results: [] },
      { actions, labourPerMinute: 1 },
    );
    expect(ranking).toMatchObject({ chains: [{ expectedCostSaved: 0, expectedNetSaved: -10 }] });
  });

  it('never values information below zero or above knowing the cause', () => {
    const cost = fc.double({ min: 0, max: 2000, noNaN: true });
    const causeIds = judgementTables.causes.map((cause) => cause.id);
    const row = fc
      .tuple(...causeIds.map(() => cost))
      .map((values) => Object.fromEntries(causeIds.map((id, i) => [id, values[i]!])));
    fc.assert(
      fc.property(row, row, row, (a, b, c) => {
        const costs = {
          actions: [a, b, c].map((costGivenCause, i) => ({ id: `action-${i}`, costGivenCause })),
          labourPerMinute: 1,
        };
        const ranking = rankChecksByMoney(judgementTables, { symptoms: {}, results: [] }, costs);
        if (ranking.kind !== 'ranked') return false;
        const knowing = judgementTables.causes.reduce(
          (sum, { id, prior }) => sum + prior * Math.min(a[id]!, b[id]!, c[id]!),
          0,
        );
        const most = ranking.bestActionNow.expectedCost - knowing;
        return ranking.chains.every(
          (chain) => chain.expectedCostSaved >= 0 && chain.expectedCostSaved <= most + 1e-9,
        );
      }),
      { seed: 25, numRuns: 60 },
    );
  });

  it('refuses no action, a missing cost and a negative price of a minute', () => {
    const none = { symptoms: {}, results: [] };
    expect(() => rankChecksByMoney(twoCauses(1, 0), none, { actions: [], labourPerMinute: 1 })).toThrow(
      RangeError,
    );
    expect(() =>
      rankChecksByMoney(twoCauses(1, 0), none, {
        actions: [{ id: 'x', costGivenCause: { shaft: 1 } }],
        labourPerMinute: 1,
      }),
    ).toThrow(RangeError);
    expect(() => rankChecksByMoney(twoCauses(1, 0), none, { actions, labourPerMinute: -1 })).toThrow(
      RangeError,
    );
  });
});
