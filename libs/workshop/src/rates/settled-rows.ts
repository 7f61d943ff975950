import { comebackAttributionDefinitions, symptoms } from '@endfloat/catalogue';
import { settleJobs, type SettledJob } from '@endfloat/reliability';
import type { Recorded } from '../ports/record-store.port.js';
import type {
  Comeback,
  ComebackIdentity,
  Complaint,
  Job,
  OfJob,
  WorkLine,
} from '../ports/records/jobs.records.js';
import type { NoReferences, ShopSettings } from '../ports/records/shop.records.js';
import type { OfVehicle, Vehicle, VehicleOwnership } from '../ports/records/vehicles.records.js';
import type { SettledJobRow, SettledRepeat } from '../ports/settled-jobs.port.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { repeatCost } from './comeback-cost.js';
import { ageAt, exactSum, mixOf } from './job-facts.js';

const familyOf = new Map(symptoms.map(({ id, familyId }) => [id, familyId]));
const againstOf = new Map(comebackAttributionDefinitions.map(({ id, countsAgainst }) => [id, countsAgainst]));
/** Records of some vehicles, by vehicle or by job. */
interface Gathered {
  readonly vehicles: ReadonlyMap<string, Vehicle>;
  readonly jobs: ReadonlyMap<string, readonly Recorded<OfVehicle, Job>[]>;
  readonly complaints: ReadonlyMap<string, readonly Recorded<OfVehicle, Complaint>[]>;
  readonly ownerships: ReadonlyMap<string, readonly Recorded<OfVehicle, VehicleOwnership>[]>;
  readonly sightings: ReadonlyMap<string, readonly { readonly seenAt: string; readonly km: string | null }[]>;
  readonly releases: ReadonlyMap<string, Parameters<typeof settleJobs>[0]['releases'][number]>;
  readonly lines: ReadonlyMap<string, readonly Recorded<OfJob, WorkLine>[]>;
  readonly links: ReadonlyMap<string, readonly Recorded<ComebackIdentity, Comeback>[]>;
  readonly settings: readonly Recorded<NoReferences, ShopSettings>[];
}

/** Settles the released jobs of some vehicles from the records, as they are now or as they were known at a moment. */
export async function settledRows(
  tx: ShopTransaction,
  vehicleIds: readonly string[],
  asOf?: string,
): Promise<readonly SettledJobRow[]> {
  if (vehicleIds.length === 0) return [];
  const gathered = await gather(tx, vehicleIds, asOf);
  return vehicleIds.flatMap((vehicleId) => rowsOfVehicle(vehicleId, gathered));
}

async function gather(tx: ShopTransaction, vehicleIds: readonly string[], asOf?: string): Promise<Gathered> {
  const ofVehicles = { vehicleId: vehicleIds };
  const jobs = await tx.jobs.all(ofVehicles, asOf);
  const jobIds = jobs.map(({ id }) => id);
  const complaints = await tx.complaints.all(ofVehicles, asOf);
  const entries = await tx.odometerEntries.all(ofVehicles, asOf);
  const releases = jobIds.length === 0 ? [] : await tx.releases.all({ jobId: jobIds }, asOf);
  const settings = await tx.settings.history(tx.shopId);
  return {
    vehicles: new Map((await tx.vehicles.findMany(vehicleIds, asOf)).map(({ id, content }) => [id, content])),
    jobs: grouped(jobs, ({ identity }) => identity.vehicleId),
    complaints: grouped(complaints, ({ identity }) => identity.vehicleId),
    ownerships: grouped(await tx.ownerships.all(ofVehicles, asOf), ({ identity }) => identity.vehicleId),
    sightings: new Map(
      [...grouped(entries, ({ identity }) => identity.vehicleId)].map(([id, found]) => [
        id,
        found.map(({ content }) => ({
          seenAt: content.readAt,
          km: content.reliable ? content.distanceKm : null,
        })),
      ]),
    ),
    releases: new Map(
      releases.map(({ identity: { jobId }, content }) => [
        jobId,
        {
          jobId,
          releasedAt: content.releasedAt,
          windowDays: content.windowDays,
          windowKm: content.windowKm,
          releasedKm: content.distanceKm,
        },
      ]),
    ),
    lines: grouped(
      jobIds.length === 0 ? [] : await tx.workLines.all({ jobId: jobIds, state: 'done' }, asOf),
      ({ identity }) => identity.jobId,
    ),
    links: grouped(
      jobIds.length === 0 ? [] : await tx.comebacks.all({ jobId: jobIds, state: 'confirmed' }, asOf),
      ({ identity }) => identity.jobId,
    ),
    settings: asOf === undefined ? settings : settings.filter(({ recordedAt }) => recordedAt <= asOf),
  };
}

function grouped<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const group = groups.get(keyOf(item));
    if (group === undefined) groups.set(keyOf(item), [item]);
    else group.push(item);
  }
  return groups;
}

function rowsOfVehicle(vehicleId: string, gathered: Gathered): SettledJobRow[] {
  const jobs = gathered.jobs.get(vehicleId) ?? [];
  const complaints = gathered.complaints.get(vehicleId) ?? [];
  const links = jobs.flatMap(({ id }) => gathered.links.get(id) ?? []);
  const settled = settleJobs({
    releases: jobs.flatMap(({ id }) => gathered.releases.get(id) ?? []),
    complaints: complaints.map(({ id, content }) => ({
      complaintId: id,
      jobId: content.jobId,
      receivedAt: content.receivedAt,
      km: content.distanceKm,
    })),
    sightings: [
      ...(gathered.sightings.get(vehicleId) ?? []),
      ...jobs.map(({ content }) => ({ seenAt: content.openedAt, km: null })),
    ],
    confirmed: links.map(({ id, identity }) => ({ comebackId: id, ...identity })),
  });
  const counted = new Set(
    settled.flatMap(({ comebacks }) => comebacks.map(({ complaintId }) => complaintId)),
  );
  return settled.map((job) => rowOf(job, vehicleId, { gathered, complaints, links, counted }));
}

