import type { Caller } from '../ports/roles.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import type { HistoryShelf } from './history-shelf.js';

/** Whose history is asked for, and by whom. */
export interface HistoryQuestion {
  readonly caller: Caller;
  readonly vehicleId: string;
  readonly asOf: string | undefined;
}

const itself = <R>(record: R): R => record;
const ofNoJob = (): null => null;

/** Owners, what the odometer showed, and the parts that were or are on the vehicle. */
export async function tellOfVehicle(
  tx: ShopTransaction,
  shelf: HistoryShelf,
  { caller, vehicleId }: HistoryQuestion,
): Promise<void> {
  // Who else owned it is nothing for a customer's user.
  const owners = { vehicleId, customerId: caller.customerId };
  await shelf.tell(tx.ownerships, await shelf.latest('ownership', tx.ownerships, owners), {
    kind: 'ownership',
    happenedAt: ({ content }) => content.fromAt,
    jobId: ofNoJob,
    view: itself,
  });
  const segments = await shelf.latestOf(
    'odometerSegment',
    tx.odometerSegments,
    { vehicleId },
    ({ content }) => content.startedAt,
  );
  await shelf.tell(tx.odometerSegments, segments, {
    kind: 'odometerSegment',
    happenedAt: ({ content }) => content.startedAt,
    jobId: ofNoJob,
    view: itself,
  });
  await shelf.tell(
    tx.odometerEntries,
    await shelf.latest('odometerEntry', tx.odometerEntries, { vehicleId }),
    { kind: 'odometerEntry', happenedAt: ({ content }) => content.readAt, jobId: ofNoJob, view: itself },
  );
  await shelf.tell(tx.fittedParts, await shelf.latest('fittedPart', tx.fittedParts, { vehicleId }), {
    kind: 'fittedPart',
    happenedAt: ({ content }) => content.fittedAt,
    jobId: ofNoJob,
    view: itself,
  });
}
