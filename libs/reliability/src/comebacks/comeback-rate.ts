import type { Interval } from '@endfloat/statistics';
import { wilsonInterval } from '@endfloat/statistics';
import { instantOf } from '../time/instant-of.js';
import type { SeenSinceRelease, Sighting, WatchTerms, WatchWindowState } from './watch-window.js';
import { watchWindow } from './watch-window.js';

/** A released job as a rate sees it. */
export interface JobOutcome {
  readonly window: WatchWindowState;
  /** a confirmed comeback whose complaint came while the window ran */
  readonly comeback: boolean;
  readonly seen: SeenSinceRelease;
}

/**
 * Outcome of a released job at a moment.
 *
 * @param terms       of the release
 * @param now         instant asked about
 * @param sightings   of the vehicle
 * @param complaints  of confirmed comebacks of this job: when received, distance then
 * @returns window state, whether a comeback fell inside it, when the vehicle was last seen
 * @throws RangeError as `watchWindow`
 */
export function jobOutcome(
  terms: WatchTerms,
  now: string,
  sightings: readonly Sighting[],
  complaints: readonly { readonly receivedAt: string; readonly km: string | null }[],
): JobOutcome {
  const brought = complaints
    .filter(({ receivedAt }) => instantOf(receivedAt) <= instantOf(now))
    .map(({ receivedAt, km }): Sighting => ({ seenAt: receivedAt, km }));
  const all = [...sightings, ...brought];
  const comeback = brought.some(({ seenAt }) => watchWindow(terms, seenAt, all).state === 'running');
  const window = watchWindow(terms, now, all);
  return { window: window.state, comeback, seen: window.seen };
}

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

export type ComebackRate = ComebackCounts &
  (
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
      }
  );

/**
 * Comeback rate over jobs whose window has elapsed. Jobs still watched are pending, with their comebacks; a vehicle never
 * seen again is "not seen since" and in no denominator, which leaves the rate too high rather than too low where contented
 * customers stay away.
 *
 * @param jobs        outcomes, any order
 * @param confidence  two-sided level of the interval, default 0.95
 * @returns counts with the rate and Wilson's interval; `insufficientData` with `value: null` where no job is at risk
 * @throws RangeError on a level outside (0, 1)
 * @source Wilson (1927), JASA 22:209-212
 * @oracle Newcombe (1998), Stat. Med. 17:857-872, table I
 */
export function comebackRate(jobs: readonly JobOutcome[], confidence = 0.95): ComebackRate {
  const pending = jobs.filter(({ window }) => window === 'running');
  const elapsed = jobs.filter(({ window }) => window === 'elapsed');
  const atRisk = elapsed.filter(({ comeback, seen }) => comeback || seen !== 'neverSince');
  const counts: ComebackCounts = {
    events: atRisk.filter(({ comeback }) => comeback).length,
    atRisk: atRisk.length,
    pending: pending.length,
    pendingComebacks: pending.filter(({ comeback }) => comeback).length,
    notSeenSince: elapsed.length - atRisk.length,
    seenOnlyInsideWindow: atRisk.filter(({ comeback, seen }) => !comeback && seen === 'onlyInsideWindow')
      .length,
  };
  const interval = wilsonInterval({ successes: counts.events, trials: counts.atRisk }, confidence);
  if (interval.kind !== 'estimated') {
    const none = {
      of: 'jobsWithElapsedWindow',
      needed: 1,
      got: 0,
      value: null,
      interval: null,
    } as const;
    return { ...counts, kind: 'insufficientData', ...none };
  }
  const { lower, upper, proportion } = interval;
  return {
    ...counts,
    kind: 'estimated',
    value: proportion,
    interval: { lower, upper },
    intervalMethod: 'wilson',
    confidence,
  };
}
