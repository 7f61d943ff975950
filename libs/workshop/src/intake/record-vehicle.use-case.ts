import { examineVehicleNumber, plateKey } from '@endfloat/catalogue';
import { invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { Recorded } from '../ports/record-store.port.js';
import type { NoReferences } from '../ports/records/shop.records.js';
import type { Vehicle, Warning } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord } from '../recording/add-record.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { referencedRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';

/** What a person enters about a vehicle; what is derived for search is added here. */
export type VehicleEntry = Omit<Vehicle, 'numberSearch' | 'plateSearch'>;

export interface RecordVehicleCommand {
  readonly id?: string | undefined;
  readonly vehicle: VehicleEntry;
  /** owner from the moment the vehicle is recorded, or from `ownedFrom` */
  readonly customerId: string;
  readonly ownedFrom?: string | undefined;
}

export interface VehicleOutcome {
  readonly record: Recorded<NoReferences, Vehicle>;
  readonly created: boolean;
  /** oddities of the number or plate; never a reason to refuse a vehicle */
  readonly warnings: readonly Warning[];
}

/** Records a vehicle with its owner. */
export class RecordVehicleUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(caller: Caller, command: RecordVehicleCommand): Promise<VehicleOutcome> {
    const id = command.id ?? this.ids.next();
    const stamp = stampOf(this.clock, caller);
    const { vehicle, warnings } = examine(command.vehicle);
    return this.work.run(caller.shopId, async (tx) => {
      await referencedRecord(tx.customers, 'customer', command.customerId, '/customerId');
      const added = await addRecord(tx.vehicles, 'vehicle', { id, identity: {}, content: vehicle }, stamp);
      if (added.created) {
        const ownership = { customerId: command.customerId, fromAt: command.ownedFrom ?? stamp.at };
        await addRecord(
          tx.ownerships,
          'ownership',
          { id: this.ids.next(), identity: { vehicleId: id }, content: ownership },
          stamp,
        );
        await tx.announce({
          type: 'endfloat.vehicle.recorded.v1',
          subjectId: id,
          at: stamp.at,
          payload: { customerId: command.customerId },
        });
      }
      return { ...added, warnings: [...warnings, ...(await duplicates(tx, id, vehicle))] };
    });
  }
}

export interface CorrectVehicleCommand {
  readonly id: string;
  readonly expected: ExpectedRevision;
  readonly vehicle: VehicleEntry;
  readonly reason: string;
}

/** Corrects what is recorded about a vehicle: a re-stamped frame, a new plate, a typing error. The old stays readable. */
export class CorrectVehicleUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, command: CorrectVehicleCommand): Promise<VehicleOutcome> {
    const { vehicle, warnings } = examine(command.vehicle);
    return this.work.run(caller.shopId, async (tx) => {
      const record = await correctRecord(
        tx.vehicles,
        'vehicle',
        { id: command.id, expected: command.expected, content: vehicle },
        stampOf(this.clock, caller, command.reason),
      );
      return {
        record,
        created: false,
        warnings: [...warnings, ...(await duplicates(tx, command.id, vehicle))],
      };
    });
  }
}

function examine(entry: VehicleEntry): { vehicle: Vehicle; warnings: readonly Warning[] } {
  const number =
    entry.chassisNumber === null
      ? undefined
      : examineVehicleNumber({
          asRead: entry.chassisNumber,
          ...(entry.firstUsedOn === null ? {} : { firstUsedOn: entry.firstUsedOn }),
        });
  const refusal = number?.refusals[0];
  if (refusal !== undefined) {
    throw invalidInput(
      '/chassisNumber',
      refusal.code,
      'The number contains characters that cannot stand on a vehicle. Read it again and type it in plain letters and digits.',
    );
  }
  return {
    vehicle: {
      ...entry,
      numberSearch: number?.normalised ?? null,
      plateSearch: entry.plate === null ? null : plateKey(entry.plate),
    },
    warnings: (number?.warnings ?? []).map(({ code, values }) => ({
      code,
      pointer: '/chassisNumber',
      values,
    })),
  };
}

/** So many other vehicles with one number or plate are named; more are no help in finding the right one. */
const mostDoubles = 5;

/** Two vans can share a short old number, so a double is shown and never refused. */
async function duplicates(tx: ShopTransaction, id: string, vehicle: Vehicle): Promise<readonly Warning[]> {
  const found = async (
    member: 'numberSearch' | 'plateSearch',
    pointer: string,
    code: string,
  ): Promise<Warning[]> => {
    const value = vehicle[member];
    if (value === null || value === '') return [];
    const { items } = await tx.vehicles.list({ where: { [member]: value }, limit: mostDoubles + 1 });
    const others = items.filter((other) => other.id !== id).slice(0, mostDoubles);
    return others.map((other) => ({ code, pointer, values: { vehicleId: other.id } }));
  };
  return [
    ...(await found('numberSearch', '/chassisNumber', 'numberAlsoOnOtherVehicle')),
    ...(await found('plateSearch', '/plate', 'plateAlsoOnOtherVehicle')),
  ];
}
