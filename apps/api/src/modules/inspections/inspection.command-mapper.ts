import type { CheckRemarkDto, InspectionContent, RecordInspectionRequest } from '@endfloat/contracts';
import type { CheckRemark, Inspection, RecordInspectionCommand } from '@endfloat/workshop';

export function toRecordInspectionCommand(request: RecordInspectionRequest): RecordInspectionCommand {
  const { id, vehicleId, jobId, checkSheetId, startedAt, technicianId } = request;
  return {
    id,
    vehicleId,
    jobId,
    checkSheetId,
    inspection: {
      startedAt,
      technicianId,
      asFoundNotTaken: (request.asFoundNotTaken ?? []).map(toRemark),
      notDone: (request.notDone ?? []).map(toRemark),
      note: request.note ?? null,
    },
  };
}

export function toInspection(content: InspectionContent): Inspection {
  const { startedAt, technicianId, asFoundNotTaken, notDone, note } = content;
  return {
    startedAt,
    technicianId,
    asFoundNotTaken: asFoundNotTaken.map(toRemark),
    notDone: notDone.map(toRemark),
    note,
  };
}

const toRemark = ({ checkId, reason }: CheckRemarkDto): CheckRemark => ({ checkId, reason });
