import { instantOf } from '../time/instant-of.js';
import type { ConfirmedComeback } from './comeback-chain.js';
import { originalJobsOf } from './comeback-chain.js';
import type { ComplaintLikeness } from './complaint-likeness.js';
import { complaintLikeness } from './complaint-likeness.js';
import type { Sighting, WatchTerms, WatchWindow } from './watch-window.js';
import { watchWindow } from './watch-window.js';

export interface NewComplaint {
  readonly receivedAt: string;
  /** distance then; null where it cannot be relied on */
  readonly km: string | null;
  /** symptom id -> answer; a symptom that is not in here was not asked, and speaks for nothing */
  readonly symptoms: Readonly<Record<string, 'present' | 'absent'>>;
  /** component types the complaint or a finding points to; may be empty */
  readonly components: readonly string[];
  /** the customer says that it began after a repair */
  readonly beganAfterRepair: boolean;
}

/** An earlier released job of the same vehicle. */
export interface ReleasedJob extends WatchTerms {
  readonly jobId: string;
  /** symptoms present in the complaints of that job */
  readonly symptomsPresent: readonly string[];
  /** component types that were worked on */
  readonly components: readonly string[];
  /** readings of the odometer since, where known */
  readonly sightings?: readonly Sighting[] | undefined;
}

export const comebackReasonCodes = [
  'sameSymptoms',
  'sameSymptomFamily',
  'sameComponent',
  'beganAfterRepair',
  'insideWindow',
  'outsideWindow',
  'distanceUnreliable',
  'repeatOfEarlierJob',
] as const;
export type ComebackReasonCode = (typeof comebackReasonCodes)[number];

export interface ComebackReason {
  readonly code: ComebackReasonCode;
  readonly values: Readonly<Record<string, string>>;
}

/** A link offered to a person, who confirms or refuses it. */
export interface ComebackProposal {
  readonly jobId: string;
  /** where that job is itself a repeat: the first jobs of the chain, which the comeback counts for */
  readonly originalJobIds: readonly string[];
  /** 0 to 1; an order of likelihood, not a probability */
  readonly likeness: number;
  readonly reasons: readonly ComebackReason[];
  readonly daysSinceRelease: number;
  readonly kmSinceRelease: string | null;
  readonly insideWindow: boolean;
}

export interface ProposalOptions {
  /** symptom id -> family of complaints a customer would call the same */
  readonly familyOf?: Readonly<Record<string, string>> | undefined;
  /** confirmed comebacks of the vehicle */
  readonly confirmed?: readonly ConfirmedComeback[] | undefined;
  /** a job released longer ago is not proposed; default 365 days, the warranty view */
  readonly longestDays?: number | undefined;
}

function likenessReasons(likeness: ComplaintLikeness): ComebackReason[] {
  const reasons: ComebackReason[] = [];
  if (likeness.sharedSymptoms.length > 0) {
    const values = {
      symptoms: likeness.sharedSymptoms.join(','),
      shared: String(likeness.sharedSymptoms.length),
      compared: String(likeness.comparedSymptoms.length),
    };
    reasons.push({ code: 'sameSymptoms', values });
  }
  if (likeness.sharedFamilies.length > 0) {
    reasons.push({ code: 'sameSymptomFamily', values: { families: likeness.sharedFamilies.join(',') } });
  }
  if (likeness.sharedComponents.length > 0) {
    reasons.push({ code: 'sameComponent', values: { components: likeness.sharedComponents.join(',') } });
  }
  return reasons;
}

function windowReasons(job: ReleasedJob, window: WatchWindow): ComebackReason[] {
  const since = {
    days: String(window.daysSinceRelease),
    windowDays: String(job.windowDays),
    ...(window.kmSinceRelease === null ? {} : { km: window.kmSinceRelease, windowKm: job.windowKm }),
  };
  const isInside = window.state === 'running';
  const closedBy = window.closedBy === null ? {} : { closedBy: window.closedBy };
  return [
    { code: isInside ? 'insideWindow' : 'outsideWindow', values: { ...since, ...closedBy } },
    ...(window.daysOnlyBecause === null
      ? []
      : [{ code: 'distanceUnreliable' as const, values: { because: window.daysOnlyBecause } }]),
  ];
}

