import { notFound } from '../errors/domain.errors.js';
import type { Clock } from '../ports/clock.port.js';
import type { ListPage, ListPosition, Recorded } from '../ports/record-store.port.js';
import type { OfInspection, Reading } from '../ports/records/bench.records.js';
import type { Caller } from '../ports/roles.js';
import type { ShopTransaction, UnitOfWork } from '../ports/unit-of-work.port.js';
import { requiredRecord } from '../recording/required-record.js';
import { mayKnowVehicle, vehiclesOf, visibleVehicle } from '../recording/vehicle-visibility.js';
import type { ReadingRecord } from './judging/bench-case.js';
import { groundOf } from './judging/gather-bench-case.js';
import { viewsOf, type ReadingView } from './reading-view.js';

export interface ListReadingsQuery {
  readonly inspectionId?: string | undefined;
  readonly fittedPartId?: string | undefined;
  readonly vehicleId?: string | undefined;
  readonly characteristic?: string | undefined;
  readonly instrumentId?: string | undefined;
  readonly asOf?: string | undefined;
  readonly after?: ListPosition | undefined;
  readonly limit: number;
}

/** Readings of an inspection, a fitted part, a vehicle, a characteristic or an instrument, by the time they were taken. */
export class ListReadingsUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  execute(caller: Caller, query: ListReadingsQuery): Promise<ListPage<OfInspection, Reading>> {
    const { fittedPartId, characteristic, instrumentId, asOf, after, limit } = query;
    return this.work.read(caller.shopId, async (tx) => {
      const inspectionId = await this.inspectionsAskedFor(tx, caller, query);
      const where = { inspectionId, fittedPartId, characteristic, instrumentId };
      return tx.readings.list({ where, asOf, after, limit });
    });
  }

  /** A customer's user is answered from the inspections of vehicles they may know, whatever was asked. */
  private async inspectionsAskedFor(
    tx: ShopTransaction,
    caller: Caller,
    { vehicleId, inspectionId }: ListReadingsQuery,
  ): Promise<string | readonly string[] | undefined> {
    const now = this.clock.now();
    if (vehicleId !== undefined) await visibleVehicle(tx, caller, vehicleId, now);
    const vehicles =
      vehicleId ??
      (caller.customerId === undefined ? undefined : await vehiclesOf(tx, caller.customerId, now));
    if (vehicles === undefined) return inspectionId;
    const inspections = await tx.inspections.all({ vehicleId: vehicles });
    const ids = inspections.map(({ id }) => id);
    return inspectionId === undefined ? ids : ids.filter((id) => id === inspectionId);
  }
}

export class ShowReadingUseCase {
  constructor(
    private readonly work: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  /** One reading with the verdicts of its check, now or as they were known at a moment. */
  execute(
    caller: Caller,
    query: { readonly id: string; readonly asOf?: string | undefined },
  ): Promise<ReadingView> {
    return this.work.read(caller.shopId, async (tx) => {
      const record = await requiredRecord(tx.readings, 'reading', query.id, query.asOf);
      const inspection = await this.visibleInspection(tx, caller, record);
      const [view] = await viewsOf(tx, await groundOf(tx, inspection), [query.id], query.asOf);
      if (view === undefined) throw notFound('reading');
      return view;
    });
  }

  /** Every revision, oldest first. */
  revisions(caller: Caller, id: string): Promise<readonly ReadingRecord[]> {
    return this.work.read(caller.shopId, async (tx) => {
      await this.visibleInspection(tx, caller, await requiredRecord(tx.readings, 'reading', id));
      return tx.readings.history(id);
    });
  }

  private async visibleInspection(
    tx: ShopTransaction,
    caller: Caller,
    { identity }: Recorded<OfInspection, Reading>,
  ) {
    const inspection = await requiredRecord(tx.inspections, 'inspection', identity.inspectionId);
    if (!(await mayKnowVehicle(tx, caller, inspection.identity.vehicleId, this.clock.now())))
      throw notFound('reading');
    return inspection;
  }
}
