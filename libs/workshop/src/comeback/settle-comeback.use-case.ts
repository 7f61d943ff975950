import { DomainError, invalidInput } from '../errors/domain.errors.js';
import { watchWindow } from '@endfloat/reliability';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition } from '../ports/record-store.port.js';
import type { Comeback, ComebackIdentity, ComebackState } from '../ports/records/jobs.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { referencedRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { vehiclesOf } from '../recording/vehicle-visibility.js';
import { releasedJobs, type ComebackRecord } from './propose-comebacks.js';

/** A person's word on a proposed link: confirmed or refused, and what it is attributed to. It can be revised; all stays. */
export class SettleComebackUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly state: Exclude<ComebackState, 'proposed'>;
      readonly attribution: Comeback['attribution'];
      readonly note: string | null;
      readonly reason: string;
    },
  ): Promise<ComebackRecord> {
    const stamp = stampOf(this.clock, caller, command.reason);
    const { state, attribution, note } = command;
    if (state === 'refused' && attribution !== null) {
      throw invalidInput(
        '/attribution',
        'onlyConfirmed',
        'Only a confirmed comeback is attributed. Confirm it, or leave the attribution out.',
      );
    }
    return this.work.run(caller.shopId, async (tx) => {
      const content = (now: Comeback): Comeback => ({ ...now, state, attribution, note });
      const record = await correctRecord(
        tx.comebacks,
        'comeback',
        { id: command.id, expected: command.expected, content },
        stamp,
      );
      await tx.announce({
        type: `endfloat.comeback.${state}.v1`,
        subjectId: record.id,
        at: stamp.at,
        payload: { jobId: record.identity.jobId, complaintId: record.identity.complaintId },
      });
      return record;
    });
  }
}

/** Links a complaint to an earlier released job that no rule proposed; the person who knows better says so. */
export class LinkComebackUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id?: string | undefined;
      readonly complaintId: string;
      readonly jobId: string;
      readonly note: string | null;
    },
  ): Promise<AddedRecord<ComebackIdentity, Comeback>> {
    const stamp = stampOf(this.clock, caller);
    return this.work.run(caller.shopId, async (tx) => {
      const complaint = await referencedRecord(
        tx.complaints,
        'complaint',
        command.complaintId,
        '/complaintId',
      );
      await referencedRecord(tx.jobs, 'job', command.jobId, '/jobId');
      const released = (await releasedJobs(tx, complaint.identity.vehicleId)).find(
        ({ jobId }) => jobId === command.jobId,
      );
      const { receivedAt, distanceKm, jobId: ownJob } = complaint.content;
      if (released === undefined || released.releasedAt > receivedAt || ownJob === command.jobId) {
        throw new DomainError(
          'comeback.notReleasedBefore',
          'A comeback points to a job of the same vehicle that was released before the complaint was received.',
          [{ pointer: '/jobId', rule: 'releasedBefore', detail: 'not released before, or another vehicle' }],
        );
      }
      const window = watchWindow(released, receivedAt, [
        ...(released.sightings ?? []),
        { seenAt: receivedAt, km: distanceKm },
      ]);
      const content: Comeback = {
        state: 'confirmed',
        attribution: null,
        reasons: [{ code: 'linkedByPerson', values: {} }],
        likeness: '1',
        daysSinceRelease: window.daysSinceRelease,
        kmSinceRelease: window.kmSinceRelease,
        insideWindow: window.state === 'running',
        note: command.note,
        ground: null,
        probability: null,
      };
      const identity = { complaintId: command.complaintId, jobId: command.jobId };
      const id = command.id ?? this.ids.next();
      // Two who link at once take turns, so that the second is told of the first.
      await tx.takeTurn(`comeback/${command.complaintId}/${command.jobId}`);
      await refuseSecondLink(tx, identity, id);
      return addRecord(tx.comebacks, 'comeback', { id, identity, content }, stamp);
    });
  }
}

/** A complaint and a job are linked once: by rule or by a person. What is to be said on it is said on that link. */
async function refuseSecondLink(tx: ShopTransaction, identity: ComebackIdentity, id: string): Promise<void> {
  const [link] = await tx.comebacks.all({ complaintId: identity.complaintId, jobId: identity.jobId });
  if (link === undefined || link.id === id) return;
  const { state } = link.content;
  throw new DomainError(
    'record.wrongState',
    `This complaint and this job are linked already, by comeback ${link.id}, which is ${state}. Say there what is to be said: POST /v1/comebacks/${link.id}/corrections confirms, refuses or attributes it.`,
    [{ pointer: '/jobId', rule: 'linkedOnce', detail: `linked by comeback ${link.id}, ${state}` }],
  );
}

export class ListComebacksUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  /** Links by complaint, by earlier job, by vehicle or by state; a customer's user sees those of their vehicles. */
  execute(
    caller: Caller,
    query: {
      readonly complaintId?: string | undefined;
      readonly jobId?: string | undefined;
      readonly vehicleId?: string | undefined;
      readonly state?: ComebackState | undefined;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<ListPage<ComebackIdentity, Comeback>> {
    const { complaintId, jobId, vehicleId, state, ...page } = query;
    return this.work.read(caller.shopId, async (tx) => {
      const own =
        caller.customerId === undefined
          ? undefined
          : await vehiclesOf(tx, caller.customerId, this.clock.now());
      const vehicles = vehicleId === undefined ? own : (own?.includes(vehicleId) ?? true) ? [vehicleId] : [];
      const complaints =
        vehicles === undefined
          ? undefined
          : (await tx.complaints.all({ vehicleId: vehicles }, query.asOf)).map(({ id }) => id);
      const wanted =
        complaintId === undefined
          ? complaints
          : (complaints?.includes(complaintId) ?? true)
            ? [complaintId]
            : [];
      return tx.comebacks.list({ where: { complaintId: wanted, jobId, state }, ...page });
    });
  }
}
