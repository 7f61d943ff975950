import type { CheckOutcome, Evidence } from '../evidence/evidence.js';
import { settleResults } from '../evidence/settle-results.js';
import { judgementTables } from '../fixtures/judgement-tables.js';
import { nextCheckInOrder } from './next-check-in-order.js';
import { rankNextChecks } from './rank-next-checks.js';

const evidence = (...results: readonly (readonly [string, CheckOutcome])[]): Evidence => ({
  symptoms: {
    'idle-rises-with-ac': 'present',
    'idle-hunts-warm': 'present',
    'bucks-at-light-throttle': 'present',
    'no-overrun-fuel-cut-off': 'present',
    'stalls-cold': 'absent',
  },
  results: results.map(([checkId, outcome]) => ({ checkId, outcome })),
});
const inOrder = (...results: readonly (readonly [string, CheckOutcome])[]) =>
  nextCheckInOrder(judgementTables.checks, settleResults(judgementTables, evidence(...results)));

const OPENING = [
  ['visual-hoses-and-codes', 'negative'],
  ['battery-and-charging', 'negative'],
  ['manifold-vacuum', 'negative'],
] as const;

describe('nextCheckInOrder', () => {
  it('begins with the opening moves in sheet order', () => {
    expect(inOrder()).toEqual({ kind: 'next', checkId: 'visual-hoses-and-codes', reason: 'openingMove' });
    expect(inOrder(OPENING[0])).toEqual({
      kind: 'next',
      checkId: 'battery-and-charging',
      reason: 'openingMove',
    });
  });

  it('then follows the sheet', () => {
    expect(inOrder(...OPENING)).toEqual({ kind: 'next', checkId: 'leak-test', reason: 'firstInOrder' });
  });

  it('repeats an undecided check at its place', () => {
    expect(inOrder(...OPENING, ['leak-test', 'undecided'])).toEqual({
      kind: 'next',
      checkId: 'leak-test',
      reason: 'repeatOfUndecided',
    });
  });

  it('does not go past a positive finding that was not put right', () => {
    const all = judgementTables.checks.map((check) => check.id);
    const housing = ['linkage-return', 'shaft-play', 'purge-port-vacuum', 'idle-switch-closing-point'];
    const before = all.filter((id) => !housing.includes(id)).map((id) => [id, 'negative'] as const);
    expect(inOrder(...before, ['linkage-return', 'positive'])).toEqual({
      kind: 'correctFirst',
      findings: ['linkage-return'],
      waiting: ['shaft-play', 'purge-port-vacuum', 'idle-switch-closing-point'],
    });
    expect(inOrder(...before, ['linkage-return', 'positive'], ['linkage-return', 'corrected'])).toMatchObject(
      { checkId: 'shaft-play' },
    );
  });

  it('ends when all checks are done', () => {
    expect(inOrder(...judgementTables.checks.map((check) => [check.id, 'negative'] as const))).toEqual({
      kind: 'allChecksDone',
    });
    expect(nextCheckInOrder([], new Map())).toEqual({ kind: 'allChecksDone' });
  });
});

describe('rankNextChecks', () => {
  it('proposes the opening moves first', () => {
    const answer = rankNextChecks(judgementTables, evidence());
    if (answer.kind !== 'proposed') throw new Error('expected proposals');
    expect(answer.checks.map((check) => check.checkId)).toEqual([
      'visual-hoses-and-codes',
      'battery-and-charging',
      'manifold-vacuum',
    ]);
    expect(answer.checks[0]!.reasons).toEqual([{ code: 'openingMove' }]);
  });

  it('then proposes the gate of the best chain, with what it unlocks', () => {
    const answer = rankNextChecks(judgementTables, evidence(...OPENING));
    if (answer.kind !== 'proposed') throw new Error('expected proposals');
    expect(answer.checks[0]!.checkId).toBe('linkage-return');
    expect(answer.checks[0]!.reasons).toContainEqual({
      code: 'unlocks',
      targetCheckId: 'purge-port-vacuum',
      chain: ['linkage-return', 'purge-port-vacuum'],
    });
    expect(answer.leadingCauses).toHaveLength(3);
  });

  it('names each check once and proposes no more than asked', () => {
    const answer = rankNextChecks(judgementTables, evidence(...OPENING), 12);
    if (answer.kind !== 'proposed') throw new Error('expected proposals');
    const ids = answer.checks.map((check) => check.checkId);
    expect(new Set(ids).size).toBe(ids.length);
    expect(rankNextChecks(judgementTables, evidence(...OPENING), 2)).toMatchObject({ checks: { length: 2 } });
  });

  it('says which causes the check tells apart', () => {
    const answer = rankNextChecks(
      judgementTables,
      evidence(...OPENING, ['linkage-return', 'negative'], ['purge-port-vacuum', 'positive']),
    );
    if (answer.kind !== 'proposed') throw new Error('expected proposals');
    expect(answer.checks[0]!.checkId).toBe('shaft-play');
    expect(answer.checks[0]!.reasons).toContainEqual({
      code: 'separatesCauses',
      likelier: 'shaft-worn',
      lessLikely: 'plate-stop-too-far-open',
    });
  });

  it('says that a reading behind an uncorrected finding stays provisional', () => {
    const answer = rankNextChecks(judgementTables, evidence(...OPENING, ['linkage-return', 'positive']), 12);
    if (answer.kind !== 'proposed') throw new Error('expected proposals');
    const port = answer.checks.find((check) => check.checkId === 'purge-port-vacuum')!;
    expect(port.reasons).toContainEqual({ code: 'provisionalUntilCorrected', findings: ['linkage-return'] });
  });

  it('ends when all checks are done, and refuses a count below one', () => {
    const all = judgementTables.checks.map((check) => [check.id, 'negative'] as const);
    expect(rankNextChecks(judgementTables, evidence(...all)).kind).toBe('allChecksDone');
    expect(() => rankNextChecks(judgementTables, evidence(), 0)).toThrow(RangeError);
  });
});
