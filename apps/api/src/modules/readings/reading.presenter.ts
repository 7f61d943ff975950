import type { ReadingJudgementDto, ReadingResponse, ReadingSetResponse } from '@endfloat/contracts';
import { isTrendWorthy, resultOf, type ReadingRecord, type ReadingView } from '@endfloat/workshop';
import { presentRecorded, presentWarning } from '../../http/answers/recorded.presenter.js';
import { presentVerdict } from './verdict.presenter.js';

export function presentReading(record: ReadingRecord): ReadingResponse {
  const { content } = record;
  return {
    ...presentRecorded(record),
    inspectionId: record.identity.inspectionId,
    checkId: content.checkId,
    phase: content.phase,
    position: content.position,
    place: content.place,
    result: resultOf(content),
    instrumentId: content.instrumentId,
    measuredBy: content.measuredBy,
    takenAt: content.takenAt,
    conditions: content.conditions,
    note: content.note,
    characteristic: content.characteristic,
    fittedPartId: content.fittedPartId,
    canonical: canonicalOf(content),
    distanceKm: content.distanceKm,
    valueConfirmed: content.valueConfirmed,
    expectedRange: expectedRangeOf(content),
    withdrawn: content.isWithdrawn === true,
    trendWorthy: isTrendWorthy(content),
    warnings: content.warnings.map(presentWarning),
  };
}

type Content = ReadingRecord['content'];
type Quantity = NonNullable<ReadingResponse['canonical']>;

function canonicalOf({ canonicalValue, canonicalUnit }: Content): Quantity | null {
  if (canonicalValue === null || canonicalUnit === null) return null;
  return { value: canonicalValue, unit: canonicalUnit as Quantity['unit'] };
}

function expectedRangeOf({ valueConfirmed, warnings }: Content): ReadingResponse['expectedRange'] {
  const warning = warnings.find(({ code }) => code === 'valueToConfirm');
  const { lowest, highest, unit } = warning?.values ?? {};
  if (valueConfirmed || lowest === undefined || highest === undefined || unit === undefined) return null;
  return {
    lowest: { value: lowest, unit: unit as Quantity['unit'] },
    highest: { value: highest, unit: unit as Quantity['unit'] },
  };
}

export function presentReadingJudgement({ verdicts, advisedReadingsLeft }: ReadingView): ReadingJudgementDto {
  return { verdicts: verdicts.map(presentVerdict), advisedReadingsLeft };
}

export function presentReadingView(view: ReadingView): ReadingResponse {
  return { ...presentReading(view.record), judgement: presentReadingJudgement(view) };
}

export function presentReadingSet(views: readonly ReadingView[]): ReadingSetResponse {
  const verdicts = new Map(
    views.flatMap((view) => view.verdicts.map((verdict) => [verdict.record.id, verdict] as const)),
  );
  return {
    readings: views.map(({ record }) => presentReading(record)),
    verdicts: [...verdicts.values()].map(presentVerdict),
  };
}
