import { symptoms } from '@endfloat/catalogue';
import { invalidInput, notFound } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded, Stamp } from '../ports/record-store.port.js';
import type { Complaint } from '../ports/records/jobs.records.js';
import type { PersonalRecord } from '../ports/records/shop.records.js';
import type { OfVehicle } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { proposeComebacksFor, type ComebackRecord } from '../comeback/propose-comebacks.js';
import { addRecord } from '../recording/add-record.js';
import { againWhenTaken } from '../recording/again-when-taken.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { refuseFuture } from '../recording/happened-at.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import {
  mayKnowVehicle,
  ownerOf,
  referencedVehicle,
  vehiclesOf,
  visibleVehicle,
} from '../recording/vehicle-visibility.js';

export type ComplaintRecord = Recorded<OfVehicle, Complaint>;

/** What the desk, or a driver, enters; the words are kept apart as personal data. */
export type ComplaintEntry = Omit<Complaint, 'personalRecordId'> & { readonly words: string | null };

export interface ComplaintView {
  readonly record: ComplaintRecord;
  /** the customer's own words; null once they were erased */
  readonly words: string | null;
  /** earlier jobs it may be a comeback of: proposed here, confirmed or refused by a person */
  readonly comebacks: readonly ComebackRecord[];
}

const symptomIds = new Set(symptoms.map(({ id }) => id));

/** Symptoms are coded from the catalogue; a cause is never coded at intake. */
function refuseUnknownSymptoms(entry: ComplaintEntry): void {
  const unknown = Object.keys(entry.symptoms).find((id) => !symptomIds.has(id));
  if (unknown !== undefined) {
    throw invalidInput(
      `/symptoms/${unknown}`,
      'symptom',
      `"${unknown}" is no symptom of the catalogue. GET /v1/symptoms lists them; what fits none goes into the words.`,
    );
  }
}

/** Takes a complaint in the customer's words and proposes the earlier jobs it may be a comeback of. Never links silently. */
export class TakeComplaintUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id?: string | undefined;
      readonly vehicleId: string;
      readonly complaint: ComplaintEntry;
    },
  ): Promise<ComplaintView & { readonly created: boolean }> {
    const stamp = stampOf(this.clock, caller);
    const id = command.id ?? this.ids.next();
    const { words, ...content } = command.complaint;
    refuseUnknownSymptoms(command.complaint);
    refuseFuture(content.receivedAt, stamp.at, '/receivedAt');
    const take = async (tx: ShopTransaction): Promise<ComplaintView & { readonly created: boolean }> => {
      await referencedVehicle(tx, caller, command.vehicleId, stamp.at);
      await refuseForeignJob(tx, command.vehicleId, content.jobId);
      const known = await tx.complaints.find(id);
      const sameWords = known !== undefined && (await wordsOf(tx, caller, known)) === words;
      const personalRecordId = sameWords
        ? known.content.personalRecordId
        : words === null
          ? null
          : this.ids.next();
      const { record, created } = await addRecord(
        tx.complaints,
        'complaint',
        { id, identity: { vehicleId: command.vehicleId }, content: { ...content, personalRecordId } },
        stamp,
      );
      if (created) {
        if (personalRecordId !== null && words !== null)
          await keepWords(tx, record, personalRecordId, words, stamp);
        await proposeComebacksFor(tx, this.ids, record, stamp);
        await tx.announce({
          type: 'endfloat.complaint.taken.v1',
          subjectId: id,
          at: stamp.at,
          payload: { vehicleId: command.vehicleId },
        });
      }
      return { ...(await viewOf(tx, caller, record)), created };
    };
    // The id of the words differs from run to run, so of two equal complaints at once the later one looks again.
    return againWhenTaken(() => this.work.run(caller.shopId, take));
  }
}

