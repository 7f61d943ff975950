import { DomainError, invalidInput, notFound } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded, Stamp } from '../ports/record-store.port.js';
import type { FittedPart, OfVehicle } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, exactly, type ExpectedRevision } from '../recording/correct-record.js';
import { refuseFuture } from '../recording/happened-at.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { mayKnowVehicle, vehiclesOf, visibleVehicle } from '../recording/vehicle-visibility.js';

export type FittedPartRecord = Recorded<OfVehicle, FittedPart>;

/** The part that is fitted at a place of a vehicle at a moment, if the shop knows one. */
export async function partFittedAt(
  tx: ShopTransaction,
  place: { readonly vehicleId: string; readonly componentType: string; readonly position: string },
  at: string,
): Promise<FittedPartRecord | undefined> {
  const parts = await tx.fittedParts.all(place);
  return parts
    .filter(
      ({ content }) =>
        (content.fittedAt ?? '') <= at && (content.removedAt === null || content.removedAt > at),
    )
    .at(-1);
}

/** A part about to be fitted; when and instead of what is known from the work. */
export type NextPart = Omit<
  FittedPart,
  'fittedAt' | 'fittedKm' | 'removedAt' | 'removedKm' | 'removalReason' | 'replacesPartId'
>;

/**
 * Ends the part at a place and begins the next: the old series of readings has ended, a new one begins. Both are
 * written in the transaction of the work they belong to.
 */
export async function replacePart(
  tx: ShopTransaction,
  ids: IdSource,
  change: {
    readonly vehicleId: string;
    readonly at: string;
    readonly km: string | null;
    readonly removalReason: string;
    readonly next: NextPart;
  },
  stamp: Stamp,
): Promise<FittedPartRecord> {
  const { componentType, position } = change.next;
  const old = await partFittedAt(tx, { vehicleId: change.vehicleId, componentType, position }, change.at);
  if (old !== undefined) {
    await correctRecord(
      tx.fittedParts,
      'part',
      {
        id: old.id,
        expected: exactly(old.revision),
        content: {
          ...old.content,
          removedAt: change.at,
          removedKm: change.km,
          removalReason: change.removalReason,
        },
      },
      { ...stamp, reason: change.removalReason },
    );
  }
  const content: FittedPart = {
    ...change.next,
    fittedAt: change.at,
    fittedKm: change.km,
    removedAt: null,
    removedKm: null,
    removalReason: null,
    replacesPartId: old?.id ?? null,
  };
  const { record } = await addRecord(
    tx.fittedParts,
    'part',
    { id: ids.next(), identity: { vehicleId: change.vehicleId }, content },
    stamp,
  );
  return record;
}

/** What a person enters about a part; which part it replaced and by which work is derived from the work. */
export type FittedPartEntry = Omit<FittedPart, 'replacesPartId' | 'workLineId'>;

export interface RecordFittedPartCommand {
  readonly id?: string | undefined;
  readonly vehicleId: string;
  readonly part: FittedPartEntry;
}

/** Records a part that is, or was, on a vehicle: the original one, or one fitted before the shop kept records. */
export class RecordFittedPartUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(caller: Caller, command: RecordFittedPartCommand): Promise<AddedRecord<OfVehicle, FittedPart>> {
    const stamp = stampOf(this.clock, caller);
    refuseWrongOrder(command.part, stamp.at);
    return this.work.run(caller.shopId, async (tx) => {
      await referencedRecord(tx.vehicles, 'vehicle', command.vehicleId, '/vehicleId');
      await tx.takeTurn(command.vehicleId);
      await refuseTakenPlace(tx, { id: command.id, vehicleId: command.vehicleId }, command.part);
      return addRecord(
        tx.fittedParts,
        'part',
        {
          id: command.id ?? this.ids.next(),
          identity: { vehicleId: command.vehicleId },
          content: { ...command.part, replacesPartId: null, workLineId: null },
        },
        stamp,
      );
    });
  }
}

