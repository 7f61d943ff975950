import { invalidInput } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { IdSource } from '../ports/id-source.port.js';
import type { ListPage, ListPosition, Recorded } from '../ports/record-store.port.js';
import type { ServicePlanItem } from '../ports/records/planning.records.js';
import type { NoReferences } from '../ports/records/shop.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { addRecord, type AddedRecord } from '../recording/add-record.js';
import { correctRecord, type ExpectedRevision } from '../recording/correct-record.js';
import { referencedRecord, requiredRecord } from '../recording/required-record.js';
import { stampOf } from '../recording/stamp.js';

export type ServicePlanItemRecord = Recorded<NoReferences, ServicePlanItem>;

/** Records something the shop does at intervals. */
export class RecordServicePlanItemUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: IdSource,
  ) {}

  execute(
    caller: Caller,
    command: { readonly id?: string | undefined; readonly item: ServicePlanItem },
  ): Promise<AddedRecord<NoReferences, ServicePlanItem>> {
    const stamp = stampOf(this.clock, caller);
    const id = command.id ?? this.ids.next();
    return this.work.run(caller.shopId, async (tx) => {
      await refuseEmpty(tx, command.item);
      const added = await addRecord(
        tx.servicePlanItems,
        'item of the plan',
        { id, identity: {}, content: command.item },
        stamp,
      );
      if (added.created) {
        await tx.announce({
          type: 'endfloat.servicePlanItem.recorded.v1',
          subjectId: id,
          at: stamp.at,
          payload: {},
        });
      }
      return added;
    });
  }
}

/** Corrects an item of the plan: another interval, or that it is no longer in use. */
export class CorrectServicePlanItemUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    command: {
      readonly id: string;
      readonly expected: ExpectedRevision;
      readonly item: ServicePlanItem;
      readonly reason: string;
    },
  ): Promise<ServicePlanItemRecord> {
    const stamp = stampOf(this.clock, caller, command.reason);
    const { id, expected, item: content } = command;
    return this.work.run(caller.shopId, async (tx) => {
      await refuseEmpty(tx, content);
      return correctRecord(tx.servicePlanItems, 'item of the plan', { id, expected, content }, stamp);
    });
  }
}

export class FindServicePlanItemsUseCase {
  constructor(private readonly work: UnitOfWork) {}

  execute(
    caller: Caller,
    query: {
      readonly componentType?: string | undefined;
      readonly asOf?: string | undefined;
      readonly after?: ListPosition | undefined;
      readonly limit: number;
    },
  ): Promise<ListPage<NoReferences, ServicePlanItem>> {
    const { componentType, ...page } = query;
    return this.work.read(caller.shopId, (tx) =>
      tx.servicePlanItems.list({ where: { componentType }, ...page }),
    );
  }

  one(caller: Caller, id: string, asOf?: string): Promise<ServicePlanItemRecord> {
    return this.work.read(caller.shopId, (tx) =>
      requiredRecord(tx.servicePlanItems, 'item of the plan', id, asOf),
    );
  }

  revisions(caller: Caller, id: string): Promise<readonly ServicePlanItemRecord[]> {
    return this.work.read(caller.shopId, async (tx) => {
      await requiredRecord(tx.servicePlanItems, 'item of the plan', id);
      return tx.servicePlanItems.history(id);
    });
  }
}

async function refuseEmpty(tx: ShopTransaction, item: ServicePlanItem): Promise<void> {
  if (item.everyDays === null && item.everyKm === null)
    throw invalidInput(
      '/everyDays',
      'required',
      'Give days, a distance, or both: without either it is never due.',
    );
  if (item.everyKm !== null && !(Number(item.everyKm) > 0))
    throw invalidInput('/everyKm', 'positive', 'Give a distance above 0 km.');
  if (item.componentType === null && item.actions.length > 0)
    throw invalidInput(
      '/actions',
      'unexpected',
      'Name the kind of part whose work counts, or leave the work out.',
    );
  if (item.vehicleId !== null && item.application !== null)
    throw invalidInput('/application', 'unexpected', 'An item for one vehicle needs no application.');
  if (item.vehicleId !== null) await referencedRecord(tx.vehicles, 'vehicle', item.vehicleId, '/vehicleId');
}
