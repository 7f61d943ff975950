import { causes } from '@endfloat/catalogue';
import { DomainError, invalidInput, notFound } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded } from '../ports/record-store.port.js';
import type { Job, JobEvent, JobState, OfJob } from '../ports/records/jobs.records.js';
import type { OfVehicle } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { recordOdometerEntry, type OdometerShown } from '../intake/odometer.use-case.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, exactly, type ExpectedRevision } from '../recording/correct-record.js';
import { refuseFuture } from '../recording/happened-at.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import {
  mayKnowVehicle,
  referencedVehicle,
  vehiclesOf,
  visibleVehicle,
} from '../recording/vehicle-visibility.js';
import { courseOf, isUnderWay, jobState } from './job-state.js';

export type JobRecord = Recorded<OfVehicle, Job>;
export type JobEventRecord = Recorded<OfJob, JobEvent>;

export interface JobView {
  readonly record: JobRecord;
  readonly state: JobState;
  readonly events: readonly JobEvent[];
  readonly complaintIds: readonly string[];
  readonly inspectionIds: readonly string[];
}

export interface OpenJobCommand {
  readonly id?: string | undefined;
  readonly vehicleId: string;
  readonly job: Job;
  /** complaints this job deals with; each belongs to one job */
  readonly complaintIds: readonly string[];
  readonly odometer: OdometerShown | null;
}

/** Opens a job: one visit of a vehicle, with the complaints it deals with and what the odometer showed. */
export class OpenJobUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(caller: Caller, command: OpenJobCommand): Promise<JobView & { readonly created: boolean }> {
    const stamp = stampOf(this.clock, caller);
    const id = command.id ?? this.ids.next();
    refuseFuture(command.job.openedAt, stamp.at, '/openedAt');
    return this.work.run(caller.shopId, async (tx) => {
      await referencedVehicle(tx, caller, command.vehicleId, stamp.at);
      await refuseUnknownPeople(tx, command.job);
      const identity = { vehicleId: command.vehicleId };
      const { record, created } = await addRecord(
        tx.jobs,
        'job',
        { id, identity, content: command.job },
        stamp,
      );
      if (created) {
        for (const [index, complaintId] of command.complaintIds.entries()) {
          const pointer = `/complaintIds/${String(index)}`;
          const complaint = await referencedRecord(tx.complaints, 'complaint', complaintId, pointer);
          if (complaint.identity.vehicleId !== command.vehicleId)
            throw invalidInput(pointer, 'sameVehicle', 'This complaint is about another vehicle.');
          if (complaint.content.jobId !== null) {
            throw new DomainError(
              'record.wrongState',
              'This complaint is dealt with in another job already.',
              [{ pointer, rule: 'oneJob', detail: `job ${complaint.content.jobId}` }],
            );
          }
          const change = {
            id: complaintId,
            expected: exactly(complaint.revision),
            content: { ...complaint.content, jobId: id },
          };
          await correctRecord(tx.complaints, 'complaint', change, { ...stamp, reason: 'taken into a job' });
        }
        if (command.odometer !== null)
          await recordOdometerEntry(
            tx,
            this.ids,
            { vehicleId: command.vehicleId, entry: command.odometer },
            stamp,
          );
        await tx.announce({
          type: 'endfloat.job.opened.v1',
          subjectId: id,
          at: stamp.at,
          payload: { vehicleId: command.vehicleId },
        });
      }
      return { ...(await viewOf(tx, record)), created };
    });
  }
}

/** Corrects a job: whom it is assigned to, who diagnosed it, the cause once it is established. */
export class CorrectJobUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly job: Job;
      readonly reason: string;
    },
  ): Promise<JobView> {
    const stamp = stampOf(this.clock, caller, command.reason);
    refuseFuture(command.job.openedAt, stamp.at, '/openedAt');
    return this.work.run(caller.shopId, async (tx) => {
      await refuseUnknownPeople(tx, command.job);
      return viewOf(
        tx,
        await correctRecord(
          tx.jobs,
          'job',
          { id: command.id, expected: command.expected, content: command.job },
          stamp,
        ),
      );
    });
  }
}

