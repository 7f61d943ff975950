export * from './ports/index.js';
export type { AddedRecord } from './recording/add-record.js';
export { exactly, type ExpectedRevision } from './recording/correct-record.js';

export * from './shop/open-shop.use-case.js';
export * from './shop/change-settings.use-case.js';
export * from './shop/manage-people.use-case.js';
export * from './shop/manage-keys.use-case.js';
export * from './shop/identify-caller.use-case.js';
export * from './shop/manage-customers.use-case.js';
export * from './intake/record-vehicle.use-case.js';
export * from './intake/find-vehicles.use-case.js';
export * from './intake/transfer-vehicle.use-case.js';
export * from './intake/fitted-parts.use-case.js';
export * from './fleet/import-fleet-history.use-case.js';
export * from './fleet/show-fleet-recurrence.use-case.js';
export * from './fleet/component-lives.use-case.js';
export type { WatchOddity } from './fleet/watched-fleet.js';

/** Texts for people, made from stable codes at the edge. */
export { renderText } from '@endfloat/catalogue';
export * from './intake/begin-odometer-segment.use-case.js';
export * from './intake/odometer.use-case.js';
export * from './jobs/take-complaint.use-case.js';
export * from './jobs/open-job.use-case.js';
export * from './jobs/work-lines.use-case.js';
export * from './jobs/estimates.use-case.js';
export * from './jobs/record-proof.use-case.js';
export * from './jobs/release-job.use-case.js';
export * from './jobs/required-proof.js';
export * from './comeback/settle-comeback.use-case.js';
export * from './comeback/show-comeback.use-case.js';
export * from './rates/rows-in-memory.js';
export * from './rates/settle-jobs.use-case.js';
export * from './rates/shop-amount.js';
export type { RateBasis, RateQuery } from './rates/ask-settled-jobs.js';
export * from './rates/compare-comebacks.use-case.js';
export * from './rates/show-comeback-costs.use-case.js';
export * from './rates/show-comeback-course.use-case.js';
export {
  ShowComebackRatesUseCase,
  type ComebackRatesView,
  type RateGroup,
} from './rates/show-comeback-rates.use-case.js';
export { odometerSegmentCauses, odometerUnits } from '@endfloat/wear';
export type { ComebackRecord } from './comeback/propose-comebacks.js';
export * from './decide/offers.use-case.js';
export * from './decide/deliveries.use-case.js';
export * from './bench/component-types.use-case.js';
export * from './bench/check-sheets.use-case.js';
export * from './bench/limits.use-case.js';
export * from './bench/instruments.use-case.js';
export * from './bench/instrument-verdicts.use-case.js';
export * from './bench/gauge-studies/gauge-studies.use-case.js';
export type { GaugeStudyRecord } from './bench/gauge-studies/studied-repeatability.js';
export { gaugeStudyResult, type GaugeStudyResult } from './bench/gauge-studies/study-result.js';
export * from './bench/inspections.use-case.js';
export * from './bench/record-readings.use-case.js';
export * from './bench/correct-reading.use-case.js';
export * from './bench/withdraw-reading.use-case.js';
export * from './bench/find-readings.use-case.js';
export * from './bench/evaluate-reading.use-case.js';
export * from './bench/next-check.use-case.js';
export type { WorthwhileCheck } from './bench/next-check-ranking.js';
export type { CheckWorth, ChecksByMoney } from './bench/next-check-money.js';
export { enteredOf, resultOf } from './bench/entered-of.js';
export type { EnteredResult, ReadingEntry } from './bench/entered-reading.js';
export type { CheckProgress, PhaseProgress } from './bench/check-progress.js';
export { isTrendWorthy, type ReadingView, type VerdictView } from './bench/reading-view.js';
export type { ReadingRecord, BenchJudgement } from './bench/judging/bench-case.js';
export type { VerdictRecord } from './bench/judging/store-verdicts.js';
export type { InspectionRecord } from './bench/judging/gather-bench-case.js';
export type { CalibrationStanding } from './bench/calibration-standing.js';
export * from './decide/assess.use-case.js';
export * from './decide/show-assessments.use-case.js';
export * from './decide/preview-assessment.use-case.js';
export {
  previewAssessment,
  type InlineInspection,
  type PreviewCommand,
} from './decide/preview-assessment.js';
export * from './decide/learning/learned-tables.use-case.js';
export * from './decide/learning/show-learned-tables.use-case.js';
export type {
  ActionCounts,
  DecisionDocument,
  DiagnosisDocument,
} from './decide/learning/learned-documents.js';
export { compute, computeHere } from './computing/computations.js';
export { ComputingHere } from './computing/computing-here.js';
export * from './decide/expected-costs.use-case.js';
export * from './decide/decide.use-case.js';
export * from './decide/show-back-test.use-case.js';
export {
  backTestOmissions,
  backTestRules,
  type BackTestOmission,
  type BackTestRule,
} from './decide/back-test.js';
export { evidenceLink, type EvidenceLink } from './decide/evidence.js';
export * from './bench/catalogue-lists.js';
export { symptomNames } from './jobs/symptom-names.js';
export * from './calculations/index.js';
export * from './history/index.js';
export * from './wear/index.js';
export * from './idempotency/answer-once.use-case.js';
export * from './idempotency/erase-expired-answers.use-case.js';
export * from './events/read-events.use-case.js';
export * from './events/cloud-event.js';
export * from './webhooks/endpoints.use-case.js';
export * from './webhooks/deliveries.use-case.js';
export * from './webhooks/deliver.use-case.js';
export { isLoopbackAddress, isPublicAddress } from './webhooks/public-address.js';
export { readWebhookTarget, type TargetReading, type WebhookTarget } from './webhooks/webhook-target.js';
export * from './audit/list-audit-entries.use-case.js';
export * from './parts/index.js';
export * from './planning/index.js';
