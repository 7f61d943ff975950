import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { Recorded } from '../ports/record-store.port.js';
import type { OfVehicle, VehicleOwnership } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { refuseFuture } from '../recording/happened-at.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';

export type OwnershipRecord = Recorded<OfVehicle, VehicleOwnership>;

/**
 * Records that a vehicle has another owner from a moment on. From then on the earlier owner's users no longer see it;
 * the new owner's see the vehicle with its whole technical history, without the earlier owner's personal data.
 */
export class TransferVehicleUseCase {
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
      readonly customerId: string;
      readonly fromAt: string;
    },
  ): Promise<AddedRecord<OfVehicle, VehicleOwnership>> {
    const stamp = stampOf(this.clock, caller);
    refuseFuture(command.fromAt, stamp.at, '/fromAt');
    return this.work.run(caller.shopId, async (tx) => {
      await requiredRecord(tx.vehicles, 'vehicle', command.vehicleId);
      await referencedRecord(tx.customers, 'customer', command.customerId, '/customerId');
      return addRecord(
        tx.ownerships,
        'ownership',
        {
          id: command.id ?? this.ids.next(),
          identity: { vehicleId: command.vehicleId },
          content: { customerId: command.customerId, fromAt: command.fromAt },
        },
        stamp,
      );
    });
  }
}

/** Everybody who owned a vehicle, latest first. */
export class ListOwnershipsUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(caller: Caller, vehicleId: string, asOf?: string): Promise<readonly OwnershipRecord[]> {
    return this.work.read(caller.shopId, async (tx) => {
      await requiredRecord(tx.vehicles, 'vehicle', vehicleId);
      return tx.ownerships.all({ vehicleId }, asOf);
    });
  }
}
