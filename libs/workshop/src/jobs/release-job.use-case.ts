import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { Recorded } from '../ports/record-store.port.js';
import type { Complaint, OfJob, Release, UnsafeHandover } from '../ports/records/jobs.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { againWhenTaken } from '../recording/again-when-taken.js';
import { refuseFuture } from '../recording/happened-at.js';
import { keptName } from '../recording/kept-name.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { ownerOf } from '../recording/vehicle-visibility.js';
import { settingsOf } from '../shop/open-shop.use-case.js';
import { openDangerousFindings } from './dangerous-findings.js';
import { courseOf, isUnderWay, jobState } from './job-state.js';
import { proofOf } from './record-proof.use-case.js';
import { watchWindowTerms } from './watch-window-terms.js';
import { distanceOf } from './work-lines.use-case.js';

export type ReleaseRecord = Recorded<OfJob, Release>;
export type UnsafeHandoverRecord = Recorded<OfJob, UnsafeHandover>;

export interface ReleaseJobCommand {
  readonly id?: string | undefined;
  readonly jobId: string;
  readonly releasedAt: string;
  readonly releasedBy: string;
  readonly statement: string;
}

/**
 * Releases a job: the signed statement that the van may leave, which starts the watch window. Refused without proof,
 * with work still planned, and always with a dangerous finding open.
 */
export class ReleaseJobUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(caller: Caller, command: ReleaseJobCommand): Promise<AddedRecord<OfJob, Release>> {
    const stamp = stampOf(this.clock, caller);
    refuseFuture(command.releasedAt, stamp.at, '/releasedAt');
    return this.work.run(caller.shopId, async (tx) => {
      const job = await requiredRecord(tx.jobs, 'job', command.jobId);
      const { vehicleId } = job.identity;
      await referencedRecord(tx.users, 'user', command.releasedBy, '/releasedBy');
      const before = (await tx.releases.all({ jobId: command.jobId }))[0];
      if (before === undefined) await refuseUnready(tx, command, job.content.openedAt, vehicleId);
      else if (before.id !== command.id) throw alreadyReleased(before.content.releasedAt);
      const settings = await settingsOf(tx);
      const content: Release = {
        releasedAt: command.releasedAt,
        ...(before === undefined
          ? watchWindowTerms(settings, await complaintsOf(tx, vehicleId, command.jobId))
          : { windowDays: before.content.windowDays, windowKm: before.content.windowKm }),
        distanceKm: before?.content.distanceKm ?? (await distanceOf(tx, vehicleId, command.releasedAt)),
        releasedBy: command.releasedBy,
        statement: command.statement,
      };
      const added = await addOrRefuse(tx, command.id ?? this.ids.next(), command.jobId, content, stamp);
      if (added.created)
        await tx.announce({
          type: 'endfloat.job.released.v1',
          subjectId: command.jobId,
          at: stamp.at,
          payload: { vehicleId },
        });
      return added;
    });
  }
}

async function complaintsOf(
  tx: ShopTransaction,
  vehicleId: string,
  jobId: string,
): Promise<readonly Complaint[]> {
  const complaints = await tx.complaints.all({ vehicleId });
  return complaints.map(({ content }) => content).filter((complaint) => complaint.jobId === jobId);
}

function alreadyReleased(at: string): DomainError {
  return new DomainError('release.alreadyReleased', `The job was released at ${at}. A job is released once.`);
}

/** Two who release one job at once: the database lets one through. */
async function addOrRefuse(
  tx: ShopTransaction,
  id: string,
  jobId: string,
  content: Release,
  stamp: { readonly at: string; readonly by: string },
): Promise<AddedRecord<OfJob, Release>> {
  const outcome = await tx.releases.add(id, { jobId }, content, stamp);
  const record = await tx.releases.find(id);
  if (outcome === 'otherContent' || record === undefined) {
    const other = (await tx.releases.all({ jobId }))[0];
    throw alreadyReleased(other?.content.releasedAt ?? stamp.at);
  }
  return { record, created: outcome === 'added' };
}

