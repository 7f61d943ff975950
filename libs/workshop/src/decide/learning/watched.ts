import { watchWindow, type WatchWindow } from '@endfloat/reliability';
import type { WindowStanding } from '@endfloat/diagnosis';
import type { ReleasedJobHistory } from '../../ports/learning-history.port.js';

/** How far a released job was watched. */
export interface Watched {
  readonly standing: WindowStanding;
  /** share of the window over which the vehicle was seen, 0 to 1 */
  readonly share: number;
}

/**
 * Where the watch window of a job stands. A window that has elapsed counts only when the vehicle was seen after it closed;
 * what was watched of any other ends with the last time the vehicle was here, so nothing depends on today's date but what
 * has elapsed.
 */
export function watchedOf(job: ReleasedJobHistory, until: string): Watched {
  const window = watchWindow(job, until, job.sightings);
  if (window.state === 'elapsed' && window.seen === 'afterClosing') return { standing: 'elapsed', share: 1 };
  return {
    standing: window.state === 'running' ? 'running' : 'notSeenSince',
    share: shareSeen(job, window),
  };
}

function shareSeen({ releasedAt, windowDays, windowKm }: ReleasedJobHistory, window: WatchWindow): number {
  const { lastSeenAt, kmSinceRelease } = window;
  if (lastSeenAt === null) return 0;
  const days = Math.floor((Date.parse(lastSeenAt) - Date.parse(releasedAt)) / 86_400_000);
  const byKm = kmSinceRelease === null ? 0 : Number(kmSinceRelease) / Number(windowKm);
  return Math.min(1, Math.max(0, days / windowDays, byKm));
}
