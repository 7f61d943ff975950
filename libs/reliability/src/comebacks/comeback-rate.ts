import type { ComebackCounts, RateOutcome } from '../rates/rate-of-counts.js';
import { rateOfCounts } from '../rates/rate-of-counts.js';
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
 * @param complaints  of confirmed comebacks of this job: when received, distance then; they are sightings too, and
 *   those after `now` are left out
 * @returns window state, whether a comeback fell inside it, when the vehicle was last seen
 * @throws RangeError as `watchWindow`, also on a complaint before the release
 * @source judgement, as `watchWindow`
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

export type ComebackRate = ComebackCounts & RateOutcome;

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
  return { ...counts, ...rateOfCounts(counts, confidence) };
}
