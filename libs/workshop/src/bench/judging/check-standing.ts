import type { CheckRemark, CheckState } from '../../ports/records/bench.records.js';
import type { JudgedRow } from './bench-case.js';

export interface GroupStanding {
  readonly state: CheckState;
  /** what waits for this check may be judged */
  readonly satisfies: boolean;
}

/** Reasons that say something about the limit and nothing about the reading. */
const reasonsOfTheLimit = new Set([
  'limitNotConfirmed',
  'limitNotApplicable',
  'limitNotInForce',
  'contextMissing',
  'notInTable',
  'makerValueZero',
  'excluded',
  'sourceUnclear',
  'classOnly',
  'wrongKindOfQuantity',
]);

/**
 * Standing by the verdicts of one group. An advisory limit never fails a check; a number outranked by a functional
 * answer fails whatever it says; an undecided number neither passes nor fails.
 */
export function standingOf(rows: readonly JudgedRow[]): GroupStanding {
  const speaking = rows.filter(({ content }) => !saysNothing(content.detail.judgement));
  const binding = speaking.filter(({ content }) => content.severity !== 'advisory');
  const counted = binding.length > 0 ? binding : speaking;
  if (counted.length === 0) return { state: 'recorded', satisfies: true };
  const has = (outcome: string): boolean => counted.some(({ content }) => content.outcome === outcome);
  const isOutranked = counted.some(({ content }) => content.detail.outrankedBy !== null);
  if (isOutranked || (has('outside') && binding.length > 0)) return { state: 'failed', satisfies: false };
  if (counted.some(({ content }) => isPrerequisiteOpen(content.detail.judgement)))
    return { state: 'provisional', satisfies: false };
  if (has('notJudged') || (has('undecided') && binding.length > 0))
    return { state: 'undecided', satisfies: false };
  if (counted.some(({ content }) => content.provisional)) return { state: 'provisional', satisfies: true };
  return { state: 'passed', satisfies: true };
}

type Judged = JudgedRow['content']['detail']['judgement'];

const saysNothing = (judgement: Judged): boolean =>
  judgement.kind === 'notJudged' &&
  (judgement.reason === 'noReadings' || reasonsOfTheLimit.has(judgement.reason));

const isPrerequisiteOpen = (judgement: Judged): boolean =>
  judgement.kind === 'notJudged' && judgement.reason === 'prerequisitesOpen';

/** A check the vehicle has no item for is no obstacle. */
export function isLeftOut(notDone: readonly CheckRemark[], checkId: string): boolean {
  return notDone.some((remark) => remark.checkId === checkId);
}