/** Corrects a complaint: symptoms coded wrongly, a question asked later, the job it is dealt with in. */
export class CorrectComplaintUseCase {
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
      readonly complaint: ComplaintEntry;
      readonly reason: string;
    },
  ): Promise<ComplaintView> {
    const stamp = stampOf(this.clock, caller, command.reason);
    const { words, ...content } = command.complaint;
    refuseUnknownSymptoms(command.complaint);
    refuseFuture(content.receivedAt, stamp.at, '/receivedAt');
    return this.work.run(caller.shopId, async (tx) => {
      const before = await requiredRecord(tx.complaints, 'complaint', command.id);
      await refuseForeignJob(tx, before.identity.vehicleId, content.jobId);
      const sameWords = (await wordsOf(tx, caller, before)) === words;
      const personalRecordId = sameWords
        ? before.content.personalRecordId
        : words === null
          ? null
          : this.ids.next();
      const change = {
        id: command.id,
        expected: command.expected,
        content: { ...content, personalRecordId },
      };
      const record = await correctRecord(tx.complaints, 'complaint', change, stamp);
      if (!sameWords && personalRecordId !== null && words !== null)
        await keepWords(tx, record, personalRecordId, words, stamp);
      await proposeComebacksFor(tx, this.ids, record, stamp);
      return viewOf(tx, caller, record);
    });
  }
}

export class ShowComplaintUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    query: { readonly id: string; readonly asOf?: string | undefined },
  ): Promise<ComplaintView> {
    return this.work.read(caller.shopId, async (tx) => {
      const record = await requiredRecord(tx.complaints, 'complaint', query.id, query.asOf);
      if (!(await mayKnowVehicle(tx, caller, record.identity.vehicleId, this.clock.now())))
        throw notFound('complaint');
      return viewOf(tx, caller, record, query.asOf);
    });
  }

  list(
    caller: Caller,
    query: {
      readonly vehicleId?: string | undefined;
      readonly jobId?: string | undefined;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<{
    readonly items: readonly { readonly record: ComplaintRecord; readonly words: string | null }[];
    readonly next?: ListPosition | undefined;
  }> {
    const { vehicleId, jobId, ...page } = query;
    const now = this.clock.now();
    return this.work.read(caller.shopId, async (tx) => {
      if (vehicleId !== undefined) await visibleVehicle(tx, caller, vehicleId, now);
      const own = caller.customerId === undefined ? undefined : await vehiclesOf(tx, caller.customerId, now);
      const found: ListPage<OfVehicle, Complaint> = await tx.complaints.list({
        where: { vehicleId: vehicleId ?? own, jobId },
        ...page,
      });
      const personal = await tx.personal.findMany(
        found.items.flatMap(({ content }) => content.personalRecordId ?? []),
      );
      const byId = new Map(personal.map((each) => [each.id, each]));
      const items = found.items.map((record) => ({
        record,
        words: readableWords(caller, byId.get(record.content.personalRecordId ?? '')),
      }));
      return { items, next: found.next };
    });
  }
}

async function refuseForeignJob(tx: ShopTransaction, vehicleId: string, jobId: string | null): Promise<void> {
  if (jobId === null) return;
  const job = await referencedRecord(tx.jobs, 'job', jobId, '/jobId');
  if (job.identity.vehicleId !== vehicleId)
    throw invalidInput('/jobId', 'sameVehicle', 'This job is about another vehicle.');
}

/**
 * A customer's user reads the words of their own customer only, not those of an earlier owner of the vehicle. Who only
 * writes programs for the shop reads nobody's words.
 */
async function wordsOf(tx: ShopTransaction, caller: Caller, record: ComplaintRecord): Promise<string | null> {
  const id = record.content.personalRecordId;
  if (id === null) return null;
  return readableWords(caller, (await tx.personal.findMany([id]))[0]);
}

function readableWords(caller: Caller, personal: PersonalRecord | undefined): string | null {
  if (caller.customerId !== undefined && personal?.customerId !== caller.customerId) return null;
  if (caller.roles.every((role) => role === 'developer')) return null;
  return personal?.content?.['words'] ?? null;
}

async function keepWords(
  tx: ShopTransaction,
  record: ComplaintRecord,
  id: string,
  words: string,
  stamp: Stamp,
): Promise<void> {
  const owner = await ownerOf(tx, record.identity.vehicleId, stamp.at);
  await tx.personal.add(
    {
      id,
      customerId: owner?.customerId ?? null,
      kind: 'complaintWords',
      content: { words },
      recordedAt: stamp.at,
    },
    stamp.by,
  );
}

async function viewOf(
  tx: ShopTransaction,
  caller: Caller,
  record: ComplaintRecord,
  asOf?: string,
): Promise<ComplaintView> {
  return {
    record,
    words: await wordsOf(tx, caller, record),
    comebacks: await tx.comebacks.all({ complaintId: record.id }, asOf),
  };
}
