import { symptoms } from '@endfloat/catalogue';
import {
  comebackProbability,
  proposalGrounds,
  proposeComebacks,
  type ComebackProposal,
  type ConfirmedComeback,
  type ReleasedJob,
} from '@endfloat/reliability';
import type { IdSource } from '../ports/id-source.port.js';
import type { Recorded, Stamp } from '../ports/record-store.port.js';
import type {
  Comeback,
  ComebackIdentity,
  Complaint,
  ProposalProbability,
} from '../ports/records/jobs.records.js';
import type { OfVehicle } from '../ports/records/vehicles.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';

export type ComebackRecord = Recorded<ComebackIdentity, Comeback>;

/** Family of each symptom: complaints of one family are the same one to the customer. */
const familyOf: Readonly<Record<string, string>> = Object.fromEntries(
  symptoms.map(({ id, familyId }) => [id, familyId]),
);

/**
 * Records a proposal for every earlier released job of the vehicle that this complaint may be a comeback of, with the
 * reasons. A link that a person has settled is left alone; a complaint never becomes a comeback of its own job.
 */
export async function proposeComebacksFor(
  tx: ShopTransaction,
  ids: IdSource,
  complaint: Recorded<OfVehicle, Complaint>,
  stamp: Stamp,
): Promise<readonly ComebackRecord[]> {
  const { vehicleId } = complaint.identity;
  const released = (await releasedJobs(tx, vehicleId)).filter(
    ({ jobId }) => jobId !== complaint.content.jobId,
  );
  if (released.length === 0) return [];
  const proposals = proposeComebacks(
    {
      receivedAt: complaint.content.receivedAt,
      km: complaint.content.distanceKm,
      symptoms: complaint.content.symptoms,
      components: complaint.content.components,
      beganAfterRepair: complaint.content.beganAfterRepair,
    },
    released,
    { familyOf, confirmed: await confirmedComebacks(tx, vehicleId) },
  );
  const made: ComebackRecord[] = [];
  for (const proposal of proposals) {
    const { jobId, reasons, daysSinceRelease, kmSinceRelease, insideWindow, likeness } = proposal;
    const ground = groundOf(proposal);
    const content: Comeback = {
      state: 'proposed',
      attribution: null,
      reasons,
      likeness: likeness.toFixed(3),
      daysSinceRelease,
      kmSinceRelease,
      insideWindow,
      note: null,
      ground,
      probability: await probabilityOf(tx, likeness, ground),
    };
    const id = ids.next();
    if ((await tx.comebacks.add(id, { complaintId: complaint.id, jobId }, content, stamp)) === 'added') {
      const record = await tx.comebacks.find(id);
      if (record !== undefined) made.push(record);
    }
  }
  return made;
}

/** The strongest reason of a proposal and its side of the window. */
function groundOf({ reasons, insideWindow }: ComebackProposal): string {
  const strongest = proposalGrounds.find((ground) => reasons.some(({ code }) => code === ground));
  return `${strongest ?? 'other'}/${insideWindow ? 'inside' : 'outside'}`;
}

/** How likely a person confirms it, learned from what was said of the shop's own proposals like it. */
async function probabilityOf(
  tx: ShopTransaction,
  likeness: number,
  ground: string,
): Promise<ProposalProbability> {
  const { value, interval, confidence, prior, confirmed, refused } = comebackProbability(
    likeness,
    await tx.settledJobs.settledProposals(ground),
  );
  return {
    value: value.toFixed(6),
    lower: interval.lower.toFixed(6),
    upper: interval.upper.toFixed(6),
    confidence: String(confidence),
    priorMean: prior.mean.toFixed(6),
    priorWeight: prior.weight,
    confirmed,
    refused,
  };
}

/** Released jobs of a vehicle as the comparison sees them. */
export async function releasedJobs(tx: ShopTransaction, vehicleId: string): Promise<readonly ReleasedJob[]> {
  const jobs = await tx.jobs.all({ vehicleId });
  const jobIds = jobs.map(({ id }) => id);
  if (jobIds.length === 0) return [];
  const [releases, complaints, lines, entries] = [
    await tx.releases.all({ jobId: jobIds }),
    await tx.complaints.all({ vehicleId }),
    await tx.workLines.all({ jobId: jobIds }),
    await tx.odometerEntries.all({ vehicleId }),
  ];
  const sightings = entries.map(({ content }) => ({
    seenAt: content.readAt,
    km: content.reliable ? content.distanceKm : null,
  }));
  return releases.map(({ identity: { jobId }, content }) => ({
    jobId,
    releasedAt: content.releasedAt,
    windowDays: content.windowDays,
    windowKm: content.windowKm,
    releasedKm: content.distanceKm,
    symptomsPresent: [
      ...new Set(complaints.filter((each) => each.content.jobId === jobId).flatMap(presentSymptoms)),
    ],
    components: [
      ...new Set(
        lines
          .filter((line) => line.identity.jobId === jobId && line.content.state === 'done')
          .map((line) => line.content.componentType),
      ),
    ],
    sightings,
  }));
}

function presentSymptoms({ content }: Recorded<OfVehicle, Complaint>): string[] {
  return Object.entries(content.symptoms).flatMap(([id, answer]) => (answer === 'present' ? [id] : []));
}

async function confirmedComebacks(
  tx: ShopTransaction,
  vehicleId: string,
): Promise<readonly ConfirmedComeback[]> {
  const complaints = await tx.complaints.all({ vehicleId });
  if (complaints.length === 0) return [];
  const links = await tx.comebacks.all({ complaintId: complaints.map(({ id }) => id), state: 'confirmed' });
  return links.flatMap(({ identity }) => {
    const repeatJobId = complaints.find(({ id }) => id === identity.complaintId)?.content.jobId ?? null;
    return repeatJobId === null ? [] : [{ repeatJobId, jobId: identity.jobId }];
  });
}
