import type { JobOutcomeFilter, RateQuestion, RateTally, SettledJobRow } from '../ports/settled-jobs.port.js';
import { exactSum } from './job-facts.js';

/** Whether something had happened by an instant. */
export const isBy = (happened: string | null, at: string): boolean =>
  happened !== null && Date.parse(happened) <= Date.parse(at);

/** What a job counts as at the moment of the question. */
export function outcomeOf(
  row: SettledJobRow,
  { at, against }: Pick<RateQuestion, 'at' | 'against'>,
): { readonly outcome: JobOutcomeFilter; readonly event: boolean } {
  const cameBack = isBy(row.comebackAt, at);
  const event = cameBack && (against === undefined || row.countsAgainst.includes(against));
  if (!isBy(row.closesAt, at)) return { outcome: 'pending', event };
  if (!cameBack && !isBy(row.firstSeenAt, at)) return { outcome: 'notSeenSince', event };
  if (cameBack && !event && row.unattributed) return { outcome: 'notAttributed', event };
  return { outcome: event ? 'comeback' : 'noComeback', event };
}

/** Counts and money of some jobs. */
export function tallyOf(
  value: string | null,
  rows: readonly SettledJobRow[],
  question: RateQuestion,
): RateTally {
  const judged = rows.map((row) => ({ row, ...outcomeOf(row, question) }));
  const count = (...outcomes: JobOutcomeFilter[]): number =>
    judged.filter(({ outcome }) => outcomes.includes(outcome)).length;
  const events = judged.filter(({ event }) => event).map(({ row }) => row);
  return {
    value,
    events: count('comeback'),
    atRisk: count('comeback', 'noComeback'),
    pending: count('pending'),
    pendingComebacks: judged.filter(({ outcome, event }) => outcome === 'pending' && event).length,
    notSeenSince: count('notSeenSince'),
    seenOnlyInsideWindow: judged.filter(
      ({ row, outcome }) =>
        outcome === 'noComeback' &&
        !isBy(row.comebackAt, question.at) &&
        !isBy(row.seenAfterClosingAt, question.at),
    ).length,
    notAttributed: count('notAttributed'),
    comebacks: events.reduce((sum, { comebacks }) => sum + comebacks, 0),
    cost: events.reduce((sum, { cost }) => exactSum(sum, cost), '0'),
    costGaps: events.reduce((sum, { costGaps }) => sum + costGaps, 0),
  };
}
