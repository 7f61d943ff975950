import { examineVehicleNumber, plateKey } from '@endfloat/catalogue';
import type { Clock } from '../ports/clock.port.js';
import type { ListPage, ListPosition, Recorded } from '../ports/record-store.port.js';
import type { NoReferences } from '../ports/records/shop.records.js';
import type { Vehicle } from '../ports/records/vehicles.records.js';
import type { Caller } from '../ports/roles.js';
import type { UnitOfWork } from '../ports/unit-of-work.port.js';
import { ownerOf, vehiclesOf, visibleVehicle } from '../recording/vehicle-visibility.js';

export interface ListVehiclesQuery {
  readonly customerId?: string | undefined;
  /** as a person types it; separators and case are no difference */
  readonly chassisNumber?: string | undefined;
  readonly plate?: string | undefined;
  readonly asOf?: string | undefined;
  readonly after?: ListPosition | undefined;
  readonly limit: number;
}

/** Lists vehicles; a customer's user sees that customer's only, whatever was asked. */
export class ListVehiclesUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, query: ListVehiclesQuery): Promise<ListPage<NoReferences, Vehicle>> {
    const now = this.clock.now();
    return this.work.read(caller.shopId, async (tx) => {
      const owner = caller.customerId ?? query.customerId;
      if (
        caller.customerId !== undefined &&
        query.customerId !== undefined &&
        query.customerId !== caller.customerId
      )
        return { items: [] };
      const ids = owner === undefined ? undefined : await vehiclesOf(tx, owner, now);
      return tx.vehicles.list({
        where: {
          id: ids,
          numberSearch:
            query.chassisNumber === undefined
              ? undefined
              : examineVehicleNumber({ asRead: query.chassisNumber }).normalised,
          plateSearch: query.plate === undefined ? undefined : plateKey(query.plate),
        },
        limit: query.limit,
        after: query.after,
        asOf: query.asOf,
      });
    });
  }
}

export interface VehicleWithOwner {
  readonly record: Recorded<NoReferences, Vehicle>;
  readonly owner: { readonly customerId: string; readonly fromAt: string } | undefined;
}

/** One vehicle with its present owner, now or as it was known at a moment. */
export class ShowVehicleUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(
    caller: Caller,
    query: { readonly id: string; readonly asOf?: string | undefined },
  ): Promise<VehicleWithOwner> {
    const now = this.clock.now();
    return this.work.read(caller.shopId, async (tx) => {
      const record = await visibleVehicle(tx, caller, query.id, now, query.asOf);
      return { record, owner: await ownerOf(tx, query.id, query.asOf ?? now, query.asOf) };
    });
  }

  /** Every revision, oldest first. */
  revisions(caller: Caller, id: string): Promise<readonly Recorded<NoReferences, Vehicle>[]> {
    return this.work.read(caller.shopId, async (tx) => {
      await visibleVehicle(tx, caller, id, this.clock.now());
      return tx.vehicles.history(id);
    });
  }
}
