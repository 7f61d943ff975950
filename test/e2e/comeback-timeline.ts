import { usualShopSettings, type TestApi, type TestShop } from '../support/api.js';
import type { ComebackAttribution } from '@endfloat/catalogue';
import type { Complaint, WorkLine } from '@endfloat/workshop';

/** A job of a hand-written timeline. */
export interface TimelineJob {
  readonly vehicleId: string;
  readonly releasedAt: string;
  readonly releasedKm?: string | null;
  readonly windowDays?: number;
  readonly windowKm?: string;
  readonly diagnosedBy?: string | null;
  readonly symptoms?: readonly string[];
  readonly lines?: readonly Partial<WorkLine>[];
  /** complaints recorded before that this job deals with */
  readonly complaintIds?: readonly string[];
}

const plainLine: WorkLine = {
  action: 'clean',
  componentType: 'throttle-housing',
  position: 'intake',
  fittedPartId: null,
  state: 'done',
  technicianId: null,
  doneAt: null,
  minutes: 60,
  description: null,
  from: null,
  to: null,
  protectedPurpose: null,
  protectedReason: null,
  part: null,
};

const plainComplaint: Complaint = {
  jobId: null,
  receivedAt: '',
  personalRecordId: null,
  symptoms: { 'stalls-cold': 'present' },
  conditions: {},
  troubleCodes: [],
  reproduced: null,
  stopScrewMovedByOthers: null,
  reportedByDriver: false,
  components: [],
  beganAfterRepair: false,
  distanceKm: null,
};

/** Writes records as the use cases leave them, many at once, so that a timeline can be told in a few lines. */
export class Timeline {
  constructor(
    private readonly api: TestApi,
    private readonly shop: TestShop,
  ) {}

  private get stamp() {
    return { at: this.api.clock.now(), by: this.shop.owner.id };
  }

  async van(
    firstUsedOn: string | null = null,
    owner?: { customerId: string; fromAt: string },
  ): Promise<string> {
    const id = this.api.ids.next();
    await this.api.work.run(this.shop.id, async (tx) => {
      const content = {
        chassisNumber: null,
        numberSearch: null,
        plate: null,
        plateSearch: null,
        label: null,
        firstUsedOn,
        application: null,
        attributes: {},
        expectedKmPerYear: null,
        observedSpans: [],
        retiredOn: null,
      };
      await tx.vehicles.add(id, {}, content, this.stamp);
      if (owner !== undefined)
        await tx.ownerships.add(this.api.ids.next(), { vehicleId: id }, owner, this.stamp);
    });
    return id;
  }

  async owner(vehicleId: string, customerId: string, fromAt: string): Promise<void> {
    await this.api.work.run(this.shop.id, (tx) =>
      tx.ownerships.add(this.api.ids.next(), { vehicleId }, { customerId, fromAt }, this.stamp),
    );
  }

  async customer(kind: 'person' | 'fleetOperator' = 'person'): Promise<string> {
    const id = this.api.ids.next();
    const plain = { personalRecordId: null, downtimeCostPerDay: null, planningDistanceKm: null };
    await this.api.work.run(this.shop.id, (tx) => tx.customers.add(id, {}, { kind, ...plain }, this.stamp));
    return id;
  }

