import { DomainError, invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { Recorded, Stamp } from '../ports/record-store.port.js';
import type { OfJob, WorkLine } from '../ports/records/jobs.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { partFittedAt, replacePart, type NextPart } from '../intake/fitted-parts.use-case.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, exactly, type ExpectedRevision } from '../recording/correct-record.js';
import { refuseFuture } from '../recording/happened-at.js';
import { takePartForLine } from '../parts/take-part-for-line.js';
import { requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { refuseUnconsented } from './estimates.use-case.js';
import { courseOf, isUnderWay, jobState } from './job-state.js';

export type WorkLineRecord = Recorded<OfJob, WorkLine>;

/** Plans or records work on a job. What is done must be covered by a consent. */
export class RecordWorkLineUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly jobId: string; readonly line: WorkLine },
  ): Promise<AddedRecord<OfJob, WorkLine>> {
    const stamp = stampOf(this.clock, caller);
    refuseWrongLine(command.line, stamp.at);
    return this.work.run(caller.shopId, async (tx) => {
      const job = await requiredRecord(tx.jobs, 'job', command.jobId);
      const id = command.id ?? this.ids.next();
      if ((await tx.workLines.find(id)) === undefined) await refuseWhenOver(tx, command.jobId);
      const added = await addRecord(
        tx.workLines,
        'work line',
        { id, identity: { jobId: command.jobId }, content: command.line },
        stamp,
      );
      if (!added.created || command.line.state !== 'done') return added;
      const record = await doneLine(tx, this.ids, added.record, job.identity.vehicleId, stamp);
      return { record, created: true };
    });
  }
}

/** Changes a line: done now, dropped, or recorded wrongly. */
export class CorrectWorkLineUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly line: WorkLine;
      readonly reason: string;
    },
  ): Promise<WorkLineRecord> {
    const stamp = stampOf(this.clock, caller, command.reason);
    refuseWrongLine(command.line, stamp.at);
    return this.work.run(caller.shopId, async (tx) => {
      const before = await requiredRecord(tx.workLines, 'work line', command.id);
      const job = await requiredRecord(tx.jobs, 'job', before.identity.jobId);
      if (before.content.state !== command.line.state) await refuseWhenOver(tx, before.identity.jobId);
      const record = await correctRecord(
        tx.workLines,
        'work line',
        { id: command.id, expected: command.expected, content: command.line },
        stamp,
      );
      const becomesDone = command.line.state === 'done' && before.content.state !== 'done';
      return becomesDone ? doneLine(tx, this.ids, record, job.identity.vehicleId, stamp) : record;
    });
  }
}

export class ListWorkLinesUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(caller: Caller, jobId: string, asOf?: string): Promise<readonly WorkLineRecord[]> {
    return this.work.read(caller.shopId, async (tx) => {
      await requiredRecord(tx.jobs, 'job', jobId, asOf);
      return tx.workLines.all({ jobId }, asOf);
    });
  }
}

/** Work that was done: consented, and where it put another part on the vehicle, the series of readings begins anew. */
async function doneLine(
  tx: ShopTransaction,
  ids: IdSource,
  record: WorkLineRecord,
  vehicleId: string,
  stamp: Stamp,
): Promise<WorkLineRecord> {
  const line = record.content;
  await refuseUnconsented(tx, record);
  const at = line.doneAt ?? stamp.at;
  const stocked = await takePartForLine(tx, ids, record, stamp);
  const old = await partFittedAt(
    tx,
    { vehicleId, componentType: line.componentType, position: line.position },
    at,
  );
  if (line.action !== 'replace' && line.action !== 'reBush') {
    return old === undefined || old.id === line.fittedPartId ? record : withPart(tx, record, old.id, stamp);
  }
  const change = {
    vehicleId,
    at,
    km: await distanceOf(tx, vehicleId, at),
    removalReason: line.action === 'reBush' ? 'overhauled' : 'replaced',
    next: {
      ...nextPart(line, old?.content.serial ?? null),
      ...(stocked === null ? {} : { partNumber: line.part?.partNumber ?? stocked.partNumber }),
      workLineId: record.id,
    },
  };
  const part = await replacePart(tx, ids, change, { at: stamp.at, by: stamp.by });
  return withPart(tx, record, part.id, stamp);
}

/** The part after the work: the own part after an overhaul, else the one that went in. */
function nextPart(line: WorkLine, oldSerial: string | null): Omit<NextPart, 'workLineId'> {
  const place = { componentType: line.componentType, position: line.position };
  if (line.action === 'reBush' || line.part === null) {
    return {
      ...place,
      condition: 'repairedOwnPart',
      serial: oldSerial,
      batch: null,
      supplier: line.part?.supplier ?? null,
      partNumber: null,
    };
  }
  const { condition, serial, batch, supplier, partNumber } = line.part;
  return { ...place, condition, serial, batch, supplier, partNumber };
}

function withPart(
  tx: ShopTransaction,
  record: WorkLineRecord,
  fittedPartId: string,
  stamp: Stamp,
): Promise<WorkLineRecord> {
  const change = {
    id: record.id,
    expected: exactly(record.revision),
    content: { ...record.content, fittedPartId },
  };
  return correctRecord(tx.workLines, 'work line', change, {
    at: stamp.at,
    by: stamp.by,
    reason: 'part of the work',
  });
}

/** Distance of the vehicle at the last reliable entry up to a moment. */
export async function distanceOf(tx: ShopTransaction, vehicleId: string, at: string): Promise<string | null> {
  const entries = await tx.odometerEntries.all({ vehicleId });
  const before = entries
    .filter(({ content }) => content.reliable && content.distanceKm !== null && content.readAt <= at)
    .sort((a, b) => a.content.readAt.localeCompare(b.content.readAt));
  return before.at(-1)?.content.distanceKm ?? null;
}

async function refuseWhenOver(tx: ShopTransaction, jobId: string): Promise<void> {
  const state = jobState(await courseOf(tx, jobId));
  if (!isUnderWay(state)) {
    throw new DomainError('record.wrongState', `The job is ${state}. More work on this van needs a new job.`);
  }
}

function refuseWrongLine(line: WorkLine, now: string): void {
  if (line.state === 'done') {
    if (line.doneAt === null) throw invalidInput('/doneAt', 'required', 'Say when the work was done.');
    if (line.technicianId === null) throw invalidInput('/technicianId', 'required', 'Say who did the work.');
    refuseFuture(line.doneAt, now, '/doneAt');
  }
  if (line.action === 'replace' && line.state === 'done' && line.part === null) {
    throw invalidInput('/part', 'required', 'A replacement needs the part that went in, with its condition.');
  }
  if (line.action !== 'adjustStop') return;
  if (line.protectedPurpose === 'toSetSwitch' || line.protectedPurpose === 'toSetIdle') {
    throw new DomainError(
      'work.stopNotForSwitch',
      'The plate stop is never used to set the idle switch or the idle speed: it uncovers the purge port and imitates a worn shaft. Set the switch at the switch.',
      [{ pointer: '/protectedPurpose', rule: 'stopNotForSwitch', detail: line.protectedPurpose }],
    );
  }
  if (line.protectedPurpose === null || (line.protectedReason ?? '').trim() === '') {
    throw new DomainError(
      'work.reasonNeeded',
      'The plate stop is a protected item. Say what it is adjusted for and why.',
      [
        {
          pointer: '/protectedReason',
          rule: 'required',
          detail: 'adjusting a protected item needs a purpose and a reason',
        },
      ],
    );
  }
}