/** Corrects what is recorded about a fitted part, its removal included. */
export class CorrectFittedPartUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly part: FittedPartEntry;
      readonly reason: string;
    },
  ): Promise<FittedPartRecord> {
    const stamp = stampOf(this.clock, caller, command.reason);
    refuseWrongOrder(command.part, stamp.at);
    return this.work.run(caller.shopId, async (tx) => {
      const { identity } = await requiredRecord(tx.fittedParts, 'part', command.id);
      await tx.takeTurn(identity.vehicleId);
      await refuseTakenPlace(tx, { id: command.id, vehicleId: identity.vehicleId }, command.part);
      const content = (now: FittedPart) => ({ ...now, ...command.part });
      const change = { id: command.id, expected: command.expected, content };
      return correctRecord(tx.fittedParts, 'part', change, stamp);
    });
  }
}

export class ListFittedPartsUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  /** Parts of one vehicle, of one kind, or of one batch ("which vehicles got this batch"). */
  execute(
    caller: Caller,
    query: {
      readonly vehicleId?: string | undefined;
      readonly componentType?: string | undefined;
      readonly batch?: string | undefined;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<ListPage<OfVehicle, FittedPart>> {
    const now = this.clock.now();
    const { vehicleId, componentType, batch, asOf, after, limit } = query;
    return this.work.read(caller.shopId, async (tx) => {
      if (vehicleId !== undefined) await visibleVehicle(tx, caller, vehicleId, now);
      const own = caller.customerId === undefined ? undefined : await vehiclesOf(tx, caller.customerId, now);
      return tx.fittedParts.list({
        where: { vehicleId: vehicleId ?? own, componentType, batch },
        asOf,
        after,
        limit,
      });
    });
  }
}

export class ShowFittedPartUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  /** One part, now or as it was known at a moment. */
  execute(
    caller: Caller,
    query: { readonly id: string; readonly asOf?: string | undefined },
  ): Promise<FittedPartRecord> {
    return this.work.read(caller.shopId, async (tx) => {
      const part = await requiredRecord(tx.fittedParts, 'part', query.id, query.asOf);
      if (!(await mayKnowVehicle(tx, caller, part.identity.vehicleId, this.clock.now())))
        throw notFound('part');
      return part;
    });
  }
}

function refuseWrongOrder(part: FittedPartEntry, now: string): void {
  if (part.removedAt !== null && part.fittedAt !== null && part.removedAt < part.fittedAt) {
    throw invalidInput('/removedAt', 'order', 'A part cannot be removed before it was fitted.');
  }
  for (const member of ['fittedAt', 'removedAt'] as const) {
    const at = part[member];
    if (at !== null) refuseFuture(at, now, `/${member}`);
  }
}

/** One part at one place at a time; whoever calls it holds the turn of the vehicle. */
async function refuseTakenPlace(
  tx: ShopTransaction,
  own: { readonly id: string | undefined; readonly vehicleId: string },
  part: FittedPartEntry,
): Promise<void> {
  const { componentType, position } = part;
  const others = await tx.fittedParts.all({ vehicleId: own.vehicleId, componentType, position });
  const clash = others.find((other) => other.id !== own.id && overlap(other.content, part));
  if (clash === undefined) return;
  throw new DomainError(
    'part.alreadyFitted',
    `Another ${componentType} is recorded at "${position}" for that time. Record its removal first, or replace it through a work line.`,
    [{ pointer: '/fittedAt', rule: 'onePartAPlace', detail: `part ${clash.id}` }],
  );
}

/** A life of zero, from fitting to removal at the same moment, overlaps nothing. */
function overlap(one: FittedPartEntry, other: FittedPartEntry): boolean {
  const end = (part: FittedPartEntry) => part.removedAt ?? '9999';
  return (one.fittedAt ?? '') < end(other) && (other.fittedAt ?? '') < end(one);
}
