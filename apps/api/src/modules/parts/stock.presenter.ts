import type { RecordStockMoveRequest, StockLineResponse, StockMoveResponse } from '@endfloat/contracts';
import type { StockLineView, StockMoveEntry, StockMoveRecord } from '@endfloat/workshop';
import { presentRecorded, presentWarning } from '../../http/answers/recorded.presenter.js';
import { presentPartStock } from './part.presenter.js';

/** What is left out is not known; which work line used a part is derived from the work. */
export function toStockMove(request: RecordStockMoveRequest): StockMoveEntry {
  const { partId, condition, kind, quantity, happenedAt } = request;
  const { jobId = null, reversesId = null, serial = null, batch = null, supplier = null } = request;
  const { offerId = null, deliveryId = null, unitCost = null, place = null, note = null } = request;
  return {
    partId,
    condition,
    kind,
    quantity,
    happenedAt,
    jobId,
    workLineId: null,
    reversesId,
    serial,
    batch,
    supplier,
    offerId,
    deliveryId,
    unitCost: unitCost === null ? null : { amount: unitCost.amount, currency: unitCost.currency },
    place,
    note,
  };
}

export function presentStockMove(record: StockMoveRecord): StockMoveResponse {
  const { identity, content } = record;
  const { happenedAt, quantity, serial, batch, supplier, offerId, deliveryId, place, note } = content;
  const { unitCost, warnings } = content;
  return {
    ...presentRecorded(record),
    partId: identity.partId,
    condition: identity.condition,
    kind: identity.kind,
    quantity,
    happenedAt,
    jobId: identity.jobId,
    workLineId: identity.workLineId,
    reversesId: identity.reversesId,
    serial,
    batch,
    supplier,
    offerId,
    deliveryId,
    unitCost: unitCost === null ? null : { amount: unitCost.amount, currency: unitCost.currency },
    place,
    note,
    position: identity.position,
    onHandChange: identity.onHandChange,
    reservedChange: identity.reservedChange,
    onHandAfter: identity.onHandAfter,
    reservedAfter: identity.reservedAfter,
    warnings: warnings.map(presentWarning),
  };
}

export function presentStockLine({ line, part }: StockLineView): StockLineResponse {
  const { componentType, partNumber, title } = part.content;
  return {
    ...presentPartStock(line),
    componentType,
    partNumber,
    title,
    moves: line.position,
    lastMovedAt: line.lastMovedAt,
  };
}