interface VehicleContext {
  readonly gathered: Gathered;
  readonly complaints: readonly Recorded<OfVehicle, Complaint>[];
  readonly links: readonly Recorded<ComebackIdentity, Comeback>[];
  /** complaints that are comebacks and count */
  readonly counted: ReadonlySet<string>;
}

function rowOf(settled: SettledJob, vehicleId: string, context: VehicleContext): SettledJobRow {
  const { gathered, complaints } = context;
  const job = gathered.jobs.get(vehicleId)?.find(({ id }) => id === settled.jobId);
  const done = (gathered.lines.get(settled.jobId) ?? []).map(({ content }) => content);
  const present = complaints
    .filter(({ content }) => content.jobId === settled.jobId)
    .flatMap(({ content }) =>
      Object.entries(content.symptoms).flatMap(([id, is]) => (is === 'present' ? [id] : [])),
    );
  const families = distinct(present.flatMap((id) => familyOf.get(id) ?? []));
  const parts = done.flatMap(({ part }) => (part === null ? [] : [part]));
  const repeats = settled.comebacks.map((comeback) => repeatOf(comeback, context));
  const against = distinct(repeats.flatMap(({ attribution }) => (attribution === null ? [] : [attribution])));
  return {
    jobId: settled.jobId,
    vehicleId,
    customerId: ownerAt(gathered.ownerships.get(vehicleId) ?? [], settled.releasedAt),
    releasedAt: settled.releasedAt,
    closesAt: settled.closesAt,
    closedBy: settled.closedBy,
    isRepeat: settled.repeatOf.length > 0,
    comebackAt: settled.comebackAt,
    anyComebackAt: settled.anyComebackAt,
    firstSeenAt: settled.firstSeenAt,
    seenAfterClosingAt: settled.seenAfterClosingAt,
    lastSeenAt: settled.lastSeenAt,
    diagnosedBy: job?.content.diagnosedBy ?? null,
    ageYears: ageAt(gathered.vehicles.get(vehicleId)?.firstUsedOn ?? null, settled.releasedAt),
    mix: mixOf(families, done),
    fittedBy: distinct(done.flatMap(({ technicianId }) => technicianId ?? [])),
    symptoms: distinct(present),
    symptomFamilies: families,
    actions: distinct(done.map(({ action }) => action)),
    components: distinct(done.map(({ componentType }) => componentType)),
    partConditions: distinct(parts.map(({ condition }) => condition)),
    suppliers: distinct(parts.flatMap(({ supplier }) => supplier ?? [])),
    countsAgainst: distinct(against.flatMap((id) => againstOf.get(id) ?? [])),
    unattributed: repeats.some(({ attribution }) => attribution === null),
    comebacks: repeats.length,
    cost: repeats.reduce((sum, { total }) => exactSum(sum, total), '0'),
    costGaps: repeats.reduce((sum, { gaps }) => sum + gaps, 0),
    repeats,
  };
}

const distinct = <T extends string>(values: readonly T[]): T[] => [...new Set(values)].sort();

function ownerAt(
  ownerships: Gathered['ownerships'] extends ReadonlyMap<string, infer T> ? T : never,
  at: string,
) {
  return (
    ownerships
      .map(({ content }) => content)
      .filter(({ fromAt }) => fromAt <= at)
      .reduce<VehicleOwnership | null>(
        (latest, next) => (latest === null || next.fromAt >= latest.fromAt ? next : latest),
        null,
      )?.customerId ?? null
  );
}

function repeatOf(comeback: SettledJob['comebacks'][number], context: VehicleContext): SettledRepeat {
  const { comebackId, complaintId, repeatJobId, receivedAt } = comeback;
  const { gathered, links, complaints, counted } = context;
  const inJob =
    repeatJobId === null
      ? [complaintId]
      : complaints.filter(({ content }) => content.jobId === repeatJobId).map(({ id }) => id);
  const comebacks = inJob.filter((id) => counted.has(id)).sort();
  const lines = repeatJobId === null ? [] : (gathered.lines.get(repeatJobId) ?? []);
  // The first comeback bears what is left, of the job as of the handling.
  const { labour, parts, handling, total, gaps } = repeatCost(
    lines.map(({ content }) => content),
    settingsAt(gathered.settings, receivedAt),
    {
      complaints: Math.max(1, inJob.length),
      comebacks: Math.max(1, comebacks.length),
      originals: comeback.originals,
      firstComplaint: comebacks[0] === complaintId,
      firstOriginal: comeback.bearsRest,
    },
  );
  const attribution = links.find(({ id }) => id === comebackId)?.content.attribution ?? null;
  return {
    comebackId,
    complaintId,
    repeatJobId,
    receivedAt,
    attribution,
    labour,
    parts,
    handling,
    total,
    gaps,
  };
}

/** The rates in force when a complaint was taken; the first ones for what happened before. */
function settingsAt(history: Gathered['settings'], at: string): ShopSettings {
  const known = history.filter(({ recordedAt }) => recordedAt <= at).at(-1) ?? history[0];
  if (known === undefined) throw new RangeError('every shop has settings');
  return known.content;
}
