import { invalidInput, notFound } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded } from '../ports/record-store.port.js';
import type { ServiceRecord, ServiceRecordIdentity } from '../ports/records/planning.records.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { refuseFuture } from '../recording/happened-at.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';
import { mayKnowVehicle, referencedVehicle, vehiclesOf } from '../recording/vehicle-visibility.js';

export type ServiceRecordRecord = Recorded<ServiceRecordIdentity, ServiceRecord>;

/** Records that an item of the plan was done where no work line says so. */
export class RecordServiceUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id?: string | undefined;
      readonly identity: ServiceRecordIdentity;
      readonly service: ServiceRecord;
    },
  ): Promise<AddedRecord<ServiceRecordIdentity, ServiceRecord>> {
    const stamp = stampOf(this.clock, caller);
    const { identity, service: content } = command;
    refuseFuture(content.doneAt, stamp.at, '/doneAt');
    const id = command.id ?? this.ids.next();
    return this.work.run(caller.shopId, async (tx) => {
      await referencedVehicle(tx, caller, identity.vehicleId, stamp.at);
      const item = await referencedRecord(
        tx.servicePlanItems,
        'item of the plan',
        identity.planItemId,
        '/planItemId',
      );
      if (item.content.vehicleId !== null && item.content.vehicleId !== identity.vehicleId)
        throw invalidInput('/planItemId', 'otherVehicle', 'This item of the plan is for another vehicle.');
      const added = await addRecord(tx.serviceRecords, 'service', { id, identity, content }, stamp);
      if (added.created) {
        const payload = { vehicleId: identity.vehicleId, planItemId: identity.planItemId };
        await tx.announce({ type: 'endfloat.service.recorded.v1', subjectId: id, at: stamp.at, payload });
      }
      return added;
    });
  }
}

export class CorrectServiceUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly service: ServiceRecord;
      readonly reason: string;
    },
  ): Promise<ServiceRecordRecord> {
    const stamp = stampOf(this.clock, caller, command.reason);
    const { id, expected, service: content } = command;
    refuseFuture(content.doneAt, stamp.at, '/doneAt');
    return this.work.run(caller.shopId, (tx) =>
      correctRecord(tx.serviceRecords, 'service', { id, expected, content }, stamp),
    );
  }
}

export class FindServicesUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    query: {
      readonly vehicleId?: string | undefined;
      readonly planItemId?: string | undefined;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<ListPage<ServiceRecordIdentity, ServiceRecord>> {
    const { vehicleId: asked, planItemId, ...page } = query;
    return this.work.read(caller.shopId, async (tx) => {
      const own =
        caller.customerId === undefined ? null : await vehiclesOf(tx, caller.customerId, this.clock.now());
      const vehicleId =
        own === null
          ? asked
          : asked === undefined
            ? own
            : own.includes(asked)
              ? asked
              : ([] as readonly string[]);
      if (Array.isArray(vehicleId) && vehicleId.length === 0) return { items: [] };
      return tx.serviceRecords.list({ where: { vehicleId, planItemId }, ...page });
    });
  }

  one(caller: Caller, id: string, asOf?: string): Promise<ServiceRecordRecord> {
    return this.work.read(caller.shopId, async (tx) => {
      const record = await requiredRecord(tx.serviceRecords, 'service', id, asOf);
      if (!(await mayKnowVehicle(tx, caller, record.identity.vehicleId, this.clock.now())))
        throw notFound('service');
      return record;
    });
  }

  async revisions(caller: Caller, id: string): Promise<readonly ServiceRecordRecord[]> {
    await this.one(caller, id);
    return this.work.read(caller.shopId, (tx) => tx.serviceRecords.history(id));
  }
}
