import type { ConfirmedComeback } from '../comebacks/comeback-chain.js';
import { originalJobsOf, repeatsOf } from '../comebacks/comeback-chain.js';
import type { DaysOnlyReason, Sighting, WatchTerms, WindowClosing } from '../comebacks/watch-window.js';
import { watchWindow } from '../comebacks/watch-window.js';
import { instantOf } from '../time/instant-of.js';

/** Method of `settleJobs`; a change of what it answers is a new number. */
export const settlingVersion = 1;

/** What is known of one vehicle: its released jobs, what was complained of, when it was seen, which links are confirmed. */
export interface VehicleJobs {
  readonly releases: readonly (WatchTerms & { readonly jobId: string })[];
  readonly complaints: readonly {
    readonly complaintId: string;
    /** job the complaint is dealt with in; null: none yet */
    readonly jobId: string | null;
    readonly receivedAt: string;
    readonly km: string | null;
  }[];
  /** odometer entries and visits, complaints left out; any order */
  readonly sightings: readonly Sighting[];
  readonly confirmed: readonly {
    readonly comebackId: string;
    readonly complaintId: string;
    readonly jobId: string;
  }[];
}

/** A confirmed comeback that counts for a job, its own or one further down the chain. */
export interface CountedComeback {
  readonly comebackId: string;
  readonly complaintId: string;
  readonly receivedAt: string;
  /** job that took the repeat in; null: none yet */
  readonly repeatJobId: string | null;
  /** among how many original jobs the repeat is divided */
  readonly originals: number;
  /** whether this job bears what is left when a repeat does not divide evenly */
  readonly bearsRest: boolean;
}

/** A released job with all that later rates ask of it. Instants are ISO texts in UTC, or as they were given. */
export interface SettledJob {
  readonly jobId: string;
  readonly releasedAt: string;
  /** when its window closes, by days or by the sighting that showed the distance, as now known */
  readonly closesAt: string;
  readonly closedBy: WindowClosing;
  readonly daysOnlyBecause: DaysOnlyReason | null;
  /** first jobs of the chain where this one is itself a repeat; such a job is counted with them, not by itself */
  readonly repeatOf: readonly string[];
  /** first confirmed comeback before the window closed */
  readonly comebackAt: string | null;
  /** first confirmed comeback at any time */
  readonly anyComebackAt: string | null;
  readonly firstSeenAt: string | null;
  /** first sighting at or after closing */
  readonly seenAfterClosingAt: string | null;
  readonly lastSeenAt: string | null;
  readonly comebacks: readonly CountedComeback[];
}

interface TimedRelease extends WatchTerms {
  readonly jobId: string;
  readonly released: number;
  readonly closes: number;
  readonly window: ReturnType<typeof watchWindow>;
}

interface TimedLink {
  readonly comebackId: string;
  readonly complaintId: string;
  readonly jobId: string;
  readonly repeatJobId: string | null;
  readonly receivedAt: string;
  readonly inside: boolean;
}

/** Later than any window of this century, so that every window has closed. */
const farAhead = '9999-12-31T00:00:00Z';

function timed(release: VehicleJobs['releases'][number], sightings: readonly Sighting[]): TimedRelease {
  const window = watchWindow(release, farAhead, sightings);
  return {
    ...release,
    released: instantOf(release.releasedAt),
    closes: instantOf(window.closedAt ?? window.closesAt),
    window,
  };
}

function linksOf(vehicle: VehicleJobs, releases: ReadonlyMap<string, TimedRelease>): TimedLink[] {
  const complaints = new Map(vehicle.complaints.map((complaint) => [complaint.complaintId, complaint]));
  return vehicle.confirmed
    .flatMap(({ comebackId, complaintId, jobId }) => {
      const [complaint, release] = [complaints.get(complaintId), releases.get(jobId)];
      if (complaint === undefined || release === undefined) return [];
      const received = instantOf(complaint.receivedAt);
      if (received <= release.released || complaint.jobId === jobId) return [];
      const { receivedAt, jobId: repeatJobId } = complaint;
      return [{ comebackId, complaintId, jobId, repeatJobId, receivedAt, inside: received < release.closes }];
    })
    .sort(
      (a, b) => instantOf(a.receivedAt) - instantOf(b.receivedAt) || (a.comebackId < b.comebackId ? -1 : 1),
    );
}

