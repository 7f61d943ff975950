import type {
  ConsentResponse,
  EstimateLineEntry as EstimateLineRequest,
  EstimateResponse,
  PartUsedDto,
  WorkLineContent,
  WorkLineResponse,
} from '@endfloat/contracts';
import type {
  ConsentRecord,
  EstimateLineEntry,
  EstimateRecord,
  PartUsed,
  WorkLine,
  WorkLineRecord,
} from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';

function toPartUsed({
  condition,
  supplier,
  partNumber,
  serial,
  batch,
  price,
  partId,
}: PartUsedDto | PartUsed): PartUsed {
  const stocked = partId === undefined ? {} : { partId };
  return { condition, supplier, partNumber, serial, batch, price, ...stocked };
}

/** The part a line was done to is derived from the vehicle, never entered. */
export function toWorkLine(request: WorkLineContent): WorkLine {
  const { action, componentType, position, state, technicianId, doneAt, minutes, description } = request;
  const { from, to, protectedPurpose, protectedReason, part } = request;
  return {
    action,
    componentType,
    position,
    state,
    technicianId,
    doneAt,
    minutes,
    description,
    from,
    to,
    protectedPurpose,
    protectedReason,
    part: part === null ? null : toPartUsed(part),
    fittedPartId: null,
  };
}

export function presentWorkLine(record: WorkLineRecord): WorkLineResponse {
  const { action, componentType, position, state, technicianId, doneAt, minutes, description } =
    record.content;
  const { from, to, protectedPurpose, protectedReason, part, fittedPartId } = record.content;
  return {
    ...presentRecorded(record),
    jobId: record.identity.jobId,
    action,
    componentType,
    position,
    state,
    technicianId,
    doneAt,
    minutes,
    description,
    from,
    to,
    protectedPurpose,
    protectedReason,
    part: part === null ? null : { ...toPartUsed(part) },
    fittedPartId,
  };
}

export function toEstimateLine(line: EstimateLineRequest): EstimateLineEntry {
  const { workLineId, description, partsAmount, labourHours, partCondition } = line;
  return { workLineId, description, partsAmount, labourHours, partCondition };
}

export function presentEstimate(record: EstimateRecord): EstimateResponse {
  const { jobId, estimateVersion } = record.identity;
  const { currency, lines, totalAmount, ceilingAmount } = record.content;
  return {
    ...presentRecorded(record),
    jobId,
    estimateVersion,
    currency,
    lines: lines.map((line) => ({ ...toEstimateLine(line), labourAmount: line.labourAmount })),
    totalAmount,
    ceilingAmount,
  };
}

export function presentConsent(record: ConsentRecord): ConsentResponse {
  const { jobId, estimateId } = record.identity;
  const { answer, answeredAt, way, declinedWork } = record.content;
  return { ...presentRecorded(record), jobId, estimateId, answer, answeredAt, way, declinedWork };
}
