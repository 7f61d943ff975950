import type { Interval } from '@endfloat/statistics';
import { wilsonInterval } from '@endfloat/statistics';

/** What a rate counts. */
export interface ComebackCounts {
  /** jobs that came back inside their window, which has elapsed since */
  readonly events: number;
  /** jobs whose window has elapsed and whose outcome is known */
  readonly atRisk: number;
  /** window still running, come back or not */
  readonly pending: number;
  /** of those: already come back */
  readonly pendingComebacks: number;
  /** window elapsed, vehicle never seen again: neither a success nor a comeback */
  readonly notSeenSince: number;
  /** of `atRisk`: last seen while the window ran, so the rest of the window is taken on trust */
  readonly seenOnlyInsideWindow: number;
}

export type RateOutcome =
  | {
      readonly kind: 'estimated';
      readonly value: number;
      readonly interval: Interval;
      readonly intervalMethod: 'wilson';
      readonly confidence: number;
    }
  | {
      readonly kind: 'insufficientData';
      readonly of: 'jobsWithElapsedWindow';
      readonly needed: 1;
      readonly got: 0;
      readonly value: null;
      readonly interval: null;
    };

/**
 * Share of jobs that came back among those whose outcome is known, with Wilson's interval.
 *
 * @param counts      events out of jobs at risk, both whole, events not more than jobs
 * @param confidence  two-sided level of the interval, default 0.95
 * @returns the rate; `insufficientData` with `value: null` where no job is at risk
 * @throws RangeError on contradictory counts or a level outside (0, 1)
 * @source Wilson (1927), JASA 22:209-212
 * @oracle Newcombe (1998), Stat. Med. 17:857-872, table I
 * @example rateOfCounts({ events: 0, atRisk: 0 }) // => { kind: 'insufficientData', needed: 1, got: 0, value: null }
 */
export function rateOfCounts(
  { events, atRisk }: Pick<ComebackCounts, 'events' | 'atRisk'>,
  confidence = 0.95,
): RateOutcome {
  const interval = wilsonInterval({ successes: events, trials: atRisk }, confidence);
  if (interval.kind !== 'estimated') {
    return {
      kind: 'insufficientData',
      of: 'jobsWithElapsedWindow',
      needed: 1,
      got: 0,
      value: null,
      interval: null,
    };
  }
  const { lower, upper, proportion: value } = interval;
  return { kind: 'estimated', value, interval: { lower, upper }, intervalMethod: 'wilson', confidence };
}