/** Records that a job waits, goes on, is finished or closed, and when. */
export class RecordJobEventUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly jobId: string; readonly event: JobEvent },
  ): Promise<AddedRecord<OfJob, JobEvent>> {
    const stamp = stampOf(this.clock, caller);
    const { event, jobId } = command;
    refuseFuture(event.happenedAt, stamp.at, '/happenedAt');
    return this.work.run(caller.shopId, async (tx) => {
      await requiredRecord(tx.jobs, 'job', jobId);
      const state = jobState(await courseOf(tx, jobId));
      const isRepeat = command.id !== undefined && (await tx.jobEvents.find(command.id)) !== undefined;
      if (!isRepeat && !follows(event, state)) {
        throw new DomainError(
          'record.wrongState',
          event.kind === 'closed'
            ? 'A job is closed after its release, or after the van was handed over unrepaired.'
            : `The job is ${state}; it cannot be ${event.kind} now.`,
          [{ pointer: '/kind', rule: 'order', detail: state }],
        );
      }
      return addRecord(
        tx.jobEvents,
        'job event',
        { id: command.id ?? this.ids.next(), identity: { jobId }, content: event },
        stamp,
      );
    });
  }
}

function follows(event: JobEvent, state: JobState): boolean {
  if (event.kind === 'closed') return state === 'released' || state === 'handedOverUnrepaired';
  return isUnderWay(state);
}

export class ShowJobUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    query: { readonly id: string; readonly asOf?: string | undefined },
  ): Promise<JobView> {
    return this.work.read(caller.shopId, async (tx) => {
      const record = await requiredRecord(tx.jobs, 'job', query.id, query.asOf);
      if (!(await mayKnowVehicle(tx, caller, record.identity.vehicleId, this.clock.now())))
        throw notFound('job');
      return viewOf(tx, record, query.asOf);
    });
  }

  list(
    caller: Caller,
    query: {
      readonly vehicleId?: string | undefined;
      readonly assignedTo?: string | undefined;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<{ readonly items: readonly JobView[]; readonly next?: ListPosition | undefined }> {
    const { vehicleId, assignedTo, ...page } = query;
    const now = this.clock.now();
    return this.work.read(caller.shopId, async (tx) => {
      if (vehicleId !== undefined) await visibleVehicle(tx, caller, vehicleId, now);
      const own = caller.customerId === undefined ? undefined : await vehiclesOf(tx, caller.customerId, now);
      const found: ListPage<OfVehicle, Job> = await tx.jobs.list({
        where: { vehicleId: vehicleId ?? own, assignedTo },
        ...page,
      });
      const items: JobView[] = [];
      for (const record of found.items) items.push(await viewOf(tx, record, query.asOf));
      return { items, next: found.next };
    });
  }
}

async function refuseUnknownPeople(tx: ShopTransaction, job: Job): Promise<void> {
  for (const member of ['assignedTo', 'diagnosedBy'] as const) {
    const id = job[member];
    if (id !== null) await referencedRecord(tx.users, 'user', id, `/${member}`);
  }
  if (job.causeId !== null && !causes.some(({ id }) => id === job.causeId)) {
    throw invalidInput(
      '/causeId',
      'cause',
      `"${job.causeId}" is no cause of the catalogue. GET /v1/causes lists them; null says that none is established.`,
    );
  }
}

async function viewOf(tx: ShopTransaction, record: JobRecord, asOf?: string): Promise<JobView> {
  const course = await courseOf(tx, record.id, asOf);
  const complaints = await tx.complaints.all({ jobId: record.id }, asOf);
  const inspections = await tx.inspections.all({ jobId: record.id }, asOf);
  return {
    record,
    state: jobState(course),
    events: course.events,
    complaintIds: complaints.map(({ id }) => id),
    inspectionIds: inspections.map(({ id }) => id),
  };
}