  /** Jobs with their release, done lines and complaints, all in one transaction. */
  async jobs(given: readonly TimelineJob[]): Promise<string[]> {
    const next = () => this.api.ids.next();
    const jobs = given.map((job) => ({ ...job, id: next() }));
    await this.api.work.run(this.shop.id, async (tx) => {
      await tx.jobs.addMany(
        jobs.map(({ id, vehicleId, releasedAt, diagnosedBy = null }) => ({
          id,
          identity: { vehicleId },
          content: { openedAt: releasedAt, assignedTo: null, diagnosedBy, causeId: null, note: null },
        })),
        this.stamp,
      );
      await tx.releases.addMany(
        jobs.map(({ id, ...job }) => ({
          id: next(),
          identity: { jobId: id },
          content: {
            releasedAt: job.releasedAt,
            windowDays: job.windowDays ?? usualShopSettings.comebackWindowDays,
            windowKm: job.windowKm ?? usualShopSettings.comebackWindowKm,
            distanceKm: job.releasedKm ?? null,
            releasedBy: this.shop.owner.id,
            statement: 'Proof complete.',
          },
        })),
        this.stamp,
      );
      await tx.workLines.addMany(
        jobs.flatMap(({ id, releasedAt, lines = [{}] }) =>
          lines.map((line) => ({
            id: next(),
            identity: { jobId: id },
            content: { ...plainLine, technicianId: this.shop.owner.id, doneAt: releasedAt, ...line },
          })),
        ),
        this.stamp,
      );
      await tx.complaints.addMany(
        jobs
          .filter(({ complaintIds, symptoms }) => complaintIds === undefined && symptoms !== undefined)
          .map(({ id, vehicleId, releasedAt, symptoms = [] }) => ({
            id: next(),
            identity: { vehicleId },
            content: {
              ...plainComplaint,
              jobId: id,
              receivedAt: releasedAt,
              symptoms: Object.fromEntries(symptoms.map((symptom) => [symptom, 'present' as const])),
            },
          })),
        this.stamp,
      );
      for (const { id, complaintIds = [] } of jobs)
        for (const complaintId of complaintIds) {
          const complaint = await tx.complaints.find(complaintId);
          await tx.complaints.correct(
            complaintId,
            complaint!.revision,
            { ...complaint!.content, jobId: id },
            { ...this.stamp, reason: 'dealt with in a job' },
          );
        }
    });
    return jobs.map(({ id }) => id);
  }

  async job(job: TimelineJob): Promise<string> {
    return (await this.jobs([job]))[0]!;
  }

  /** Complaints, each a confirmed comeback of the jobs named. */
  async comebacks(
    given: readonly {
      readonly vehicleId: string;
      readonly receivedAt: string;
      readonly km?: string | null;
      readonly of: readonly string[];
      readonly attribution?: ComebackAttribution | null;
    }[],
  ): Promise<string[]> {
    const complaints = given.map((complaint) => ({ ...complaint, id: this.api.ids.next() }));
    await this.api.work.run(this.shop.id, async (tx) => {
      await tx.complaints.addMany(
        complaints.map(({ id, vehicleId, receivedAt, km = null }) => ({
          id,
          identity: { vehicleId },
          content: { ...plainComplaint, receivedAt, distanceKm: km },
        })),
        this.stamp,
      );
      await tx.comebacks.addMany(
        complaints.flatMap(({ id, of, attribution = null }) =>
          of.map((jobId) => ({
            id: this.api.ids.next(),
            identity: { complaintId: id, jobId },
            content: {
              state: 'confirmed' as const,
              attribution,
              reasons: [],
              likeness: '1',
              daysSinceRelease: 0,
              kmSinceRelease: null,
              insideWindow: true,
              note: null,
            },
          })),
        ),
        this.stamp,
      );
    });
    return complaints.map(({ id }) => id);
  }

  async comeback(given: Parameters<Timeline['comebacks']>[0][number]): Promise<string> {
    return (await this.comebacks([given]))[0]!;
  }

  /** The odometer was read; all vans or one. */
  async seen(
    given: readonly { readonly vehicleId: string; readonly at: string; readonly km?: string }[],
  ): Promise<void> {
    await this.api.work.run(this.shop.id, (tx) =>
      tx.odometerEntries.addMany(
        given.map(({ vehicleId, at, km }) => ({
          id: this.api.ids.next(),
          identity: { vehicleId },
          content: {
            shown: km ?? '0',
            unit: 'km' as const,
            readAt: at,
            distanceKm: km ?? null,
            reliable: km !== undefined,
            readBy: null,
            operatingHours: null,
            warnings: [],
            note: null,
          },
        })),
        this.stamp,
      ),
    );
  }
}
