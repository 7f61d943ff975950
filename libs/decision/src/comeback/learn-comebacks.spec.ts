import { seededDraws } from '../random/seeded-draws.js';
import { comebackCoefficients } from '../tables/comeback-coefficients.js';
import { judgementTables } from '../tables/judgement-tables.js';
import type { OptionAction } from '../terms/option-actions.js';
import { adjustingLogOdds } from './adjusting-causes.js';
import type { ComebackOutcome, WatchOutcome } from './comeback-outcome.js';
import { comebackChance, comebackFeatures, wearSteps } from './comeback-predictor.js';
import { learnComebacks } from './learn-comebacks.js';

const place = (name: (typeof comebackCoefficients)[number]) => comebackCoefficients.indexOf(name);
const repair = (
  action: OptionAction,
  outcome: WatchOutcome,
  share: number | null = null,
): ComebackOutcome => ({
  context: { action, condition: null, arrivalStep: 0, functional: 'none', earlierComebacks: 0 },
  wear: share === null ? null : { share, standardUncertainty: 0 },
  outcome,
});
const times = (count: number, outcome: ComebackOutcome) => Array.from({ length: count }, () => outcome);
const taught = (outcomes: readonly ComebackOutcome[]) => {
  const result = learnComebacks(judgementTables, outcomes);
  if (result.kind !== 'estimated') throw new Error('not converged');
  return result.table;
};
const level = (outcomes: readonly ComebackOutcome[]) => taught(outcomes).mean[place('reBush')]!;

// Log posterior of the re-bushing level alone, written out: normal prior, then each window by its share watched.
function gridMode(comebacks: number, held: number, running: number, watched: number): number {
  const [mean, variance] = [
    judgementTables.comeback.mean[place('reBush')]!,
    judgementTables.comeback.covariance[place('reBush')]![place('reBush')]!,
  ];
  let best = { at: 0, value: -Infinity };
  for (let at = -8; at <= 4; at += 0.0005) {
    const p = 1 / (1 + Math.exp(-at));
    const value =
      comebacks * Math.log(p) +
      held * Math.log(1 - p) +
      running * Math.log(1 - p * watched) -
      (at - mean) ** 2 / (2 * variance);
    if (value > best.value) best = { at, value };
  }
  return best.at;
}

describe('learning from released repairs', () => {
  it('is the judgement table when nothing has been released', () => {
    const table = taught([]);
    table.mean.forEach((mean, k) => expect(mean).toBeCloseTo(judgementTables.comeback.mean[k]!, 10));
    table.covariance.forEach((row, i) =>
      row.forEach((value, j) => expect(value).toBeCloseTo(judgementTables.comeback.covariance[i]![j]!, 10)),
    );
  });

  it.each([
    [5, 15, 0, 0],
    [0, 10, 0, 0],
    [3, 4, 12, 0.5],
    [0, 0, 8, 0.25],
  ])(
    'finds the mode of the level that a fine grid finds: %p comebacks, %p held, %p watched to %p',
    (comebacks, held, running, watched) => {
      const outcomes = [
        ...times(comebacks, repair('reBush', { kind: 'comeback' })),
        ...times(held, repair('reBush', { kind: 'held' })),
        ...times(running, repair('reBush', { kind: 'running', shareOfWindow: watched })),
      ];
      expect(level(outcomes)).toBeCloseTo(gridMode(comebacks, held, running, watched), 3);
    },
  );

  it('learns nothing from a window that has only begun, and as much as from an elapsed one when it has run', () => {
    expect(level(times(20, repair('reBush', { kind: 'running', shareOfWindow: 0 })))).toBeCloseTo(
      level([]),
      10,
    );
    const run = level(times(20, repair('reBush', { kind: 'running', shareOfWindow: 1 })));
    expect(run).toBeCloseTo(level(times(20, repair('reBush', { kind: 'held' }))), 8);
    const half = level(times(20, repair('reBush', { kind: 'running', shareOfWindow: 0.5 })));
    expect(half).toBeLessThan(level([]));
    expect(half).toBeGreaterThan(run);
  });

  it('keeps the steps of wear from falling, whatever it is told', () => {
    const perverse = [
      ...times(60, repair('adjust', { kind: 'comeback' }, 0.2)),
      ...times(60, repair('adjust', { kind: 'held' }, 1.6)),
    ];
    const table = taught(perverse);
    for (const name of ['wearBelowCriterion', 'wearAtCriterion', 'wearAboveCriterion'] as const) {
      expect(table.mean[place(name)]).toBeGreaterThanOrEqual(0);
    }
  });

  it('does not depend on the order of the outcomes', () => {
    const outcomes = [
      repair('reBush', { kind: 'comeback' }),
      ...times(5, repair('adjust', { kind: 'held' }, 0.4)),
      repair('fitNew', { kind: 'held' }),
    ];
    const one = taught(outcomes);
    const other = taught(outcomes.toReversed());
    one.mean.forEach((mean, k) => expect(other.mean[k]).toBeCloseTo(mean, 9));
  });

  it('comes near the chances of an invented world after two thousand repairs, and its intervals hold them', () => {
    // A true chance of adjusting that rises with wear from 0.05 to 0.85; re-bushing 0.2.
    const draws = seededDraws(77);
    const truth = (share: number) => 0.05 + 0.8 / (1 + Math.exp(-(share - 1) / 0.1));
    const outcomes: ComebackOutcome[] = [];
    for (let k = 0; k < 2000; k += 1) {
      const share = 1.8 * draws.uniform();
      const isAdjust = k % 2 === 0;
      const comesBack = draws.uniform() < (isAdjust ? truth(share) : 0.2);
      outcomes.push(repair(isAdjust ? 'adjust' : 'reBush', { kind: comesBack ? 'comeback' : 'held' }, share));
    }
    const table = taught(outcomes);
    const atNodes = adjustingLogOdds(judgementTables, 0);
    const causes = (share: number) => {
      const [low, part] = [Math.floor(share * 24), share * 24 - Math.floor(share * 24)];
      return atNodes[low]! * (1 - part) + atNodes[low + 1]! * part;
    };
    const chance = (action: OptionAction, share: number) =>
      comebackChance(
        table.mean,
        comebackFeatures(
          { action, condition: null, arrivalStep: 0, functional: 'none', earlierComebacks: 0 },
          wearSteps(share),
        ),
        action === 'adjust' ? causes(share) : 0,
      );
    // Sampling error of a proportion over some two hundred repairs in the neighbourhood is 0.03; three of them.
    for (const share of [0.3, 0.7, 1, 1.4, 1.7])
      expect(Math.abs(chance('adjust', share) - truth(share))).toBeLessThan(0.09);
    expect(Math.abs(chance('reBush', 1) - 0.2)).toBeLessThan(0.04);
    const sd = Math.sqrt(table.covariance[place('reBush')]![place('reBush')]!);
    expect(Math.abs(table.mean[place('reBush')]! - Math.log(0.2 / 0.8))).toBeLessThan(3 * sd);
    expect(table.taught.comebacks + table.taught.held).toBe(2000);
  });

  it('refuses a share of the window beyond its ends', () => {
    expect(() =>
      learnComebacks(judgementTables, [repair('reBush', { kind: 'running', shareOfWindow: 1.2 })]),
    ).toThrow(RangeError);
  });
});
