import { instantOf, millisecondsPerDay } from '../time/instant-of.js';
import { differenceOfKm, reachesKm, sumOfKm } from './exact-km.js';

/** What a release fixes: from when, and how long the job is watched. */
export interface WatchTerms {
  readonly releasedAt: string;
  /** days of 24 hours, more than 0 */
  readonly windowDays: number;
  /** decimal text, more than 0 */
  readonly windowKm: string;
  /** distance at release; null where it cannot be relied on */
  readonly releasedKm: string | null;
}

/** The vehicle was here, or its odometer was reported. */
export interface Sighting {
  readonly seenAt: string;
  /** decimal text; null where not read or not to be relied on */
  readonly km: string | null;
}

export const watchWindowStates = ['running', 'elapsed'] as const;
export type WatchWindowState = (typeof watchWindowStates)[number];

export const windowClosings = ['days', 'distance'] as const;
export type WindowClosing = (typeof windowClosings)[number];

/** Why only days count. */
export const daysOnlyReasons = ['releasedKmUnknown', 'noDistanceSince', 'distanceContradicts'] as const;
export type DaysOnlyReason = (typeof daysOnlyReasons)[number];

/** When the vehicle was last seen after its release. */
export const seenSinceRelease = ['neverSince', 'onlyInsideWindow', 'afterClosing'] as const;
export type SeenSinceRelease = (typeof seenSinceRelease)[number];

export interface WatchWindow {
  readonly state: WatchWindowState;
  /** which was reached first; null while running */
  readonly closedBy: WindowClosing | null;
  /** by days: the instant; by distance: the first sighting at or beyond it, by which it had closed */
  readonly closedAt: string | null;
  /** instant at which it closes by days at the latest */
  readonly closesAt: string;
  /** distance at which it closes; null where that at release is unknown or a later one contradicts */
  readonly closesAtKm: string | null;
  /** null: days and distance count */
  readonly daysOnlyBecause: DaysOnlyReason | null;
  /** whole days of 24 hours */
  readonly daysSinceRelease: number;
  /** exact; null where distance cannot be relied on */
  readonly kmSinceRelease: string | null;
  readonly lastSeenAt: string | null;
  readonly seen: SeenSinceRelease;
}

type Distance =
  | { readonly reason: null; readonly closesAtKm: string; readonly last: string }
  | { readonly reason: DaysOnlyReason };

/** Distance counts only where it is known at release and never goes back after it. */
function distanceSince(terms: WatchTerms, seen: readonly Sighting[]): Distance {
  if (terms.releasedKm === null) return { reason: 'releasedKmUnknown' };
  let last = terms.releasedKm;
  let isRead = false;
  for (const { km } of seen) {
    if (km === null) continue;
    if (!reachesKm(km, last)) return { reason: 'distanceContradicts' };
    last = km;
    isRead = true;
  }
  if (!isRead) return { reason: 'noDistanceSince' };
  return { reason: null, closesAtKm: sumOfKm(terms.releasedKm, terms.windowKm), last };
}

function requireTerms(terms: WatchTerms): void {
  if (!(terms.windowDays > 0 && Number.isFinite(terms.windowDays))) {
    throw new RangeError(`a window has more than 0 days, got ${terms.windowDays}`);
  }
  if (!/[1-9]/.test(terms.windowKm) || !reachesKm(terms.windowKm, '0')) {
    throw new RangeError(`a window has more than 0 km, got ${terms.windowKm}`);
  }
}

function closing(
  terms: WatchTerms,
  now: number,
  seen: readonly Sighting[],
  distance: Distance,
): { by: WindowClosing; at: number } | null {
  const byDays = instantOf(terms.releasedAt) + terms.windowDays * millisecondsPerDay;
  const beyond =
    distance.reason === null
      ? seen.find(({ km }) => km !== null && reachesKm(km, distance.closesAtKm))
      : undefined;
  const byDistance = beyond === undefined ? Infinity : instantOf(beyond.seenAt);
  if (byDistance < byDays) return { by: 'distance', at: byDistance };
  return now >= byDays ? { by: 'days', at: byDays } : null;
}

const isoText = (at: number): string => new Date(at).toISOString();

/**
 * State of a job's watch window at a moment. It closes at its days or its distance, whichever is reached first: at the
 * closing instant, and on the closing kilometre, it is closed. Where distance cannot be relied on (unknown at release, or
 * going back afterwards) only days count. A window closed by distance had closed at some moment before the sighting that
 * showed it; that sighting's instant is given.
 *
 * @param terms      of the release
 * @param now        instant asked about, not before the release
 * @param sightings  of the vehicle, any order, may be none; those not after the release or after `now` are left out
 * @returns state, what closed it, what is left to reach, and when the vehicle was last seen
 * @throws RangeError on a window of nothing, on an instant or a distance that is none, on `now` before the release
 * @source judgement (90 days, 5000 km by default); common practice
 * @example watchWindow({ releasedAt: '2024-01-01T10:00:00Z', windowDays: 90, windowKm: '5000', releasedKm: null },
 *   '2024-03-31T09:59:00Z', []).state // => 'running'
 */
export function watchWindow(terms: WatchTerms, now: string, sightings: readonly Sighting[]): WatchWindow {
  requireTerms(terms);
  const [released, moment] = [instantOf(terms.releasedAt), instantOf(now)];
  if (moment < released)
    throw new RangeError(`asked about ${now}, before the release at ${terms.releasedAt}`);
  const seen = sightings
    .filter(({ seenAt }) => instantOf(seenAt) > released && instantOf(seenAt) <= moment)
    .sort((a, b) => instantOf(a.seenAt) - instantOf(b.seenAt));
  const distance = distanceSince(terms, seen);
  const closed = closing(terms, moment, seen, distance);
  const lastSeenAt = seen.at(-1)?.seenAt ?? null;
  const isSeenAfter = closed !== null && lastSeenAt !== null && instantOf(lastSeenAt) >= closed.at;
  return {
    state: closed === null ? 'running' : 'elapsed',
    closedBy: closed?.by ?? null,
    closedAt: closed === null ? null : isoText(closed.at),
    closesAt: isoText(released + terms.windowDays * millisecondsPerDay),
    closesAtKm:
      terms.releasedKm === null || distance.reason === 'distanceContradicts'
        ? null
        : sumOfKm(terms.releasedKm, terms.windowKm),
    daysOnlyBecause: distance.reason,
    daysSinceRelease: Math.floor((moment - released) / millisecondsPerDay),
    kmSinceRelease: distance.reason === null ? differenceOfKm(distance.last, terms.releasedKm!) : null,
    lastSeenAt,
    seen: lastSeenAt === null ? 'neverSince' : isSeenAfter ? 'afterClosing' : 'onlyInsideWindow',
  };
}