function proposal(
  complaint: NewComplaint,
  job: ReleasedJob,
  options: ProposalOptions,
): ComebackProposal | null {
  const likeness = complaintLikeness(complaint, job, options.familyOf ?? {});
  const sightings = [...(job.sightings ?? []), { seenAt: complaint.receivedAt, km: complaint.km }];
  const window = watchWindow(job, complaint.receivedAt, sightings);
  const isInside = window.state === 'running';
  if (window.daysSinceRelease >= (options.longestDays ?? 365)) return null;
  const isLike =
    likeness.sharedSymptoms.length + likeness.sharedFamilies.length + likeness.sharedComponents.length > 0;
  const beganAfter = complaint.beganAfterRepair && isInside;
  if (!isLike && !beganAfter) return null;
  const originals = originalJobsOf(job.jobId, options.confirmed ?? []);
  const isRepeat = originals.some((id) => id !== job.jobId);
  return {
    jobId: job.jobId,
    originalJobIds: originals,
    likeness: (isInside ? 1 : 0.5) * (1 - (1 - likeness.score) * (beganAfter ? 0.6 : 1)),
    reasons: [
      ...likenessReasons(likeness),
      ...(beganAfter ? [{ code: 'beganAfterRepair' as const, values: {} }] : []),
      ...windowReasons(job, window),
      ...(isRepeat ? [{ code: 'repeatOfEarlierJob' as const, values: { jobs: originals.join(',') } }] : []),
    ],
    daysSinceRelease: window.daysSinceRelease,
    kmSinceRelease: window.kmSinceRelease,
    insideWindow: isInside,
  };
}

/**
 * Earlier released jobs that a new complaint may be the comeback of, with the reasons. It never links: a person confirms
 * or refuses each, and later attributes what was confirmed.
 *
 * A job is proposed where a symptom, a family of symptoms or a component is the same, or where the customer says that the
 * fault began after a repair and that job's window is still running. Outside the window it is proposed with half the
 * likeness, for the warranty view, before `longestDays` are full. Jobs released when the complaint was received or
 * later are the same visit and left out.
 *
 * Likeness = window x (1 - (1 - 0.6 s)(1 - 0.3 f)(1 - 0.3 c)(1 - 0.4 e)), judgement: s shared symptoms over those that can
 * be compared (see `complaintLikeness`), f same family, c same component, e began after the repair (0 or 1), window 1
 * inside and 0.5 outside.
 *
 * @param complaint     as taken
 * @param releasedJobs  of the same vehicle
 * @param options       families of symptoms, confirmed comebacks, longest time back
 * @returns proposals, the most alike first, then the most recently released, then by id; empty where nothing is alike
 * @throws RangeError on instants or distances that are none, windows of nothing, comebacks that lead in a circle
 * @source judgement; common practice: count by complaint as the customer sees it
 */
export function proposeComebacks(
  complaint: NewComplaint,
  releasedJobs: readonly ReleasedJob[],
  options: ProposalOptions = {},
): ComebackProposal[] {
  const received = instantOf(complaint.receivedAt);
  const releasedAt = new Map(releasedJobs.map((job) => [job.jobId, instantOf(job.releasedAt)]));
  return releasedJobs
    .filter((job) => instantOf(job.releasedAt) < received)
    .flatMap((job) => proposal(complaint, job, options) ?? [])
    .sort(
      (a, b) =>
        b.likeness - a.likeness ||
        releasedAt.get(b.jobId)! - releasedAt.get(a.jobId)! ||
        (a.jobId < b.jobId ? -1 : 1),
    );
}
