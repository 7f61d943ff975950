import type {
  InstrumentConsequences as Consequences,
  InstrumentVerdict,
  RestingAssessmentDto,
  RestingDecisionDto,
} from '@endfloat/contracts';
import type {
  InstrumentConsequences,
  InstrumentVerdicts,
  RestingAssessment,
  RestingDecision,
} from '@endfloat/workshop';
import { presentVerdict } from '../readings/verdict.presenter.js';

export function presentConsequences(found: InstrumentConsequences): Consequences {
  return {
    lastGoodCalibrationOn: found.lastGoodCalibrationOn,
    readings: found.readings,
    verdicts: found.verdicts.map(presentInstrumentVerdict),
    assessments: found.assessments.map(presentAssessment),
    decisions: found.decisions.map(presentDecision),
  };
}

export function presentInstrumentVerdict(verdict: InstrumentVerdicts['verdicts'][number]): InstrumentVerdict {
  return { ...presentVerdict(verdict), vehicleId: verdict.vehicleId };
}

function presentAssessment({ record, readingIds }: RestingAssessment): RestingAssessmentDto {
  return {
    assessmentId: record.id,
    vehicleId: record.identity.vehicleId,
    jobId: record.identity.jobId,
    readingIds: [...readingIds],
    recordedAt: record.firstRecordedAt,
  };
}

function presentDecision({ record, assessment }: RestingDecision): RestingDecisionDto {
  const { chosen, decidedAt, decidedBy } = record.content;
  return {
    decisionId: record.id,
    assessmentId: record.identity.assessmentId,
    vehicleId: assessment.record.identity.vehicleId,
    jobId: assessment.record.identity.jobId,
    readingIds: [...assessment.readingIds],
    chosen,
    decidedAt,
    decidedBy,
  };
}
