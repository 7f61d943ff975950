import type { CheckProgressDto, InspectionProgressResponse, InspectionResponse } from '@endfloat/contracts';
import type { CheckProgress, InspectionProgress, InspectionRecord } from '@endfloat/workshop';
import { presentRecorded } from '../../http/answers/recorded.presenter.js';
import { presentVerdict } from '../readings/verdict.presenter.js';

export function presentInspection(record: InspectionRecord): InspectionResponse {
  const { vehicleId, jobId, checkSheetId } = record.identity;
  const { startedAt, technicianId, asFoundNotTaken, notDone, note } = record.content;
  const remark = ({ checkId, reason }: (typeof notDone)[number]) => ({ checkId, reason });
  return {
    ...presentRecorded(record),
    vehicleId,
    jobId,
    checkSheetId,
    startedAt,
    technicianId,
    asFoundNotTaken: asFoundNotTaken.map(remark),
    notDone: notDone.map(remark),
    note,
  };
}

export function presentProgress({
  inspection,
  sheet,
  checks,
}: InspectionProgress): InspectionProgressResponse {
  return {
    inspectionId: inspection.id,
    checkSheetCode: sheet.id,
    checkSheetVersion: sheet.edition,
    checks: checks.map(presentCheckProgress),
    precedence: sheet.precedence,
  };
}

function presentCheckProgress(progress: CheckProgress): CheckProgressDto {
  const { check, phases } = progress;
  return {
    checkId: check.id,
    title: check.title,
    state: progress.state,
    openPrerequisites: [...progress.openPrerequisites],
    outrankedBy: progress.outrankedBy,
    asLeftDue: progress.asLeftDue,
    asFoundNotTaken: progress.asFoundNotTaken,
    notDone: progress.notDone,
    phases: phases.map(({ phase, position, state, readings, lastTakenAt, verdicts }) => ({
      phase,
      position,
      state,
      readingIds: readings.map(({ id }) => id),
      lastTakenAt,
      verdicts: verdicts.map((record) => presentVerdict({ record, check })),
    })),
  };
}
