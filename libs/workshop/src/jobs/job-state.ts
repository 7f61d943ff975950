import type { JobEvent, JobState } from '../ports/records/jobs.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';

/** What decides the state of a job. */
export interface JobCourse {
  readonly events: readonly JobEvent[];
  readonly releasedAt: string | null;
  readonly handedOverAt: string | null;
}

/**
 * State of a job from what happened to it, later facts before earlier ones: closed, released, handed over unrepaired,
 * work finished, waiting for something, open. States are never stored.
 */
export function jobState({ events, releasedAt, handedOverAt }: JobCourse): JobState {
  const inOrder = [...events].sort((a, b) => a.happenedAt.localeCompare(b.happenedAt));
  if (inOrder.some(({ kind }) => kind === 'closed')) return 'closed';
  if (releasedAt !== null) return 'released';
  if (handedOverAt !== null) return 'handedOverUnrepaired';
  const last = inOrder.at(-1)?.kind;
  if (last === undefined || last === 'resumed' || last === 'closed') return 'open';
  return last;
}

/** The course of one job, as known at a moment. */
export async function courseOf(tx: ShopTransaction, jobId: string, asOf?: string): Promise<JobCourse> {
  const events = await tx.jobEvents.all({ jobId }, asOf);
  const release = (await tx.releases.all({ jobId }, asOf))[0];
  const handover = (await tx.unsafeHandovers.all({ jobId }, asOf))[0];
  return {
    events: events.map(({ content }) => content),
    releasedAt: release?.content.releasedAt ?? null,
    handedOverAt: handover?.content.handedOverAt ?? null,
  };
}

/** States in which work on the van may still be recorded. */
export function isUnderWay(state: JobState): boolean {
  return state !== 'released' && state !== 'handedOverUnrepaired' && state !== 'closed';
}