async function refuseUnready(
  tx: ShopTransaction,
  command: ReleaseJobCommand,
  openedAt: string,
  vehicleId: string,
): Promise<void> {
  const state = jobState(await courseOf(tx, command.jobId));
  if (!isUnderWay(state))
    throw new DomainError('record.wrongState', `The job is ${state}; it cannot be released.`);
  if (command.releasedAt < openedAt)
    throw invalidInput('/releasedAt', 'order', 'A job cannot be released before it was opened.');
  const findings = await openDangerousFindings(tx, vehicleId);
  if (findings.length > 0) {
    throw new DomainError(
      'release.dangerousFinding',
      'A dangerous finding is open, so the van may not be released to the road. Repair it and record the as-left result, or record an unrepaired handover with the warning given.',
      findings.map(({ checkId, limitId }) => ({
        pointer: '',
        rule: 'dangerousFinding',
        detail: `${checkId}: outside ${limitId}`,
      })),
    );
  }
  const proof = await proofOf(tx, command.jobId);
  const planned = (await tx.workLines.all({ jobId: command.jobId })).filter(
    ({ content }) => content.state === 'planned',
  );
  const faults = [
    ...proof.missing.map(({ point, title, why }) => ({
      pointer: '',
      rule: why,
      detail: `${point}: ${title}`,
    })),
    ...planned.map(({ id, content }) => ({
      pointer: '',
      rule: 'workOpen',
      detail: `${id}: ${content.action} is planned and neither done nor dropped`,
    })),
  ];
  if (faults.length > 0) {
    throw new DomainError(
      'release.proofIncomplete',
      'The proof of the repair is not complete. A replacement is no proof; the points below are still wanted.',
      faults,
    );
  }
}

export interface HandOverUnrepairedCommand {
  readonly id?: string | undefined;
  readonly jobId: string;
  readonly handedOverAt: string;
  /** to whom; personal data */
  readonly name: string;
  readonly warningGiven: string;
}

/**
 * Hands a van over unrepaired, not for the road, with the warning given: the only way out for a dangerous finding that
 * is not repaired. It starts no watch window and is no proof.
 */
export class HandOverUnrepairedUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(caller: Caller, command: HandOverUnrepairedCommand): Promise<AddedRecord<OfJob, UnsafeHandover>> {
    const stamp = stampOf(this.clock, caller);
    refuseFuture(command.handedOverAt, stamp.at, '/handedOverAt');
    const id = command.id ?? this.ids.next();
    const handOver = async (tx: ShopTransaction): Promise<AddedRecord<OfJob, UnsafeHandover>> => {
      const job = await requiredRecord(tx.jobs, 'job', command.jobId);
      const { vehicleId } = job.identity;
      const known = await tx.unsafeHandovers.find(id);
      if (known === undefined) {
        const state = jobState(await courseOf(tx, command.jobId));
        if (!isUnderWay(state))
          throw new DomainError('record.wrongState', `The job is ${state}; the van has been handed over.`);
      }
      const findings =
        known?.content.dangerousFindings ??
        (await openDangerousFindings(tx, vehicleId)).map(({ checkId, limitId }) => `${checkId}: ${limitId}`);
      if (findings.length === 0) {
        throw new DomainError(
          'record.wrongState',
          'No dangerous finding is open on this van. Release the job instead, once its proof is complete.',
        );
      }
      const isSameName =
        known !== undefined && (await keptName(tx, known.content.personalRecordId)) === command.name;
      const personalRecordId = (isSameName ? known.content.personalRecordId : null) ?? this.ids.next();
      const content: UnsafeHandover = {
        handedOverAt: command.handedOverAt,
        personalRecordId,
        dangerousFindings: findings,
        warningGiven: command.warningGiven,
      };
      const added = await addRecord(
        tx.unsafeHandovers,
        'handover',
        { id, identity: { jobId: command.jobId }, content },
        stamp,
      );
      if (added.created) {
        const owner = await ownerOf(tx, vehicleId, stamp.at);
        const personal = {
          id: personalRecordId,
          customerId: owner?.customerId ?? null,
          kind: 'handoverName' as const,
          content: { name: command.name },
        };
        await tx.personal.add({ ...personal, recordedAt: stamp.at }, stamp.by);
        await tx.announce({
          type: 'endfloat.vehicle.handedOverUnrepaired.v1',
          subjectId: vehicleId,
          at: stamp.at,
          payload: { jobId: command.jobId },
        });
      }
      return added;
    };
    return againWhenTaken(() => this.work.run(caller.shopId, handOver));
  }
}