/** Which job repeats which: only forward in time, so that contradictory dates never lead in a circle. */
function chainOf(
  links: readonly TimedLink[],
  releases: ReadonlyMap<string, TimedRelease>,
): ConfirmedComeback[] {
  return links.flatMap(({ repeatJobId, jobId, inside }) => {
    if (repeatJobId === null || !inside) return [];
    const [repeat, earlier] = [releases.get(repeatJobId), releases.get(jobId)];
    const isForward = repeat === undefined || earlier === undefined || repeat.released > earlier.released;
    return isForward ? [{ repeatJobId, jobId }] : [];
  });
}

/**
 * Settles the released jobs of one vehicle: when each window closes, what came back, and to which first job it belongs.
 *
 * A comeback counts where the complaint was received before the window of the job it points to closed. The job that took
 * such a complaint in is a repeat: it belongs to the first jobs of its chain and is not counted by itself. A window closes
 * at its days, or at the sighting that showed its distance where distance can be relied on, whichever is first, all
 * sightings known now considered (so a reading that contradicts later makes the window run by days from its beginning).
 * A link to a job outside its window is a matter of warranty: it enters the curve (`anyComebackAt`) and nothing else.
 *
 * @param vehicle  one vehicle's record
 * @returns one entry a release, by release instant and id
 * @throws RangeError on instants or distances that are none, on windows of nothing
 * @complexity O(releases x sightings log sightings)
 * @source judgement; common practice: the repeat belongs to the original job
 * @oracle hand-written timelines in the spec
 */
export function settleJobs(vehicle: VehicleJobs): SettledJob[] {
  const sightings = [
    ...vehicle.sightings,
    ...vehicle.complaints.map(({ receivedAt, km }): Sighting => ({ seenAt: receivedAt, km })),
  ];
  const releases = vehicle.releases.map((release) => timed(release, sightings));
  const byJob = new Map(releases.map((release) => [release.jobId, release]));
  const links = linksOf(vehicle, byJob);
  const chain = chainOf(links, byJob);
  const seen = sightings.map(({ seenAt }) => ({ seenAt, at: instantOf(seenAt) })).sort((a, b) => a.at - b.at);
  return releases
    .sort((a, b) => a.released - b.released || (a.jobId < b.jobId ? -1 : 1))
    .map((release) => {
      const { jobId } = release;
      const own = links.filter((link) => link.jobId === jobId);
      const repeatOf = originalJobsOf(jobId, chain).filter((id) => id !== jobId);
      return {
        jobId,
        releasedAt: release.releasedAt,
        closesAt: new Date(release.closes).toISOString(),
        closedBy: release.window.closedBy ?? 'days',
        daysOnlyBecause: release.window.daysOnlyBecause,
        repeatOf,
        comebackAt: own.find(({ inside }) => inside)?.receivedAt ?? null,
        anyComebackAt: own[0]?.receivedAt ?? null,
        firstSeenAt: seen.find(({ at }) => at > release.released)?.seenAt ?? null,
        seenAfterClosingAt: seen.find(({ at }) => at >= release.closes)?.seenAt ?? null,
        lastSeenAt: release.window.lastSeenAt,
        comebacks: repeatOf.length > 0 ? [] : countedComebacks(jobId, links, chain),
      };
    });
}

/** Comebacks inside their windows in the chain of a first job, one a complaint. */
function countedComebacks(
  jobId: string,
  links: readonly TimedLink[],
  chain: readonly ConfirmedComeback[],
): CountedComeback[] {
  const family = new Set([jobId, ...repeatsOf(jobId, chain)]);
  const inside = links.filter((link) => link.inside);
  const own = inside.filter((link) => family.has(link.jobId));
  const first = own.filter(
    (link, at) => own.findIndex(({ complaintId }) => complaintId === link.complaintId) === at,
  );
  return first.map(({ comebackId, complaintId, receivedAt, repeatJobId }) => {
    const pointed = inside.filter((link) => link.complaintId === complaintId);
    const originals = [...new Set(pointed.flatMap((link) => originalJobsOf(link.jobId, chain)))].sort();
    return {
      comebackId,
      complaintId,
      receivedAt,
      repeatJobId,
      originals: originals.length,
      bearsRest: originals[0] === jobId,
    };
  });
}
