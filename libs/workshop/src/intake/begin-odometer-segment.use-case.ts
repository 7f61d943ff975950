import { proposedSegment, type OdometerSegmentCause, type OdometerUnit } from '@endfloat/wear';
import { invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { OdometerSegment, OfVehicle } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { refuseFuture } from '../recording/happened-at.js';
import { stampOf } from '../recording/stamp.js';
import { visibleVehicle } from '../recording/vehicle-visibility.js';
import { reexamineFrom } from './examine-odometer.js';

export interface BeginSegmentCommand {
  readonly id?: string | undefined;
  readonly vehicleId: string;
  readonly cause: OdometerSegmentCause;
  readonly startedAt: string;
  /** what the new display showed at the change */
  readonly shown: string;
  readonly unit: OdometerUnit;
  readonly digits: number | null;
  /** distance at the change where it is known better than from the last entry, in km */
  readonly distanceKm: string | null;
  readonly note: string | null;
}

/** A rollover, a new display or another unit begins a new segment; entries from then on are examined again. */
export class BeginOdometerSegmentUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(caller: Caller, command: BeginSegmentCommand): Promise<AddedRecord<OfVehicle, OdometerSegment>> {
    const stamp = stampOf(this.clock, caller);
    const { vehicleId } = command;
    refuseFuture(command.startedAt, stamp.at, '/startedAt');
    return this.work.run(caller.shopId, async (tx) => {
      await visibleVehicle(tx, caller, vehicleId, stamp.at);
      await tx.takeTurn(vehicleId);
      // Sent again it is proposed from what was before it.
      const segments = (await tx.odometerSegments.all({ vehicleId })).filter(({ id }) => id !== command.id);
      const earlier = (await tx.odometerEntries.all({ vehicleId }))
        .map(({ content }) => content)
        .filter(
          (entry) =>
            entry.readAt < command.startedAt &&
            entry.reliable &&
            (entry.unit === 'h') === (command.unit === 'h'),
        )
        .sort((a, b) => a.readAt.localeCompare(b.readAt));
      const proposed = proposedSegment({
        cause: command.cause,
        entry: { shown: command.shown, unit: command.unit, readAt: command.startedAt },
        segments: segments.map(({ content }) => content),
        last: earlier.at(-1) ?? null,
        digits: command.digits,
        distanceAtChangeKm: command.distanceKm,
      });
      if (proposed.kind !== 'proposed') {
        throw invalidInput(
          '/shown',
          proposed.reason,
          'There is nothing recorded before the change to go on from. Record an earlier odometer entry first, or give the distance at the change.',
        );
      }
      const content = { ...proposed.segment, note: command.note };
      const added = await addRecord(
        tx.odometerSegments,
        'odometer segment',
        { id: command.id ?? this.ids.next(), identity: { vehicleId }, content },
        stamp,
      );
      const reason = `odometer segment: ${command.cause}`;
      if (added.created) await reexamineFrom(tx, vehicleId, command.startedAt, { ...stamp, reason });
      return added;
    });
  }
}
