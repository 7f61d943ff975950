import { proposedSegment } from '@endfloat/wear';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded, Stamp } from '../ports/record-store.port.js';
import type { OdometerEntry, OdometerSegment, OfVehicle } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { refuseFuture } from '../recording/happened-at.js';
import { requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { mayKnowVehicle, visibleVehicle } from '../recording/vehicle-visibility.js';
import { notFound } from '../errors/domain.errors.js';
import {
  examinedEntry,
  isBackFilled,
  odometerGroundOf,
  reexamineFrom,
  type OdometerEntryRecord,
  type OdometerShown,
} from './examine-odometer.js';

export type OdometerSegmentRecord = Recorded<OfVehicle, OdometerSegment>;
export type { OdometerEntryRecord, OdometerShown };

/** The first entry of a vehicle begins its first segment: what it shows is taken for the distance driven. */
async function beginFirstSegment(
  tx: ShopTransaction,
  ids: IdSource,
  vehicleId: string,
  shown: OdometerShown,
  stamp: Stamp,
): Promise<void> {
  const segments = await tx.odometerSegments.all({ vehicleId });
  if (segments.some(({ content }) => (content.unit === 'h') === (shown.unit === 'h'))) return;
  const first = proposedSegment({ cause: 'firstSeen', entry: shown, segments: [], last: null });
  if (first.kind !== 'proposed') return;
  await tx.odometerSegments.add(ids.next(), { vehicleId }, { ...first.segment, note: null }, stamp);
}

/** Records what an odometer showed. Also called by other use cases inside their own transaction. */
export async function recordOdometerEntry(
  tx: ShopTransaction,
  ids: IdSource,
  command: { readonly id?: string | undefined; readonly vehicleId: string; readonly entry: OdometerShown },
  stamp: Stamp,
): Promise<AddedRecord<OfVehicle, OdometerEntry>> {
  const id = command.id ?? ids.next();
  const { vehicleId, entry } = command;
  await tx.takeTurn(vehicleId);
  // Sent again it is the first one, whatever was found about it since.
  const [first] = await tx.odometerEntries.history(id);
  if (first !== undefined) {
    const content = { ...first.content, ...entry };
    return addRecord(tx.odometerEntries, 'odometer entry', { id, identity: { vehicleId }, content }, stamp);
  }
  await beginFirstSegment(tx, ids, vehicleId, entry, stamp);
  const ground = await odometerGroundOf(tx, vehicleId);
  const content = examinedEntry(entry, ground, { id, looksAhead: true, settledReliable: null });
  const record = { id, identity: { vehicleId }, content };
  const added = await addRecord(tx.odometerEntries, 'odometer entry', record, stamp);
  const reason = 'an entry with an earlier date came in';
  await reexamineFrom(tx, vehicleId, entry.readAt, { ...stamp, reason }, id);
  return added;
}

export class RecordOdometerEntryUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly vehicleId: string; readonly entry: OdometerShown },
  ): Promise<AddedRecord<OfVehicle, OdometerEntry>> {
    const stamp = stampOf(this.clock, caller);
    refuseFuture(command.entry.readAt, stamp.at, '/readAt');
    return this.work.run(caller.shopId, async (tx) => {
      await visibleVehicle(tx, caller, command.vehicleId, stamp.at);
      return recordOdometerEntry(tx, this.ids, command, stamp);
    });
  }
}

/**
 * Corrects an odometer entry, or settles a contradiction: `reliable` is then what the person says, and the warnings
 * stay beside it.
 */
export class CorrectOdometerEntryUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly entry: OdometerShown;
      readonly reliable: boolean | null;
      readonly reason: string;
    },
  ): Promise<OdometerEntryRecord> {
    const stamp = stampOf(this.clock, caller, command.reason);
    const { id, entry, reliable } = command;
    refuseFuture(entry.readAt, stamp.at, '/readAt');
    return this.work.run(caller.shopId, async (tx) => {
      const { identity, content: before } = await requiredRecord(
        tx.odometerEntries,
        'odometer entry',
        command.id,
      );
      const { vehicleId } = identity;
      await tx.takeTurn(vehicleId);
      const ground = await odometerGroundOf(tx, vehicleId);
      const found = examinedEntry(entry, ground, { id, looksAhead: true, settledReliable: reliable });
      const isMoved = entry.readAt !== before.readAt;
      const content =
        isMoved || isBackFilled(before)
          ? found
          : { ...found, warnings: found.warnings.filter(({ code }) => code !== 'backFilled') };
      const change = { id, expected: command.expected, content };
      const record = await correctRecord(tx.odometerEntries, 'odometer entry', change, stamp);
      const from = entry.readAt < before.readAt ? entry.readAt : before.readAt;
      const reason = 'an entry with an earlier date was corrected';
      await reexamineFrom(tx, vehicleId, from, { ...stamp, reason }, id);
      return record;
    });
  }
}

export class ListOdometerEntriesUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    query: {
      readonly vehicleId: string;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<ListPage<OfVehicle, OdometerEntry>> {
    const { vehicleId, ...page } = query;
    return this.work.read(caller.shopId, async (tx) => {
      await visibleVehicle(tx, caller, vehicleId, this.clock.now(), query.asOf);
      return tx.odometerEntries.list({ where: { vehicleId }, ...page });
    });
  }

  /** One entry, now or as it was known at a moment. */
  one(caller: Caller, id: string, asOf?: string): Promise<OdometerEntryRecord> {
    return this.work.read(caller.shopId, async (tx) => {
      const entry = await requiredRecord(tx.odometerEntries, 'odometer entry', id, asOf);
      if (!(await mayKnowVehicle(tx, caller, entry.identity.vehicleId, this.clock.now())))
        throw notFound('odometer entry');
      return entry;
    });
  }

  segments(caller: Caller, vehicleId: string, asOf?: string): Promise<readonly OdometerSegmentRecord[]> {
    return this.work.read(caller.shopId, async (tx) => {
      await visibleVehicle(tx, caller, vehicleId, this.clock.now(), asOf);
      return tx.odometerSegments.all({ vehicleId }, asOf);
    });
  }
}
