import type { PartContent, PartDetailsResponse, PartResponse, PartStockDto } from '@endfloat/contracts';
import type { Part, PartRecord, PartView, StockLine } from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

export function toPart(request: PartContent): Part {
  const { componentType, partNumber, title, applications, supersededById, interchangesWith } = request;
  const { alsoOrder, note } = request;
  return {
    componentType,
    partNumber,
    title,
    applications,
    supersededById,
    interchangesWith,
    alsoOrder,
    note,
  };
}

export function presentPart(record: PartRecord): PartResponse {
  const { componentType, partNumber, title, supersededById, note } = record.content;
  return {
    ...presentRecorded(record),
    componentType,
    partNumber,
    title,
    applications: [...record.content.applications],
    supersededById,
    interchangesWith: [...record.content.interchangesWith],
    alsoOrder: [...record.content.alsoOrder],
    note,
  };
}

export function presentPartView({ part, substitutes, lines }: PartView): PartDetailsResponse {
  return {
    ...presentPart(part),
    currentPartId: substitutes.current,
    successionIds: [...substitutes.chain],
    substituteIds: [...substitutes.substitutes],
    stock: lines.map(presentPartStock),
  };
}

export function presentPartStock({ partId, condition, onHand, reserved }: StockLine): PartStockDto {
  return { partId, condition, onHand, reserved, available: Math.max(0, onHand - reserved) };
}
