import { watchWindow } from '@endfloat/reliability';
import type { Clock } from '../ports/clock.port.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';

/**
 * Notes which watch windows have ended since the last look, and by what. A projection: dropping what it wrote and
 * running it again gives the same. Run by the worker, one shop at a time.
 */
export class CloseWatchWindowsUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  /** Answers how many windows were found ended. */
  execute(shopId: string): Promise<number> {
    const now = this.clock.now();
    return this.work.run(shopId, async (tx) => {
      const releases = await tx.releases.all({});
      const ended = new Set(
        (await tx.watchWindows.find(releases.map(({ id }) => id))).map(({ releaseId }) => releaseId),
      );
      let found = 0;
      for (const release of releases) {
        if (ended.has(release.id) || release.content.releasedAt > now) continue;
        const job = await tx.jobs.find(release.identity.jobId);
        if (job === undefined) continue;
        const entries = await tx.odometerEntries.all({ vehicleId: job.identity.vehicleId });
        const sightings = entries.map(({ content }) => ({
          seenAt: content.readAt,
          km: content.reliable ? content.distanceKm : null,
        }));
        const terms = { ...release.content, releasedKm: release.content.distanceKm };
        const window = watchWindow(terms, now, sightings);
        if (window.state !== 'elapsed' || window.closedBy === null) continue;
        const end = {
          releaseId: release.id,
          endedAt: window.closedAt ?? window.closesAt,
          endedBy: window.closedBy,
        };
        if (await tx.watchWindows.record(end, now)) found += 1;
      }
      return found;
    });
  }
}
