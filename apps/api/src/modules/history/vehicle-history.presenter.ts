import type {
  AssessmentInHistory as AssessmentInHistoryDto,
  HistoryEntryDto,
  ReadingInHistory as ReadingInHistoryDto,
  VehicleHistoryResponse,
} from '@endfloat/contracts';
import type {
  AssessmentInHistory,
  ComplaintInHistory,
  HistoryEntryOf,
  HistoryKind,
  HistoryKinds,
  ReadingInHistory,
  HistoryOfVehicle,
} from '@endfloat/workshop';
import { presentAssessment } from '../assessments/assessment.presenter.js';
import { presentComeback } from '../comebacks/comeback.presenter.js';
import { presentComplaintSummary } from '../complaints/complaint.presenter.js';
import { presentDecision } from '../decisions/decision.presenter.js';
import { presentFittedPart } from '../fitted-parts/fitted-part.presenter.js';
import { presentInspection } from '../inspections/inspection.presenter.js';
import { presentInstrumentView } from '../instruments/instrument.presenter.js';
import { presentJob, presentJobEvent } from '../jobs/job.presenter.js';
import { presentProofPoint, presentRelease, presentUnrepairedHandover } from '../jobs/proof.presenter.js';
import { presentConsent, presentEstimate, presentWorkLine } from '../jobs/work.presenter.js';
import { presentOdometerEntry, presentOdometerSegment } from '../odometer/odometer.presenter.js';
import { presentReading } from '../readings/reading.presenter.js';
import { presentVerdict } from '../readings/verdict.presenter.js';
import { presentOwnership, presentVehicle } from '../vehicles/vehicle.presenter.js';

function presentComplaint({ record, words }: ComplaintInHistory) {
  return presentComplaintSummary(record, words);
}

function presentReadingInHistory({ record, instrument }: ReadingInHistory): ReadingInHistoryDto {
  if (instrument === null) return { ...presentReading(record), instrument: null };
  const { id, version, kind, name, serial, standing } = presentInstrumentView(instrument);
  return { ...presentReading(record), instrument: { id, version, kind, name, serial, standing } };
}

function presentAssessmentInHistory({ record, isWithReasons }: AssessmentInHistory): AssessmentInHistoryDto {
  const answer = presentAssessment(record);
  return {
    id: answer.id,
    version: answer.version,
    recordedAt: answer.recordedAt,
    recordedBy: answer.recordedBy,
    reason: answer.reason,
    replacedAt: answer.replacedAt,
    vehicleId: answer.vehicleId,
    fittedPartId: answer.fittedPartId,
    componentType: answer.componentType,
    position: answer.position,
    modelVersion: answer.modelVersion,
    inputHash: answer.inputHash,
    recommendation: answer.recommendation,
    reasons: isWithReasons ? answer.reasons : null,
  };
}

type Presented<K extends HistoryKind> = Extract<HistoryEntryDto, { kind: K }>['record'];

/** One presenter a kind: a kind without one does not compile. */
const presenters: { readonly [K in HistoryKind]: (record: HistoryKinds[K]) => Presented<K> } = {
  ownership: presentOwnership,
  odometerSegment: presentOdometerSegment,
  odometerEntry: presentOdometerEntry,
  fittedPart: presentFittedPart,
  complaint: presentComplaint,
  job: presentJob,
  jobEvent: presentJobEvent,
  inspection: presentInspection,
  reading: presentReadingInHistory,
  verdict: presentVerdict,
  assessment: presentAssessmentInHistory,
  decision: presentDecision,
  estimate: presentEstimate,
  consent: presentConsent,
  workLine: presentWorkLine,
  proofPoint: presentProofPoint,
  release: presentRelease,
  unrepairedHandover: presentUnrepairedHandover,
  comeback: presentComeback,
};

function presentEntry<K extends HistoryKind>(entry: HistoryEntryOf<K>): HistoryEntryDto {
  const present: (record: HistoryKinds[K]) => Presented<K> = presenters[entry.kind];
  const presented = {
    kind: entry.kind,
    happenedAt: entry.happenedAt,
    jobId: entry.jobId,
    record: present(entry.record),
    otherRevisions: entry.otherRevisions.map(present),
  };
  // A member of the union by its own kind, which the compiler cannot follow for a kind that is still open.
  return presented as unknown as HistoryEntryDto;
}

export function presentVehicleHistory(history: HistoryOfVehicle): VehicleHistoryResponse {
  const { asOf, vehicle, entries, people, cut, areRevisionsCut } = history;
  return {
    vehicleId: vehicle.record.id,
    asOf,
    vehicle: {
      record: presentVehicle(vehicle.record),
      otherRevisions: vehicle.otherRevisions.map(presentVehicle),
    },
    entries: entries.map((entry) => presentEntry(entry)),
    people: people.map(({ userId, displayName }) => ({ userId, displayName })),
    cut: cut.map(({ kind, kept }) => ({ kind, kept })),
    areRevisionsCut,
  };
}
