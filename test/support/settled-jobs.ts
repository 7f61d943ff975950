import type { Reply } from './api.js';
import type { StoryShop } from './decide-story.js';

/** One visit from complaint to release, driven over HTTP. */
export interface Visit {
  readonly vehicleId: string;
  /** day of the visit, local date */
  readonly day: string;
  readonly symptoms?: Readonly<Record<string, 'present' | 'absent'>>;
  readonly causeId?: string | null;
  /** what is done on the throttle housing; left out: nothing */
  readonly work?: { readonly action: string; readonly condition?: string };
  /** before the release, e.g. inspection, assessment and decision */
  readonly before?: (jobId: string) => Promise<void>;
}

export interface ReleasedVisit {
  readonly jobId: string;
  readonly complaint: Reply;
}

const must = (reply: Reply): Reply => {
  if (reply.status >= 300) throw new Error(`${String(reply.status)} ${JSON.stringify(reply.body)}`);
  return reply;
};

/** Takes the complaint, opens the job, does the work with consent, proves and releases it. */
export async function settleVisit(story: StoryShop, visit: Visit): Promise<ReleasedVisit> {
  const { vehicleId, day, work, symptoms = { 'idle-rises-with-ac': 'present' } } = visit;
  const complaint = must(
    await story.post('/v1/complaints', {
      jobId: null,
      words: 'the revs go up when I put the air on',
      symptoms,
      conditions: {},
      troubleCodes: [],
      reproduced: true,
      stopScrewMovedByOthers: null,
      reportedByDriver: false,
      components: ['throttle-housing'],
      beganAfterRepair: false,
      distanceKm: null,
      vehicleId,
      receivedAt: `${day}T08:00:00Z`,
    }),
  );
  const opened = must(
    await story.post('/v1/jobs', {
      openedAt: `${day}T08:00:00Z`,
      assignedTo: null,
      diagnosedBy: story.technician.id,
      causeId: visit.causeId ?? null,
      note: null,
      vehicleId,
      complaintIds: [complaint.body.id],
      odometer: null,
    }),
  );
  const jobId = opened.body.id as string;
  await visit.before?.(jobId);
  if (work !== undefined) await doWork(story, jobId, day, work);
  await proveAndRelease(story, jobId, day);
  return { jobId, complaint };
}

async function doWork(
  story: StoryShop,
  jobId: string,
  day: string,
  { action, condition }: NonNullable<Visit['work']>,
): Promise<void> {
  const part =
    condition === undefined
      ? null
      : { condition, supplier: null, partNumber: null, serial: null, batch: null, price: null };
  const line = {
    action,
    componentType: 'throttle-housing',
    position: 'intake',
    state: 'planned',
    technicianId: null,
    doneAt: null,
    minutes: null,
    description: null,
    from: null,
    to: null,
    protectedPurpose: null,
    protectedReason: null,
    part,
  };
  const planned = must(await story.post(`/v1/jobs/${jobId}/work-lines`, line, story.technician));
  const estimate = must(
    await story.post(`/v1/jobs/${jobId}/estimates`, {
      lines: [
        {
          workLineId: planned.body.id,
          description: action,
          partsAmount: '0.00',
          labourHours: '1.2',
          partCondition: condition ?? null,
        },
      ],
      ceilingAmount: null,
    }),
  );
  must(
    await story.post(`/v1/jobs/${jobId}/consents`, {
      estimateId: estimate.body.id,
      answer: 'given',
      answeredAt: `${day}T09:30:00Z`,
      way: 'inPerson',
      declinedWork: null,
      name: null,
    }),
  );
  const done = {
    ...line,
    state: 'done',
    technicianId: story.technician.id,
    doneAt: `${day}T10:00:00Z`,
    minutes: 30,
    reason: 'done',
  };
  must(await story.post(`/v1/work-lines/${planned.body.id}/corrections`, done, story.technician, '"1"'));
}

async function proveAndRelease(story: StoryShop, jobId: string, day: string): Promise<void> {
  const proof = must(await story.get(`/v1/jobs/${jobId}/proof`, story.technician));
  for (const point of proof.body.wanted as string[]) {
    must(
      await story.post(`/v1/jobs/${jobId}/proof-points`, {
        point,
        outcome: 'passed',
        testedAt: `${day}T11:00:00Z`,
        testedBy: story.technician.id,
        notTestedBecause: null,
        recheckOn: null,
        note: null,
      }),
    );
  }
  must(
    await story.post(`/v1/jobs/${jobId}/releases`, {
      releasedAt: `${day}T12:00:00Z`,
      releasedBy: story.technician.id,
      statement: 'Proved on the road.',
    }),
  );
}

/** The van was here again: its odometer was read, and nothing was wrong. */
export async function seeAgain(story: StoryShop, vehicleId: string, day: string, km: string): Promise<void> {
  const entry = { shown: km, unit: 'km', readAt: `${day}T08:00:00Z` };
  must(await story.post(`/v1/vehicles/${vehicleId}/odometer-entries`, entry));
}

/** A person's word on the proposed link of a later complaint. */
export async function confirmComeback(
  story: StoryShop,
  complaint: Reply,
  attribution: string | null = null,
): Promise<void> {
  const [proposed] = complaint.body.comebacks as { id: string }[];
  if (proposed === undefined) throw new Error('no comeback was proposed');
  must(
    await story.post(
      `/v1/comebacks/${proposed.id}/corrections`,
      { state: 'confirmed', attribution, note: null, reason: 'same fault' },
      story.desk,
      '"1"',
    ),
  );
}
