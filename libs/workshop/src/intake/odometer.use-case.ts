import { examineOdometerEntry, proposedSegment, type OdometerUnit } from '@endfloat/wear';
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

export type OdometerEntryRecord = Recorded<OfVehicle, OdometerEntry>;
export type OdometerSegmentRecord = Recorded<OfVehicle, OdometerSegment>;

/** Digits as displayed; the distance is derived. */
export interface OdometerShown {
  readonly shown: string;
  readonly unit: OdometerUnit;
  readonly readAt: string;
  readonly readBy: string | null;
  readonly note: string | null;
}

/** Examines an entry among its neighbours: what it means as a distance, and what looks odd. Nothing is ever refused. */
export async function examinedEntry(
  tx: ShopTransaction,
  vehicleId: string,
  entryId: string,
  shown: OdometerShown,
): Promise<OdometerEntry> {
  const [segments, entries, vehicle] = [
    await tx.odometerSegments.all({ vehicleId }),
    await tx.odometerEntries.all({ vehicleId }),
    await tx.vehicles.find(vehicleId),
  ];
  const neighbours = entries.filter(({ id }) => id !== entryId).map(({ content }) => content);
  const expected = vehicle?.content.expectedKmPerYear ?? null;
  const found = examineOdometerEntry(
    shown,
    neighbours,
    segments.map(({ content }) => content),
    expected,
  );
  return {
    ...shown,
    distanceKm: found.distanceKm,
    operatingHours: found.operatingHours,
    reliable: found.reliable,
    warnings: found.warnings.map(({ code, values, proposals }) => ({
      code,
      pointer: '/shown',
      values,
      proposals,
    })),
  };
}

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
  const known = await tx.odometerEntries.find(id);
  if (known === undefined) await beginFirstSegment(tx, ids, command.vehicleId, command.entry, stamp);
  const content =
    known === undefined
      ? await examinedEntry(tx, command.vehicleId, id, command.entry)
      : { ...known.content, ...command.entry };
  return addRecord(
    tx.odometerEntries,
    'odometer entry',
    { id, identity: { vehicleId: command.vehicleId }, content },
    stamp,
  );
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
    refuseFuture(command.entry.readAt, stamp.at, '/readAt');
    return this.work.run(caller.shopId, async (tx) => {
      const before = await requiredRecord(tx.odometerEntries, 'odometer entry', command.id);
      const { vehicleId } = before.identity;
      const content = await examinedEntry(tx, vehicleId, command.id, command.entry);
      const settled = command.reliable === null ? content : { ...content, reliable: command.reliable };
      return correctRecord(
        tx.odometerEntries,
        'odometer entry',
        { id: command.id, expected: command.expected, content: settled },
        stamp,
      );
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
