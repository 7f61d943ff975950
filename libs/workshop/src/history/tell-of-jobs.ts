import type { InspectionRecord } from '../bench/judging/gather-bench-case.js';
import { jobState } from '../jobs/job-state.js';
import type { JobEventRecord, JobRecord, JobView } from '../jobs/open-job.use-case.js';
import type { ReleaseRecord, UnsafeHandoverRecord } from '../jobs/release-job.use-case.js';
import type { ComplaintRecord } from '../jobs/take-complaint.use-case.js';
import type { WorkLineRecord } from '../jobs/work-lines.use-case.js';
import type { Recorded } from '../ports/record-store.port.js';
import type { OfJob } from '../ports/records/jobs.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { ownerOf } from '../recording/vehicle-visibility.js';
import type { HistoryShelf } from './history-shelf.js';
import type { HistoryQuestion } from './tell-of-vehicle.js';

const itself = <R>(record: R): R => record;
const jobOf = ({ identity }: Recorded<OfJob, object>): string => identity.jobId;

/** What hangs on the jobs of a vehicle and was told of already. */
export interface AroundJobs {
  readonly complaints: readonly ComplaintRecord[];
  readonly inspections: readonly InspectionRecord[];
}

/** Jobs with all that was done, agreed, proved and signed in them. */
export async function tellOfJobs(
  tx: ShopTransaction,
  shelf: HistoryShelf,
  question: HistoryQuestion,
  around: AroundJobs,
): Promise<void> {
  const jobs = await shelf.latest('job', tx.jobs, { vehicleId: question.vehicleId });
  const where = { jobId: jobs.map(({ id }) => id) };
  const events = await tellOfEvents(tx, shelf, where);
  const { releases, handovers } = await tellOfEndings(tx, shelf, where);
  await shelf.tell(tx.jobs, jobs, {
    kind: 'job',
    happenedAt: ({ content }) => content.openedAt,
    jobId: ({ id }) => id,
    view: (record) => viewOf(record, { ...around, events, releases, handovers }),
  });
  await tellOfWork(tx, shelf, question, where);
  await tellOfAgreements(tx, shelf, question, where);
  const points = await shelf.latestOf('proofPoint', tx.proofPoints, where, ({ content }) => content.testedAt);
  await shelf.tell(tx.proofPoints, points, {
    kind: 'proofPoint',
    happenedAt: ({ content }) => content.testedAt,
    jobId: jobOf,
    view: itself,
  });
}

interface OfJobs {
  readonly jobId: readonly string[];
}

async function tellOfEvents(
  tx: ShopTransaction,
  shelf: HistoryShelf,
  where: OfJobs,
): Promise<readonly JobEventRecord[]> {
  const events = await shelf.latestOf('jobEvent', tx.jobEvents, where, ({ content }) => content.happenedAt);
  await shelf.tell(tx.jobEvents, events, {
    kind: 'jobEvent',
    happenedAt: ({ content }) => content.happenedAt,
    jobId: jobOf,
    view: itself,
  });
  return events;
}

async function tellOfEndings(
  tx: ShopTransaction,
  shelf: HistoryShelf,
  where: OfJobs,
): Promise<{
  readonly releases: readonly ReleaseRecord[];
  readonly handovers: readonly UnsafeHandoverRecord[];
}> {
  const releases = await shelf.latest('release', tx.releases, where);
  await shelf.tell(tx.releases, releases, {
    kind: 'release',
    happenedAt: ({ content }) => content.releasedAt,
    jobId: jobOf,
    view: itself,
  });
  const handovers = await shelf.latest('unrepairedHandover', tx.unsafeHandovers, where);
  await shelf.tell(tx.unsafeHandovers, handovers, {
    kind: 'unrepairedHandover',
    happenedAt: ({ content }) => content.handedOverAt,
    jobId: jobOf,
    view: itself,
  });
  return { releases, handovers };
}

interface JobParts extends AroundJobs {
  readonly events: readonly JobEventRecord[];
  readonly releases: readonly ReleaseRecord[];
  readonly handovers: readonly UnsafeHandoverRecord[];
}

function viewOf(record: JobRecord, parts: JobParts): JobView {
  const isOfJob = ({ identity }: { readonly identity: { readonly jobId: string | null } }): boolean =>
    identity.jobId === record.id;
  const events = parts.events.filter(isOfJob).map(({ content }) => content);
  return {
    record,
    state: jobState({
      events,
      releasedAt: parts.releases.find(isOfJob)?.content.releasedAt ?? null,
      handedOverAt: parts.handovers.find(isOfJob)?.content.handedOverAt ?? null,
    }),
    events,
    complaintIds: parts.complaints.filter(({ content }) => content.jobId === record.id).map(({ id }) => id),
    inspectionIds: parts.inspections.filter(isOfJob).map(({ id }) => id),
  };
}

async function tellOfWork(
  tx: ShopTransaction,
  shelf: HistoryShelf,
  { caller }: HistoryQuestion,
  where: OfJobs,
): Promise<void> {
  const happenedAt = ({ content, firstRecordedAt }: WorkLineRecord) => content.doneAt ?? firstRecordedAt;
  await shelf.tell(tx.workLines, await shelf.latestOf('workLine', tx.workLines, where, happenedAt), {
    kind: 'workLine',
    happenedAt,
    jobId: jobOf,
    view: caller.customerId === undefined ? itself : withoutPrice,
  });
}

/** What a part cost the shop is nothing for a customer's user. */
function withoutPrice(record: WorkLineRecord): WorkLineRecord {
  const { part } = record.content;
  if (part === null) return record;
  return { ...record, content: { ...record.content, part: { ...part, price: null } } };
}

/**
 * Estimates are the shop's money and not for a customer's user; what another owner agreed to is not either.
 */
async function tellOfAgreements(
  tx: ShopTransaction,
  shelf: HistoryShelf,
  { caller, vehicleId, asOf }: HistoryQuestion,
  where: OfJobs,
): Promise<void> {
  const consents = await shelf.latest('consent', tx.consents, where);
  const owned = new Set<string>();
  for (const { id, content } of caller.customerId === undefined ? [] : consents) {
    const owner = await ownerOf(tx, vehicleId, content.answeredAt, asOf);
    if (owner?.customerId === caller.customerId) owned.add(id);
  }
  const readable = consents.filter(({ id }) => caller.customerId === undefined || owned.has(id));
  await shelf.tell(tx.consents, readable, {
    kind: 'consent',
    happenedAt: ({ content }) => content.answeredAt,
    jobId: jobOf,
    view: itself,
  });
  if (caller.customerId !== undefined) return;
  const estimates = await shelf.latest('estimate', tx.estimates, where);
  await shelf.tell(tx.estimates, estimates, {
    kind: 'estimate',
    happenedAt: ({ firstRecordedAt }) => firstRecordedAt,
    jobId: jobOf,
    view: itself,
  });
}
