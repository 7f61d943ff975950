import type {
  ArrivalInspectionContent,
  ArrivalInspectionResponse,
  ArrivalReadingResponse,
  ArrivalSheetDto,
  ArrivalVerdictResponse,
} from '@endfloat/contracts';
import type { ArrivalEntry, ArrivalInspectionView, ArrivalSheet, Caller } from '@endfloat/workshop';
import { presentRecorded, presentWarning } from '../../http/answers/recorded.presenter.js';
import { presentCheck } from '../check-sheets/check-sheet.presenter.js';
import { toReadingEntry } from '../readings/reading.command-mapper.js';
import { presentReading } from '../readings/reading.presenter.js';
import { presentJudgement } from '../readings/verdict.presenter.js';

export function toArrivalEntry(request: ArrivalInspectionContent, caller: Caller): ArrivalEntry {
  const { inspectedAt, serial, condition, note } = request;
  const readings = request.readings.map((reading) =>
    toReadingEntry({ ...reading, phase: 'asFound', position: null }, caller),
  );
  return { inspectedAt, serial, condition, note, readings };
}

export function presentArrivalInspection({
  record,
  sheet,
}: ArrivalInspectionView): ArrivalInspectionResponse {
  const { identity, content } = record;
  const { inspectedAt, serial, condition, note, readings, verdicts } = content;
  const { checks } = sheet.record.content.definition;
  const done = new Set(readings.map(({ checkId }) => checkId));
  return {
    ...presentRecorded(record),
    partId: identity.partId,
    checkSheetId: identity.checkSheetId,
    stockMoveId: identity.stockMoveId,
    inspectedAt,
    serial,
    condition,
    note,
    readings: readings.map((reading) => presentArrivalReading(record, reading)),
    verdicts: verdicts.flatMap((verdict) => {
      const check = checks.find(({ id }) => id === verdict.checkId);
      return check === undefined ? [] : [presentArrivalVerdict(verdict, check)];
    }),
    checksOpen: checks.map(({ id }) => id).filter((id) => !done.has(id)),
  };
}

type ArrivalRecord = ArrivalInspectionView['record'];
type ArrivalVerdict = ArrivalRecord['content']['verdicts'][number];
type Check = ArrivalSheet['record']['content']['definition']['checks'][number];

/** As readings and verdicts of an inspection on a van are told, less what belongs to a van. */
function presentArrivalReading(
  record: ArrivalRecord,
  content: ArrivalRecord['content']['readings'][number],
): ArrivalReadingResponse {
  const shown = presentReading({ ...record, identity: { inspectionId: record.id }, content });
  const { checkId, place, result, instrumentId, measuredBy, takenAt, conditions, note } = shown;
  const measured = measuredBy === undefined ? {} : { measuredBy };
  return {
    checkId,
    place,
    result,
    instrumentId,
    ...measured,
    takenAt,
    conditions,
    note,
    valueConfirmed: content.valueConfirmed,
    warnings: content.warnings.map(presentWarning),
  };
}

function presentArrivalVerdict({ checkId, content }: ArrivalVerdict, check: Check): ArrivalVerdictResponse {
  const { detail, provisional } = content;
  return {
    ...presentJudgement({
      ...detail,
      limit: { id: detail.judgement.limitId, ...detail.limit },
      title: check.title,
    }),
    checkId,
    provisional,
    outrankedBy: detail.outrankedBy,
  };
}

export function presentArrivalSheet({ record, componentTypes }: ArrivalSheet): ArrivalSheetDto {
  const { definition } = record.content;
  return {
    checkSheetId: record.id,
    code: record.identity.code,
    sheetVersion: record.identity.sheetVersion,
    title: definition.title,
    precedence: definition.precedence,
    checks: definition.checks.map((check) =>
      presentCheck(
        check,
        componentTypes
          .find(({ id }) => id === check.componentTypeId)
          ?.characteristics.find(({ id }) => id === check.characteristicId),
      ),
    ),
  };
}
