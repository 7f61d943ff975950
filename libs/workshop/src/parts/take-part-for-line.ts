import type { IdSource } from '../ports/id-source.port.js';
import { invalidInput } from '../errors/domain.errors.js';
import type { Recorded, Stamp } from '../ports/record-store.port.js';
import type { OfJob, WorkLine } from '../ports/records/jobs.records.js';
import type { Part } from '../ports/records/stock.records.js';
import type { ShopTransaction } from '../ports/unit-of-work.port.js';
import { referencedRecord } from '../recording/required-record.js';
import { moveOnLedger } from './move-stock.js';

/**
 * Takes the part that a work line used from the shelf, in the transaction of the work. What was kept for the job goes
 * first. A line whose part names no number of the shop's list takes nothing: it came from elsewhere.
 *
 * @returns the part that was taken; null: none
 * @throws DomainError `stock.notEnough` where by the ledger none lies there
 */
export async function takePartForLine(
  tx: ShopTransaction,
  ids: IdSource,
  { id, identity, content: line }: Recorded<OfJob, WorkLine>,
  stamp: Stamp,
): Promise<Part | null> {
  const used = line.part;
  const partId = used?.partId ?? null;
  if (used === null || partId === null) return null;
  const { content: part } = await referencedRecord(tx.parts, 'part', partId, '/part/partId');
  if (part.componentType !== line.componentType)
    throw invalidInput(
      '/part/partId',
      'sameKind',
      `This part is a ${part.componentType}; the line is about a ${line.componentType}.`,
    );
  const entry = {
    partId,
    condition: used.condition,
    kind: 'use',
    quantity: 1,
    jobId: identity.jobId,
    workLineId: id,
    reversesId: null,
    happenedAt: line.doneAt ?? stamp.at,
    serial: used.serial,
    batch: used.batch,
    supplier: used.supplier,
    offerId: null,
    deliveryId: null,
    unitCost: used.price,
    place: null,
    note: null,
  } as const;
  await moveOnLedger(tx, ids.next(), entry, { at: stamp.at, by: stamp.by }, '/part/partId');
  return part;
}
